using ToolpathForge.Findings;

namespace ToolpathForge.Shapes;

/// <summary>Reads the sizes of one shape for one board, rounded as the job asks.</summary>
/// <param name="width">Design width of the board, mm.</param>
/// <param name="round">Sizes become whole multiples of this, mm; 0 leaves them.</param>
/// <param name="findings">Takes what rounding leaves nothing of.</param>
internal sealed class ShapeSizes(double width, double round, ICollection<Finding> findings)
{
    /// <summary>Smaller sizes are none, mm: less than a hand can mark, and lines so short have no direction.</summary>
    private const double Least = 0.01;

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
        double rounded = Nearest(size);
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
        else if (size != 0 && Math.Abs(rounded) < Least)
        {
            IsSound = false;
            findings.Add(Finding.Of(ShapeFindings.NextToNothing, spec.Where(key), Quantity.Length(rounded), Quantity.Length(Least), Arg.Of("size", key)));
        }

        return rounded;
    }

    /// <summary>
    /// Run and depth, rounded. Where the nearest multiples move their ratio by more than the shape may, the multiples next to the sizes that keep it, and
    /// of several those that change the sizes least; a warning where none does.
    /// </summary>
    internal (double Run, double Depth) RunAndDepth(ShapeSpec spec)
    {
        (double run, double depth) = (Rounded(spec, "run"), Rounded(spec, "depth"));
        double exactRun = spec.Size("run", Width);
        double exactDepth = spec.Size("depth", Width);
        double exact = exactRun / exactDepth;
        double allowed = spec.Number("keep-ratio") / 100;
        if (!IsSound || round == 0 || Off(run / depth, exact) <= allowed)
        {
            return (run, depth);
        }

        (double Run, double Depth)[] others =
        [
            .. from r in Neighbours(exactRun)
               from d in Neighbours(exactDepth)
               where Off(r / d, exact) <= allowed
               orderby Math.Abs(r - exactRun) + Math.Abs(d - exactDepth), r, d
               select (r, d),
        ];
        if (others.Length > 0)
        {
            return others[0];
        }

        findings.Add(Finding.Of(
            ShapeFindings.RatioMoved,
            spec.Where("round"),
            Quantity.Number(Off(run / depth, exact) * 100),
            Quantity.Number(allowed * 100),
            Arg.Of("round", Quantity.Length(round)),
            Arg.Of("rounded", Quantity.Number(run / depth)),
            Arg.Of("exact", Quantity.Number(exact))));
        return (run, depth);
    }

    private static double Off(double ratio, double exact) => Math.Abs((ratio / exact) - 1);

    private double Nearest(double size) => round > 0 ? Math.Round(size / round, MidpointRounding.AwayFromZero) * round : size;

    private IEnumerable<double> Neighbours(double size)
    {
        double below = Math.Floor(size / round) * round;
        return below > 0 ? [below, below + round] : [below + round];
    }
}
