using System.Text;
using ToolpathForge.Plugin;
using ToolpathForge.Plugin.Conformance;

namespace ToolpathForge.DrawingHost;

/// <summary>The command: takes a drawing's outlines as selected, has them cut, and writes a copy of the drawing with the toolpaths on layers of their own.</summary>
internal static class Program
{
    private const string Usage = """
        drawing-host DRAWING --out COPY.dxf [--layer NAME] [--job JOB.toml] [--programs FOLDER] [--core FILE] [--ask]
        drawing-host --conformance

        DRAWING is a DXF or SVG file with its unit stated; --layer selects what lies on one layer. JOB.toml names the drawing as "@selection"; without it a plain job is made up, and --ask
        asks for its values. Programs are written into FOLDER. Exit code: 0 done, 1 a finding stops it, 2 the command or a file can't be used, 3 the core failed.
        """;

    internal static int Main(string[] args) => Run(args, Console.In, Console.Out);

    internal static int Run(string[] args, TextReader answers, TextWriter news)
    {
        if (args is ["--conformance"])
        {
            using var host = new DrawingFileHost(new DrawingDocument(), null, TextWriter.Null);
            ConformanceReport report = HostConformance.Run(host, host);
            news.Write(report.ToString());
            return report.Passed ? 0 : 1;
        }

        var options = new Dictionary<string, string>(StringComparer.Ordinal);
        string? drawing = null;
        for (int i = 0; i < args.Length; i++)
        {
            if (args[i] is "--ask")
            {
                options[args[i]] = "";
            }
            else if (args[i] is "--out" or "--layer" or "--job" or "--programs" or "--core" && i + 1 < args.Length)
            {
                options[args[i]] = args[++i];
            }
            else if (drawing is null && !args[i].StartsWith("--", StringComparison.Ordinal))
            {
                drawing = args[i];
            }
            else
            {
                news.WriteLine(Usage);
                return 2;
            }
        }

        if (drawing is null || !options.TryGetValue("--out", out string? copy))
        {
            news.WriteLine(Usage);
            return 2;
        }

        try
        {
            return Cut(drawing, copy, options, answers, news);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException)
        {
            news.WriteLine(e.Message);
            return 2;
        }
    }

    private static int Cut(string drawing, string copy, Dictionary<string, string> options, TextReader answers, TextWriter news)
    {
        if (DrawingDocument.Read(drawing, options.GetValueOrDefault("--layer"), out string? complaint) is not { } document)
        {
            news.WriteLine(complaint);
            return 2;
        }

        string? job = options.TryGetValue("--job", out string? file) ? File.ReadAllText(file) : options.ContainsKey("--ask") ? null : new SelectionJob { Name = Path.GetFileNameWithoutExtension(drawing) }.Text();
        string? programs = options.TryGetValue("--programs", out string? folder) ? Path.GetFullPath(folder) : null;
        using var host = new DrawingFileHost(document, options.ContainsKey("--ask") ? answers : null, news);
        using var session = new PluginSession(host, programs is null ? null : Path.GetDirectoryName(programs), options.GetValueOrDefault("--core"));
        SessionResult result = session.FulfilAsync(new SessionWish { Job = job, Folder = programs is null ? null : Path.GetFileName(programs) }).GetAwaiter().GetResult();
        if (result.End is SessionEnd.Done or SessionEnd.Stopped)
        {
            // Beside it first, so that there's never half a copy.
            File.WriteAllText(copy + ".part", document.Dxf(), new UTF8Encoding(false));
            File.Move(copy + ".part", copy, true);
            news.WriteLine(FormattableString.Invariant($"{result.Drawn} lines and arcs drawn in {copy}."));
        }

        return result.End switch
        {
            SessionEnd.Done => 0,
            SessionEnd.Failed => 3,
            _ => 1,
        };
    }
}
