namespace ToolpathForge.Geometry;

/// <summary>An exact curve with a direction: what a person drew or a formula gives, before any fitting. Parameter t runs from 0 to 1.</summary>
public abstract record Curve
{
    /// <summary>Where it begins.</summary>
    public Point2 Start => PointAt(0);

    /// <summary>Where it ends.</summary>
    public Point2 End => PointAt(1);

    /// <summary>Length along the curve, mm.</summary>
    public virtual double Length => ArcLength.Between(FirstDerivative, 0, 1);

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
    public virtual Point2 DirectionAt(double t) => FirstDerivative(t).Unit();
}
