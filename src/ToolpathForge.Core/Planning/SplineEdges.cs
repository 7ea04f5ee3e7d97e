using ToolpathForge.Geometry;
using ToolpathForge.Proof;

namespace ToolpathForge.Planning;

/// <summary>Says a spline in the proof's terms: one rational cubic a piece, with lower degrees raised, which changes nothing of the curve.</summary>
internal static class SplineEdges
{
    /// <summary>The highest degree that can be said so.</summary>
    internal const int HighestDegree = 3;

    /// <summary>The edges of a spline, in order.</summary>
    /// <param name="spline">Of degree 1 to <see cref="HighestDegree"/>.</param>
    /// <param name="cut">Whether the program has to free it.</param>
    internal static IEnumerable<TargetEdge> Of(SplineCurve spline, bool cut)
    {
        foreach (BezierPiece piece in spline.Pieces)
        {
            // Weighted coordinates (x·w, y·w, w), in which raising the degree is the same for polynomial and rational pieces.
            (double X, double Y, double W)[] poles =
                [.. Enumerable.Range(0, piece.X.Degree + 1).Select(i => (piece.X[i], piece.Y[i], piece.IsRational ? piece.W[i] : 1.0))];
            while (poles.Length <= HighestDegree)
            {
                poles = Raised(poles);
            }

            PlanePoint At(int i) => new(poles[i].X / poles[i].W, poles[i].Y / poles[i].W);
            yield return new CubicEdge(At(0), At(1), At(2), At(3), poles[0].W, poles[1].W, poles[2].W, poles[3].W, cut);
        }
    }

    // Pole i of degree n + 1 lies between poles i - 1 and i of degree n, by the share i/(n + 1) (any text on Bézier curves).
    private static (double X, double Y, double W)[] Raised((double X, double Y, double W)[] poles)
    {
        var raised = new (double X, double Y, double W)[poles.Length + 1];
        for (int i = 0; i < raised.Length; i++)
        {
            double share = (double)i / poles.Length;
            (double X, double Y, double W) low = i > 0 ? poles[i - 1] : default;
            (double X, double Y, double W) high = i < poles.Length ? poles[i] : default;
            raised[i] = ((share * low.X) + ((1 - share) * high.X), (share * low.Y) + ((1 - share) * high.Y), (share * low.W) + ((1 - share) * high.W));
        }

        return raised;
    }
}
