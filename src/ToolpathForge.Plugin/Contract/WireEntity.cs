namespace ToolpathForge.Plugin.Contract;

/// <summary>
/// A line or curve in the plane, mm, X to the right and Y up, angles in degrees counter-clockwise from X. Its kind says which of the other properties it has: a
/// <c>line</c> from and to; an <c>arc</c> centre, radius, start and sweep; a <c>circle</c> centre and radius; an <c>ellipse</c> centre, major and ratio, and start and
/// sweep if it is not whole; a <c>polyline</c> points, bulges if any part is an arc, and closed; a <c>spline</c> degree, points and knots, and weights if it is rational.
/// </summary>
public sealed class WireEntity
{
    /// <summary><c>line</c>, <c>arc</c>, <c>circle</c>, <c>ellipse</c>, <c>polyline</c> or <c>spline</c>.</summary>
    public string Kind { get; set; } = "";

    /// <summary>The layer it lies on; absent for none.</summary>
    public string? Layer { get; set; }

    /// <summary>Where a line begins, X and Y.</summary>
    public double[]? From { get; set; }

    /// <summary>Where a line ends, X and Y.</summary>
    public double[]? To { get; set; }

    /// <summary>The centre of an arc, circle or ellipse, X and Y.</summary>
    public double[]? Centre { get; set; }

    /// <summary>The radius of an arc or circle, more than 0.</summary>
    public double? Radius { get; set; }

    /// <summary>From the centre of an ellipse to the end of one axis, X and Y.</summary>
    public double[]? Major { get; set; }

    /// <summary>The other semi-axis of an ellipse as a share of that one, more than 0.</summary>
    public double? Ratio { get; set; }

    /// <summary>Where an arc begins, degrees; of an ellipse its parameter there, counted from the axis that is given.</summary>
    public double? Start { get; set; }

    /// <summary>How far an arc or a part of an ellipse goes on, degrees, clockwise when negative; 360 at most.</summary>
    public double? Sweep { get; set; }

    /// <summary>The corners of a polyline, or the control points of a spline, X and Y each.</summary>
    public double[][]? Points { get; set; }

    /// <summary>One a corner of a polyline, the tangent of a quarter of the angle that the part after it turns, counter-clockwise when positive; absent when all are straight.</summary>
    public double[]? Bulges { get; set; }

    /// <summary>Whether a polyline goes on from its last corner to its first.</summary>
    public bool? Closed { get; set; }

    /// <summary>Degree of a spline, 1 to 7.</summary>
    public int? Degree { get; set; }

    /// <summary>Knots of a spline, never falling, degree and one more than its points.</summary>
    public double[]? Knots { get; set; }

    /// <summary>One a control point, more than 0; absent when all are 1.</summary>
    public double[]? Weights { get; set; }
}

/// <summary>A piece of the way of a bit's tip, seen from above.</summary>
public sealed class WirePathEntity
{
    /// <summary>Index of its program in the plan.</summary>
    public int Program { get; set; }

    /// <summary>Index of the stretch of passes that it belongs to, counted through its program.</summary>
    public int Pass { get; set; }

    /// <summary>What that stretch does, in the words of the shop.</summary>
    public string PassName { get; set; } = "";

    /// <summary>
    /// <c>travel</c>, <c>descend</c>, <c>ramp</c>, <c>lead-in</c>, <c>rough</c>, <c>finish</c>, <c>engrave</c>, <c>over-tab</c>, <c>lead-out</c> or <c>retract</c>. More may be added.
    /// </summary>
    public string Purpose { get; set; } = "";

    /// <summary>A layer to draw it on, one a purpose and stretch.</summary>
    public string Layer { get; set; } = "";

    /// <summary>Its way, from where it begins to where it ends: a line or an arc; absent where the bit only goes up or down.</summary>
    public WireEntity? Way { get; set; }

    /// <summary>Where it begins, X and Y in the program's own frame.</summary>
    public double[] At { get; set; } = [];

    /// <summary>Height of the tip where it begins, in the program's Z, mm.</summary>
    public double FromZ { get; set; }

    /// <summary>Height where it ends, mm.</summary>
    public double ToZ { get; set; }

    /// <summary><c>climb</c>, <c>conventional</c>, or absent where it is neither.</summary>
    public string? Cuts { get; set; }
}
