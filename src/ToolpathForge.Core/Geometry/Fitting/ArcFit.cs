using System.Collections.Immutable;

namespace ToolpathForge.Geometry;

/// <summary>
/// Turns exact curves into tangent-continuous lines and arcs within a tolerance.
/// <para>
/// Each curve is cut where its curvature turns round, so that what is left are spirals; a spiral is covered by biarcs whose joints lie on it, as few as
/// possible, with the deviation spread evenly. Lines and arcs pass through as they are. A spiral touches a circle and crosses it once more, so the distance
/// between it and an arc has one maximum, and that is found as a root: the bound is proven, not sampled.
/// </para>
/// </summary>
public static class ArcFit
{
    /// <summary>The finest tolerance that is taken, mm: ten times what counts as straight, a hundredth of the finest increment that any dialect writes.</summary>
    public const double FinestTolerance = 1e-6;

    /// <summary>What rounding does to a point that goes through curve, frame and bulge, as a share of its coordinates: some twenty roundings of 1.1e-16.</summary>
    private const double CoordinateRounding = 2e-15;

    /// <summary>Fits a whole outline. Where two of its curves meet without a corner, so do the arcs.</summary>
    /// <param name="outline">At least one curve; each begins where the one before ends.</param>
    /// <param name="tolerance">Largest distance allowed between outline and arcs, mm, at least <see cref="FinestTolerance"/>.</param>
    /// <returns>The lines and arcs, which curve each stands for, and the proven distance.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A tolerance that is too fine, or not a number.</exception>
    /// <exception cref="ArgumentException">Curves that do not meet, or nothing left but a point.</exception>
    public static FittedContour Fit(Outline outline, double tolerance) => Fit(outline, tolerance, isFewest: true);

    /// <summary>
    /// Lines and arcs that stand for an outline where a question is asked of it and nothing is made: within the tolerance as proven as ever, in a third of the
    /// time, but with more arcs than need be and the deviation as it comes.
    /// </summary>
    /// <inheritdoc cref="Fit(Outline, double)"/>
    internal static FittedContour Quick(Outline outline, double tolerance) => Fit(outline, tolerance, isFewest: false);

    private static FittedContour Fit(Outline outline, double tolerance, bool isFewest)
    {
        if (!(tolerance >= FinestTolerance && double.IsFinite(tolerance)))
        {
            throw new ArgumentOutOfRangeException(nameof(tolerance), tolerance, "The tolerance must be a length of at least 1e-6 mm.");
        }

        var vertices = new List<Vertex>();
        ImmutableArray<int>.Builder curveOf = ImmutableArray.CreateBuilder<int>();
        double bound = 0;
        Point2 end = outline.IsClosed ? outline.Curves[^1].End : outline.Curves[0].Start;
        for (int i = 0; i < outline.Curves.Length; i++)
        {
            ArcChain chain = FitWithin(outline.Curves[i], tolerance, isFewest);
            double gap = end.DistanceTo(outline.Curves[i].Start);
            if (!(gap <= Accuracy.SamePoint))
            {
                throw new ArgumentException(FormattableString.Invariant($"Curve {i} begins {gap} mm from where the one before ends."), nameof(outline));
            }

            foreach (Segment segment in chain.Segments)
            {
                vertices.Add(new Vertex(segment.Start, segment.Bulge));
                curveOf.Add(i);
            }

            end = outline.Curves[i].End;
            bound = Math.Max(bound, chain.Bound + gap);
        }

        if (!outline.IsClosed)
        {
            vertices.Add(new Vertex(end));
        }

        return new FittedContour(new Contour(System.Runtime.InteropServices.CollectionsMarshal.AsSpan(vertices), outline.IsClosed), curveOf.ToImmutable(), bound);
    }

    private static ArcChain FitWithin(Curve curve, double tolerance, bool isFewest)
    {
        ArcChain raw = FitCurve(curve, tolerance, isFewest);
        ArcChain chain = Settled(curve, raw);
        if (chain.Bound > tolerance)
        {
            // Only what settling adds can have done that: a fit that leaves room for it cannot go over again.
            chain = Settled(curve, FitCurve(curve, tolerance - (2 * (chain.Bound - raw.Bound)), isFewest));
        }

        return chain;
    }

    /// <summary>
    /// The ends become the curve's own to the last digit, arcs too shallow to be told from their chords become lines, and the bound takes in what that and rounding do.
    /// </summary>
    private static ArcChain Settled(Curve curve, ArcChain chain)
    {
        double shallow = 0;
        double moved = 0;
        double farthest = 0;
        Point2 at = curve.Start;
        var settled = new List<Segment>(chain.Segments.Count);
        for (int i = 0; i < chain.Segments.Count; i++)
        {
            // What is too short to have a direction is left out; its neighbour then begins where it began.
            Segment s = chain.Segments[i];
            bool last = i == chain.Segments.Count - 1;
            moved = Math.Max(moved, at.DistanceTo(s.Start));
            s = s with { Start = at, End = last ? curve.End : s.End };
            if (s.Chord <= Accuracy.SamePoint)
            {
                continue;
            }

            if (s.Bulge != 0 && s.IsLine)
            {
                shallow = Math.Max(shallow, s.Sagitta);
                s = new Segment(s.Start, s.End);
            }

            farthest = Math.Max(farthest, Math.Max(Math.Max(Math.Abs(s.Start.X), Math.Abs(s.Start.Y)), Math.Max(Math.Abs(s.End.X), Math.Abs(s.End.Y))));
            settled.Add(s);
            at = s.End;
        }

        if (settled.Count > 0)
        {
            moved = Math.Max(moved, at.DistanceTo(curve.End));
            settled[^1] = settled[^1] with { End = curve.End };
        }

        double rounding = curve is LineCurve or ArcCurve ? 0 : farthest * CoordinateRounding;
        return new ArcChain(settled, chain.Bound + shallow + moved + rounding);
    }

    private static ArcChain FitCurve(Curve curve, double tolerance, bool isFewest) => curve switch
    {
        LineCurve line => ArcChain.Exact(new Segment(line.From, line.To)),
        ArcCurve arc => Whole(arc),
        EllipseCurve ellipse => EllipseFit.Fit(ellipse, tolerance, isFewest),
        SplineCurve spline => SplineFit.Fit(spline, tolerance),
        _ => throw new ArgumentException($"No fit for a {curve.GetType().Name}.", nameof(curve)),
    };

    /// <summary>An arc as it is; more than half a turn in equal parts, because a segment holds at most half a turn.</summary>
    private static ArcChain Whole(ArcCurve arc)
    {
        // The last bit of a half turn that came out of a subtraction does not make it two arcs.
        int parts = Math.Max(1, (int)Math.Ceiling((Math.Abs(arc.Sweep) / Math.PI) - 1e-12));
        double bulge = Math.Clamp(Math.Tan(arc.Sweep / parts / 4), -1, 1);
        var segments = new Segment[parts];
        Point2 at = arc.Start;
        for (int i = 0; i < parts; i++)
        {
            Point2 to = arc.PointAt((i + 1) / (double)parts);
            segments[i] = new Segment(at, to, bulge);
            at = to;
        }

        return ArcChain.Exact(segments);
    }
}
