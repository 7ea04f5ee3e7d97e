using ToolpathForge.Cutting;
using ToolpathForge.Findings;

namespace ToolpathForge.Checks;

/// <summary>
/// Whether a finishing pass still cuts. What a tooth takes is thinner than the feed a tooth where the bit engages over a small part of its width, h = 2·fz·√(x(1 - x)), x = ae/D
/// (any machining handbook); a chip thinner than the edge is round is pressed away rather than cut, which heats the bit and burns the edge. The clean-up pass, which only takes what
/// bit and frame left standing, rubs by its nature and is not counted.
/// </summary>
internal static class FinishChip
{
    /// <summary>The finish rubs.</summary>
    internal static readonly FindingKind TooThin = new(
        "finish-chip-thin",
        Severity.Warn,
        "A finish that takes off {taken} leaves chips {found} thick at most; below {allowed} the bit rubs, heats and burns the edge.",
        "Leave more for the finish (allowance), lower the speed, or use a bit with one flute.");

    /// <summary>Rounding of a carbide edge in use, mm (from memory: 10 to 20 µm; the thick end, since bits are not new for long).</summary>
    internal const double EdgeRounding = 0.02;

    /// <summary>Thinnest chip that a finish should leave, mm: the edge's rounding, or less where the material's band lets a tooth take less over its whole width.</summary>
    /// <param name="chipLeast">Least chip load on this machine, mm.</param>
    internal static double Least(double chipLeast) => Math.Min(EdgeRounding, chipLeast);

    /// <summary>The finding; null for a chip that is thick enough.</summary>
    /// <param name="chipLoad">Feed a tooth, mm.</param>
    /// <param name="chipLeast">Least chip load on this machine, mm.</param>
    /// <param name="allowance">What the finish takes off, mm.</param>
    /// <param name="diameter">Of the bit, mm.</param>
    internal static Finding? Find(double chipLoad, double chipLeast, double allowance, double diameter)
    {
        double chip = SideLoad.ThickestChip(chipLoad, allowance, diameter);
        double least = Least(chipLeast);

        // A chip load that is too thin as it is is told by itself.
        return chip < least * 0.999 && chipLoad >= chipLeast * 0.999
            ? Finding.Of(TooThin, Place.None, Quantity.Length(chip), Quantity.Length(least), Arg.Of("taken", Quantity.Length(allowance)))
            : null;
    }
}
