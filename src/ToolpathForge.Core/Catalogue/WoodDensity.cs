namespace ToolpathForge.Catalogue;

/// <summary>
/// Density of timber at a moisture content. Moisture is the mass of water as a share of that of the oven-dry wood, in per cent. With G the specific gravity on oven-dry mass and the volume at
/// a moisture M, density is 1000·G·(1 + M/100); below the fiber saturation point of 30 % wood shrinks, so that G = Gb/(1 - 0.265·a·Gb), a = (30 - M)/30, with Gb that of green wood
/// (FPL Wood Handbook, chapter 4, density; the second formula as recalled). Wet boards are far heavier than a table's 12 %: tipping and the mass of waste count that.
/// </summary>
public static class WoodDensity
{
    /// <summary>Moisture that rows of timber state their density at, per cent.</summary>
    public const double RowMoisture = 12;

    /// <summary>Moisture that is taken where nobody says one, per cent: the most that lumber sold as dry may hold (PS 20).</summary>
    public const double SoldAsDry = 19;

    // Fiber saturation point, per cent (FPL Wood Handbook).
    private const double Saturation = 30;

    // Share of the volume by which wood shrinks from green to oven-dry, per unit of green specific gravity (FPL Wood Handbook, recalled).
    private const double Shrinkage = 0.265;

    /// <summary>Density at a moisture, kg/m³.</summary>
    /// <param name="atTwelve">Density at 12 % moisture, kg/m³, more than 0.</param>
    /// <param name="moisture">Per cent, at least 0.</param>
    public static double At(double atTwelve, double moisture)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(atTwelve);
        ArgumentOutOfRangeException.ThrowIfNegative(moisture);
        double g = atTwelve / (1000 + (10 * RowMoisture));
        double green = g / (1 + (Shrinkage * Dried(RowMoisture) * g));
        return 1000 * green / (1 - (Shrinkage * Dried(moisture) * green)) * (1 + (moisture / 100));
    }

    // How far wood has dried from saturation, 0 to 1.
    private static double Dried(double moisture) => Math.Max(0, Saturation - moisture) / Saturation;
}
