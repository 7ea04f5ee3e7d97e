using System.Collections.Immutable;

namespace ToolpathForge.Proof;

/// <summary>
/// What a program is measured against, exact and complete. All lengths in mm, all heights and places in the frame of the program
/// (work zero as the program's X0 Y0 Z0), whatever unit its text is in.
/// </summary>
public sealed record Target
{
    /// <summary>The pieces to be made.</summary>
    public required ImmutableArray<TargetPiece> Pieces { get; init; }

    /// <summary>What lies on the bed. Without any, every feed motion counts as cutting and no rapid counts as being over stock.</summary>
    public ImmutableArray<TargetStock> Stock { get; init; } = [];

    /// <summary>What must not be touched.</summary>
    public ImmutableArray<TargetKeepOut> KeepOuts { get; init; } = [];

    /// <summary>Lowest tip allowed anywhere, mm: usually the deepest cut meant into the spoilboard.</summary>
    public required double Floor { get; init; }

    /// <summary>Higher floors in parts of the bed.</summary>
    public ImmutableArray<TargetFloor> Floors { get; init; } = [];

    /// <summary>Rapids that move in X or Y over stock or keep-outs stay at or above this, mm; so does the end of the program.</summary>
    public required double ClearHeight { get; init; }

    /// <summary>
    /// Where the program is started: the tip anywhere in X and Y, at this height or above, mm. Null for <see cref="ClearHeight"/>.
    /// </summary>
    public double? StartHeight { get; init; }

    /// <summary>Reach of the machine; null when it has no known limits.</summary>
    public TargetTravel? Travel { get; init; }

    /// <summary>Highest feed along the path, mm/min.</summary>
    public double MaxFeed { get; init; } = double.PositiveInfinity;

    /// <summary>Highest feed downwards, mm/min: the share of the feed that points down.</summary>
    public double MaxPlungeFeed { get; init; } = double.PositiveInfinity;

    /// <summary>Lowest spindle speed, revolutions a minute.</summary>
    public double MinSpeed { get; init; }

    /// <summary>Highest spindle speed, revolutions a minute.</summary>
    public double MaxSpeed { get; init; } = double.PositiveInfinity;

    /// <summary>Whether the program starts and stops the spindle. False: it is switched by hand, and nothing is asked of the program.</summary>
    public bool ProgramRunsSpindle { get; init; } = true;

    /// <summary>Speed set by hand, revolutions a minute, for the chip load when the program does not run the spindle; null if unknown.</summary>
    public double? SpeedByHand { get; init; }

    /// <summary>Dwell needed between the spindle's start and the first cut, seconds.</summary>
    public double DwellAfterStart { get; init; }

    /// <summary>How bits get into the spindle.</summary>
    public ToolChangeStyle ToolChange { get; init; } = ToolChangeStyle.ByCommand;

    /// <summary>The bits the program may use, in the order of use; at least one.</summary>
    public required ImmutableArray<TargetTool> Tools { get; init; }

    /// <summary>Deepest gouge and largest left-over allowed, mm, more than 0.</summary>
    public required double Tolerance { get; init; }

    /// <summary>
    /// Worth of one unit of the last decimal the program writes, mm (0.001 for three decimals of mm, 0.00254 for four of inches). Heights are compared with this slack.
    /// </summary>
    public required double Increment { get; init; }

    /// <summary>Modes the program has to state before it first depends on them, rather than inherit them from whatever ran before.</summary>
    public StatedModes MustState { get; init; } = StatedModes.Unit | StatedModes.Distance | StatedModes.Plane;

    /// <summary>Whether G70 and G71 mean inch and mm, as in ISO 6983-1. Without it they are refused.</summary>
    public bool AcceptsIsoUnits { get; init; }

    /// <summary>How the machine's axes differ from what a program says; null where they are taken to be right.</summary>
    public TargetAxes? Axes { get; init; }

    internal double StartsAtOrAbove => StartHeight ?? ClearHeight;
}

/// <summary>Modes a program can state.</summary>
[Flags]
public enum StatedModes
{
    /// <summary>None.</summary>
    None = 0,

    /// <summary>G20 or G21, before the first length.</summary>
    Unit = 1,

    /// <summary>G90 or G91, before the first axis word.</summary>
    Distance = 2,

    /// <summary>G17, before the first arc.</summary>
    Plane = 4,

    /// <summary>G94, before the first feed.</summary>
    Feed = 8,
}
