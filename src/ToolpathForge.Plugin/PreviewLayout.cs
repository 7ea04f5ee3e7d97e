using ToolpathForge.Plugin.Contract;

namespace ToolpathForge.Plugin;

/// <summary>Where in the drawing the programs of a plan are shown: the first where it is wished, or to the right of what is selected; each further one to the right of the one before. Host's unit.</summary>
internal sealed class PreviewLayout
{
    /// <summary>Room between the selection and the programs, mm: our own choice, so that the bit's ways don't touch what is drawn.</summary>
    private const double Gap = 20;

    private readonly Dictionary<int, (double X, double Y)> _zeros = new();
    private readonly (double X, double Y) _first;

    /// <summary>Makes one.</summary>
    /// <param name="wish">Says where the first work zero is wanted, if anywhere.</param>
    /// <param name="beds">What the core says of the programs' extents; null for nothing.</param>
    /// <param name="selected">What is selected, host's unit.</param>
    /// <param name="mm">Millimetres in one of the host's unit.</param>
    internal PreviewLayout(SessionWish wish, WireBed[]? beds, IReadOnlyList<WireEntity> selected, double mm)
    {
        double[]? drawn = EntityBox.Of(selected);
        double right = (drawn?[2] ?? 0) + (Gap / mm), bottom = drawn?[1] ?? 0;
        _first = (wish.X ?? right, wish.Y ?? bottom);
        foreach (WireBed bed in beds ?? Array.Empty<WireBed>())
        {
            bool isFirst = _zeros.Count == 0;
            double x = isFirst && wish.X is { } wished ? wished : right - (bed.Box[0] / mm);
            double y = wish.Y ?? (bottom - (bed.Box[1] / mm));
            _zeros[bed.Program] = (x, y);
            right = x + ((bed.Box[2] + Gap) / mm);
        }
    }

    /// <summary>Where the work zero of a program lies.</summary>
    /// <param name="program">Its index.</param>
    internal (double X, double Y) Zero(int program) => _zeros.TryGetValue(program, out (double X, double Y) zero) ? zero : _first;
}
