using System.Globalization;
using ToolpathForge.Catalogue;
using ToolpathForge.Clampings;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;
using ToolpathForge.Pieces;

namespace ToolpathForge.Cutting;

/// <summary>
/// Cuts a hole or a slot through a piece. One as wide as the bit is drilled in pecks, or cut along its centre line to and fro. A wider one is bored:
/// a helix round the middle, rings outwards so that no core is left to come loose, and a last round to size at full depth.
/// </summary>
internal static class OpeningCut
{
    /// <summary>An opening no more than this wider than the bit is drilled or cut along its middle, mm (common practice: what a bit runs out anyway).</summary>
    internal const double AsWideAsTheBit = 0.05;

    /// <summary>A ring may not lie further from the next, and the first from the middle, as a share of the diameter: that of a drawn hole.</summary>
    private const double StepOver = HoleCut.StepOver;

    private const double Skim = 0.5;
    private const double Overlap = 2;

    /// <summary>Cuts one opening of a placed piece.</summary>
    /// <exception cref="InvalidOperationException">A drawn hole whose track the checks have not vouched for.</exception>
    internal static void Add(MoveList moves, List<Run> runs, Opening opening, Placement placement, string of, CutSettings s, StockOnBed stock, bool climb)
    {
        Point2 from = placement.Apply(opening.From);
        Point2 to = placement.Apply(opening.To);
        double finish = (opening.Width - opening.Bit.Diameter) / 2;
        string name = string.Create(CultureInfo.InvariantCulture, $"{(opening.IsHole ? "Hole" : "Slot")} {opening.Name} {of}");
        moves.Run = runs.Count;
        if (opening.Edge is not null)
        {
            name = $"Hole {opening.Name} {of}";
            runs.Add(new Run(RunKind.Opening, name, s.Steps[^1], s.Feed, climb, "From the middle outwards to chips, so that no core comes loose; then once round to size."));
            if (!HoleCut.Add(moves, ArcFit.Quick(OpeningOutline.Exact(opening, placement), HoleCut.Fit).Contour, opening.Bit, s, stock, climb))
            {
                throw new InvalidOperationException("A hole has no track that could be vouched for.");
            }
        }
        else if (finish > AsWideAsTheBit / 2)
        {
            runs.Add(new Run(RunKind.Opening, name, s.Steps[^1], s.Feed, climb, "Round the middle and outwards to chips, so that no core comes loose; then once round to size."));
            Bore(moves, from, to, finish, opening.Bit, s, stock, climb);
        }
        else if (opening.IsHole)
        {
            runs.Add(new Run(RunKind.Opening, name, s.Steps[^1], s.Plunge, climb, "Drilled: the bit is as wide as the hole. It comes up to clear its chips."));
            Drill(moves, from, s, stock, opening.Bit);
        }
        else
        {
            runs.Add(new Run(RunKind.Opening, name, s.Steps[^1], s.SlotFeed, climb, "To and fro along the middle, down a ramp: the bit is as wide as the slot."));
            Furrow(moves, from, to, s, stock);
        }

        moves.Retract();
        moves.Run = -1;
    }

    private static void Drill(MoveList moves, Point2 at, CutSettings s, StockOnBed stock, Bit bit)
    {
        double reached = stock.Top + Skim;
        moves.TravelTo(at);
        foreach (double depth in CutSettings.EvenSteps(s.Steps[^1], Math.Min(bit.Diameter, s.PassLimit)))
        {
            moves.RapidTo(Math.Min(moves.At.Z, reached + Skim));
            moves.Descend(stock.Top - depth, s.Plunge);
            moves.Retract();
            reached = stock.Top - depth;
        }
    }

