namespace ToolpathForge.Service.Files;

/// <summary>Why the system refused, in a few words that a person can act on.</summary>
internal static class Refusal
{
    /// <summary>The reason, to stand at the end of a sentence, without a full stop.</summary>
    internal static string Of(Exception refused) => refused switch
    {
        UnauthorizedAccessException => "the system does not allow it",
        PathTooLongException => "its name is too long",
        DirectoryNotFoundException or FileNotFoundException => "nothing can be made at that place",
        ArgumentException or NotSupportedException => "that is no name for one",
        IOException { HResult: var code } when IsFull(code) => "the disk is full",
        _ => refused.Message.TrimEnd('.'),
    };

    // ENOSPC and EDQUOT of Unix (the quota's number differs between Linux and the BSD family), and the two of Windows.
    private static bool IsFull(int code) => OperatingSystem.IsWindows() ? (code & 0xffff) is 0x27 or 0x70 : code is 28 or 122 or 69;
}
