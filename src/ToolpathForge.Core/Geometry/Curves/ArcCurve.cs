namespace ToolpathForge.Geometry;

/// <summary>A circular arc, up to a full turn.</summary>
/// <param name="Center">The centre.</param>
/// <param name="Radius">More than 0, mm.</param>
/// <param name="StartAngle">Radians counter-clockwise from X.</param>
/// <param name="Sweep">Signed radians, positive counter-clockwise, at most a full turn.</param>
public sealed record ArcCurve(Point2 Center, double Radius, double StartAngle, double Sweep) : Curve
{
    /// <summary>
    /// Its two ends, where they are known better than centre, radius and angle give them: on a shallow arc these are so large that their last digit moves an end by more than
    /// <see cref="Accuracy.SamePoint"/>, and the arc would no longer meet its neighbours. Null where centre and radius decide.
    /// </summary>
    public (Point2 Start, Point2 End)? Ends { get; init; }

    /// <summary>An arc by its ends and bulge, mm; it meets its neighbours to the last digit, however shallow it is.</summary>
    /// <param name="segment">An arc, not a line.</param>
    public static ArcCurve Of(Segment segment) =>
        new(segment.Center, segment.Radius, (segment.Start - segment.Center).Angle, segment.Sweep) { Ends = (segment.Start, segment.End) };

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
    public override Point2 PointAt(double t) => (Ends, t) switch
    {
        ({ } ends, 0) => ends.Start,
        ({ } ends, 1) => ends.End,
        _ => Center + (Turning.Direction(StartAngle + (Sweep * t)) * Radius),
    };

    /// <inheritdoc/>
    public override Point2 FirstDerivative(double t) => Turning.Direction(StartAngle + (Sweep * t)).Left * (Radius * Sweep);

    /// <inheritdoc/>
    public override Point2 SecondDerivative(double t) => Turning.Direction(StartAngle + (Sweep * t)) * (-Radius * Sweep * Sweep);

    /// <inheritdoc/>
    public override Curve Reversed() => new ArcCurve(Center, Radius, StartAngle + Sweep, -Sweep) { Ends = Ends is { } ends ? (ends.End, ends.Start) : null };

    /// <inheritdoc/>
    public override Curve Placed(Placement placement)
    {
        Point2 first = placement.Direction(Point2.Direction(StartAngle));
        return new ArcCurve(placement.Apply(Center), Radius, first.Angle, placement.Mirrored ? -Sweep : Sweep)
        {
            Ends = Ends is { } ends ? (placement.Apply(ends.Start), placement.Apply(ends.End)) : null,
        };
    }
}
