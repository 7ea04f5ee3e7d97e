using System.Collections.Immutable;
using ToolpathForge.Catalogue;
using ToolpathForge.Findings;
using ToolpathForge.Measures;
using ToolpathForge.Shapes;

namespace ToolpathForge.Jobs;

/// <summary>Where Z is zero.</summary>
public enum ZeroHeight
{
    /// <summary>On the spoilboard: through cuts end where they should whatever the stock's thickness.</summary>
    Bed,

    /// <summary>On the upper face of the stock.</summary>
    Top,
}

/// <summary>Which way round the job wants the finished edge cut.</summary>
public enum DirectionChoice
{
    /// <summary>As the grain asks, edge by edge.</summary>
    ByGrain,

    /// <summary>Part on the left of the travel, clockwise spindle.</summary>
    Conventional,

    /// <summary>Part on the right of the travel.</summary>
    Climb,
}

/// <summary>Where each key of a table stands in the job file, so that a finding can point at it.</summary>
/// <param name="Table">Where the table itself begins.</param>
/// <param name="Keys">Where each value stands, by dotted key below the table (<c>stock.thickness</c>).</param>
public sealed record Places(Place Table, ImmutableDictionary<string, Place> Keys)
{
    /// <summary>Where a key's value stands; the table's beginning when the job does not write it.</summary>
    /// <param name="key">Dotted key below the table.</param>
    public Place this[string key] => Keys.TryGetValue(key, out Place? place) ? place : Table;
}

/// <summary>How the plates of a pattern may be turned on the blank, to lay more on one.</summary>
public enum PlateTurn
{
    /// <summary>Not at all.</summary>
    None,

    /// <summary>By half a turn.</summary>
    Half,

    /// <summary>By quarter turns.</summary>
    Quarter,
}

/// <summary>A job as read and resolved: immutable, complete, every value with its place in the file.</summary>
/// <param name="FileName">The file's name without folders.</param>
/// <param name="Name">What the person calls it.</param>
/// <param name="Unit">The unit its bare numbers are in, and that findings are worded in.</param>
/// <param name="Tolerance">Largest departure of the finished piece from the exact one, mm: the total of curve fit, chords and rounding.</param>
/// <param name="Machine">The machine.</param>
/// <param name="Dialect">The dialect its programs are written in.</param>
/// <param name="Zero">Where Z is zero.</param>
/// <param name="Clearance">How far above the stock the bit travels between cuts, mm.</param>
/// <param name="Spoilboard">Thickness of the spoilboard under the stock, mm.</param>
/// <param name="Makes">What to make, in the order written.</param>
/// <param name="At">Where each key stands.</param>
public sealed record Job(
    string FileName,
    string Name,
    LengthUnit Unit,
    double Tolerance,
    Machine Machine,
    Dialect Dialect,
    ZeroHeight Zero,
    double Clearance,
    double Spoilboard,
    ImmutableArray<Make> Makes,
    Places At)
{
    /// <summary>How boards are bought.</summary>
    public BuyingTerms Buying { get; init; } = new([], 0, 0);

    /// <summary>How the machine's axes are off, as a trial piece has shown; every program makes up for it.</summary>
    public AxisErrors Axes { get; init; } = AxisErrors.None;

    /// <summary>The row of the bit whose diameter a trial piece has corrected, as it was before; null without a trial.</summary>
    public Bit? TrialBit { get; init; }
}

/// <summary>One thing to make, with its own stock, bit and shape.</summary>
/// <param name="Id">The person's word for it; unique in the job, letters, digits and hyphens.</param>
/// <param name="Count">How many, at least 1.</param>
/// <param name="Board">The size of lumber the shape is drawn for.</param>
/// <param name="DesignWidth">The width the shape is scaled to: the dressed width, or the measured one if the job says so, mm.</param>
/// <param name="Material">What the bit cuts.</param>
/// <param name="Thickness">Thickness of what the bit cuts, mm.</param>
/// <param name="Shape">The shape.</param>
/// <param name="Bit">The bit.</param>
/// <param name="Cut">How it is to be cut, where the job says so.</param>
/// <param name="At">Where each key stands.</param>
public abstract record Make(
    string Id,
    int Count,
    Lumber Board,
    double DesignWidth,
    Material Material,
    double Thickness,
    ShapeSpec Shape,
    Bit Bit,
    CutChoices Cut,
    Places At)
{
    /// <summary>The id of the block that it comes from with other boards; null when it stands alone.</summary>
    public string? Family { get; init; }

    /// <summary>Holes and slots through it, in the order written.</summary>
    public ImmutableArray<Opening> Openings { get; init; } = [];

    /// <summary>What is engraved into it; null for nothing.</summary>
    public Marking? Marks { get; init; }

    /// <summary>What is done by hand; null for nothing.</summary>
    public HandWork? Hand { get; init; }

    /// <summary>Along the board from its finished tip to the nearer side of what it bears on, mm; null where nobody has said.</summary>
    public double? BearsAt { get; init; }

    /// <summary>Thickness that is left under the whole cut, mm: for the hand to finish, or as a skin; 0 for a cut right through.</summary>
    public double LeftBelow => Hand?.Machined is { } machined ? Thickness - machined : Cut.Skin ?? 0;

    /// <summary>Clamps and other metal on the bed, in the frame of its programs.</summary>
    public ImmutableArray<ClampBox> Clamps { get; init; } = [];
}

