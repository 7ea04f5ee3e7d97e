using ToolpathForge.Geometry;

namespace ToolpathForge.Nesting;

/// <summary>A panel in rows: what is taken in each, and the first place from the left where another piece fits.</summary>
internal sealed class PanelRows
{
    private readonly Box2 _room;
    private readonly double _height;
    private readonly Span[][] _taken;

    /// <summary>An empty panel.</summary>
    /// <param name="room">Where pieces may lie, mm.</param>
    /// <param name="height">Of a row, mm.</param>
    internal PanelRows(Box2 room, double height)
    {
        (_room, _height) = (room, height);
        _taken = [.. Enumerable.Repeat(Array.Empty<Span>(), (int)Math.Ceiling(room.Height / height) + 1)];
    }

    /// <summary>Comparisons made so far: the measure of work, the same on every machine.</summary>
    internal long Work { get; private set; }

    /// <summary>The highest row a piece can begin at.</summary>
    internal int Highest(NestVariant piece) => (int)Math.Floor((_room.Height - piece.Height - NestVariant.Foot + 1e-9) / _height);

    /// <summary>The least shift from the room's left side at which a piece is clear of all that is taken; null when there is none in this row.</summary>
    /// <param name="piece">What is to be laid.</param>
    /// <param name="row">The row that it begins at.</param>
    internal double? Fit(NestVariant piece, int row)
    {
        RowSpans own = piece.Rows;
        double most = _room.Width - piece.Width + 1e-9;
        double at = 0;
        int settled = 0;
        for (int i = 0; settled < own.Count && at <= most; i = i + 1 == own.Count ? 0 : i + 1)
        {
            double moved = Clear(own[i], row + own.First + i, at);
            settled = moved > at ? 1 : settled + 1;
            at = moved;
        }

        return at <= most && own.Count > 0 ? at : null;
    }

    /// <summary>Takes what a piece with its gap covers.</summary>
    /// <param name="rows">The piece grown by its gap.</param>
    /// <param name="row">The row that the piece begins at.</param>
    /// <param name="shift">Along the row, from the room's left side, mm.</param>
    internal void Take(RowSpans rows, int row, double shift)
    {
        for (int i = 0; i < rows.Count; i++)
        {
            int at = row + rows.First + i;
            if (at >= 0 && at < _taken.Length)
            {
                _taken[at] = RowSpans.Merged([.. _taken[at], .. rows[i].Select(s => new Span(s.From + shift, s.To + shift))]);
            }
        }
    }

    // Both lists run from the left, but a shift past one span may run into another one further back: gone over until nothing is met.
    private double Clear(Span[] own, int row, double at)
    {
        if (row < 0 || row >= _taken.Length)
        {
            return at;
        }

        Span[] taken = _taken[row];
        for (bool met = true; met;)
        {
            met = false;
            foreach (Span piece in own)
            {
                foreach (Span other in taken)
                {
                    Work++;
                    if (other.From >= piece.To + at)
                    {
                        break;
                    }

                    // Compared as it is added: a sum that rounds the other way must not ask for the same step for ever.
                    if (other.To - piece.From > at)
                    {
                        at = other.To - piece.From;
                        met = own.Length > 1;
                    }
                }
            }
        }

        return at;
    }
}
