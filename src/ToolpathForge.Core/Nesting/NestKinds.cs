using ToolpathForge.Geometry;

namespace ToolpathForge.Nesting;

/// <summary>Every part in every way it may be turned, ready to be laid, and the panel as it is when empty.</summary>
internal sealed class NestKinds
{
    /// <summary>A panel is looked at in about this many rows: what a row wastes is won back when the pieces settle.</summary>
    private const double RowsOfPanel = 400;

    private readonly NestRequest _request;
    private readonly (int Index, NestVariant Piece)[][] _variants;
    private readonly RowSpans[] _obstacles;

    /// <summary>Prepares a request.</summary>
    internal NestKinds(NestRequest request)
    {
        _request = request;
        RowHeight = Math.Clamp(Math.Min(request.Room.Height, request.Room.Width) / RowsOfPanel, 0.25, 4);
        Obstacles = [.. request.Obstacles.Select(o => NestVariant.Grow(o.Shape, o.Gap))];
        _obstacles = [.. Obstacles.Select(o => RowSpans.Of(o, RowHeight, request.Room.MinY))];
        _variants = new (int, NestVariant)[request.Parts.Length][];
        for (int part = 0; part < request.Parts.Length; part++)
        {
            Region shape = request.Parts[part].Shape;
            Region grown = NestVariant.Grow(shape, request.Gap);
            _variants[part] = new (int, NestVariant)[request.Turns.Length];
            for (int i = 0; i < request.Turns.Length; i++)
            {
                _variants[part][i] = (VariantCount++, NestVariant.Of(part, shape, grown, request.Turns[i], RowHeight));
            }
        }
    }

    /// <summary>Where pieces may lie.</summary>
    internal Box2 Room => _request.Room;

    /// <summary>Height of a row, mm.</summary>
    internal double RowHeight { get; }

    /// <summary>How many variants there are of all parts together.</summary>
    internal int VariantCount { get; }

    /// <summary>What pieces keep out of, with the gap round it.</summary>
    internal Region[] Obstacles { get; }

    /// <summary>The ways a part may be turned, each with its number among all.</summary>
    internal (int Index, NestVariant Piece)[] Variants(int part) => _variants[part];

    /// <summary>A panel with nothing on it but the obstacles.</summary>
    internal PanelRows EmptyPanel()
    {
        var rows = new PanelRows(Room, RowHeight);
        foreach (RowSpans obstacle in _obstacles)
        {
            rows.Take(obstacle, 0, -Room.MinX);
        }

        return rows;
    }

    /// <summary>Whether a part fits on an empty panel in some way.</summary>
    internal bool Fits(int part)
    {
        PanelRows empty = EmptyPanel();
        return _variants[part].Any(v => Enumerable.Range(0, Math.Max(0, empty.Highest(v.Piece) + 1)).Any(row => empty.Fit(v.Piece, row) is not null));
    }
}