/// <summary>A pattern: a template plate from a panel, with the profile as its working edge.</summary>
/// <param name="Id">See <see cref="Make"/>.</param>
/// <param name="Count">See <see cref="Make"/>.</param>
/// <param name="Board">See <see cref="Make"/>.</param>
/// <param name="DesignWidth">See <see cref="Make"/>.</param>
/// <param name="Panel">What the plate is cut from.</param>
/// <param name="Material">The panel's material.</param>
/// <param name="Thickness">Measured thickness of the panel, mm: a nominal one is never taken.</param>
/// <param name="Shape">See <see cref="Make"/>.</param>
/// <param name="Bit">See <see cref="Make"/>.</param>
/// <param name="Cut">See <see cref="Make"/>.</param>
/// <param name="Hold">How far the plate goes on along the board past the curve, mm.</param>
/// <param name="Seat">How far the plate reaches past the reference edge, to carry the guide block, mm.</param>
/// <param name="Reach">How far it reaches past the profile edge, never short of it, mm.</param>
/// <param name="At">See <see cref="Make"/>.</param>
public sealed record PatternMake(
    string Id,
    int Count,
    Lumber Board,
    double DesignWidth,
    Panel Panel,
    Material Material,
    double Thickness,
    ShapeSpec Shape,
    Bit Bit,
    CutChoices Cut,
    double Hold,
    double Seat,
    double Reach,
    Places At)
    : Make(Id, Count, Board, DesignWidth, Material, Thickness, Shape, Bit, Cut, At)
{
    /// <summary>How far the clamped sheet is from flat over the plate, as measured, mm; null when the job does not say.</summary>
    public double? Flatness { get; init; }

    /// <summary>How plates may be turned on the blank.</summary>
    public PlateTurn Turned { get; init; }

    /// <summary>Whether it is a trial piece, which is measured and thrown away.</summary>
    public bool IsTrial { get; init; }
}

/// <summary>A board end: the profile cut straight into the end of a board.</summary>
/// <param name="Id">See <see cref="Make"/>.</param>
/// <param name="Count">See <see cref="Make"/>.</param>
/// <param name="Board">See <see cref="Make"/>.</param>
/// <param name="DesignWidth">See <see cref="Make"/>.</param>
/// <param name="Material">The timber.</param>
/// <param name="Thickness">Thickness of the board, mm: dressed, or measured if the job says so.</param>
/// <param name="Shape">See <see cref="Make"/>.</param>
/// <param name="Bit">See <see cref="Make"/>.</param>
/// <param name="Cut">See <see cref="Make"/>.</param>
/// <param name="BoardLength">Length of the board, mm.</param>
/// <param name="OnBed">How much of its length lies on the bed, from the tip, mm.</param>
/// <param name="GrainSlope">Slope of the fibres on the upper face, degrees: positive where they run towards the profile edge going in from the tip.</param>
/// <param name="EndAllowance">How far the raw end stands past the finished tip, mm.</param>
/// <param name="FenceRoom">How far past the reference edge the bit may cut into a sacrificial, metal-free fence, mm.</param>
/// <param name="At">See <see cref="Make"/>.</param>
public sealed record BoardEndMake(
    string Id,
    int Count,
    Lumber Board,
    double DesignWidth,
    Material Material,
    double Thickness,
    ShapeSpec Shape,
    Bit Bit,
    CutChoices Cut,
    double BoardLength,
    double OnBed,
    double GrainSlope,
    double EndAllowance,
    double FenceRoom,
    Places At)
    : Make(Id, Count, Board, DesignWidth, Material, Thickness, Shape, Bit, Cut, At)
{
    /// <summary>Whether a stand at bed height carries what hangs over the bed.</summary>
    public bool Stand { get; init; }

    /// <summary>The boards, and how they follow one another; without it one end each of as many boards as the count says.</summary>
    public BoardBatch Batch
    {
        get => field ?? new BoardBatch(
            [new MeasuredBoards("", Count, DesignWidth, Thickness, At["count"])], false, 1, null, BoardLength - EndAllowance, Waste.Loose, 0, false, 0, false, BoardLength);
        init;
    }
}

/// <summary>How a make is to be cut, where the job says so; null leaves it to the catalogue and the rules.</summary>
/// <param name="Speed">Spindle speed, rev/min.</param>
/// <param name="Feed">Feed in the plane, mm/min.</param>
/// <param name="Plunge">Feed downwards, mm/min.</param>
/// <param name="PassDepth">Largest depth of one pass, mm.</param>
/// <param name="Allowance">What roughing leaves on the finished edge, mm.</param>
/// <param name="Overcut">How far below the stock the last pass goes, mm.</param>
/// <param name="Direction">Which way round the finish goes.</param>
/// <param name="Tabs">How many tabs.</param>
/// <param name="TabLength">Length of a tab, mm.</param>
/// <param name="TabHeight">Height of a tab, mm.</param>
public sealed record CutChoices(
    double? Speed,
    double? Feed,
    double? Plunge,
    double? PassDepth,
    double? Allowance,
    double? Overcut,
    DirectionChoice? Direction,
    int? Tabs,
    double? TabLength,
    double? TabHeight)
{
    /// <summary>Largest distance between tabs along the outline, mm.</summary>
    public double? TabSpacing { get; init; }

    /// <summary>How tabs are shaped.</summary>
    public TabForm TabForm { get; init; }

    /// <summary>Where tabs are wanted; none for places of the program's choosing.</summary>
    public ImmutableArray<PlaceOnEdge> TabPlaces { get; init; } = [];

    /// <summary>Where the finish is to begin; null for a place of the program's choosing.</summary>
    public PlaceOnEdge? Lead { get; init; }

    /// <summary>How narrow slots are made easier.</summary>
    public SlotChoice Slot { get; init; }

    /// <summary>Thickness of a skin left under the whole cut instead of tabs, mm; null for none.</summary>
    public double? Skin { get; init; }
}
