using System.Collections.Immutable;
using ToolpathForge.Geometry;

namespace ToolpathForge.Cutting;

/// <summary>Gathers moves, remembering where the bit is.</summary>
internal sealed class MoveList
{
    /// <summary>Least share of the feed round the inside of an opening.</summary>
    internal const double LeastInnerShare = 0.5;

    private readonly ImmutableArray<Move>.Builder _moves = ImmutableArray.CreateBuilder<Move>();
    private readonly double _travelHeight;
    private Point3 _at;
    private bool _knowsWhere;

    internal MoveList(double travelHeight)
    {
        _travelHeight = travelHeight;
        _at = new Point3(0, 0, travelHeight);
    }

    internal int Run { get; set; } = -1;

    /// <summary>
    /// Radius of the bit while it goes round inside an opening, mm; 0 elsewhere. There its outermost edge moves (r + R)/r times as fast as its axis,
    /// so on arcs the axis is fed that much slower, down to a half: where a ring is narrower than the bit, the bit cuts over its whole width and takes
    /// the chip of its axis.
    /// </summary>
    internal double InnerRadius { get; set; }

    /// <summary>
    /// Which arcs of a finishing pass round the outside of a piece run in its hollows: 1 those that turn left, -1 those that turn right, 0 for none. The bit's edge is further out than
    /// its axis there, so they are slowed like arcs within an opening; on a round of the piece the edge is the slower of the two.
    /// </summary>
    internal int HollowTurn { get; set; }

    /// <summary>Radius of the bit that runs in hollows, mm.</summary>
    internal double HollowRadius { get; set; }

    /// <summary>Feed straight down within a pass, mm/min.</summary>
    internal double Plunge { get; set; } = double.PositiveInfinity;

    internal Point3 At => _at;

    internal ImmutableArray<Move> ToMoves() => _moves.ToImmutable();

    /// <summary>Up to the height of travel and across to a point.</summary>
    internal void TravelTo(Point2 point)
    {
        Retract();
        if (!_knowsWhere || _at.Flat != point)
        {
            Add(new Move(MoveKind.Rapid, new Point3(point, _travelHeight), 0, 0, Purpose.Travel, -1));
        }

        _knowsWhere = true;
    }

    /// <summary>Straight up to the height of travel.</summary>
    internal void Retract()
    {
        if (_moves.Count == 0 || _at.Z < _travelHeight)
        {
            Add(new Move(MoveKind.Rapid, _at with { Z = _travelHeight }, 0, 0, Purpose.Retract, -1));
        }
    }

    /// <summary>Straight up to a height at or above that of travel, for a stop; in one go with the retract before it.</summary>
    internal void RaiseTo(double z)
    {
        if (_moves.Count > 1 && _moves[^1].Purpose == Purpose.Retract)
        {
            _moves.RemoveAt(_moves.Count - 1);
        }

        Add(new Move(MoveKind.Rapid, _at with { Z = z }, 0, 0, Purpose.Retract, -1));
    }

    /// <summary>Straight down (or up) in the air at a rapid.</summary>
    internal void RapidTo(double z) => Add(new Move(MoveKind.Rapid, _at with { Z = z }, 0, 0, Purpose.Descend, Run));

    /// <summary>Straight down at a feed.</summary>
    internal void Descend(double z, double feed)
    {
        if (_at.Z != z)
        {
            Add(new Move(MoveKind.Line, _at with { Z = z }, 0, feed, Purpose.Descend, Run));
        }
    }

    /// <summary>Along one segment in the plane to a height.</summary>
    internal void Along(Segment segment, double z, double feed, Purpose purpose) => Add(new Move(
        segment.IsLine ? MoveKind.Line : MoveKind.Arc,
        new Point3(segment.End, z),
        segment.IsLine ? 0 : segment.Bulge,
        feed * InnerShare(segment, purpose),
        purpose,
        Run));

    private double InnerShare(Segment segment, Purpose purpose)
    {
        double radius = InnerRadius > 0 ? InnerRadius : purpose == Purpose.Finish && HollowTurn != 0 && Math.Sign(segment.Bulge) == HollowTurn ? HollowRadius : 0;
        return segment.IsLine || radius == 0 ? 1 : Math.Max(LeastInnerShare, segment.Radius / (segment.Radius + radius));
    }

    /// <summary>Along a path between two distances, at the heights of a profile; sloping parts have a feed and a purpose of their own.</summary>
    internal void Along(PathRuler path, double from, double to, HeightProfile heights, (double Feed, Purpose Purpose) level, (double Feed, Purpose Purpose) slope)
    {
        double s = from;
        foreach (double next in heights.Breaks.Where(b => b > from && b < to).Distinct().Append(to))
        {
            double z0 = heights.After(s);
            double z1 = heights.At(next);
            if (Math.Abs(z0 - _at.Z) > 1e-9 && s > from)
            {
                // The side of a square tab: straight up, or straight down into what was cut to the tab's height before.
                Add(new Move(MoveKind.Line, _at with { Z = z0 }, 0, z0 > _at.Z ? slope.Feed : Math.Min(slope.Feed, Plunge), Purpose.OverTab, Run));
            }

            (double feed, Purpose purpose) = z0 == z1 ? level : (Downhill(slope.Feed, z0 - z1, next - s), slope.Purpose);
            double done = 0;
            foreach (Segment part in path.Between(s, next))
            {
                done += part.Length;
                Along(part, z0 == z1 ? z1 : z0 + ((z1 - z0) * Math.Min(1, done / (next - s))), feed, purpose);
            }

            s = next;
        }
    }

    // The side of a tab that a ramp meets on its way is steeper than the ramp: its downward part keeps to the plunge feed as well.
    private double Downhill(double feed, double drop, double along)
    {
        double most = drop > 0 ? Plunge * Math.Sqrt((drop * drop) + (along * along)) / drop : double.PositiveInfinity;
        return most < feed * (1 - 1e-6) ? most : feed;
    }

    private void Add(Move move)
    {
        _moves.Add(move);
        _at = move.End;
    }
}
