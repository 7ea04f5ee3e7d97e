using System.Collections.Immutable;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;

namespace ToolpathForge.Jobs;

/// <summary>What holds the wood that is cut off the end of a board, once the last pass has freed it.</summary>
public enum Waste
{
    /// <summary>Nothing: allowed for a scrap that is blown aside, refused for more.</summary>
    Loose,

    /// <summary>Screws into the spoilboard, clear of the bit's track.</summary>
    Screwed,

    /// <summary>A clamp on it, clear of the bit's track.</summary>
    Clamped,

    /// <summary>It is cut to chips, row by row, before the bit goes along the profile.</summary>
    Chips,

    /// <summary>It is sawn off beforehand, leaving a margin for the bit.</summary>
    Sawn,
}

/// <summary>For which of the boards of a make one program serves.</summary>
public enum ProgramFor
{
    /// <summary>For the whole stack: the shape is scaled to the design width, whatever the boards measure.</summary>
    Stack,

    /// <summary>For the boards of one measured width: the shape is scaled to each width anew.</summary>
    Width,
}

/// <summary>Boards of one make that measure the same.</summary>
/// <param name="Name">The person's word for them, as chalked on the wood; empty for none.</param>
/// <param name="Count">How many.</param>
/// <param name="Width">Measured width, mm.</param>
/// <param name="Thickness">Measured thickness, mm.</param>
/// <param name="At">Where the width stands in the job.</param>
public sealed record MeasuredBoards(string Name, int Count, double Width, double Thickness, Place At);

/// <summary>A clamp, or anything else of metal on the bed, as a box on the spoilboard.</summary>
/// <param name="X">Nearest to minus X, seen from the work zero, mm.</param>
/// <param name="Y">Nearest to minus Y, mm.</param>
/// <param name="Length">Along X, mm.</param>
/// <param name="Width">Along Y, mm.</param>
/// <param name="Height">Above the spoilboard, mm.</param>
/// <param name="At">Where it stands in the job.</param>
public sealed record ClampBox(double X, double Y, double Length, double Width, double Height, Place At)
{
    /// <summary>Its extent on the bed, mm.</summary>
    public Box2 Box => new(X, Y, X + Length, Y + Width);
}

/// <summary>All boards of a make, and how they are worked one after the other.</summary>
/// <param name="Boards">The boards, in the order of their numbers; at least one.</param>
/// <param name="BothEnds">Whether each gets the profile at both ends, the second with the board turned end over end.</param>
/// <param name="Abreast">How many lie side by side on the bed.</param>
/// <param name="Gap">Room between neighbours, mm; null for what the bit needs.</param>
/// <param name="FinishedLength">Length from tip to tip, or from the tip to the other end as it is, mm.</param>
/// <param name="Waste">What holds the waste.</param>
/// <param name="SawMargin">What sawing beforehand leaves outside the finished line, mm.</param>
/// <param name="EndsSawn">Whether the end cuts are sawn to their line first, so that the bit only goes over them.</param>
/// <param name="Crown">How far the reference edge bows over the whole length, mm; 0 for not measured.</param>
/// <param name="Paused">Whether one program does all runs, waiting for the person between them.</param>
/// <param name="RawLength">Length of the board in hand, mm; it is sawn to the make's board length first where that is shorter.</param>
public sealed record BoardBatch(
    ImmutableArray<MeasuredBoards> Boards,
    bool BothEnds,
    int Abreast,
    double? Gap,
    double FinishedLength,
    Waste Waste,
    double SawMargin,
    bool EndsSawn,
    double Crown,
    bool Paused,
    double RawLength)
{
    /// <summary>How many boards.</summary>
    public int Count => Boards.Sum(b => b.Count);

    /// <summary>How many ends.</summary>
    public int Ends => Count * (BothEnds ? 2 : 1);

    /// <summary>The widest board, mm.</summary>
    public double Widest => Boards.Max(b => b.Width);

    /// <summary>The boards by number, from 1.</summary>
    public IEnumerable<(int Number, MeasuredBoards Board)> Numbered => Boards.SelectMany(b => Enumerable.Repeat(b, b.Count)).Select((b, i) => (i + 1, b));
}
