using ToolpathForge.Clampings;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;
using ToolpathForge.Pieces;

namespace ToolpathForge.Cutting;

/// <summary>Engraves the marks of every piece: one light pass along each stroke, the nearest one next.</summary>
internal static class Engraving
{
    /// <summary>How far above the face the plunge feed begins, mm.</summary>
    private const double Skim = 1;

    /// <summary>Adds the strokes of all pieces of a clamping.</summary>
    internal static void Add(MoveList moves, List<Run> runs, Clamping clamping, CutSettings s)
    {
        Marking marks = clamping.Makes.Select(m => m.Marks).OfType<Marking>().First();
        double level = clamping.Stock.Top - marks.Depth;
        moves.Run = runs.Count;
        runs.Add(new Run(
            RunKind.Engraving, $"Engrave {string.Join(", ", clamping.Makes.Where(m => m.Marks is not null).Select(m => m.Id))}", marks.Depth, s.Feed, false, "One light pass along each stroke, while the blank is whole."));
        foreach (Placed placed in clamping.Pieces)
        {
            foreach (EngravedMark mark in placed.Piece.Marks)
            {
                foreach (Contour stroke in InOrder([.. mark.Strokes.Select(c => c.Placed(placed.Placement))], moves.At.Flat))
                {
                    moves.TravelTo(stroke.Start);
                    moves.RapidTo(clamping.Stock.Top + Skim);
                    moves.Descend(level, s.Plunge);
                    for (int i = 0; i < stroke.SegmentCount; i++)
                    {
                        moves.Along(stroke[i], level, s.Feed, Purpose.Engrave);
                    }
                }
            }
        }

        moves.Retract();
        moves.Run = -1;
    }

    // Nearest end first, an open stroke from whichever end that is; the first of equals, so that the order is settled.
    private static IEnumerable<Contour> InOrder(List<Contour> strokes, Point2 at)
    {
        while (strokes.Count > 0)
        {
            int best = 0;
            bool reversed = false;
            double least = double.PositiveInfinity;
            for (int i = 0; i < strokes.Count; i++)
            {
                double toStart = at.DistanceTo(strokes[i].Start);
                double toEnd = at.DistanceTo(strokes[i].End);
                double nearer = Math.Min(toStart, toEnd);
                if (nearer < least)
                {
                    (least, best, reversed) = (nearer, i, toEnd < toStart);
                }
            }

            Contour next = reversed ? strokes[best].Reversed() : strokes[best];
            strokes.RemoveAt(best);
            at = next.End;
            yield return next;
        }
    }
}
