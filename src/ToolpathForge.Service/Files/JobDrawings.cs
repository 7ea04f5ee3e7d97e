using System.Collections.Immutable;
using ToolpathForge.Exchange.Reading;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;

namespace ToolpathForge.Service.Files;

/// <summary>Reads the drawings that a job names: files in the job's folder or below it, and drawings that came with the job, whose names begin with @. Nothing else is ever opened.</summary>
/// <param name="folder">The job's folder; null where a job has none, and no file may be read.</param>
/// <param name="named">What came with the job, by name without @, in mm; null for nothing.</param>
/// <param name="cancel">Asked while reading.</param>
internal sealed class JobDrawings(string? folder, IReadOnlyDictionary<string, ReadDrawing>? named, CancellationToken cancel) : IDrawings
{
    /// <summary>The name leads out of the job's folder.</summary>
    internal static readonly FindingKind Outside = new(
        "drawing-outside-folder",
        Severity.Stop,
        "The drawing '{file}' does not lie in the job's folder or below it.",
        "Put the drawing beside the job file, and name it from there without .. or a leading slash.")
    { Unusable = true };

    private readonly Dictionary<DrawingRequest, DrawingAnswer> _answers = [];

    /// <inheritdoc/>
    public DrawingAnswer Find(DrawingRequest request)
    {
        // A family asks for one drawing many times.
        if (!_answers.TryGetValue(request, out DrawingAnswer? answer))
        {
            answer = request.Name.StartsWith('@') ? InMemory(request) : InFolder(request);
            _answers.Add(request, answer);
        }

        return answer;
    }

    private DrawingAnswer InMemory(DrawingRequest request) =>
        named is not null && named.TryGetValue(request.Name[1..], out ReadDrawing? drawing) ? Contents(drawing, request) : DrawingAnswer.None;

    private DrawingAnswer InFolder(DrawingRequest request)
    {
        cancel.ThrowIfCancellationRequested();
        if (folder is null)
        {
            return DrawingAnswer.None;
        }

        if (Within(folder, request.Name) is not { } path)
        {
            return new DrawingAnswer(null, [Finding.Of(Outside, Place.None, Arg.Of("file", Words.Short(request.Name)))]);
        }

        (byte[]? bytes, Finding? fault) = TextFile.ReadBytes(path, request.Name, (int)DrawingLimits.Default.Bytes);
        if (bytes is null)
        {
            // That a file is missing is told at the line that names it.
            return fault!.Kind == FileFindings.Missing ? DrawingAnswer.None : new DrawingAnswer(null, [fault]);
        }

        DrawingUnit? unit = request.Unit is { } word ? DrawingUnit.Find(word) : null;
        return Contents(DrawingReader.ReadRepairing(bytes, request.Name, unit, null, cancel), request);
    }

    private static DrawingAnswer Contents(ReadDrawing drawing, DrawingRequest request)
    {
        DrawingTrace trace = DrawingTrace.Of(drawing, request.Name, request.Layer, request.Gap);
        if (!drawing.IsUsable)
        {
            return new DrawingAnswer(null, trace.Findings);
        }

        // How many lines are open, and that no unit is stated, is told by whoever asked, who knows what that means.
        return new DrawingAnswer(
            new DrawingContents(
                drawing.Unit is not null,
                [.. drawing.Entities.Select(e => e.Layer).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)],
                trace.Outlines.Regions,
                OpenLines.Of(trace, request.Layer, request.Gap)),
            [.. trace.Findings.Where(f => f.Kind != GeometryFindings.OutlinesOpen && f.Kind != DrawingReader.UnitMissing)]);
    }

    /// <summary>The file's path where its name stays within a folder, links followed; null where it does not.</summary>
    internal static string? Within(string folder, string name)
    {
        try
        {
            // A backslash is a letter of a name on some systems and leads away on others: no drawing needs one.
            string[] parts = name.Split('/');
            if (name.Contains('\\', StringComparison.Ordinal) || name.Contains(':', StringComparison.Ordinal) || name.Contains('\0', StringComparison.Ordinal)
                || Path.IsPathRooted(name) || Array.Exists(parts, p => p is ".." or "" or "."))
            {
                return null;
            }

            string at = Path.GetFullPath(folder);
            foreach (string part in parts)
            {
                at = Path.Combine(at, part);
                FileSystemInfo entry = Directory.Exists(at) ? new DirectoryInfo(at) : new FileInfo(at);
                if (entry.LinkTarget is not null)
                {
                    string? target = entry.ResolveLinkTarget(true)?.FullName;
                    if (target is null || !IsBelow(Real(Path.GetFullPath(folder)), Real(target)))
                    {
                        return null;
                    }
                }
            }

            return at;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return null;
        }
    }

    private static bool IsBelow(string folder, string path) => path.StartsWith(Path.TrimEndingDirectorySeparator(folder) + Path.DirectorySeparatorChar, StringComparison.Ordinal);

    // Where a path really leads: every link on the way followed.
    private static string Real(string path)
    {
        string root = Path.GetPathRoot(path) ?? "";
        string at = root;
        foreach (string part in path[root.Length..].Split(Path.DirectorySeparatorChar, StringSplitOptions.RemoveEmptyEntries))
        {
            at = Path.Combine(at, part);
            FileSystemInfo entry = Directory.Exists(at) ? new DirectoryInfo(at) : new FileInfo(at);
            at = entry.LinkTarget is null ? at : entry.ResolveLinkTarget(true)?.FullName ?? at;
        }

        return at;
    }
}
