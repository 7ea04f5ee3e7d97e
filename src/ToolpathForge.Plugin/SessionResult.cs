using ToolpathForge.Plugin.Contract;

namespace ToolpathForge.Plugin;

/// <summary>How a wish ended.</summary>
public enum SessionEnd
{
    /// <summary>All that was wished is done.</summary>
    Done,

    /// <summary>Nothing was selected.</summary>
    NothingSelected,

    /// <summary>A finding stops the job, or the writing of its programs.</summary>
    Stopped,

    /// <summary>The core or the host failed; the person has been told.</summary>
    Failed,

    /// <summary>Cancelled.</summary>
    Cancelled,
}

/// <summary>What is wished of the selection.</summary>
public sealed class SessionWish
{
    /// <summary>The text of a job that names the selection as the drawing <c>@selection</c>; null to have the person asked for what <see cref="SelectionJob"/> needs.</summary>
    public string? Job { get; set; }

    /// <summary>The folder that programs are written into, from the working folder; null to write none.</summary>
    public string? Folder { get; set; }

    /// <summary>Whether toolpaths are drawn.</summary>
    public bool Preview { get; set; } = true;

    /// <summary>Where in the drawing the work zero of the first program is put, host's unit; null to show it to the right of what is selected. Further programs follow to the right.</summary>
    public double? X { get; set; }

    /// <summary>Where in the drawing the work zero of the programs is put, host's unit; null to show them level with the foot of what is selected.</summary>
    public double? Y { get; set; }
}

/// <summary>What came of a wish.</summary>
public sealed class SessionResult
{
    internal SessionResult(SessionEnd end) => End = end;

    /// <summary>How it ended.</summary>
    public SessionEnd End { get; internal set; }

    /// <summary>All that was found.</summary>
    public IReadOnlyList<WireFinding> Findings { get; internal set; } = Array.Empty<WireFinding>();

    /// <summary>The programs, proven; empty where something stops them.</summary>
    public IReadOnlyList<WireProgram> Programs { get; internal set; } = Array.Empty<WireProgram>();

    /// <summary>What was written.</summary>
    public IReadOnlyList<WireFile> Files { get; internal set; } = Array.Empty<WireFile>();

    /// <summary>How many entities of preview were drawn.</summary>
    public int Drawn { get; internal set; }
}
