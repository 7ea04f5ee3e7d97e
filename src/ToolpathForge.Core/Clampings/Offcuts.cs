using System.Collections.Immutable;
using ToolpathForge.Geometry;
using ToolpathForge.Nesting;

namespace ToolpathForge.Clampings;

/// <summary>
/// The rectangles of a blank that are worth keeping when its pieces are out: the largest that no track enters, then the largest of what is left, and
/// so on. The blank is seen in rows, in which a piece and its track cover a little more than they do and never less, so an offcut may turn out a row
/// or two too small, and is whole wood all over.
/// </summary>
public static class Offcuts
{
    /// <summary>Strips narrower than this are not worth keeping, mm: a blank for the smallest pattern (common practice).</summary>
    public const double Least = 60;

    // The blank's rows are this high, mm; of a very wide blank they are 1/600 of its width.
    private const double RowHeight = 1;
    private const int MostRows = 600;

    /// <summary>The offcuts, the largest first, on the bed, mm; none of a board.</summary>
    /// <param name="clamping">What lies on the bed.</param>
    /// <param name="track">Room that the bit's track takes beside a piece, mm; at least 0.</param>
    public static ImmutableArray<Box2> Of(Clamping clamping, double track)
    {
        ArgumentNullException.ThrowIfNull(clamping);
        ArgumentOutOfRangeException.ThrowIfNegative(track);
        if (clamping.Make.Sheet is null)
        {
            return [];
        }

        Box2 stock = clamping.Stock.Box;
        double height = Math.Max(RowHeight, stock.Height / MostRows);
        List<Span>[] taken = [.. Enumerable.Range(0, (int)Math.Floor(stock.Height / height)).Select(_ => new List<Span>())];
        foreach (Placed placed in clamping.Pieces)
        {
            Take(taken, placed, stock.MinY, height, track);
        }

        var offcuts = ImmutableArray.CreateBuilder<Box2>();
        while (Largest(taken, stock, height) is { } found)
        {
            offcuts.Add(found.Box);
            for (int row = found.From; row < found.To; row++)
            {
                taken[row].Add(new Span(found.Box.MinX, found.Box.MaxX));
            }
        }

        return offcuts.ToImmutable();
    }

    // A square of twice the track round every point covers the round bit's way.
    private static void Take(List<Span>[] taken, Placed placed, double bottom, double height, double track)
    {
        var rows = RowSpans.Of(HeldWaste.Taken(placed.Piece, placed.Placement), height, bottom);
        double wide = track + TurnedLayout.Fit;
        int more = (int)Math.Ceiling(wide / height);
        for (int i = 0; i < rows.Count; i++)
        {
            int row = rows.First + i;
            for (int at = Math.Max(0, row - more); at <= Math.Min(taken.Length - 1, row + more); at++)
            {
                taken[at].AddRange(rows[i].Select(s => new Span(s.From - wide, s.To + wide)));
            }
        }
    }

    // Rows are added one by one to each first row; what stays free in all of them so far can only shrink.
    private static (Box2 Box, int From, int To)? Largest(List<Span>[] taken, Box2 stock, double height)
    {
        Span[][] rows = [.. taken.Select(RowSpans.Merged)];
        (Box2 Box, int From, int To)? best = null;
        double most = 0;
        for (int from = 0; from < rows.Length; from++)
        {
            List<Span> free = Free([new Span(stock.MinX, stock.MaxX)], rows[from]);
            for (int to = from + 1; free.Count > 0; to++)
            {
                double tall = (to - from) * height;
                foreach (Span span in free)
                {
                    double area = tall * (span.To - span.From);
                    if (tall >= Least && area > most + 1e-6)
                    {
                        most = area;
                        best = (new Box2(span.From, stock.MinY + (from * height), span.To, stock.MinY + (to * height)), from, to);
                    }
                }

                if (to == rows.Length)
                {
                    break;
                }

                free = Free(free, rows[to]);
            }
        }

        return best;
    }

    // What of the spans is free of the others, where it is wide enough to keep.
    private static List<Span> Free(List<Span> spans, Span[] taken)
    {
        var free = new List<Span>(spans.Count);
        foreach (Span span in spans)
        {
            double at = span.From;
            foreach (Span other in taken)
            {
                if (other.To <= at || other.From >= span.To)
                {
                    continue;
                }

                Add(free, at, other.From);
                at = other.To;
            }

            Add(free, at, span.To);
        }

        return free;
    }

    private static void Add(List<Span> free, double from, double to)
    {
        if (to - from >= Least)
        {
            free.Add(new Span(from, to));
        }
    }
}
