using System.Collections.Immutable;
using ToolpathForge.Catalogue;
using ToolpathForge.Clampings;
using ToolpathForge.Geometry;

namespace ToolpathForge.Cutting;

/// <summary>
/// Cuts a hole of any outline to chips, so that no core comes loose: rings from the middle outwards at each depth, each no further from the last than the bit takes
/// with it, and a last round to size. Where rings fall into several parts (the two lobes of a waist), each part is cut from its own middle before the ring that surrounds them.
/// </summary>
internal static class HoleCut
{
    /// <summary>A ring may not lie further from the next, as a share of the diameter (common practice): less than a half leaves no core.</summary>
    internal const double StepOver = 0.45;

    /// <summary>Innermost rings shorter than this share of the diameter are left out: the ring around them takes what they would (judgment).</summary>
    private const double LeastRing = 0.3;

    /// <summary>How exactly an edge is taken, mm; edges of drawings are lines and arcs already and stay as they are.</summary>
    internal const double Fit = 1e-3;

    private const double Skim = 0.5;
    private const double Overlap = 2;

    /// <summary>The track that finishes a hole; null where the bit does not get through all of it.</summary>
    /// <param name="edge">The hole's edge.</param>
    /// <param name="bit">The bit.</param>
    internal static Contour? Track(Contour edge, Bit bit) => Inside(edge, bit.Radius) is [var one] ? one : null;

    /// <summary>Cuts a hole; false when its rings could not be vouched for.</summary>
    /// <param name="moves">Takes the moves.</param>
    /// <param name="edge">The hole's edge on the bed.</param>
    /// <param name="bit">The bit.</param>
    /// <param name="s">Its numbers.</param>
    /// <param name="stock">What is cut.</param>
    /// <param name="climb">Which way round.</param>
    internal static bool Add(MoveList moves, Contour edge, Bit bit, CutSettings s, StockOnBed stock, bool climb)
    {
        if (Track(edge, bit) is not { } track)
        {
            return false;
        }

        // Where the allowance would part the ring, or leave none, roughing goes to the edge itself.
        double allowance = Inside(edge, bit.Radius + s.Allowance) is [var ring] && ring.Length >= LeastRing * bit.Diameter ? s.Allowance : 0;
        Contour outermost = allowance > 0 ? Inside(edge, bit.Radius + allowance)[0] : track;
        Ring tree = Ring.Of(outermost, edge, bit.Radius + allowance, StepOver * bit.Diameter, LeastRing * bit.Diameter, climb);
        moves.InnerRadius = bit.Radius;
        double from = stock.Top + Skim;
        foreach (double depth in s.Steps)
        {
            Rough(moves, tree, from, stock.Top - depth, s);
            moves.Retract();
            from = stock.Top - depth;
        }

        Finish(moves, Ruler(track, climb), tree.Path, edge, bit, s, stock, allowance, climb);
        moves.InnerRadius = 0;
        return true;
    }

    // What lies within comes first; from the last of it the way leads out to this ring without coming up.
    private static void Rough(MoveList moves, Ring ring, double from, double level, CutSettings s)
    {
        foreach (Ring inner in ring.Within)
        {
            Rough(moves, inner, from, level, s);
        }

        if (ring.Within.IsEmpty)
        {
            double slope = Math.Tan(s.RampAngle * Math.PI / 180);
            double ramp = (from - level) / slope;
            moves.TravelTo(ring.Path.PointAt(0));
            moves.Descend(from, s.Plunge);
            moves.Along(ring.Path, 0, ramp, HeightProfile.Through((0, from), (ramp, level)), (s.Feed, Purpose.Rough), (s.RampFeed, Purpose.Ramp));
            moves.Along(ring.Path, ramp, ramp + ring.Path.Length, HeightProfile.Level(level), (s.SlotFeed, Purpose.Rough), (s.RampFeed, Purpose.Ramp));
            return;
        }

        double start = ring.Path.Nearest(moves.At.Flat);
        moves.Along(new Segment(moves.At.Flat, ring.Path.PointAt(start)), level, s.SlotFeed, Purpose.Rough);
        moves.Along(ring.Path, start, start + ring.Path.Length, HeightProfile.Level(level), (s.Feed, Purpose.Rough), (s.RampFeed, Purpose.Ramp));
    }

    // Onto the edge on an arc that touches it, once round and a little, and off the same way.
    private static void Finish(
        MoveList moves, PathRuler path, PathRuler roughed, Contour edge, Bit bit, CutSettings s, StockOnBed stock, double allowance, bool climb)
    {
        int longest = Enumerable.Range(0, path.Contour.SegmentCount).MaxBy(i => path.Contour[i].Length);
        double start = path.StartOf(longest) + (path.Contour[longest].Length / 2);
        double end = start + path.Length + Math.Min(Overlap, path.Contour[longest].Length / 4);
        (Contour Edge, double Distance) clear = (edge, bit.Radius);
        foreach (double depth in s.FinishDepths)
        {
            double level = stock.Top - depth;
            if (allowance > 0)
            {
                Segment onto = SlotLead.Leaving(path, start, forward: false, wasteOnRight: climb, allowance, bit.Diameter, clear).Reversed;
                moves.TravelTo(roughed.PointAt(roughed.Nearest(onto.Start)));
                moves.Descend(level, s.Plunge);
                moves.Along(new Segment(moves.At.Flat, onto.Start), level, s.Feed, Purpose.LeadIn);
                moves.Along(onto, level, s.Feed, Purpose.LeadIn);
            }
            else
            {
                moves.TravelTo(path.PointAt(start));
                moves.Descend(level, s.Plunge);
            }

            moves.Along(path, start, end, HeightProfile.Level(level), (s.Feed, Purpose.Finish), (s.RampFeed, Purpose.Ramp));
            if (allowance > 0)
            {
                moves.Along(SlotLead.Leaving(path, end, forward: true, wasteOnRight: !climb, allowance, bit.Diameter, clear), level, s.Feed, Purpose.LeadOut);
            }

            moves.Retract();
        }
    }

    private static ImmutableArray<Contour> Inside(Contour edge, double distance) => [.. Offsetter.Closed(edge, -distance).Loops.Select(l => l.Contour)];

    // Inside a hole, climbing goes counter-clockwise.
    private static PathRuler Ruler(Contour ring, bool climb) => new(ring.IsCounterClockwise == climb ? ring : ring.Reversed());

    /// <summary>A ring and those next within it.</summary>
    private sealed record Ring(PathRuler Path, ImmutableArray<Ring> Within)
    {
        internal static Ring Of(Contour contour, Contour edge, double distance, double step, double least, bool climb)
        {
            // What is parallel to the edge and not to the ring before, so that errors do not add up.
            double next = distance + step;
            Contour[] inner = [.. Inside(edge, next).Where(c => c.Length >= least && contour.Contains(c.Start))];
            return new Ring(Ruler(contour, climb), [.. inner.Select(c => Of(c, edge, next, step, least, climb))]);
        }
    }
}
