using ToolpathForge.Catalogue;

namespace ToolpathForge.Cutting;

/// <summary>How far a bit may stick out of the collet, mm: no less than keeps flutes and nut out of collet and work, no more than its grip, the gantry and the run above the work leave.</summary>
/// <param name="Least">Least, mm.</param>
/// <param name="ByGrip">Most that the grip allows, mm: its length less the shortest grip (<see cref="Grip.Least"/>).</param>
/// <param name="ByGantry">Most that the height under the gantry allows while the bit travels over the work, mm; infinite where nothing is known.</param>
/// <param name="ByDryRun">Most with which the bit can also be raised for a run above the work, mm; infinite where nothing is known.</param>
public sealed record StickOut(double Least, double ByGrip, double ByGantry, double ByDryRun)
{
    /// <summary>The shank's end stays this far off the bottom of the collet, mm, so that tightening does not draw it down onto it (common practice: 1/16 in).</summary>
    public const double OffBottom = 1.5;

    /// <summary>Length over which flutes run out into the shank, mm (judgment: an eighth of an inch, seen on small bits; look at yours).</summary>
    public const double RunOut = 3;

    /// <summary>Most, mm: that with which the run above the work is still possible, where any is; else what grip and gantry leave.</summary>
    public double Most => AllowsDryRun ? Math.Min(ByGrip, Math.Min(ByGantry, ByDryRun)) : Math.Min(ByGrip, ByGantry);

    /// <summary>Whether some stick-out serves the cut and leaves room to raise the bit for a run above the work.</summary>
    public bool AllowsDryRun => Math.Min(ByGrip, Math.Min(ByGantry, ByDryRun)) >= Least - 1e-9;

    /// <summary>Length from the bit's end to where its flutes have run out into the shank, mm.</summary>
    /// <param name="bit">The bit.</param>
    public static double Flutes(Bit bit) => bit.FluteLength + RunOut;

    /// <summary>The limits for a cut.</summary>
    /// <param name="bit">The bit.</param>
    /// <param name="depth">From the stock's upper face to the lowest point, mm.</param>
    /// <param name="high">Height of stock and spoilboard together, mm; with <paramref name="clearance"/> null nothing is said about the gantry.</param>
    /// <param name="opening">Height under the gantry, mm.</param>
    /// <param name="clearance">How far above everything on the bed the bit travels, mm; null where it is not said.</param>
    public static StickOut For(Bit bit, double depth, double high, double opening, double? clearance)
    {
        double least = Math.Max(Flutes(bit), depth + CutSettings.Nut);
        double byGrip = Grip.MostStickOut(bit.OverallLength, bit.Shank);

        // While it travels, the bit's end is the clearance above the work and its collet a stick-out above that; raised for a run above the work, by clearance and depth more.
        return clearance is { } clear
            ? new StickOut(least, byGrip, opening - high - clear, opening - high - (2 * clear) - depth)
            : new StickOut(least, byGrip, double.PositiveInfinity, double.PositiveInfinity);
    }
}
