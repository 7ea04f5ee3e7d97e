using ToolpathForge.Geometry;

namespace ToolpathForge.Tests.Geometry.Offsets;

/// <summary>Offsets every variant of a closed shape and compares it with what the shape itself gives.</summary>
internal static class ClosedCase
{
    /// <summary>What the shape itself gives, once all variants agree with it.</summary>
    /// <param name="loops">The shape.</param>
    /// <param name="distance">mm.</param>
    /// <param name="area">What the area has to be, where a formula tells.</param>
    /// <param name="count">How many loops; -1 where loops touch in a point and may be told as one or as several.</param>
    /// <param name="leastScale">See <see cref="Variants.Of"/>.</param>
    /// <param name="join">Corners.</param>
    /// <param name="polygons">Whether to ask the polygon library too.</param>
    internal static OffsetResult Check(Contour[] loops, double distance, double area = double.NaN, int count = -1, double leastScale = 1e-3, JoinStyle join = JoinStyle.Round, bool polygons = true)
    {
        OffsetResult plain = Offsetter.Closed(Region.Of(loops), distance, join);
        Assert.True(plain.Unproven is null, "unproven as it stands");
        double expected = plain.ToRegion().Area;
        if (!double.IsNaN(area))
        {
            Assert.True(Math.Abs(expected - area) <= Allowed(loops, plain, 1), FormattableString.Invariant($"area {expected} instead of {area}"));
        }

        if (count >= 0)
        {
            Assert.Equal(count, plain.Loops.Length);
        }

        if (polygons && join == JoinStyle.Round)
        {
            Assert.Null(new PolygonOracle(Region.Of(loops), distance).Judge(plain.ToRegion()));
        }

        foreach (Variants.Variant variant in Variants.Of(loops, leastScale))
        {
            OffsetResult result = Offsetter.Closed(Region.Of(variant.Loops), distance * variant.Scale, join);
            Assert.True(result.Unproven is null, variant.Name + ": " + (result.Unproven is null ? "" : OffsetFuzzTests.Reason(result)));
            double found = result.ToRegion().Area;
            double wanted = expected * variant.Scale * variant.Scale;
            Assert.True(Math.Abs(found - wanted) <= Allowed(loops, plain, variant.Scale), FormattableString.Invariant($"{variant.Name}: area {found} instead of {wanted}"));
            if (count >= 0)
            {
                Assert.True(count == result.Loops.Length, variant.Name + ": " + result.Loops.Length + " loops");
            }

            foreach (OffsetLoop loop in result.Loops)
            {
                Assert.True(loop.Contour.IsClosed && loop.Origins.Length == loop.Contour.SegmentCount, variant.Name + ": an open loop");
            }
        }

        return plain;
    }

    // 1e-7 mm, which is what a shape may move when it lies far out, along everything that bounds input and result; and the digits of the area itself.
    private static double Allowed(Contour[] loops, OffsetResult result, double scale) =>
        (1e-7 * scale * (loops.Sum(static l => l.Length) + result.Loops.Sum(static l => l.Contour.Length)))
        + (1e-12 * scale * scale * Math.Abs(result.ToRegion().Area));
}
