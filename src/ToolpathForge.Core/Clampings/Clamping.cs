using System.Collections.Immutable;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;
using ToolpathForge.Pieces;

namespace ToolpathForge.Clampings;

/// <summary>How a board lies on the bed, its profile on the lower edge.</summary>
public enum Lie
{
    /// <summary>Face up, reference edge at the fence, end at your right.</summary>
    AsLaid,

    /// <summary>Turned half round without being lifted: the other end comes to the bed, the reference edge lies away from the fence.</summary>
    TurnedFlat,

    /// <summary>Rolled over about its length.</summary>
    RolledOver,

    /// <summary>Turned end over end about its width: the other end and the other face come up, the reference edge stays at the fence.</summary>
    EndOverEnd,
}

/// <summary>A piece where it lies on the bed.</summary>
/// <param name="Piece">The piece.</param>
/// <param name="Number">From 1 in its clamping.</param>
/// <param name="Placement">From the piece frame to the bed's: X right, Y away from you, origin at the work zero.</param>
/// <param name="Exact">The exact outline on the bed.</param>
/// <param name="Block">The stock that it is cut from, on the bed.</param>
public sealed record Placed(Piece Piece, int Number, Placement Placement, Outline Exact, Box2 Block)
{
    /// <summary>Its number among the pieces of its make, from 1; the same as <see cref="Number"/> where a clamping has one make.</summary>
    public int OfMake { get; init; } = Number;

    /// <summary>What sheets, programs and the proof call it: the make's id and its number.</summary>
    public string Name => FormattableString.Invariant($"{Piece.Make.Id} no. {OfMake}");

    /// <summary>Its edge on the bed, then those of its openings, as lines and arcs.</summary>
    /// <param name="tolerance">How far these may be from the exact curves, mm, more than 0.</param>
    public ImmutableArray<Contour> Edges(double tolerance) =>
        [.. Piece.Openings.Select(o => OpeningOutline.Exact(o, Placement)).Prepend(Exact).Select(e => ArcFit.Quick(e, tolerance).Contour)];
}

/// <summary>What is clamped down: a panel, or the ends of boards, on the bed.</summary>
/// <param name="Box">Its extent on the bed, mm; of boards side by side that of them all.</param>
/// <param name="Bottom">Height of its lower face in the program's Z, mm.</param>
/// <param name="Top">Height of its upper face, mm.</param>
public sealed record StockOnBed(Box2 Box, double Bottom, double Top);

/// <summary>Something that the bit must not touch: a clamp, a fence, a screw; with the clearance it needs.</summary>
/// <param name="Name">What faults and sheets call it.</param>
/// <param name="Box">Its extent on the bed, clearance and all, mm.</param>
/// <param name="Top">Height up to which it stands in the program's Z, mm.</param>
public sealed record KeepOut(string Name, Box2 Box, double Top);

/// <summary>A board's turn at the machine.</summary>
/// <param name="Run">The run of the program, from 1.</param>
/// <param name="Place">Its place on the bed, from 1 at the fence.</param>
/// <param name="Board">Its number, from 1.</param>
/// <param name="End">Its end, 1 or 2.</param>
/// <param name="Boards">Its measures.</param>
public sealed record BoardTurn(int Run, int Place, int Board, int End, MeasuredBoards Boards);

/// <summary>One clamping: what lies on the bed while one program runs.</summary>
/// <param name="Name">Also the program's name.</param>
/// <param name="Pieces">At least one; of several makes only where those are cut alike but for their tabs.</param>
/// <param name="Stock">What is clamped.</param>
/// <param name="Lie">How a board lies; <see cref="Lie.AsLaid"/> for a panel.</param>
/// <param name="Travel">Where the machine can bring the bit's centre, seen from the work zero, when the zero is set as the sheet says, mm.</param>
/// <param name="Times">How often the clamping is repeated to make the count.</param>
public sealed record Clamping(
    string Name, ImmutableArray<Placed> Pieces, StockOnBed Stock, Lie Lie, Box2 Travel, int Times)
{
    /// <summary>Metal is kept this far from the bit, mm (common practice).</summary>
    public const double MetalGap = 3;

    /// <summary>What it makes; of several makes the first, which stands for stock, bit and numbers that they have in common.</summary>
    public Make Make => Pieces[0].Piece.Make;

    /// <summary>All that it makes, in the order in which the pieces lie.</summary>
    public ImmutableArray<Make> Makes { get; } = [.. Pieces.Select(p => p.Piece.Make).DistinctBy(m => m.Id, StringComparer.Ordinal)];

    /// <summary>Whether it is a blank that makes share, by rule if not in fact: it has a name of its own then, and otherwise that of its make.</summary>
    public bool IsShared => Make.Sheet is not null && Name != Make.Id;

    /// <summary>How many pieces of a make lie there.</summary>
    /// <param name="make">The make.</param>
    public int CountOf(Make make) => Pieces.Count(p => p.Piece.Make.Id == make.Id);

    /// <summary>Clamps and other metal on the bed.</summary>
    public IEnumerable<ClampBox> Clamps => Makes.SelectMany(m => m.Clamps).Distinct();

    /// <summary>What the bit must not touch.</summary>
    public ImmutableArray<KeepOut> KeepOuts { get; init; } = [];

    /// <summary>Where screws go through the waste into the spoilboard; empty where none are wanted.</summary>
    public ImmutableArray<Point2> Screws { get; init; } = [];

    /// <summary>Which board lies where in which run; empty for a panel.</summary>
    public ImmutableArray<BoardTurn> Turns { get; init; } = [];

    /// <summary>Whether one program does all runs, waiting between them.</summary>
    public bool Waits { get; init; }

    /// <summary>How often the program is started.</summary>
    public int Starts => Waits ? 1 : Times;

    /// <summary>Room between boards that lie side by side, mm; 0 for one.</summary>
    public double Gap { get; init; }

    /// <summary>How far above the stock's upper face the bit travels between cuts: over every clamp with the job's clearance, mm.</summary>
    /// <param name="job">Says the clearance.</param>
    public double Rise(Job job) => Math.Max(Stock.Top, KeepOuts.IsEmpty ? double.NegativeInfinity : KeepOuts.Max(k => k.Top)) - Stock.Top + job.Clearance;

    /// <summary>Where program Z is for a height above the bed.</summary>
    /// <param name="job">Says where zero is.</param>
    /// <param name="thickness">Thickness of the stock, mm.</param>
    internal static (double Bottom, double Top) Heights(Job job, double thickness) =>
        job.Zero == ZeroHeight.Bed ? (0, thickness) : (-thickness, 0);
}
