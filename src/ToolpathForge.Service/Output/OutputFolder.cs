using System.Collections.Immutable;
using ToolpathForge.Findings;
using ToolpathForge.Service.Files;

namespace ToolpathForge.Service.Output;

/// <summary>
/// Replaces an output folder whole or not at all.
/// <para>
/// The new files are written to a folder beside it and forced to the medium; then the old folder is renamed aside, the new one takes its name, and the old
/// one is removed. Killed at any step, the disk holds the old folder, the new one, or none with the old one beside it, which the next run puts back.
/// </para>
/// <para>
/// Only a folder that is absent, empty, or holds nothing but what its manifest lists is replaced. A file that is not ours, or that was changed since we
/// wrote it, stops the run before anything is touched, and is looked for again after the old folder has been set aside.
/// </para>
/// </summary>
internal sealed class OutputFolder
{
    private readonly string shown;
    private readonly string target;
    private readonly string fresh;
    private readonly string aside;
    private readonly string key;
    private readonly string parent;
    private readonly Disk disk;
    private readonly FolderContents contents;

    private readonly OutputOwner? owner;

    private OutputFolder(string shown, string target, string parent, OutputOwner? owner, Disk disk)
    {
        this.owner = owner;
        this.shown = shown;
        this.target = target;
        this.parent = parent;
        this.disk = disk;
        string beside = Path.Combine(parent, $".{Path.GetFileName(target)}.toolpathforge");
        fresh = beside + "-new";
        aside = beside + "-old";
        key = beside + "-lock";
        contents = new FolderContents(disk);
    }

    /// <summary>Puts back what a killed run set aside, and says early whether the folder may be written. It makes and changes nothing else.</summary>
    /// <param name="path">The folder as the person wrote it.</param>
    /// <param name="owner">Whose output is to go there; null for whoever's.</param>
    /// <param name="disk">The disk.</param>
    internal static ImmutableArray<Finding> Prepare(string path, OutputOwner? owner, Disk disk) => Guard(path, owner, disk, folder =>
    {
        if (!Directory.Exists(folder.parent))
        {
            return [];
        }

        bool leftovers = Directory.Exists(folder.fresh) || Directory.Exists(folder.aside);
        return leftovers ? folder.Alone(folder.RecoverAndInspect) : folder.InspectTarget();
    }).Findings;

    /// <summary>Writes the files, and the manifest that lists them, in place of what the folder held.</summary>
    /// <param name="path">The folder as the person wrote it; its parents are made.</param>
    /// <param name="files">The files; their names differ even where a system ignores case.</param>
    /// <param name="owner">Whose output it is; null for whoever's.</param>
    /// <param name="disk">The disk.</param>
    /// <param name="cancel">Heeded until the old folder is set aside.</param>
    /// <exception cref="ArgumentException">A name leaves the folder or occurs twice.</exception>
    /// <exception cref="OperationCanceledException">Cancelled; everything is as it was.</exception>
    internal static OutputResult Write(string path, ImmutableArray<OutputFile> files, OutputOwner? owner, Disk disk, CancellationToken cancel)
    {
        if (files.FirstOrDefault(f => !Manifest.IsName(f.Name)) is { } bad)
        {
            throw new ArgumentException($"'{bad.Name}' is no name for an output file.", nameof(files));
        }

        if (files.Select(f => f.Name).Distinct(StringComparer.OrdinalIgnoreCase).Count() != files.Length)
        {
            throw new ArgumentException("Two output files have the same name.", nameof(files));
        }

        var manifest = Manifest.Of(files, owner);
        (string folder, ImmutableArray<Finding> findings) = Guard(path, owner, disk, folder =>
        {
            cancel.ThrowIfCancellationRequested();
            if (!Directory.Exists(folder.parent))
            {
                disk.CreateFolder(folder.parent);
            }

            return folder.Alone(() =>
            {
                ImmutableArray<Finding> hindrances = folder.RecoverAndInspect();
                return hindrances.IsEmpty ? folder.Replace(manifest, files, cancel) : hindrances;
            });
        });
        var result = new OutputResult(folder, manifest.Files, findings);
        return result.Written ? result : result with { Files = [] };
    }

    /// <summary>Finds the folder that a path means, follows links, and turns what the system refuses into findings.</summary>
    private static (string Folder, ImmutableArray<Finding> Findings) Guard(string path, OutputOwner? owner, Disk disk, Func<OutputFolder, ImmutableArray<Finding>> act)
    {
        Finding Refused(FindingKind kind, string reason) => Finding.Of(kind, Place.None, Arg.Of("folder", path), Arg.Of("reason", reason));
        try
        {
            string full = Path.TrimEndingDirectorySeparator(Path.GetFullPath(path));
            if (new DirectoryInfo(full).LinkTarget is not null)
            {
                FileSystemInfo? end = Directory.ResolveLinkTarget(full, returnFinalTarget: true);
                if (end is not { Exists: true })
                {
                    return (full, [Refused(OutputFindings.UnusablePath, "it is a link that leads nowhere")]);
                }

                full = Path.TrimEndingDirectorySeparator(end.FullName);
            }

            if (Path.GetDirectoryName(full) is not { } parent || Path.GetFileName(full).Length == 0)
            {
                return (full, [Refused(OutputFindings.UnusablePath, "it is the root of a disk")]);
            }

            return File.Exists(full)
                ? (full, [Refused(OutputFindings.NotAFolder, "")])
                : (full, act(new OutputFolder(path, full, parent, owner, disk)));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return (path, [Refused(OutputFindings.CannotWrite, Refusal.Of(e))]);
        }
    }

