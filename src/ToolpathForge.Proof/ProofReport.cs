using System.Collections.Immutable;

namespace ToolpathForge.Proof;

/// <summary>Where something is.</summary>
/// <param name="Line">Line of the text, the first being 1; 0 where no line is to blame.</param>
/// <param name="X">mm, in the frame of the program.</param>
/// <param name="Y">mm.</param>
/// <param name="Z">mm.</param>
public readonly record struct ProofPlace(int Line, double X, double Y, double Z);

/// <summary>
/// One way in which the program fails. Each code appears once for each subject, at its worst place (the first of equals), with a count of the lines where it occurs.
/// </summary>
/// <param name="Code">What is wrong.</param>
/// <param name="Line">Line of the text at its worst, the first being 1; 0 for the text as a whole.</param>
/// <param name="Found">What was measured, in the code's unit.</param>
/// <param name="Allowed">What it is held against, in the code's unit.</param>
/// <param name="Place">Where, if it has a place.</param>
/// <param name="Subject">Name of the piece, keep-out, floor, mark or axis, the number of the bit, or the offending words of the text; null if none.</param>
/// <param name="Count">On how many lines (of text) or stretches (of left-over) it occurs.</param>
public sealed record Fault(FaultCode Code, int Line, double? Found, double? Allowed, ProofPlace? Place, string? Subject, int Count);

/// <summary>What was measured on one piece between two heights. Both figures are proven: the truth is not above them, and less than a fiftieth of the tolerance below.</summary>
/// <param name="Bottom">mm.</param>
/// <param name="Top">mm.</param>
/// <param name="Gouge">Deepest cut into the piece, mm; 0 if there is none. A cut of half the bit's width or more counts as the bit's radius.</param>
/// <param name="GougeAt">Where the tip's centre is then; null if no feed motion comes near.</param>
/// <param name="Leftover">Thickest material left along an edge that must be cut, outside what tabs and allowances grant, mm; 0 if there is none; infinite if nothing cuts at this depth.</param>
/// <param name="LeftoverAt">Where on the edge, at the height of <paramref name="Bottom"/>, and the line of the motion nearest to it; null if no edge must be cut.</param>
public sealed record SlabProof(double Bottom, double Top, double Gouge, ProofPlace? GougeAt, double Leftover, ProofPlace? LeftoverAt);

/// <summary>What was measured on one tab.</summary>
/// <param name="Index">Index into the piece's tabs.</param>
/// <param name="CutInto">How far the bit cuts into its core below its top, mm; 0 if it stands whole.</param>
/// <param name="At">Where the tip's centre is then; null if nothing comes near.</param>
public sealed record TabProof(int Index, double CutInto, ProofPlace? At);

/// <summary>What was measured on one mark.</summary>
/// <param name="Name">The mark's name.</param>
/// <param name="Missed">Farthest that a stroke is from the nearest cut deep enough, mm; infinite if there is none.</param>
/// <param name="At">Where on the stroke.</param>
public sealed record MarkProof(string Name, double Missed, ProofPlace? At);

/// <summary>What was measured on one piece.</summary>
/// <param name="Name">The piece's name.</param>
/// <param name="Slabs">From the bottom up; heights of tabs and allowances divide them.</param>
/// <param name="Tabs">In the target's order.</param>
/// <param name="Marks">In the target's order.</param>
public sealed record PieceProof(string Name, ImmutableArray<SlabProof> Slabs, ImmutableArray<TabProof> Tabs, ImmutableArray<MarkProof> Marks);

/// <summary>On which side of the travel a surface was cut, for a spindle that turns clockwise seen from above.</summary>
public enum CutDirection
{
    /// <summary>Piece on the left of the travel: the edge of the bit moves with the feed along the finished surface.</summary>
    Conventional,

    /// <summary>Piece on the right of the travel: the edge of the bit moves against the feed.</summary>
    Climb,
}

/// <summary>
/// How one stretch of a finished surface was cut, read back from the text: by the first motion that brought the surface to within the tolerance of where it ends up.
/// </summary>
/// <param name="Piece">Index into the target's pieces.</param>
/// <param name="Loop">Index into the piece's loops.</param>
/// <param name="Edge">Index into the loop.</param>
/// <param name="FromShare">Start of the stretch as a share of the edge.</param>
/// <param name="ToShare">End of the stretch as a share of the edge.</param>
/// <param name="Bottom">Lower limit of the stretch, mm.</param>
/// <param name="Top">Upper limit of the stretch, mm.</param>
/// <param name="Direction">Conventional or climb.</param>
/// <param name="Line">Line of the motion that cut its beginning.</param>
public sealed record EdgePass(int Piece, int Loop, int Edge, double FromShare, double ToShare, double Bottom, double Top, CutDirection Direction, int Line);

/// <summary>Plain measures of the motion, whatever the target.</summary>
public sealed record MotionFigures
{
    /// <summary>Lines of text.</summary>
    public required int Lines { get; init; }

    /// <summary>Straight feed motions.</summary>
    public required int StraightFeeds { get; init; }

    /// <summary>Arcs.</summary>
    public required int Arcs { get; init; }

    /// <summary>Rapids.</summary>
    public required int Rapids { get; init; }

    /// <summary>Length of all feed motions, mm.</summary>
    public required double FeedLength { get; init; }

    /// <summary>Length of all rapids whose start is known, mm.</summary>
    public required double RapidLength { get; init; }

    /// <summary>Length of the feed motions straight down, mm.</summary>
    public required double PlungeLength { get; init; }

    /// <summary>Each feed motion's length over its feed, and the dwells, seconds. Acceleration is not in it.</summary>
    public required double FeedSeconds { get; init; }

    /// <summary>Lowest X, Y and Z of all motions whose place is known, mm; NaN without any.</summary>
    public required SpacePoint Min { get; init; }

    /// <summary>Highest X, Y and Z of all motions whose place is known, mm; NaN without any.</summary>
    public required SpacePoint Max { get; init; }

    /// <summary>Highest feed, mm/min; 0 without feed motions.</summary>
    public required double MaxFeed { get; init; }

    /// <summary>Highest feed downwards, mm/min.</summary>
    public required double MaxPlungeFeed { get; init; }
}

/// <summary>What reading a program back and measuring it has found.</summary>
public sealed record ProofReport
{
    /// <summary>Whether nothing is wrong.</summary>
    public bool Passed => Faults.IsEmpty;

    /// <summary>Whether the text could be read to its end. If not, there is one fault, and nothing else was measured.</summary>
    public required bool IsRead { get; init; }

    /// <summary>What is wrong, by line, then code, then subject.</summary>
    public required ImmutableArray<Fault> Faults { get; init; }

    /// <summary>The pieces, in the target's order; empty if the text could not be read.</summary>
    public required ImmutableArray<PieceProof> Pieces { get; init; }

    /// <summary>How each finished edge was cut, by piece, loop, edge, height and share.</summary>
    public required ImmutableArray<EdgePass> EdgePasses { get; init; }

    /// <summary>Plain measures of the motion.</summary>
    public required MotionFigures Motion { get; init; }

    /// <summary>Deepest gouge of all pieces, mm.</summary>
    public double WorstGouge => Pieces.SelectMany(p => p.Slabs).Select(s => s.Gouge).DefaultIfEmpty(0).Max();

    /// <summary>Thickest left-over of all pieces, mm.</summary>
    public double WorstLeftover => Pieces.SelectMany(p => p.Slabs).Select(s => s.Leftover).DefaultIfEmpty(0).Max();
}
