using ToolpathForge.Findings;

namespace ToolpathForge.Service.Output;

/// <summary>What can be wrong with the folder that the output goes to.</summary>
internal static class OutputFindings
{
    /// <summary>Something in the folder was not written by this program.</summary>
    internal static readonly FindingKind ForeignFile = new(
        "output-foreign-file",
        Severity.Stop,
        "The folder {folder} holds {name}, which was not written here; nothing in the folder has been touched.",
        "Name another folder, or move that file out of it.")
    { Unusable = true };

    /// <summary>What lies in the folder is of another job, or of another kind.</summary>
    internal static readonly FindingKind OtherOutput = new(
        "output-of-other",
        Severity.Stop,
        "The folder {folder} holds the {kind} of {file}; nothing in it has been touched.",
        "Name another folder for this; the command line replaces it when --replace is added.")
    { Unusable = true };

    /// <summary>A file of ours was changed by hand since.</summary>
    internal static readonly FindingKind EditedFile = new(
        "output-edited-file",
        Severity.Stop,
        "In the folder {folder}, {name} has been changed since it was written; nothing in the folder has been touched.",
        "Move that file elsewhere to keep the change, or delete it to let it be written afresh.")
    { Unusable = true };

    /// <summary>There is a file where the folder should be.</summary>
    internal static readonly FindingKind NotAFolder = new(
        "output-not-a-folder",
        Severity.Stop,
        "{folder} is a file, not a folder.",
        "Name another folder with --out.")
    { Unusable = true };

    /// <summary>The path is the root of a disk, or a link that leads nowhere.</summary>
    internal static readonly FindingKind UnusablePath = new(
        "output-unusable-path",
        Severity.Stop,
        "{folder} cannot be an output folder: {reason}.",
        "Name another folder with --out.")
    { Unusable = true };

    /// <summary>The terminal stands in the folder that would be replaced.</summary>
    internal static readonly FindingKind CurrentFolder = new(
        "output-current-folder",
        Severity.Stop,
        "{folder} is the folder you are in; it cannot be replaced from inside.",
        "Go up one folder and run the command again, or name another folder with --out.")
    { Unusable = true };

    /// <summary>Another run is writing to the same folder.</summary>
    internal static readonly FindingKind Busy = new(
        "output-busy",
        Severity.Stop,
        "Another run is writing to {folder} at this moment.",
        "Wait for it to end, then run the command again.")
    { Unusable = true };

    /// <summary>The system would not let us read, write or rename.</summary>
    internal static readonly FindingKind CannotWrite = new(
        "output-cannot-write",
        Severity.Stop,
        "The folder {folder} cannot be written: {reason}.",
        "Look at the folder's permissions and at the free space on the disk, or name another folder with --out.")
    { Unusable = true };

    /// <summary>The new files are in place, but the old ones could not all be removed.</summary>
    internal static readonly FindingKind OldRemains = new(
        "output-old-remains",
        Severity.Note,
        "The new files are in place, but the earlier ones still lie in {folder}.",
        "Delete that folder when nothing in it is needed; the next run tries again.");
}
