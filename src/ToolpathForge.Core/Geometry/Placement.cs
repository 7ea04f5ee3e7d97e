namespace ToolpathForge.Geometry;

/// <summary>
/// A rigid move between two frames: mirror in the Y axis (x → -x) if asked, then turn, then shift. The only way across frames.
/// </summary>
/// <param name="Turn">Counter-clockwise, radians.</param>
/// <param name="Shift">Where the origin goes, mm.</param>
/// <param name="Mirrored">Whether x is negated first: what turning a piece over about its Y axis does to its outline seen from above.</param>
public readonly record struct Placement(double Turn, Point2 Shift, bool Mirrored)
{
    /// <summary>Leaves everything where it is.</summary>
    public static Placement Identity => default;

    /// <summary>A shift alone.</summary>
    /// <param name="x">Along X, mm.</param>
    /// <param name="y">Along Y, mm.</param>
    public static Placement At(double x, double y) => new(0, new Point2(x, y), false);

    /// <summary>Carries a point across.</summary>
    /// <param name="p">The point in the first frame.</param>
    public Point2 Apply(Point2 p) => Direction(p) + Shift;

    /// <summary>Carries a direction across: mirrored and turned, not shifted.</summary>
    /// <param name="v">The vector in the first frame.</param>
    public Point2 Direction(Point2 v)
    {
        if (Mirrored)
        {
            v = new Point2(-v.X, v.Y);
        }

        // Quarter turns are exact, so that a square piece stays square to the last digit.
        return QuarterTurns() switch
        {
            0 => v,
            1 => v.Left,
            2 => -v,
            3 => v.Right,
            _ => v.Rotated(Turn),
        };
    }

    /// <summary>The move that first does <paramref name="inner"/>, then this one.</summary>
    /// <param name="inner">The move done first.</param>
    public Placement After(Placement inner)
    {
        // M·R(t) = R(-t)·M: a mirror that comes second turns the first rotation round.
        double turn = Mirrored ? Turn - inner.Turn : Turn + inner.Turn;
        return new Placement(turn, Apply(inner.Shift), Mirrored ^ inner.Mirrored);
    }

    /// <summary>The move back.</summary>
    public Placement Inverse()
    {
        // (R·M)^-1 = M·R(-t) = R(t)·M for a mirrored move, R(-t) otherwise.
        var back = new Placement(Mirrored ? Turn : -Turn, default, Mirrored);
        return back with { Shift = -back.Direction(Shift) };
    }

    private int QuarterTurns()
    {
        double quarters = Turn / (Math.PI / 2);
        double whole = Math.Round(quarters);
        if (Math.Abs(quarters - whole) > 1e-12)
        {
            return -1;
        }

        return (int)(((long)whole % 4) + 4) % 4;
    }
}
