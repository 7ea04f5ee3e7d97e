using System.Collections.Immutable;
using ToolpathForge.Catalogue;
using ToolpathForge.Exchange.Reading;
using ToolpathForge.Findings;
using ToolpathForge.Jobs;

namespace ToolpathForge.Service.Files;

/// <summary>A job as read, with the catalogue files that it names.</summary>
/// <param name="Job">The job; null when it cannot be used.</param>
/// <param name="Findings">What is wrong or worth knowing, in the order of the file.</param>
/// <param name="CatalogueFiles">Those that could be read, as the job names them, with their text.</param>
internal sealed record Loaded(Job? Job, ImmutableArray<Finding> Findings, ImmutableArray<(string Name, string Text)> CatalogueFiles)
{
    /// <summary>The shipped catalogues, with the job's own rows on top.</summary>
    internal Catalogues Catalogues
    {
        get
        {
            // What is wrong with them has been told when the job was read.
            var told = new List<Finding>();
            return CatalogueFiles.Aggregate(Catalogues.Shipped, (rows, file) => rows.With(file.Text, file.Name, told));
        }
    }
}

/// <summary>Reads a job and the catalogue files that it names.</summary>
internal static class JobFile
{
    /// <summary>Reads a job; catalogue files are looked for from the job's own folder.</summary>
    /// <param name="path">The job's file, as the person named it.</param>
    /// <param name="cancel">Asked between files.</param>
    /// <exception cref="OperationCanceledException">Cancelled.</exception>
    internal static Loaded Load(string path, CancellationToken cancel)
    {
        cancel.ThrowIfCancellationRequested();
        (string? text, Finding? fault) = TextFile.Read(path, path, TextFile.LargestJob);
        if (text is null)
        {
            return new Loaded(null, [fault!], []);
        }

        return Read(text, path, Path.GetDirectoryName(Path.GetFullPath(path)) ?? ".", null, cancel);
    }

    /// <summary>Reads a job whose text is at hand.</summary>
    /// <param name="text">The text.</param>
    /// <param name="path">Its file as the person named it, for findings.</param>
    /// <param name="folder">The folder from which catalogues and drawings are looked for; null where nothing may be read.</param>
    /// <param name="drawings">Drawings that came with the job, by name without @, in mm; null for none.</param>
    /// <param name="cancel">Asked between files.</param>
    /// <param name="confined">Whether catalogue files, like drawings, must lie in the folder or below it.</param>
    internal static Loaded Read(string text, string path, string? folder, IReadOnlyDictionary<string, ReadDrawing>? drawings, CancellationToken cancel, bool confined = false)
    {
        var files = ImmutableArray.CreateBuilder<(string Name, string Text)>();
        var more = ImmutableArray.CreateBuilder<Finding>();
        JobReading reading = JobReader.Read(text, path, name =>
        {
            cancel.ThrowIfCancellationRequested();
            if (folder is null || (confined ? JobDrawings.Within(folder, name) : Path.Combine(folder, name)) is not { } catalogue)
            {
                return null;
            }

            (string? rows, Finding? unreadable) = TextFile.Read(catalogue, name, TextFile.LargestJob);

            if (rows is not null)
            {
                files.Add((name, rows));
            }

            // That a file is missing is told at the line that names it; why one that is there cannot be read is told beside that.
            if (unreadable is not null && unreadable.Kind != FileFindings.Missing)
            {
                more.Add(unreadable);
            }

            return rows;
        }, new JobDrawings(folder, drawings, cancel));

        // Findings name the file as the person did; what is written names it without folders, so that it does not depend on where the command was typed.
        Job? job = more.Count == 0 && reading.Job is { } read ? read with { FileName = Path.GetFileName(path) } : null;
        return new Loaded(job, [.. reading.Findings, .. more], files.ToImmutable());
    }
}
