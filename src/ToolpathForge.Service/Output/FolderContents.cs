using System.Collections.Immutable;
using ToolpathForge.Findings;

namespace ToolpathForge.Service.Output;

/// <summary>Tells our own files in a folder from everybody else's, and removes ours.</summary>
/// <param name="disk">The disk.</param>
internal sealed class FolderContents(Disk disk)
{
    /// <summary>Beyond this many findings about one folder, more names help nobody.</summary>
    private const int MostNamed = 5;

    /// <summary>Files that a file manager drops into any folder it shows. They are nobody's work: carried along, never in the way.</summary>
    private static readonly ImmutableArray<string> ViewFiles = [".DS_Store", "Thumbs.db", "desktop.ini"];

    /// <summary>
    /// What stands in the way of replacing a folder: files that we did not write, and files of ours that were changed since. A file of ours that is
    /// missing is no hindrance: the person has taken it away.
    /// </summary>
    /// <param name="folder">An existing folder.</param>
    /// <param name="shown">The folder as findings name it: as the person wrote it.</param>
    /// <param name="broken">True for what a broken-off run left: its files may be cut short, and so may its manifest.</param>
    internal ImmutableArray<Finding> Inspect(string folder, string shown, bool broken = false)
    {
        FileSystemInfo[] entries = disk.Entries(folder);
        FileSystemInfo? list = Array.Find(entries, e => e.Name == Manifest.FileName && IsPlainFile(e));
        Manifest? manifest = list is null ? null : Manifest.Read(disk.Read(list.FullName));
        bool alone = broken && manifest is null && entries.Length == 1;
        var findings = ImmutableArray.CreateBuilder<Finding>();
        Walk("", entries);
        return findings.ToImmutable();

        void Walk(string prefix, FileSystemInfo[] inside)
        {
            foreach (FileSystemInfo entry in inside)
            {
                if (findings.Count == MostNamed)
                {
                    return;
                }

                string name = prefix + entry.Name;
                if (prefix.Length == 0 && (name == Manifest.FileName ? (manifest is not null || alone) && IsPlainFile(entry) : IsViewFile(entry)))
                {
                    continue;
                }

                if (entry is DirectoryInfo && entry.LinkTarget is null && manifest?.Files.Any(f => f.Name.StartsWith(name + "/", StringComparison.Ordinal)) == true)
                {
                    Walk(name + "/", disk.Entries(entry.FullName));
                    continue;
                }

                ManifestEntry known = manifest?.Files.FirstOrDefault(f => f.Name == name) ?? default;
                if (known.Name is null || !IsPlainFile(entry))
                {
                    findings.Add(Told(OutputFindings.ForeignFile, shown, entry, name));
                }
                else if (!broken && (((FileInfo)entry).Length != known.Bytes || Manifest.Hash(disk.Read(entry.FullName)) != known.Sha256))
                {
                    findings.Add(Told(OutputFindings.EditedFile, shown, entry, name));
                }
            }
        }
    }

    /// <summary>Whose output a folder holds, by its manifest; null where it does not say.</summary>
    /// <param name="folder">An existing folder.</param>
    internal OutputOwner? OwnerOf(string folder)
    {
        string list = Path.Combine(folder, Manifest.FileName);
        return File.Exists(list) ? Manifest.Read(disk.Read(list))?.Owner : null;
    }

    /// <summary>
    /// Removes our files, the manifest last, then the folder. Anything else makes the last step fail rather than disappear. View files move to the
    /// folder that takes this one's place.
    /// </summary>
    /// <param name="folder">A folder that <see cref="Inspect"/> found nothing in.</param>
    /// <param name="heir">The folder that has taken its place; null when none has.</param>
    internal void Remove(string folder, string? heir)
    {
        string list = Path.Combine(folder, Manifest.FileName);
        Manifest? manifest = File.Exists(list) ? Manifest.Read(disk.Read(list)) : null;
        var folders = new SortedSet<string>(StringComparer.Ordinal);
        foreach (ManifestEntry file in manifest?.Files ?? [])
        {
            string path = Path.Combine(folder, file.Name);
            if (File.Exists(path))
            {
                disk.DeleteFile(path);
            }

            for (int slash = file.Name.LastIndexOf('/'); slash > 0; slash = file.Name.LastIndexOf('/', slash - 1))
            {
                folders.Add(file.Name[..slash]);
            }
        }

        foreach (string inner in folders.Reverse().Select(f => Path.Combine(folder, f)).Where(Directory.Exists))
        {
            disk.DeleteFolder(inner);
        }

        foreach (string view in ViewFiles)
        {
            string from = Path.Combine(folder, view);
            if (File.Exists(from))
            {
                if (heir is not null && !File.Exists(Path.Combine(heir, view)))
                {
                    disk.MoveFile(from, Path.Combine(heir, view));
                }
                else
                {
                    disk.DeleteFile(from);
                }
            }
        }

        if (File.Exists(list))
        {
            disk.DeleteFile(list);
        }

        disk.DeleteFolder(folder);
    }

    private static Finding Told(FindingKind kind, string shown, FileSystemInfo entry, string name) => Finding.Of(
        kind,
        Place.InFile(Path.Combine(shown, name), 0, 0),
        Arg.Of("folder", shown),
        Arg.Of("name", entry is DirectoryInfo ? name + "/" : name));

    private static bool IsViewFile(FileSystemInfo entry) => ViewFiles.Contains(entry.Name, StringComparer.Ordinal) && IsPlainFile(entry);

    private static bool IsPlainFile(FileSystemInfo entry) => entry is FileInfo && entry.LinkTarget is null;
}
