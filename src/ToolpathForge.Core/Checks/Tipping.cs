namespace ToolpathForge.Checks;

/// <summary>
/// Whether an overhanging board would tip the machine over. The board's weight acts at its middle; it turns about the edge of the bed, over which it hangs.
/// The machine's own weight acts at its middle and turns back about the same edge of its footprint. (Statics of a beam; half of what would tip is allowed,
/// by judgement: a board is also leaned on.)
/// </summary>
public static class Tipping
{
    /// <summary>Standard gravity, m/s².</summary>
    public const double Gravity = 9.80665;

    /// <summary>What share of the machine's own moment a board may use up.</summary>
    public const double Share = 0.5;

    /// <summary>Mass of a board, kg.</summary>
    /// <param name="density">kg/m³.</param>
    /// <param name="thickness">mm.</param>
    /// <param name="width">mm.</param>
    /// <param name="length">mm.</param>
    public static double Mass(double density, double thickness, double width, double length) => density * thickness * width * length * 1e-9;

    /// <summary>Moment of a board about the edge of the bed, N·m: m·g·(length/2 - on the bed); 0 for a board whose middle lies on the bed.</summary>
    /// <param name="mass">kg.</param>
    /// <param name="length">mm.</param>
    /// <param name="onBed">How much of its length lies on the bed, mm.</param>
    public static double Moment(double mass, double length, double onBed) => Math.Max(0, mass * Gravity * ((length / 2) - onBed) / 1000);

    /// <summary>Moment with which a machine stands against it, N·m: m·g·half the footprint.</summary>
    /// <param name="mass">kg.</param>
    /// <param name="halfFootprint">mm.</param>
    public static double Resists(double mass, double halfFootprint) => mass * Gravity * halfFootprint / 1000;
}
