namespace ToolpathForge.Measures;

/// <summary>The unit a job is written in. It is stated by the job, never guessed.</summary>
public enum LengthUnit
{
    /// <summary>Millimetres.</summary>
    Millimetre,

    /// <summary>Inches of exactly 25.4 mm.</summary>
    Inch,
}

/// <summary>A length as it crosses into or out of the program. Inside, a plain double in millimetres is used.</summary>
/// <param name="Millimetres">The length, mm.</param>
public readonly record struct Length(double Millimetres)
{
    /// <summary>Millimetres in an inch, exact by definition (international yard and pound agreement, 1959).</summary>
    public const double MillimetresPerInch = 25.4;

    /// <summary>A length given in inches.</summary>
    /// <param name="inches">The length in inches.</param>
    public static Length FromInches(double inches) => new(inches * MillimetresPerInch);

    /// <summary>The length in inches.</summary>
    public double Inches => Millimetres / MillimetresPerInch;

    /// <summary>The length in a unit.</summary>
    /// <param name="unit">Which unit.</param>
    public double In(LengthUnit unit) => unit == LengthUnit.Inch ? Inches : Millimetres;
}

/// <summary>A size as a person writes it: a length, or a share of the board's design width (<c>0.62 w</c>).</summary>
/// <param name="Amount">Millimetres, or the share.</param>
/// <param name="IsShare">Whether it is a share of the width.</param>
public readonly record struct Measure(double Amount, bool IsShare)
{
    /// <summary>A fixed length.</summary>
    /// <param name="millimetres">mm.</param>
    public static Measure Fixed(double millimetres) => new(millimetres, false);

    /// <summary>A share of the design width.</summary>
    /// <param name="share">1 is the whole width.</param>
    public static Measure Share(double share) => new(share, true);

    /// <summary>The length for a board of a given design width, mm.</summary>
    /// <param name="width">The design width, mm.</param>
    public double Resolve(double width) => IsShare ? Amount * width : Amount;
}

/// <summary>An angle.</summary>
/// <param name="Degrees">The angle in degrees.</param>
public readonly record struct Angle(double Degrees)
{
    /// <summary>The angle in radians.</summary>
    public double Radians => Degrees * Math.PI / 180;

    /// <summary>The angle whose tangent is rise over run.</summary>
    /// <param name="rise">Upwards.</param>
    /// <param name="run">Along, in the same unit, not 0.</param>
    public static Angle FromSlope(double rise, double run) => new(Math.Atan2(rise, run) * 180 / Math.PI);
}
