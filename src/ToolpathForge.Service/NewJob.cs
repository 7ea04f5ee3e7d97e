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
        Finding? fault = NewFile.Write(path, Starter(unit));
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
}
