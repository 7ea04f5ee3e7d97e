using ToolpathForge.Cutting;
using ToolpathForge.Findings;

namespace ToolpathForge.Checks;

/// <summary>Whether the passes the job asks for are within what bit and frame usually stand, and whether the bit can get into the stock at all.</summary>
internal static class PassDepth
{
    /// <summary>Deeper than practice on such a machine.</summary>
    internal static readonly FindingKind TooDeep = new(
        "pass-too-deep",
        Severity.Warn,
        "One pass would be {found} deep; {allowed} is usual for this bit in {material} on {machine}.",
        "Leave pass-depth out, or listen to the first pass and be ready to stop.");

    /// <summary>The bit neither plunges nor ramps.</summary>
    internal static readonly FindingKind CannotEnter = new(
        "bit-cannot-plunge",
        Severity.Stop,
        "{bit} does not cut at its center and cannot go down into solid stock.",
        "Choose a bit that plunges or ramps, or start from the edge of the stock.");

    internal static IEnumerable<Finding> Find(CheckInput input)
    {
        double usual = Feeds.UsualPass(input.Bit, input.Make.Material, input.Machine);
        double step = input.Settings.Steps[^1] / input.Settings.Steps.Length;
        if (step > usual * 1.001)
        {
            yield return Finding.Of(
                TooDeep,
                input.At("cut.pass-depth"),
                Quantity.Length(step),
                Quantity.Length(usual),
                Arg.Of("material", input.Make.Material.Name),
                Arg.Of("machine", input.Machine.Name));
        }

        if (input.Clamping.Pieces.Any(p => p.Piece.IsCutAllRound) && !(input.Settings.RampAngle > 0))
        {
            yield return Finding.Of(CannotEnter, input.At("bit"), Arg.Of("bit", input.Bit.Name));
        }
    }
}
