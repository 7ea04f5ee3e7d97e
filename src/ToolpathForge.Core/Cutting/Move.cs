using System.Collections.Immutable;
using ToolpathForge.Catalogue;
using ToolpathForge.Geometry;

namespace ToolpathForge.Cutting;

/// <summary>A point in the program's frame, mm: X right, Y away from you, Z up.</summary>
/// <param name="X">mm.</param>
/// <param name="Y">mm.</param>
/// <param name="Z">mm.</param>
public readonly record struct Point3(double X, double Y, double Z)
{
    /// <summary>A point of the plane at a height.</summary>
    /// <param name="point">In the plane.</param>
    /// <param name="z">Height.</param>
    public Point3(Point2 point, double z)
        : this(point.X, point.Y, z)
    {
    }

    /// <summary>Seen from above.</summary>
    public Point2 Flat => new(X, Y);
}

/// <summary>How the bit moves.</summary>
public enum MoveKind
{
    /// <summary>As fast as the machine goes, in the air.</summary>
    Rapid,

    /// <summary>Straight at a feed.</summary>
    Line,

    /// <summary>Along an arc in the plane, Z changing evenly, at a feed.</summary>
    Arc,
}

/// <summary>Why the bit moves.</summary>
public enum Purpose
{
    /// <summary>From one place to another above the work.</summary>
    Travel,

    /// <summary>Straight down.</summary>
    Descend,

    /// <summary>Down along the contour.</summary>
    Ramp,

    /// <summary>Onto the finished edge.</summary>
    LeadIn,

    /// <summary>Taking the waste off, short of the finished edge.</summary>
    Rough,

    /// <summary>Along the finished edge.</summary>
    Finish,

    /// <summary>Along a stroke of a mark.</summary>
    Engrave,

    /// <summary>Up, over or down a tab.</summary>
    OverTab,

    /// <summary>Off the finished edge.</summary>
    LeadOut,

    /// <summary>Straight up.</summary>
    Retract,
}

/// <summary>One move of the bit's tip on its axis.</summary>
/// <param name="Kind">How.</param>
/// <param name="End">Where it ends.</param>
/// <param name="Bulge">Shape seen from above, tan(sweep/4), at most ±1; 0 unless an arc.</param>
/// <param name="Feed">mm/min; 0 for a rapid.</param>
/// <param name="Purpose">Why.</param>
/// <param name="Run">Index of the run it belongs to (see <see cref="Toolpath.Runs"/>), -1 for none.</param>
public readonly record struct Move(MoveKind Kind, Point3 End, double Bulge, double Feed, Purpose Purpose, int Run);

/// <summary>What a stretch of passes is for.</summary>
public enum RunKind
{
    /// <summary>Takes the waste off, short of the finished edge.</summary>
    Roughing,

    /// <summary>Along the finished edge, a corner that is cut first among it.</summary>
    Finishing,

    /// <summary>A hole or a slot, from the first chip to its size.</summary>
    Opening,

    /// <summary>Strokes of marks.</summary>
    Engraving,
}

/// <summary>A stretch of passes told as one in the run sheet.</summary>
/// <param name="Kind">What it is for.</param>
/// <param name="Name">What it does, in the words of the shop.</param>
/// <param name="Depth">Depth of the deepest point below the stock's upper face, mm.</param>
/// <param name="Feed">mm/min.</param>
/// <param name="Climb">True when the part is on the right of the travel.</param>
/// <param name="Reason">Why it goes this way, one sentence.</param>
public sealed record Run(RunKind Kind, string Name, double Depth, double Feed, bool Climb, string Reason);

/// <summary>What one bit does in one clamping.</summary>
/// <param name="Bit">The bit.</param>
/// <param name="Speed">rev/min.</param>
/// <param name="Moves">In order. The first is a rapid straight up to the height of travel from wherever the bit is.</param>
/// <param name="Runs">What the moves are grouped into.</param>
public sealed record Toolpath(Bit Bit, double Speed, ImmutableArray<Move> Moves, ImmutableArray<Run> Runs)
{
    /// <summary>The ways of the bit's axis that go below a height anywhere, seen from above.</summary>
    /// <param name="height">In the program's Z, mm.</param>
    internal IEnumerable<Segment> WaysBelow(double height)
    {
        Point3? at = null;
        foreach (Move move in Moves)
        {
            if (at is { } from && Math.Min(from.Z, move.End.Z) < height && from.Flat != move.End.Flat)
            {
                yield return new Segment(from.Flat, move.End.Flat, move.Bulge);
            }

            at = move.End;
        }
    }

    /// <summary>Length of all moves at a feed, mm.</summary>
    public double CutLength
    {
        get
        {
            double length = 0;
            Point3? at = null;
            foreach (Move move in Moves)
            {
                if (at is { } from && move.Kind != MoveKind.Rapid)
                {
                    double flat = from.Flat == move.End.Flat ? 0 : new Segment(from.Flat, move.End.Flat, move.Bulge).Length;
                    length += Math.Sqrt((flat * flat) + ((move.End.Z - from.Z) * (move.End.Z - from.Z)));
                }

                at = move.End;
            }

            return length;
        }
    }

    /// <summary>The smallest box round the way of the bit's axis, seen from above, mm.</summary>
    public Box2 Extent
    {
        get
        {
            Box2 box = Box2.Empty;
            Point2? at = null;
            foreach (Move move in Moves)
            {
                // Straight up or down: the first of them does not know yet where it stands.
                if (move.Purpose is Purpose.Retract or Purpose.Descend)
                {
                    continue;
                }

                box = at is { } from ? box.Union(new Segment(from, move.End.Flat, move.Bulge).Box) : box.Including(move.End.Flat);
                at = move.End.Flat;
            }

            return box;
        }
    }
}
