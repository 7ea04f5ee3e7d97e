using ToolpathForge.Geometry;

namespace ToolpathForge.Nesting;

/// <summary>What decides between the ways a piece may be turned.</summary>
internal enum NestChoice
{
    /// <summary>The least height of its top.</summary>
    LowTop,

    /// <summary>The least height of its middle.</summary>
    LowMiddle,

    /// <summary>The least height of its foot.</summary>
    LowFoot,
}

/// <summary>
/// Lays pieces in a given order, each as low as it goes on the first panel that has room, then as far to the left. What fits nowhere on a panel will
/// not fit later either, and what is taken only grows: both are remembered for each kind of piece.
/// </summary>
internal sealed class NestTrial
{
    private readonly NestKinds _kinds;
    private readonly NestChoice _choice;
    private readonly List<PanelRows> _rows = [];
    private readonly List<List<(NestVariant Piece, Point2 Corner)>> _laid = [];
    private readonly List<int[]> _lowest = [];
    private double[] _tops = [];

    private NestTrial(NestKinds kinds, NestChoice choice) => (_kinds, _choice) = (kinds, choice);

    /// <summary>The pieces of each panel.</summary>
    internal IReadOnlyList<List<(NestVariant Piece, Point2 Corner)>> Panels => _laid;

    /// <summary>Comparisons made.</summary>
    internal long Work => _rows.Sum(r => r.Work);

    /// <summary>Lays pieces.</summary>
    /// <param name="kinds">The kinds of piece; every one of the order fits on an empty panel.</param>
    /// <param name="order">Kinds in the order that they are laid.</param>
    /// <param name="choice">What decides between turns.</param>
    internal static NestTrial Run(NestKinds kinds, IReadOnlyList<int> order, NestChoice choice)
    {
        var trial = new NestTrial(kinds, choice);
        foreach (int kind in order)
        {
            trial.Lay(kind);
        }

        trial._tops = [.. trial._laid.Select(p => p.Max(l => l.Corner.Y + l.Piece.Height))];
        return trial;
    }

    /// <summary>Whether this one is better: fewer panels, then less of the last, then less of those before it.</summary>
    internal bool IsBetterThan(NestTrial other)
    {
        if (_tops.Length != other._tops.Length)
        {
            return _tops.Length < other._tops.Length;
        }

        for (int i = _tops.Length - 1; i >= 0; i--)
        {
            if (Math.Abs(_tops[i] - other._tops[i]) > 1e-6)
            {
                return _tops[i] < other._tops[i];
            }
        }

        return false;
    }

    private void Lay(int kind)
    {
        for (int panel = 0; ; panel++)
        {
            if (panel == _rows.Count)
            {
                _rows.Add(_kinds.EmptyPanel());
                _laid.Add([]);
                _lowest.Add(new int[_kinds.VariantCount]);
            }

            if (Best(kind, panel) is { } best)
            {
                (NestVariant piece, int row, double shift) = best;
                _rows[panel].Take(piece.GrownRows, row, shift);
                _laid[panel].Add((piece, new Point2(_kinds.Room.MinX + shift, _kinds.Room.MinY + (row * _kinds.RowHeight) + NestVariant.Foot)));
                return;
            }
        }
    }

    private (NestVariant Piece, int Row, double Shift)? Best(int kind, int panel)
    {
        (NestVariant Piece, int Row, double Shift)? best = null;
        double least = double.PositiveInfinity;
        foreach ((int index, NestVariant piece) in _kinds.Variants(kind))
        {
            int highest = _rows[panel].Highest(piece);
            ref int row = ref _lowest[panel][index];
            double height = _choice switch
            {
                NestChoice.LowTop => piece.Height,
                NestChoice.LowMiddle => piece.Height / 2,
                _ => 0,
            };
            for (; row <= highest; row++)
            {
                double score = (row * _kinds.RowHeight) + height;
                if (score > least + 1e-9)
                {
                    break;
                }

                if (_rows[panel].Fit(piece, row) is not { } shift)
                {
                    continue;
                }

                if (score < least - 1e-9 || shift < best!.Value.Shift - 1e-9)
                {
                    (best, least) = ((piece, row, shift), Math.Min(score, least));
                }

                break;
            }
        }

        return best;
    }
}
