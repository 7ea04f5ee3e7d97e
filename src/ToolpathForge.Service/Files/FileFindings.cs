using ToolpathForge.Findings;

namespace ToolpathForge.Service.Files;

/// <summary>What can be wrong with a file that is to be read or written.</summary>
internal static class FileFindings
{
    /// <summary>There is no such file.</summary>
    internal static readonly FindingKind Missing = new(
        "file-missing",
        Severity.Stop,
        "There is no such file.",
        "Look at the spelling and at the folder. {near}")
    { Unusable = true };

    /// <summary>The name leads to a folder.</summary>
    internal static readonly FindingKind IsFolder = new(
        "file-is-folder",
        Severity.Stop,
        "This is a folder, not a file.",
        "Name a file in it.")
    { Unusable = true };

    /// <summary>The system does not let us read it.</summary>
    internal static readonly FindingKind Unreadable = new(
        "file-unreadable",
        Severity.Stop,
        "The file cannot be read: {reason}.",
        "Look at the file's permissions, and whether another program holds it.")
    { Unusable = true };

    /// <summary>It is far larger than anything that a person writes.</summary>
    internal static readonly FindingKind TooLarge = new(
        "file-over-size",
        Severity.Stop,
        "The file is larger than {megabytes} MB.",
        "Check that it is the file you mean.")
    { Unusable = true };

    /// <summary>It is not text in UTF-8.</summary>
    internal static readonly FindingKind NotText = new(
        "file-not-utf-8",
        Severity.Stop,
        "The file is not text in UTF-8.",
        "Save it again as UTF-8 in your editor, or check that it is the file you mean.")
    { Unusable = true };

    /// <summary>A starter job never takes the place of a file.</summary>
    internal static readonly FindingKind Exists = new(
        "file-exists",
        Severity.Stop,
        "The file is there already; it has been left alone.",
        "Choose another name, or move that file away first.")
    { Unusable = true };

    /// <summary>The system does not let us write it.</summary>
    internal static readonly FindingKind CannotWrite = new(
        "file-cannot-write",
        Severity.Stop,
        "The file cannot be written: {reason}.",
        "Look at the folder's permissions and at the free space on the disk.")
    { Unusable = true };

    /// <summary>The folder that a new file should go to is not there.</summary>
    internal static readonly FindingKind NoFolder = new(
        "file-no-folder",
        Severity.Stop,
        "The folder for this file is not there.",
        "Make the folder first, or look at the spelling.")
    { Unusable = true };
}
