using ToolpathForge.Findings;

namespace ToolpathForge.Checks;

/// <summary>Whether the bit's edges reach through the stock.</summary>
internal static class BitReach
{
    /// <summary>The flutes end above the upper face before the tip is through.</summary>
    internal static readonly FindingKind TooShort = new(
        "bit-too-short",
        Severity.Stop,
        "The cutting edges of {bit} are {found} long; the cut is {allowed} deep with its overcut.",
        "Choose a bit with longer edges, or thinner stock.");

    internal static IEnumerable<Finding> Find(CheckInput input)
    {
        double depth = input.Settings.Steps[^1];
        if (input.Bit.FluteLength < depth - 1e-9)
        {
            yield return Finding.Of(
                TooShort, input.At("bit"), Quantity.Length(input.Bit.FluteLength), Quantity.Length(depth), Arg.Of("bit", input.Bit.Name));
        }
    }
}