    private ImmutableArray<Finding> Alone(Func<ImmutableArray<Finding>> act)
    {
        using FolderLock? held = FolderLock.Take(key, disk);
        if (held is null)
        {
            return [Told(OutputFindings.Busy, shown)];
        }

        try
        {
            return act();
        }
        finally
        {
            held.Remove(disk);
        }
    }

    private ImmutableArray<Finding> RecoverAndInspect()
    {
        if (Directory.Exists(fresh))
        {
            ImmutableArray<Finding> foreign = contents.Inspect(fresh, fresh, broken: true);
            if (!foreign.IsEmpty)
            {
                return foreign;
            }

            contents.Remove(fresh, heir: null);
        }

        if (Directory.Exists(aside))
        {
            if (Directory.Exists(target) && disk.Entries(target).Length == 0)
            {
                disk.DeleteFolder(target);
            }

            if (Directory.Exists(target))
            {
                ImmutableArray<Finding> foreign = contents.Inspect(aside, aside);
                if (!foreign.IsEmpty)
                {
                    return foreign;
                }

                contents.Remove(aside, target);
            }
            else
            {
                disk.Rename(aside, target);
            }
        }

        return InspectTarget();
    }

    private ImmutableArray<Finding> InspectTarget()
    {
        if (!Directory.Exists(target))
        {
            return [];
        }

        ImmutableArray<Finding> hindrances = contents.Inspect(target, shown);
        if (hindrances.IsEmpty && owner is not null && contents.OwnerOf(target) is { } other && !owner.MayReplace(other))
        {
            return [Finding.Of(OutputFindings.OtherOutput, Place.None, Arg.Of("folder", shown), Arg.Of("kind", other.Made), Arg.Of("file", other.Job))];
        }

        return hindrances.IsEmpty && IsOrHolds(target, Environment.CurrentDirectory) ? [Told(OutputFindings.CurrentFolder, shown)] : hindrances;
    }

    private ImmutableArray<Finding> Replace(Manifest manifest, ImmutableArray<OutputFile> files, CancellationToken cancel)
    {
        try
        {
            Stage(manifest, files, cancel);
            if (Directory.Exists(target))
            {
                disk.CopyMode(target, fresh);
                disk.Rename(target, aside);
                disk.ForceFolder(parent);

                // Someone may have saved a file into the folder since we looked.
                ImmutableArray<Finding> late = contents.Inspect(aside, shown);
                if (!late.IsEmpty)
                {
                    BackOut();
                    return late;
                }
            }

            disk.Rename(fresh, target);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or OperationCanceledException)
        {
            BackOut();
            throw;
        }

        return RemoveOld();
    }

    private void Stage(Manifest manifest, ImmutableArray<OutputFile> files, CancellationToken cancel)
    {
        disk.CreateFolder(fresh);

        // The manifest comes first: whatever a broken-off run leaves is then known as ours and can be cleared away.
        disk.Write(Path.Combine(fresh, Manifest.FileName), manifest.ToBytes());
        foreach (OutputFile file in files.OrderBy(f => f.Name, StringComparer.Ordinal))
        {
            cancel.ThrowIfCancellationRequested();
            string path = Path.Combine(fresh, file.Name);
            string folder = Path.GetDirectoryName(path)!;
            if (!Directory.Exists(folder))
            {
                disk.CreateFolder(folder);
            }

            disk.Write(path, file.Bytes.Span);
        }

        foreach (string folder in files.Select(f => Path.GetDirectoryName(Path.Combine(fresh, f.Name))!).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal))
        {
            disk.ForceFolder(folder);
        }

        cancel.ThrowIfCancellationRequested();
    }

    /// <summary>Undoes a replacement that did not come about. What cannot be undone now is what the next run finds and undoes.</summary>
    private void BackOut()
    {
        try
        {
            if (Directory.Exists(aside) && !Directory.Exists(target))
            {
                disk.Rename(aside, target);
            }

            if (Directory.Exists(fresh))
            {
                contents.Remove(fresh, heir: null);
            }
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // The first fault is the one to tell.
        }
    }

    private ImmutableArray<Finding> RemoveOld()
    {
        try
        {
            disk.ForceFolder(parent);
            if (Directory.Exists(aside))
            {
                contents.Remove(aside, target);
            }

            return [];
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return [Told(OutputFindings.OldRemains, aside)];
        }
    }

    private static bool IsOrHolds(string folder, string inner)
    {
        string path = Path.TrimEndingDirectorySeparator(Path.GetFullPath(inner));
        return path == folder || path.StartsWith(folder + Path.DirectorySeparatorChar, StringComparison.Ordinal);
    }

    private static Finding Told(FindingKind kind, string folder) => Finding.Of(kind, Place.None, Arg.Of("folder", folder));
}
