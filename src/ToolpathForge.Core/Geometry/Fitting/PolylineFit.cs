using System.Collections.Immutable;

namespace ToolpathForge.Geometry;

/// <summary>Lines and arcs in place of a contour of many short chords.</summary>
/// <param name="Contour">The lines and arcs. Its corners are the input's.</param>
/// <param name="FirstVertex">For each of its segments, the vertex of the input at which the segment, or the pair of arcs it belongs to, begins.</param>
/// <param name="Bound">Proven largest distance between both, mm: no point of either lies farther from the other.</param>
public sealed record ArcsOfPolyline(Contour Contour, ImmutableArray<int> FirstVertex, double Bound);

/// <summary>
/// Makes arcs again of a curve that arrives as many short chords.
/// <para>
/// A corner stays a corner. A chord too long to be the chord of an arc within the tolerance stays a line, and so does every arc that is one already. What lies between is covered
/// by arcs that run from vertex to vertex, as long as they hold the tolerance; they meet each other and the lines without a corner.
/// </para>
/// </summary>
public static class PolylineFit
{
    /// <summary>A vertex that turns by more than this is a corner, radians (20°): an arc drawn with fewer than eighteen chords a turn is taken for a polygon.</summary>
    public const double CornerTurn = 20 * Math.PI / 180;

    /// <summary>Turns the chords of a contour into arcs where that can be done.</summary>
    /// <param name="contour">Any contour; segments that are arcs pass through.</param>
    /// <param name="tolerance">
    /// Largest distance allowed between chords and arcs, mm, at least <see cref="ArcFit.FinestTolerance"/>. It must hold what the chords departed from the curve they
    /// were cut from: chords of 0.05 mm sagitta are not turned back into arcs at 0.01.
    /// </param>
    /// <param name="cornerTurn">Vertices that turn by more are kept as corners, radians, more than 0 and below half a turn.</param>
    /// <exception cref="ArgumentOutOfRangeException">A tolerance or an angle that is not usable.</exception>
    public static ArcsOfPolyline Fit(Contour contour, double tolerance, double cornerTurn = CornerTurn)
    {
        if (!(tolerance >= ArcFit.FinestTolerance && double.IsFinite(tolerance)))
        {
            throw new ArgumentOutOfRangeException(nameof(tolerance), tolerance, "The tolerance must be a length of at least 1e-6 mm.");
        }

        if (!(cornerTurn is > 0 and < Math.PI))
        {
            throw new ArgumentOutOfRangeException(nameof(cornerTurn), cornerTurn, "The turn of a corner lies between none and half a turn.");
        }

        int count = contour.SegmentCount;
        bool[] stays = Staying(contour, tolerance, cornerTurn);
        bool[] breaks = new bool[count + 1];
        for (int i = 0; i <= count; i++)
        {
            bool end = !contour.IsClosed && (i == 0 || i == count);
            breaks[i] = end || stays[(i + count - 1) % count] || stays[i % count] || TurnAt(contour, i % count) > cornerTurn;
        }

        // A closed contour is read from a vertex where something begins anyway, if there is one.
        int start = Math.Max(0, Array.IndexOf(breaks, true, 0, count));
        var vertices = new List<Vertex>();
        ImmutableArray<int>.Builder first = ImmutableArray.CreateBuilder<int>();
        double bound = 0;
        for (int k = 0; k < count;)
        {
            int at = (start + k) % count;
            int length = 1;
            while (!stays[at] && k + length < count && !breaks[(at + length) % count])
            {
                length++;
            }

            IReadOnlyList<(Segment Segment, int First)> pieces = length == 1
                ? [(contour[at], 0)]
                : Run(contour, at, length, stays, cornerTurn).Fit(tolerance, out bound, bound);
            foreach ((Segment segment, int from) in pieces)
            {
                vertices.Add(new Vertex(segment.Start, segment.Bulge));
                first.Add((at + from) % count);
            }

            k += length;
        }

        if (!contour.IsClosed)
        {
            vertices.Add(new Vertex(contour.End));
        }

        return new ArcsOfPolyline(new Contour(System.Runtime.InteropServices.CollectionsMarshal.AsSpan(vertices), contour.IsClosed), first.ToImmutable(), bound);
    }

    private static double TurnAt(Contour contour, int vertex)
    {
        Segment before = contour[(vertex + contour.SegmentCount - 1) % contour.SegmentCount];
        return Math.Abs(Biarc.AngleBetween(before.EndDirection, contour[vertex].StartDirection));
    }

    /// <summary>Which segments stay as they are: arcs, and chords whose sagitta on the flatter of the circles through their neighbours is beyond the tolerance.</summary>
    private static bool[] Staying(Contour contour, double tolerance, double cornerTurn)
    {
        int count = contour.SegmentCount;
        var curvature = new double[count + 1];
        for (int i = 0; i <= count; i++)
        {
            bool end = !contour.IsClosed && (i == 0 || i == count);
            int before = (i + count - 1) % count;

            // An end or a corner bends nothing by itself: the other end of the chord decides.
            curvature[i] = end || TurnAt(contour, i % count) > cornerTurn
                ? double.NaN
                : ThroughThree(contour[before].Start, contour[i % count].Start, contour[i % count].End);
        }

        var stays = new bool[count];
        for (int i = 0; i < count; i++)
        {
            double a = curvature[i];
            double b = curvature[i + 1];
            double least = double.IsNaN(a) ? b : double.IsNaN(b) ? a : Math.Min(Math.Abs(a), Math.Abs(b));
            double chord = contour[i].Chord;
            stays[i] = !contour[i].IsLine || double.IsNaN(least) || chord * chord * Math.Abs(least) / 8 > tolerance;
        }

        return stays;
    }

    /// <summary>Signed curvature of the circle through three points, 1/mm: twice the sine of the angle between over the side opposite.</summary>
    private static double ThroughThree(Point2 a, Point2 b, Point2 c)
    {
        double product = a.DistanceTo(b) * b.DistanceTo(c) * c.DistanceTo(a);
        return product > 0 ? 2 * (b - a).Cross(c - b) / product : 0;
    }

    private static PolylineRun Run(Contour contour, int at, int length, bool[] stays, double cornerTurn)
    {
        int count = contour.SegmentCount;
        var points = new Point2[length + 1];
        for (int i = 0; i <= length; i++)
        {
            points[i] = i == length && !contour.IsClosed && at + length == count ? contour.End : contour[(at + i) % count].Start;
        }

        // Next to a segment that stays the run takes its direction, unless there is a corner between.
        int before = (at + count - 1) % count, after = (at + length) % count;
        bool fromStay = stays[before] && (contour.IsClosed || at > 0) && TurnAt(contour, at) <= cornerTurn;
        bool toStay = stays[after] && (contour.IsClosed || at + length < count) && TurnAt(contour, after) <= cornerTurn;
        bool loop = contour.IsClosed && length == count && TurnAt(contour, at) <= cornerTurn;
        return new PolylineRun(points, fromStay ? contour[before].EndDirection : null, toStay ? contour[after].StartDirection : null, loop);
    }
}
