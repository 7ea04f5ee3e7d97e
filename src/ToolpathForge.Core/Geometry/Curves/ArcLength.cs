using MathNet.Numerics.Integration;

namespace ToolpathForge.Geometry;

/// <summary>Length of a curve by adaptive Gauss-Kronrod quadrature of its speed.</summary>
internal static class ArcLength
{
    /// <summary>Asked of the quadrature, as a share of the length: a metre to a nanometre.</summary>
    private const double RelativeAccuracy = 1e-12;

    /// <summary>Halvings at a place where the speed changes at once, as at the tip of an all but flat ellipse.</summary>
    private const int DeepestHalving = 30;

    public static double Between(Func<double, Point2> derivative, double from, double to) =>
        GaussKronrodRule.Integrate(t => derivative(t).Length, from, to, out _, out _, RelativeAccuracy, DeepestHalving, 21);
}
