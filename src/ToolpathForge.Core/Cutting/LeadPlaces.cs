using System.Collections.Immutable;
using ToolpathForge.Catalogue;
using ToolpathForge.Geometry;
using ToolpathForge.Shapes;

namespace ToolpathForge.Cutting;

/// <summary>An outside corner of a piece on the track round it, where the track turns about the corner.</summary>
/// <param name="Arrives">Distance along the track where the edge before the corner ends.</param>
/// <param name="Leaves">Distance where the edge after it begins; more than <paramref name="Arrives"/>.</param>
/// <param name="Free">How many of its two edges are free ones.</param>
/// <param name="Shorter">Length of the shorter of its two edges on the track, mm.</param>
internal sealed record TrackCorner(double Arrives, double Leaves, int Free, double Shorter);

/// <summary>Where on a closed track round a piece a finish may begin.</summary>
internal sealed class LeadPlaces
{
    // A corner this blunt or this sharp is no place for straight leads: past a blunt one they would come back to the piece.
    private const double Bluntest = 45 * Math.PI / 180;
    private const double Sharpest = 150 * Math.PI / 180;

    // The cosine of half a degree: arcs fitted to a smooth curve meet within less.
    private static readonly double Smooth = Math.Cos(0.5 * Math.PI / 180);

    private readonly PathRuler _track;
    private readonly EdgeRole[] _roles;
    private readonly List<(double From, double To)> _taken;
    private readonly double _needed;
    private readonly double _corner;
    private readonly double _radius;
    private readonly bool _within;

    internal LeadPlaces(PlacedContour placed, PathRuler track, ImmutableArray<Tab> tabs, CutSettings s, Bit bit)
    {
        _track = track;
        _corner = bit.Diameter;
        _radius = bit.Radius;
        _within = placed.IsOpening;
        _needed = PlateLead.Needed(s, placed.Placed.Piece.Make);
        _roles = [.. Enumerable.Range(0, track.Contour.SegmentCount).Select(i => RoleBeside(placed, track.Contour[i].PointAt(0.5)))];
        _taken = [.. tabs.Select(t => (Middle: track.Nearest(t.Center), t.Reach)).Select(t => (t.Middle - t.Reach, t.Middle + t.Reach))];
    }

    /// <summary>The longest clear stretch found so far, mm.</summary>
    internal double LongestRoom { get; private set; }

    /// <summary>Outside corners fit for straight leads: with two free edges, then with one; the longer edges first.</summary>
    internal IEnumerable<TrackCorner> Corners() => AllCorners()
        .Where(c => c.Free > 0)
        .OrderByDescending(c => c.Free).ThenByDescending(c => Math.Round(c.Shorter, 6)).ThenBy(c => c.Arrives);

    /// <summary>The corner that a distance along the track lies at, if it does.</summary>
    internal TrackCorner? CornerNear(double at) => AllCorners().FirstOrDefault(c => at >= c.Arrives - _corner && at <= c.Leaves + _corner);

    /// <summary>The distance itself when it is clear of tabs and not on a corner; null otherwise.</summary>
    internal double? Near(double at) => Blocks().Any(b => Overlaps(b, at - (_needed / 2), at + (_needed / 2))) ? null : at;

    /// <summary>The middle of the longest clear stretch of the least bent segments beside edges of a role; null when none is long enough.</summary>
    /// <param name="role">The role, or null for any.</param>
    internal double? Straightest(EdgeRole? role)
    {
        double? best = null;
        double bend = double.PositiveInfinity;
        double longest = 0;
        for (int i = 0; i < _track.Contour.SegmentCount; i++)
        {
            if (role is { } wanted && (_roles[i] != wanted || !_track.Contour[i].IsLine))
            {
                continue;
            }

            double curvature = Math.Round(Math.Abs(_track.Contour[i].Curvature), 9);
            foreach ((double from, double to) in Clear(_track.StartOf(i), _track.StartOf(i) + _track.Contour[i].Length))
            {
                LongestRoom = Math.Max(LongestRoom, to - from);
                if (to - from >= _needed && (curvature < bend || (curvature == bend && to - from > longest + 1e-9)))
                {
                    (best, bend, longest) = ((from + to) / 2, curvature, to - from);
                }
            }
        }

        return best;
    }

