using System.Collections.Immutable;

namespace ToolpathForge.Geometry;

/// <summary>An exact curve with a direction: what a person drew or a formula gives, before any fitting. Parameter t runs from 0 to 1.</summary>
public abstract record Curve
{
    /// <summary>Where it begins.</summary>
    public Point2 Start => PointAt(0);

    /// <summary>Where it ends.</summary>
    public Point2 End => PointAt(1);

    /// <summary>The point at a parameter.</summary>
    /// <param name="t">0 the start, 1 the end. Not a share of the length.</param>
    public abstract Point2 PointAt(double t);

    /// <summary>First derivative by the parameter, mm.</summary>
    /// <param name="t">0 to 1.</param>
    public abstract Point2 FirstDerivative(double t);

    /// <summary>Second derivative by the parameter, mm.</summary>
    /// <param name="t">0 to 1.</param>
    public abstract Point2 SecondDerivative(double t);

    /// <summary>The same curve walked the other way.</summary>
    public abstract Curve Reversed();

    /// <summary>The curve carried into another frame.</summary>
    /// <param name="placement">Where it goes.</param>
    public abstract Curve Placed(Placement placement);

    /// <summary>Signed curvature, 1/mm, positive when turning left: (x'y'' - y'x'')/|v|³.</summary>
    /// <param name="t">0 to 1.</param>
    public double CurvatureAt(double t)
    {
        Point2 d = FirstDerivative(t);
        double speed = d.Length;
        return d.Cross(SecondDerivative(t)) / (speed * speed * speed);
    }

    /// <summary>Unit direction of travel.</summary>
    /// <param name="t">0 to 1.</param>
    public Point2 DirectionAt(double t) => FirstDerivative(t).Unit();
}

/// <summary>A straight line between two points.</summary>
/// <param name="From">Where it begins.</param>
/// <param name="To">Where it ends.</param>
public sealed record LineCurve(Point2 From, Point2 To) : Curve
{
    /// <inheritdoc/>
    public override Point2 PointAt(double t) => From.Towards(To, t);

    /// <inheritdoc/>
    public override Point2 FirstDerivative(double t) => To - From;

    /// <inheritdoc/>
    public override Point2 SecondDerivative(double t) => default;

    /// <inheritdoc/>
    public override Curve Reversed() => new LineCurve(To, From);

    /// <inheritdoc/>
    public override Curve Placed(Placement placement) => new LineCurve(placement.Apply(From), placement.Apply(To));
}

/// <summary>A circular arc, up to a full turn.</summary>
/// <param name="Center">The centre.</param>
/// <param name="Radius">More than 0, mm.</param>
/// <param name="StartAngle">Radians counter-clockwise from X.</param>
/// <param name="Sweep">Signed radians, positive counter-clockwise, at most a full turn.</param>
public sealed record ArcCurve(Point2 Center, double Radius, double StartAngle, double Sweep) : Curve
{
    /// <inheritdoc/>
    public override Point2 PointAt(double t) => Center + (Point2.Direction(StartAngle + (Sweep * t)) * Radius);

    /// <inheritdoc/>
    public override Point2 FirstDerivative(double t) => Point2.Direction(StartAngle + (Sweep * t)).Left * (Radius * Sweep);

    /// <inheritdoc/>
    public override Point2 SecondDerivative(double t) => Point2.Direction(StartAngle + (Sweep * t)) * (-Radius * Sweep * Sweep);

    /// <inheritdoc/>
    public override Curve Reversed() => new ArcCurve(Center, Radius, StartAngle + Sweep, -Sweep);

    /// <inheritdoc/>
    public override Curve Placed(Placement placement)
    {
        Point2 first = placement.Direction(Point2.Direction(StartAngle));
        return new ArcCurve(placement.Apply(Center), Radius, first.Angle, placement.Mirrored ? -Sweep : Sweep);
    }
}

/// <summary>
/// A piece of an ellipse: centre + Major·cos(u) + Minor·sin(u), u from <paramref name="StartParameter"/> through <paramref name="Sweep"/>.
/// The parameter u is the eccentric angle, not the direction seen from the centre.
/// </summary>
/// <param name="Center">The centre.</param>
/// <param name="Major">One semi-axis as a vector, mm.</param>
/// <param name="Minor">The other semi-axis, square to the first; it may be the longer one, and may lie to either side.</param>
/// <param name="StartParameter">Radians.</param>
/// <param name="Sweep">Signed radians, at most a full turn.</param>
public sealed record EllipseCurve(Point2 Center, Point2 Major, Point2 Minor, double StartParameter, double Sweep) : Curve
{
    /// <inheritdoc/>
    public override Point2 PointAt(double t)
    {
        (double sin, double cos) = Math.SinCos(StartParameter + (Sweep * t));
        return Center + (Major * cos) + (Minor * sin);
    }

    /// <inheritdoc/>
    public override Point2 FirstDerivative(double t)
    {
        (double sin, double cos) = Math.SinCos(StartParameter + (Sweep * t));
        return ((Minor * cos) - (Major * sin)) * Sweep;
    }

    /// <inheritdoc/>
    public override Point2 SecondDerivative(double t)
    {
        (double sin, double cos) = Math.SinCos(StartParameter + (Sweep * t));
        return ((Major * cos) + (Minor * sin)) * (-Sweep * Sweep);
    }

    /// <inheritdoc/>
    public override Curve Reversed() => this with { StartParameter = StartParameter + Sweep, Sweep = -Sweep };

    /// <inheritdoc/>
    public override Curve Placed(Placement placement) =>
        new EllipseCurve(placement.Apply(Center), placement.Direction(Major), placement.Direction(Minor), StartParameter, Sweep);
}

/// <summary>A chain of exact curves, each beginning where the one before ends. It lives beside the fitted <see cref="Contour"/>.</summary>
/// <param name="Curves">At least one, in order.</param>
/// <param name="IsClosed">Whether the last ends where the first begins.</param>
public sealed record Outline(ImmutableArray<Curve> Curves, bool IsClosed)
{
    /// <summary>The outline carried into another frame.</summary>
    /// <param name="placement">Where it goes.</param>
    public Outline Placed(Placement placement) => new([.. Curves.Select(c => c.Placed(placement))], IsClosed);

    /// <summary>The same outline walked the other way.</summary>
    public Outline Reversed() => new([.. Curves.Reverse().Select(c => c.Reversed())], IsClosed);
}
