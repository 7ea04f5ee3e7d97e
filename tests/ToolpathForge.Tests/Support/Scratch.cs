namespace ToolpathForge.Tests.Support;

/// <summary>A folder of its own for one test, removed afterwards.</summary>
internal sealed class Scratch : IDisposable
{
    internal string Root { get; } = Directory.CreateTempSubdirectory("toolpathforge-").FullName;

    internal string Path(params string[] parts) => System.IO.Path.Combine([Root, .. parts]);

    internal string Write(string name, string text)
    {
        string path = Path(name);
        Directory.CreateDirectory(System.IO.Path.GetDirectoryName(path)!);
        File.WriteAllText(path, text);
        return path;
    }

    /// <summary>Every file below a folder with its text, folders with null, so that two states can be compared.</summary>
    internal static SortedDictionary<string, string?> Snapshot(string folder)
    {
        var found = new SortedDictionary<string, string?>(StringComparer.Ordinal);
        foreach (string path in Directory.EnumerateFileSystemEntries(folder, "*", SearchOption.AllDirectories))
        {
            found[System.IO.Path.GetRelativePath(folder, path)] = Directory.Exists(path) ? null : File.ReadAllText(path);
        }

        return found;
    }

    /// <summary>The names directly in a folder, in order, with spaces between.</summary>
    internal static string Names(string folder) =>
        string.Join(' ', Directory.EnumerateFileSystemEntries(folder).Select(System.IO.Path.GetFileName).Order(StringComparer.Ordinal));

    public void Dispose()
    {
        try
        {
            Directory.Delete(Root, recursive: true);
        }
        catch (IOException)
        {
            // Left to the system's own cleaning of temporary files.
        }
    }
}
