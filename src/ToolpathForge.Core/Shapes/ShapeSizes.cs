using ToolpathForge.Findings;

namespace ToolpathForge.Shapes;

/// <summary>Reads the sizes of one shape for one board, rounded as the job asks.</summary>
/// <param name="width">Design width of the board, mm.</param>
/// <param name="round">Sizes become whole multiples of this, mm; 0 leaves them.</param>
/// <param name="findings">Takes what rounding leaves nothing of.</param>
internal sealed class ShapeSizes(double width, double round, ICollection<Finding> findings)
{
    /// <summary>Design width of the board, mm.</summary>
    internal double Width { get; } = width;

    /// <summary>Whether every size asked for so far could be used.</summary>
    internal bool IsSound { get; private set; } = true;

    /// <summary>The sizes of a shape that asks how to round.</summary>
    internal static ShapeSizes Of(ShapeSpec spec, double width, ICollection<Finding> findings) => new(width, spec.Size("round", width), findings);

    /// <summary>A size rounded to the nearest multiple, half a step away from 0, mm; 0 when the job leaves it open.</summary>
    internal double Rounded(AnswerSet spec, string key)
    {
        double size = spec.Size(key, Width);
        double rounded = round > 0 ? Math.Round(size / round, MidpointRounding.AwayFromZero) * round : size;
        if (size != 0 && rounded == 0)
        {
            IsSound = false;
            findings.Add(Finding.Of(
                ShapeFindings.RoundedAway,
                spec.Where(key),
                Quantity.Length(rounded),
                Quantity.Length(size),
                Arg.Of("round", Quantity.Length(round)),
                Arg.Of("size", key)));
        }

        return rounded;
    }
}
