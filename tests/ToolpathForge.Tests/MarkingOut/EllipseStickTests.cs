using CsCheck;
using ToolpathForge.Geometry;
using ToolpathForge.MarkingOut;

namespace ToolpathForge.Tests.MarkingOut;

/// <summary>The stick as the sheet tells it, laid on two edges and slid along, against the equation of the ellipse.</summary>
public class EllipseStickTests
{
    // Semi-axes of at most 800 mm: a dozen roundings of 1e-13 mm each, and the equation divides by squares of at least 100: 1e-9 is ample.
    private const double Near = 1e-9;

    private static readonly Gen<EllipseCurve> s_curves =
        from x in Gen.Double[-500, 500]
        from y in Gen.Double[-500, 500]
        from angle in Gen.Double[-4, 4]
        from major in Gen.Double[10, 800]
        from minor in Gen.Double[10, 800]
        from left in Gen.Bool
        from start in Gen.Double[-7, 7]
        from sweep in Gen.Double[0.2, 3]
        where Math.Abs(major - minor) > 1
        let axis = Point2.Direction(angle)
        select new EllipseCurve(new Point2(x, y), axis * major, (left ? axis.Left : axis.Right) * minor, start, sweep);

    // Only the three marks and the two edges are used: one guide is put anywhere, the other where the stick reaches its edge, the pencil where its mark is.
    [Fact]
    public void A_stick_slid_along_two_edges_draws_the_ellipse() => Gen.Select(s_curves, Gen.Double[-1, 1], Gen.Bool, Gen.Bool).Sample((curve, share, between, otherSide) =>
    {
        EllipseStick stick = EllipseStick.Of(curve);
        double apart = stick.GuidesApart(between);
        double onLong = apart * share;
        double onShort = Math.Sqrt((apart * apart) - (onLong * onLong)) * (otherSide ? -1 : 1);
        Point2 a = stick.Center + (stick.LongAxis.Unit() * onLong);
        Point2 b = stick.Center + (stick.ShortAxis.Unit() * onShort);
        Point2 along = (a - b) / apart;
        Point2 pencil = b + (along * stick.Long);
        Assert.Equal(stick.Short, pencil.DistanceTo(a), 1e-7);
        Assert.Equal(1, Equation(curve, pencil), Near);
    });

    [Fact]
    public void The_places_drawn_are_places_of_the_stick() => Gen.Select(s_curves, Gen.Double[0, 1], Gen.Bool).Sample((curve, t, between) =>
    {
        EllipseStick stick = EllipseStick.Of(curve);
        StickPlace place = stick.At(t, between);
        Assert.Equal(1, Equation(curve, place.Pencil), Near);
        Assert.Equal(stick.Long, place.Pencil.DistanceTo(place.OnShort), Near);
        Assert.Equal(stick.Short, place.Pencil.DistanceTo(place.OnLong), Near);
        Assert.Equal(stick.GuidesApart(between), place.OnLong.DistanceTo(place.OnShort), Near);
        Assert.Equal(0, (place.OnLong - stick.Center).Dot(stick.ShortAxis.Unit()), Near);
        Assert.Equal(0, (place.OnShort - stick.Center).Dot(stick.LongAxis.Unit()), Near);
    });

    // 7 1/2 by 4 1/4 in, pencil between: marks at 4 1/4 and 7 1/2, guides 11 3/4 apart; beyond: 3 1/4 apart.
    [Fact]
    public void The_sizes_of_a_stick_are_those_of_the_axes()
    {
        EllipseStick stick = EllipseStick.Of(new EllipseCurve(new Point2(190.5, 0), new Point2(-190.5, 0), new Point2(0, 107.95), 0, Math.PI / 2));
        Assert.Equal([7.5, 4.25, 11.75, 3.25], ((double[])[stick.Long, stick.Short, stick.GuidesApart(true), stick.GuidesApart(false)]).Select(s => Math.Round(s / 25.4, 9)));
        Assert.True(stick.LengthBetween > stick.GuidesApart(true) && stick.LengthBeyond > stick.Long);
    }

    private static double Equation(EllipseCurve curve, Point2 p)
    {
        double x = (p - curve.Center).Dot(curve.Major) / curve.Major.LengthSquared;
        double y = (p - curve.Center).Dot(curve.Minor) / curve.Minor.LengthSquared;
        return (x * x) + (y * y);
    }
}
