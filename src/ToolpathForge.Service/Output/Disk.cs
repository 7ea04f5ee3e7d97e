using System.Runtime.InteropServices;

namespace ToolpathForge.Service.Output;

/// <summary>
/// The handful of things that writing an output folder does to a disk, one method each. Every one announces itself first, so that a test can break
/// off before any of them and look at what a killed process would leave behind. Nothing here deletes a folder that is not empty.
/// </summary>
/// <param name="before">Told what is about to be done, and to which path.</param>
/// <param name="forces">Whether to wait until the medium has what was written; only a test that no power cut can spoil does without.</param>
internal sealed class Disk(Action<string, string>? before = null, bool forces = true)
{
    /// <summary>The disk as it is.</summary>
    internal static Disk Real { get; } = new();

    private void Step(string what, string path) => before?.Invoke(what, path);

    internal void CreateFolder(string path)
    {
        Step("create folder", path);
        Directory.CreateDirectory(path);
    }

    /// <summary>Writes a new file and forces it to the medium. It may be broken off when the file is empty, half written, or whole but not forced.</summary>
    internal void Write(string path, ReadOnlySpan<byte> bytes)
    {
        Step("create", path);
        using var file = new FileStream(path, FileMode.CreateNew, FileAccess.Write, FileShare.None, bufferSize: 0);
        Step("write", path);
        int half = bytes.Length / 2;
        file.Write(bytes[..half]);
        Step("write on", path);
        file.Write(bytes[half..]);
        Step("force", path);
        file.Flush(flushToDisk: forces);
    }

    internal void Rename(string from, string to)
    {
        Step("rename", from);
        Directory.Move(from, to);
    }

    internal void DeleteFile(string path)
    {
        Step("delete", path);
        File.Delete(path);
    }

    /// <summary>Deletes an empty folder; a folder that holds anything is an error, never emptied.</summary>
    internal void DeleteFolder(string path)
    {
        Step("delete folder", path);
        Directory.Delete(path, recursive: false);
    }

    internal void MoveFile(string from, string to)
    {
        Step("move", from);
        File.Move(from, to);
    }

    /// <summary>Opens a file that no other process may open meanwhile, making it where needed; null when another has it open.</summary>
    internal FileStream? OpenAlone(string path)
    {
        Step("lock", path);
        try
        {
            // Windows will not delete a file that is open, unless it was asked to when it was opened.
            FileOptions options = OperatingSystem.IsWindows() ? FileOptions.DeleteOnClose : FileOptions.None;
            return new FileStream(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None, bufferSize: 1, options);
        }
        catch (IOException e) when (IsHeldByAnother(e))
        {
            return null;
        }
    }

    internal byte[] Read(string path)
    {
        Step("read", path);
        return File.ReadAllBytes(path);
    }

    /// <summary>What lies in a folder, by name.</summary>
    internal FileSystemInfo[] Entries(string folder)
    {
        Step("list", folder);
        FileSystemInfo[] entries = new DirectoryInfo(folder).GetFileSystemInfos();
        Array.Sort(entries, (a, b) => string.CompareOrdinal(a.Name, b.Name));
        return entries;
    }

    /// <summary>Gives a new folder the permissions of the one it replaces.</summary>
    internal void CopyMode(string from, string to)
    {
        if (!OperatingSystem.IsWindows())
        {
            Step("permissions", to);
            File.SetUnixFileMode(to, File.GetUnixFileMode(from));
        }
    }

    /// <summary>
    /// Forces a folder's list of names to the medium, without which a rename may be lost when the power goes. Windows does so by itself; a file system
    /// that cannot is let be, because the order of the steps already guards against everything short of a power cut.
    /// </summary>
    internal void ForceFolder(string path)
    {
        Step("force folder", path);
        if (OperatingSystem.IsWindows() || !forces)
        {
            return;
        }

        int handle = Open(path, 0);
        if (handle >= 0)
        {
            _ = Force(handle);
            _ = Close(handle);
        }
    }

    // EAGAIN of Linux and of the BSD family, and the sharing violation of Windows: all mean that another process has the file.
    private static bool IsHeldByAnother(IOException e) =>
        OperatingSystem.IsWindows() ? (e.HResult & 0xffff) == 32 : e.HResult == (OperatingSystem.IsLinux() ? 11 : 35);

    [DllImport("libc", EntryPoint = "open")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Open([MarshalAs(UnmanagedType.LPUTF8Str)] string path, int flags);

    [DllImport("libc", EntryPoint = "fsync")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Force(int handle);

    [DllImport("libc", EntryPoint = "close")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Close(int handle);
}
