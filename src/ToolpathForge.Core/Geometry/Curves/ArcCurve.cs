namespace ToolpathForge.Geometry;

/// <summary>A circular arc, up to a full turn.</summary>
/// <param name="Center">The centre.</param>
/// <param name="Radius">More than 0, mm.</param>
/// <param name="StartAngle">Radians counter-clockwise from X.</param>
/// <param name="Sweep">Signed radians, positive counter-clockwise, at most a full turn.</param>
public sealed record ArcCurve(Point2 Center, double Radius, double StartAngle, double Sweep) : Curve
{
    /// <summary>
    /// The same as one segment; null where that is not exact in all respects: more than half a turn (the last bit of a half turn that came out of a subtraction aside), an arc too
    /// shallow to be told from its chord, or too short to have a direction.
    /// </summary>
    public Segment? AsSegment
    {
        get
        {
            if (Math.Abs(Sweep) > Math.PI * (1 + 1e-12))
            {
                return null;
            }

            var segment = new Segment(Start, End, Math.Clamp(Math.Tan(Sweep / 4), -1, 1));
            return segment.Chord <= Accuracy.SamePoint || segment.IsLine ? null : segment;
        }
    }

    /// <inheritdoc/>
    public override double Length => Radius * Math.Abs(Sweep);

    /// <inheritdoc/>
    public override Point2 PointAt(double t) => Center + (Turning.Direction(StartAngle + (Sweep * t)) * Radius);

    /// <inheritdoc/>
    public override Point2 FirstDerivative(double t) => Turning.Direction(StartAngle + (Sweep * t)).Left * (Radius * Sweep);

    /// <inheritdoc/>
    public override Point2 SecondDerivative(double t) => Turning.Direction(StartAngle + (Sweep * t)) * (-Radius * Sweep * Sweep);

    /// <inheritdoc/>
    public override Curve Reversed() => new ArcCurve(Center, Radius, StartAngle + Sweep, -Sweep);

    /// <inheritdoc/>
    public override Curve Placed(Placement placement)
    {
        Point2 first = placement.Direction(Point2.Direction(StartAngle));
        return new ArcCurve(placement.Apply(Center), Radius, first.Angle, placement.Mirrored ? -Sweep : Sweep);
    }
}
