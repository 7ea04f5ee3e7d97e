namespace ToolpathForge.Geometry;

/// <summary>A contour as exact curves: what it is made of is exact already.</summary>
public static class ContourCurves
{
    /// <summary>One line or arc for each segment.</summary>
    /// <param name="contour">Any contour.</param>
    public static Outline Of(Contour contour) => new(
        [
            .. Enumerable.Range(0, contour.SegmentCount).Select(i => contour[i]).Select<Segment, Curve>(s => s.IsLine
                ? new LineCurve(s.Start, s.End)
                : ArcCurve.Of(s)),
        ],
        contour.IsClosed);

    /// <summary>A contour as large as asked.</summary>
    /// <param name="contour">Any contour.</param>
    /// <param name="times">More than 0.</param>
    internal static Contour Scaled(Contour contour, double times) =>
        times == 1 ? contour : new Contour([.. contour.Vertices.ToArray().Select(v => new Vertex(v.Point * times, v.Bulge))], contour.IsClosed);
}
