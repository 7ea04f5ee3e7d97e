using ToolpathForge.Catalogue;
using ToolpathForge.Clampings;
using ToolpathForge.Jobs;

namespace ToolpathForge.RunSheets;

/// <summary>
/// Which face a bit frays (common practice: flutes that lift the chips lift the fibres of the upper face, those that push them down press out the fibres of the lower one; straight flutes do
/// little of either, and a compression bit, deeper than its lower part, pulls both faces inwards).
/// </summary>
internal static class Fraying
{
    /// <summary>Whether it frays the upper face, the lower one, or neither more than the other.</summary>
    /// <param name="bit">The bit.</param>
    internal static string? FaceOf(Bit bit) => bit.Kind switch
    {
        BitKind.UpCut => "upper",
        BitKind.DownCut => "lower",
        _ => null,
    };

    /// <summary>A sentence for a bit that cuts through; empty where there is nothing to say.</summary>
    /// <param name="bit">The bit.</param>
    internal static string Of(Bit bit) => FaceOf(bit) is { } face ? $" It frays the {face} face." : bit.Kind == BitKind.Compression ? " It leaves both faces clean once it is deeper than its lower part." : "";

    /// <summary>Which face of a board lies up, so that the one that shows is cut clean.</summary>
    /// <param name="make">The board's end.</param>
    internal static string Up(BoardEndMake make) => FaceOf(make.Bit) == "upper" ? "the face that will show down" : "the face that will show up";

    /// <summary>What becomes of boards whose second ends lie the other face up; empty where it makes no difference.</summary>
    /// <param name="make">The board's end.</param>
    internal static string SecondEnds(BoardEndMake make) => make.Batch.BothEnds && FaceOf(make.Bit) is not null
        ? " Then the other face lies up, and this bit frays the face that shows: score the line on it with a knife, stick tape over it, or cut the second ends with a compression bit."
        : "";
}
