using ToolpathForge.Catalogue;
using ToolpathForge.Findings;

namespace ToolpathForge.Checks;

/// <summary>Whether the bit can leave a square wall at all; how deep it reaches is held by the settings (<see cref="Settings.JobSettings"/>).</summary>
internal static class BitReach
{
    /// <summary>The flutes end above the upper face before the tip is through.</summary>
    internal static readonly FindingKind TooShort = new(
        "bit-too-short",
        Severity.Stop,
        "The cutting edges of {bit} are {found} long; the cut is {allowed} deep with its overcut.",
        "Choose a bit with longer edges, or thinner stock.");

    /// <summary>Its edges are not those of a square wall, or a bearing is in the way.</summary>
    internal static readonly FindingKind WrongForm = new(
        "bit-wrong-form",
        Severity.Stop,
        "{bit} is of kind {kind}: guided by the machine it does not leave a square edge.",
        "Choose a straight, up-cut, down-cut or compression bit; bits with bearings are for the hand router.");

    internal static IEnumerable<Finding> Find(CheckInput input)
    {
        if (!input.Bit.CutsSquareWall)
        {
            yield return Finding.Of(
                WrongForm, input.At("bit"), Arg.Of("bit", input.Bit.Name), Arg.Of("kind", BitKinds.WordOf(input.Bit.Kind)));
        }
    }
}
