using ToolpathForge.Catalogue;
using ToolpathForge.Findings;

namespace ToolpathForge.Checks;

/// <summary>Whether chips come out of the slot that the bit cuts.</summary>
internal static class DeepSlots
{
    /// <summary>A down-cut bit presses its chips into the slot.</summary>
    internal static readonly FindingKind Buried = new(
        "down-cut-buried",
        Severity.Warn,
        "{bit} presses its chips down and would work in a slot {found} deep; beyond {allowed} they pack and burn.",
        "Rough with an up-cut or straight bit, or ask for slot = \"wide\".");

    // Judgment, in diameters: chips that are pressed down have no way out of a narrow slot.
    private const double Narrow = 1.5;
    private const double Widened = 2.5;

    internal static IEnumerable<Finding> Find(CheckInput input)
    {
        double most = (input.Settings.Widen > 0 ? Widened : Narrow) * input.Bit.Diameter;
        double depth = Math.Min(input.Settings.Steps[^1], input.Make.Thickness);
        if (input.Bit.Kind == BitKind.DownCut && depth > most)
        {
            yield return Finding.Of(Buried, input.At("bit"), Quantity.Length(depth), Quantity.Length(most), Arg.Of("bit", input.Bit.Name));
        }
    }
}