    /// <summary>
    /// The middle of the longest clear stretch of track that runs on smoothly, whatever it is made of: for an edge that was fitted with many short arcs, none of them long enough. Null
    /// when none is long enough.
    /// </summary>
    internal double? Smoothest()
    {
        Contour track = _track.Contour;
        int[] breaks = [.. Enumerable.Range(0, track.SegmentCount).Where(i => BreaksBefore(track, i))];
        (double From, double To)[] stretches = breaks.Length == 0
            ? [(-_corner, _track.Length + _corner)]
            : [.. breaks.Select((b, k) => (_track.StartOf(b), _track.StartOf(breaks[(k + 1) % breaks.Length]) + (k + 1 < breaks.Length ? 0 : _track.Length)))];
        double? best = null;
        double longest = 0;
        foreach ((double from, double to) in stretches.SelectMany(s => Clear(s.From, s.To)))
        {
            LongestRoom = Math.Max(LongestRoom, to - from);
            if (to - from >= _needed && to - from > longest + 1e-9)
            {
                (best, longest) = ((from + to) / 2 % _track.Length, to - from);
            }
        }

        return best;
    }

    // Where the track turns, or goes about a corner of the piece, it does not run on.
    private bool BreaksBefore(Contour track, int index)
    {
        Segment before = track[(index + track.SegmentCount - 1) % track.SegmentCount];
        Segment after = track[index];
        return IsTurn(before) || IsTurn(after) || before.DirectionAt(1).Dot(after.DirectionAt(0)) < Smooth;
    }

    private bool IsTurn(Segment s) => !s.IsLine && Math.Abs(s.Radius - _radius) <= 1e-6 && Math.Abs(s.Sweep) >= Bluntest;

    // Turning about an outside corner the track is an arc of the bit's radius: it turns as the track does round a piece, and the other way within an opening.
    private IEnumerable<TrackCorner> AllCorners()
    {
        Contour track = _track.Contour;
        bool left = track.IsCounterClockwise != _within;
        for (int i = 0; i < track.SegmentCount; i++)
        {
            Segment turn = track[i];
            if (turn.IsLine || turn.Bulge > 0 != left || Math.Abs(turn.Radius - _radius) > 1e-6 || Math.Abs(turn.Sweep) < Bluntest || Math.Abs(turn.Sweep) > Sharpest)
            {
                continue;
            }

            int before = (i + track.SegmentCount - 1) % track.SegmentCount;
            int after = (i + 1) % track.SegmentCount;
            double arrives = _track.StartOf(i);
            yield return new TrackCorner(
                arrives,
                arrives + turn.Length,
                (_roles[before] == EdgeRole.Free ? 1 : 0) + (_roles[after] == EdgeRole.Free ? 1 : 0),
                Math.Min(track[before].Length, track[after].Length));
        }
    }

    private List<(double From, double To)> Blocks() => [.. _taken, .. AllCorners().Select(c => (c.Arrives, c.Leaves))];

    private bool Overlaps((double From, double To) block, double from, double to)
    {
        // On a closed track a stretch may lie a lap away.
        for (int lap = -1; lap <= 1; lap++)
        {
            double shift = lap * _track.Length;
            if (from < block.To + shift && to > block.From + shift)
            {
                return true;
            }
        }

        return false;
    }

    // Stretches between two distances that stay clear of tabs, and of the segment's own ends by a diameter.
    private IEnumerable<(double From, double To)> Clear(double start, double end)
    {
        double from = start + _corner;
        end -= _corner;
        foreach ((double a, double b) in _taken
            .SelectMany(t => new[] { -1, 0, 1 }.Select(lap => (t.From + (lap * _track.Length), t.To + (lap * _track.Length))))
            .Where(t => t.Item2 > start && t.Item1 < end)
            .Order())
        {
            yield return (from, Math.Min(a, end));
            from = Math.Max(from, b);
        }

        yield return (from, end);
    }

    private static EdgeRole RoleBeside(PlacedContour placed, Point2 p)
    {
        int best = 0;
        double least = double.PositiveInfinity;
        for (int i = 0; i < placed.Contour.SegmentCount; i++)
        {
            double d = placed.Contour[i].Distance(p);
            if (d < least)
            {
                (least, best) = (d, i);
            }
        }

        return placed.Placed.Piece.Roles[placed.Fitted.CurveOf[best]];
    }
}
