using ToolpathForge.Geometry;

namespace ToolpathForge.Nesting;

/// <summary>From here to there along a row, mm.</summary>
internal readonly record struct Span(double From, double To);

/// <summary>
/// A region seen in rows of equal height: what it covers in each row, told a little too large and never too small. Where no spans of two regions
/// overlap in any row, the regions have no point in common. Holds for lines and arcs as they are; nothing is cut into chords.
/// </summary>
internal sealed class RowSpans
{
    /// <summary>Added to every span on both sides against rounding, mm.</summary>
    private const double Rounding = 1e-9;

    private readonly Span[][] _rows;

    private RowSpans(Span[][] rows, int first, Box2 box) => (_rows, First, Box) = (rows, first, box);

    /// <summary>Number of the lowest row: row i reaches from i to i + 1 times the height.</summary>
    internal int First { get; }

    /// <summary>How many rows.</summary>
    internal int Count => _rows.Length;

    /// <summary>The region's box.</summary>
    internal Box2 Box { get; }

    /// <summary>What is covered in a row, from the left, without overlaps.</summary>
    /// <param name="row">From 0 at <see cref="First"/>.</param>
    internal Span[] this[int row] => _rows[row];

    /// <summary>Looks at a region.</summary>
    /// <param name="region">Not empty.</param>
    /// <param name="height">Of a row, more than 0, mm.</param>
    /// <param name="base">Where row 0 begins.</param>
    internal static RowSpans Of(Region region, double height, double @base)
    {
        Box2 box = region.Box;
        int first = (int)Math.Floor((box.MinY - @base - Rounding) / height);
        int count = (int)Math.Ceiling((box.MaxY - @base + Rounding) / height) - first;
        var spans = new List<Span>[count];
        var crossings = new List<(double X, int Way)>[count];
        for (int i = 0; i < count; i++)
        {
            (spans[i], crossings[i]) = ([], []);
        }

        foreach (Contour loop in region.Loops)
        {
            for (int i = 0; i < loop.SegmentCount; i++)
            {
                Add(loop[i], @base + (first * height), height, spans, crossings);
            }
        }

        var rows = new Span[count][];
        for (int i = 0; i < count; i++)
        {
            AddInside(crossings[i], spans[i]);
            rows[i] = Merged(spans[i]);
        }

        return new RowSpans(rows, first, box);
    }

    /// <summary>Spans as few as can be, from the left.</summary>
    internal static Span[] Merged(List<Span> spans)
    {
        spans.Sort((a, b) => a.From != b.From ? a.From.CompareTo(b.From) : a.To.CompareTo(b.To));
        var merged = new List<Span>(spans.Count);
        foreach (Span span in spans)
        {
            if (merged.Count > 0 && span.From <= merged[^1].To)
            {
                merged[^1] = new Span(merged[^1].From, Math.Max(merged[^1].To, span.To));
            }
            else
            {
                merged.Add(span);
            }
        }

        return [.. merged];
    }

    // An arc is taken in parts that only rise or only fall.
    private static void Add(Segment segment, double bottom, double height, List<Span>[] spans, List<(double X, int Way)>[] crossings)
    {
        if (segment.IsLine)
        {
            AddRising(segment, default, 0, bottom, height, spans, crossings);
            return;
        }

        Point2 center = segment.Center;
        double radius = segment.Radius;
        Span<double> cuts = [0, 1, 1, 1];
        int count = 1;
        foreach (int sign in (ReadOnlySpan<int>)[1, -1])
        {
            var pole = new Point2(0, sign);
            if (segment.SpansDirection(pole))
            {
                Point2 from = segment.Start - center;
                double turned = Math.Abs(Math.Atan2(from.Cross(pole), from.Dot(pole)));
                double share = turned / Math.Abs(segment.Sweep);
                if (share > 1e-12 && share < 1 - 1e-12)
                {
                    cuts[count++] = share;
                }
            }
        }

        cuts[..count].Sort();
        for (int i = 0; i < count; i++)
        {
            AddRising(segment.Part(cuts[i], i + 1 < count ? cuts[i + 1] : 1), center, radius, bottom, height, spans, crossings);
        }
    }

    // A part that rises or falls all along: in each row between the points where it enters and leaves, and the side of its circle if that is there.
    private static void AddRising(
        Segment part, Point2 center, double radius, double bottom, double height, List<Span>[] spans, List<(double X, int Way)>[] crossings)
    {
        bool rises = part.End.Y > part.Start.Y;
        Point2 low = rises ? part.Start : part.End;
        Point2 high = rises ? part.End : part.Start;
        Point2 middle = part.PointAt(0.5);
        double side = radius == 0 ? 0 : Math.Sign(middle.X - center.X);
        int from = Math.Clamp((int)Math.Floor((low.Y - Rounding - bottom) / height), 0, spans.Length - 1);
        int to = Math.Clamp((int)Math.Floor((high.Y + Rounding - bottom) / height), 0, spans.Length - 1);
        double At(double y)
        {
            if (y <= low.Y)
            {
                return low.X;
            }

            if (y >= high.Y)
            {
                return high.X;
            }

            if (radius == 0)
            {
                return low.X + ((high.X - low.X) * (y - low.Y) / (high.Y - low.Y));
            }

            double up = y - center.Y;
            return center.X + (side * Math.Sqrt(Math.Max(0, (radius * radius) - (up * up))));
        }

        for (int row = from; row <= to; row++)
        {
            double y0 = bottom + (row * height);
            double a = At(y0 - Rounding);
            double b = At(y0 + height + Rounding);
            double least = Math.Min(a, b);
            double most = Math.Max(a, b);
            if (side != 0 && center.Y > Math.Max(y0 - Rounding, low.Y) && center.Y < Math.Min(y0 + height + Rounding, high.Y))
            {
                least = Math.Min(least, center.X + (side * radius));
                most = Math.Max(most, center.X + (side * radius));
            }

            // A shallow arc's centre is known to fewer digits than its ends.
            double slack = Rounding + (radius * 1e-14);
            spans[row].Add(new Span(least - slack, most + slack));
            double half = y0 + (height / 2);
            if (low.Y <= half && half < high.Y)
            {
                crossings[row].Add((At(half), rises ? 1 : -1));
            }
        }
    }

    // What lies inside along the row's middle: every point of the row that no edge passes lies straight above or below some of it.
    private static void AddInside(List<(double X, int Way)> crossings, List<Span> spans)
    {
        crossings.Sort((a, b) => a.X != b.X ? a.X.CompareTo(b.X) : a.Way.CompareTo(b.Way));
        int winding = 0;
        for (int i = 0; i + 1 < crossings.Count; i++)
        {
            winding -= crossings[i].Way;
            if (winding > 0)
            {
                spans.Add(new Span(crossings[i].X, crossings[i + 1].X));
            }
        }
    }
}
