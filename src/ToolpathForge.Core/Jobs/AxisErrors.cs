using ToolpathForge.Geometry;

namespace ToolpathForge.Jobs;

/// <summary>
/// How a machine's axes differ from what a program says: each axis by its scale, and Y by leaning from square. A commanded (x, y) comes to lie at
/// (sx·x + sy·y·sin φ, sy·y·cos φ): X stays X, and Y goes along its own, leaning, axis.
/// </summary>
/// <param name="ScaleX">True length for a commanded one along X; 1 for an axis that is right.</param>
/// <param name="ScaleY">The same along Y.</param>
/// <param name="Skew">How far the Y axis leans towards plus X, radians.</param>
public sealed record AxisErrors(double ScaleX, double ScaleY, double Skew)
{
    /// <summary>Most that an axis's scale may be off: more is a wrong setting of the controller, which is to be put right there.</summary>
    public const double MostScale = 0.01;

    /// <summary>Most that an axis may lean, radians, half a degree: more is to be squared at the frame.</summary>
    public const double MostSkew = Math.PI / 360;

    /// <summary>A machine whose axes are right.</summary>
    public static AxisErrors None { get; } = new(1, 1, 0);

    /// <summary>Where the bit comes to lie.</summary>
    /// <param name="commanded">Where the program sends it, mm.</param>
    public Point2 True(Point2 commanded) =>
        new((ScaleX * commanded.X) + (ScaleY * commanded.Y * Math.Sin(Skew)), ScaleY * commanded.Y * Math.Cos(Skew));

    /// <summary>Where a program must send the bit, so that it comes to lie at a point.</summary>
    /// <param name="meant">Where it is to lie, mm.</param>
    public Point2 Commanded(Point2 meant)
    {
        double y = meant.Y / (ScaleY * Math.Cos(Skew));
        return new((meant.X - (ScaleY * y * Math.Sin(Skew))) / ScaleX, y);
    }

    /// <summary>
    /// How much rounder than an ellipse a circle is no longer, as a share of its radius, from above: the radius of its image varies by no more than this to
    /// either side of a mean.
    /// </summary>
    internal double Ovalness => Math.Abs(ScaleX - ScaleY) + (2 * Math.Abs(Math.Sin(Skew)));
}
