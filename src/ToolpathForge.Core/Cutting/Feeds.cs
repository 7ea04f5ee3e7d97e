using ToolpathForge.Catalogue;

namespace ToolpathForge.Cutting;

/// <summary>
/// Speed and feed for a bit in a material on a machine. The two meet at the chip load, F = n·z·fz (any machining handbook). A small frame takes a share of a
/// production machine's chip; where its feed cannot keep up, the speed comes down rather than the chip below its band.
/// </summary>
/// <param name="Speed">Spindle speed, rev/min.</param>
/// <param name="Feed">In the plane, mm/min.</param>
/// <param name="Band">The chip a tooth may take on a production machine.</param>
public readonly record struct Feeds(double Speed, double Feed, ChipBand Band)
{
    /// <summary>The speed that is taken where nothing speaks against it, rev/min (common practice).</summary>
    internal const double UsualSpeed = 16000;

    /// <summary>Share of the feed at which a bit goes straight down (common practice).</summary>
    internal const double PlungeShare = 0.3;

    /// <summary>What to cut with.</summary>
    /// <param name="bit">The bit.</param>
    /// <param name="material">What it cuts.</param>
    /// <param name="machine">On what.</param>
    /// <param name="step">Depth of one pass, mm.</param>
    /// <param name="speed">Speed that the person wants, rev/min; null for none.</param>
    /// <param name="feed">Feed that the person wants, mm/min; null for none.</param>
    public static Feeds For(Bit bit, Material material, Machine machine, double step, double? speed, double? feed)
    {
        ChipBand band = material.ChipAt(bit.Diameter);
        double chip = (band.Least + band.Most) / 2 * machine.ChipShare * DepthShare(step / bit.Diameter);
        double fastest = Math.Min(Math.Min(machine.MaxSpeed, bit.MaxSpeed), SpeedByDiameter.Most(bit.Diameter));
        double turns = speed ?? Math.Max(machine.MinSpeed, Math.Min(fastest, UsualSpeed));
        double along = feed ?? turns * bit.Flutes * chip;
        if (feed is null && along > machine.MaxFeed)
        {
            along = machine.MaxFeed;
            if (speed is null)
            {
                turns = Math.Clamp(along / (bit.Flutes * chip), machine.MinSpeed, Math.Max(machine.MinSpeed, turns));
            }
        }

        return new Feeds(speed ?? Down(turns, 100), feed ?? Down(along, 10), band);
    }

    /// <summary>What a tooth takes, mm: F/(n·z).</summary>
    /// <param name="flutes">Number of cutting edges.</param>
    public double ChipLoad(int flutes) => Feed / (Speed * flutes);

    /// <summary>The plunge feed that goes with a feed, mm/min: three tenths of it, within the machine's (common practice).</summary>
    /// <param name="machine">The machine.</param>
    public double Plunge(Machine machine) => Math.Min(machine.MaxPlunge, Down(Feed * PlungeShare, 10));

    /// <summary>The next multiple below a figure, and never less than one.</summary>
    internal static double Down(double value, double multiple) => Math.Max(multiple, Math.Floor((value / multiple) + 1e-9) * multiple);

    /// <summary>The next multiple above a figure, or the figure itself.</summary>
    internal static double Up(double value, double multiple) => Math.Ceiling((value / multiple) - 1e-9) * multiple;

    /// <summary>Deepest pass that is usual for a bit in a material on a machine, mm.</summary>
    /// <param name="bit">The bit.</param>
    /// <param name="material">What it cuts.</param>
    /// <param name="machine">On what.</param>
    internal static double UsualPass(Bit bit, Material material, Machine machine) => Math.Min(material.PassDepth, machine.PassDepth) * bit.Diameter;

    // Common practice: a quarter less at two diameters deep, half at three.
    private static double DepthShare(double diameters) => diameters <= 1 ? 1 : Math.Max(0.5, 1 - (0.25 * (diameters - 1)));
}