    private static void Furrow(MoveList moves, Point2 from, Point2 to, CutSettings s, StockOnBed stock)
    {
        var there = new Segment(from, to);
        double slope = Math.Tan(s.RampAngle * Math.PI / 180);
        double z = stock.Top + Skim;
        bool atStart = true;
        moves.TravelTo(from);
        moves.Descend(z, s.Plunge);
        foreach (double depth in s.Steps)
        {
            double level = stock.Top - depth;
            while (z > level)
            {
                z = Math.Max(level, z - (there.Length * slope));
                moves.Along(atStart ? there : there.Reversed, z, s.RampFeed, Purpose.Ramp);
                atStart = !atStart;
            }

            // The slope that the last leg left is taken off on the way back.
            moves.Along(atStart ? there : there.Reversed, z, s.SlotFeed, Purpose.Finish);
            atStart = !atStart;
        }
    }

    private static void Bore(MoveList moves, Point2 from, Point2 to, double finish, Bit bit, CutSettings s, StockOnBed stock, bool climb)
    {
        // A ring hardly wider than the helix has no room for an allowance.
        double allowance = finish > 0.5 ? Math.Min(s.Allowance, finish * 0.2) : 0;
        double outermost = finish - allowance;
        double first = Math.Min(outermost, StepOver * bit.Diameter);
        int more = (int)Math.Ceiling(((outermost - first) / (StepOver * bit.Diameter)) - 1e-9);
        double Distance(int ring) => more == 0 ? first : first + ((outermost - first) * ring / more);

        PathRuler Ring(double distance)
        {
            Contour ring = OpeningOutline.Ring(from, to, distance);

            // Inside an opening, climbing goes counter-clockwise.
            return new PathRuler(climb ? ring : ring.Reversed());
        }

        moves.InnerRadius = bit.Radius;
        double slope = Math.Tan(s.RampAngle * Math.PI / 180);
        double z = stock.Top + Skim;
        PathRuler inner = Ring(first);
        moves.TravelTo(inner.PointAt(0));
        moves.Descend(z, s.Plunge);
        double at = 0;
        foreach (double depth in s.Steps)
        {
            double level = stock.Top - depth;
            double ramp = (z - level) / slope;
            moves.Along(inner, at, at + ramp, HeightProfile.Through((at, z), (at + ramp, level)), (s.Feed, Purpose.Rough), (s.RampFeed, Purpose.Ramp));
            moves.Along(inner, at + ramp, at + ramp + inner.Length, HeightProfile.Level(level), (s.SlotFeed, Purpose.Rough), (s.RampFeed, Purpose.Ramp));
            at += ramp;
            for (int ring = 1; ring <= more; ring++)
            {
                PathRuler next = Ring(Distance(ring));
                double start = next.Nearest(moves.At.Flat);
                moves.Along(new Segment(moves.At.Flat, next.PointAt(start)), level, s.SlotFeed, Purpose.Rough);
                moves.Along(next, start, start + next.Length, HeightProfile.Level(level), (s.Feed, Purpose.Rough), (s.RampFeed, Purpose.Ramp));
            }

            z = level;
            if (more > 0 && depth < s.Steps[^1])
            {
                moves.Along(new Segment(moves.At.Flat, inner.PointAt(at)), level, s.Feed, Purpose.Rough);
            }
        }

        // An arc of half the ring's own radius fits inside it anywhere, in the round ends of a slot as well.
        Finish(moves, Ring(finish), Ring(outermost), s, stock, allowance, Math.Min(bit.Diameter, finish / 2), climb);
        moves.InnerRadius = 0;
    }

    // From the roughed ring to the finished one on an arc that touches it, once round and a little, and off the same way.
    private static void Finish(
        MoveList moves, PathRuler path, PathRuler roughed, CutSettings s, StockOnBed stock, double allowance, double lead, bool climb)
    {
        double start = path.Contour.SegmentCount > 2 ? path.StartOf(0) + (path.Contour[0].Length / 2) : 0;
        foreach (double depth in s.FinishDepths)
        {
            double level = stock.Top - depth;
            double end = start + path.Length + Math.Min(Overlap, path.Length / 4);
            if (allowance > 0)
            {
                Segment onto = SlotLead.Leaving(path, start, forward: false, wasteOnRight: climb, allowance, lead).Reversed;
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
                moves.Along(SlotLead.Leaving(path, end, forward: true, wasteOnRight: !climb, allowance, lead), level, s.Feed, Purpose.LeadOut);
            }

            moves.Retract();
        }
    }
}
