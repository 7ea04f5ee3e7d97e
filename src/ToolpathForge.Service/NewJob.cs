using System.Collections.Immutable;
using ToolpathForge.Findings;
using ToolpathForge.Measures;
using ToolpathForge.Service.Files;
using ToolpathForge.Service.Telling;

namespace ToolpathForge.Service;

/// <summary>Writes a starter job.</summary>
public static class NewJob
{
    /// <summary>Writes a commented starter job to a new file. A file that is there already is left alone.</summary>
    /// <param name="path">The file.</param>
    /// <param name="unit"><c>in</c> or <c>mm</c>.</param>
    /// <param name="cancel">Ends the work.</param>
    /// <exception cref="OperationCanceledException">Cancelled; nothing was written.</exception>
    public static Report Run(string path, string unit, CancellationToken cancel)
    {
        cancel.ThrowIfCancellationRequested();
        Finding? fault = Write(path, Starter(unit));
        var teller = new Teller(LengthUnit.Inch);
        ImmutableArray<Finding> findings = fault is null ? [] : [fault];
        return new Report(
            Teller.ExitCode(findings),
            teller.Remarks(findings),
            fault is null ? [Section.Of($"Written: {path}", $"Fill in your own sizes, then run: toolpathforge check {path}")] : [],
            null);
    }

    /// <summary>The text of the starter job.</summary>
    internal static string Starter(string unit)
    {
        using Stream stream = typeof(NewJob).Assembly.GetManifestResourceStream($"starter-{unit}.toml")
            ?? throw new ArgumentException($"There is no starter job in '{unit}'.", nameof(unit));
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }

    private static Finding? Write(string path, string text)
    {
        Finding Told(FindingKind kind, params ImmutableArray<Arg> more) => Finding.Of(kind, Place.InFile(path, 0, 0), more);
        try
        {
            if (Directory.Exists(path))
            {
                return Told(FileFindings.IsFolder);
            }

            // The new file appears whole: it is written under another name and then given its own, which the system refuses where one exists.
            string full = Path.GetFullPath(path);
            string draft = Path.Combine(Path.GetDirectoryName(full)!, $".{Path.GetFileName(full)}.toolpathforge-new");
            if (File.Exists(full))
            {
                return Told(FileFindings.Exists);
            }

            File.WriteAllText(draft, text);
            try
            {
                File.Move(draft, full, overwrite: false);
                return null;
            }
            catch (IOException) when (File.Exists(full))
            {
                File.Delete(draft);
                return Told(FileFindings.Exists);
            }
        }
        catch (DirectoryNotFoundException)
        {
            return Told(FileFindings.NoFolder);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return Told(FileFindings.CannotWrite, Arg.Of("reason", Refusal.Of(e)));
        }
    }
}
