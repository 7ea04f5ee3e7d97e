namespace ToolpathForge.Service.Output;

/// <summary>
/// Keeps two runs from replacing the same folder at the same moment. The lock is the system's own on an open file beside the folder, so it ends with the
/// process however that ends; the file itself is removed when the work is done.
/// </summary>
internal sealed class FolderLock : IDisposable
{
    private readonly FileStream file;

    private FolderLock(FileStream file) => this.file = file;

    /// <summary>Takes the lock; null when another run holds it.</summary>
    /// <param name="path">The lock's file, in an existing folder.</param>
    /// <param name="disk">The disk.</param>
    /// <exception cref="IOException">The file cannot be made.</exception>
    internal static FolderLock? Take(string path, Disk disk)
    {
        FileStream? opened = disk.OpenAlone(path);
        if (opened is null)
        {
            return null;
        }

        // The holder before us removes the file's name while we may already have opened it; then we would hold a lock on a file that nobody else can see.
        // A mark through the handle shows whether the name still leads to the same file.
        try
        {
            var mark = new DateTime(2000, 1, 1, 0, 0, 0, DateTimeKind.Utc).AddSeconds(Random.Shared.Next());
            File.SetLastWriteTimeUtc(opened.SafeFileHandle, mark);
            if (File.GetLastWriteTimeUtc(path) == mark)
            {
                return new FolderLock(opened);
            }
        }
        catch
        {
            opened.Dispose();
            throw;
        }

        opened.Dispose();
        return null;
    }

    /// <summary>Removes the lock's file while still holding it, so that no one can take it in between.</summary>
    internal void Remove(Disk disk)
    {
        try
        {
            if (!OperatingSystem.IsWindows())
            {
                disk.DeleteFile(file.Name);
            }
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // An empty file stays behind; the work itself is done, and the next run takes the file over.
        }
    }

    public void Dispose() => file.Dispose();
}
