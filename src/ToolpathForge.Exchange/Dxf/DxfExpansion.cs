using System.Collections.Immutable;
using ToolpathForge.Exchange.Reading;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;

namespace ToolpathForge.Exchange.Dxf;

/// <summary>Puts blocks in place and lays everything flat: shapes of a file become exact curves in the plane.</summary>
internal sealed class DxfExpansion
{
    /// <summary>The layer of which what lies on it in a block takes the layer that the block is put on.</summary>
    private const string TakesOver = "0";

    private readonly DxfContent _content;
    private readonly ReadingBook _book;
    private readonly DxfFlattening _flat;
    private readonly Dictionary<string, DrawnLayer> _layers = new(StringComparer.OrdinalIgnoreCase);
    private readonly HashSet<string> _open = new(StringComparer.OrdinalIgnoreCase);
    private readonly List<DrawnEntity> _entities;

    private DxfExpansion(DxfContent content, ReadingBook book)
    {
        _content = content;
        _book = book;
        _flat = new DxfFlattening(book);
        _entities = new List<DrawnEntity>(content.Entities.Count);
        foreach (DrawnLayer layer in content.Layers)
        {
            _layers.TryAdd(layer.Name, layer);
        }
    }

    internal static List<DrawnEntity> Entities(DxfContent content, ReadingBook book, double scale)
    {
        var expansion = new DxfExpansion(content, book);
        var root = new SpaceFrame(new(scale, 0, 0), new(0, scale, 0), new(0, 0, scale), default);
        expansion.Place(content.Entities, root, null, 0);
        return expansion._entities;
    }

    private void Place(List<DxfShape> shapes, SpaceFrame frame, string? layerOfBlock, int depth)
    {
        foreach (DxfShape shape in shapes)
        {
            if (!_book.Step())
            {
                return;
            }

            DxfHead head = shape.Head;
            string layer = layerOfBlock is not null && head.Layer == TakesOver ? layerOfBlock : head.Layer;
            DrawnLayer? of = _layers.GetValueOrDefault(layer);

            // A block on a layer that is off shows what in it lies on layers of its own; on a frozen one it shows nothing.
            IgnoreReason? reason = shape is DxfOther ? IgnoreReason.NoCurve
                : head.IsOnSheet && depth == 0 ? IgnoreReason.OnSheet
                : head.IsHidden ? IgnoreReason.Hidden
                : of?.IsFrozen == true ? IgnoreReason.LayerFrozen
                : of?.IsOff == true && shape is not DxfInsert ? IgnoreReason.LayerOff
                : null;
            if (reason is { } told)
            {
                _book.Ignore(head.Kind, told);
            }
            else if (shape is DxfInsert insert)
            {
                Insert(insert, frame, layer, depth);
            }
            else if (_flat.Curves(shape, frame) is { } path && (depth == 0 || _book.Spend(path.Curves.Length)))
            {
                _entities.Add(new DrawnEntity(path, head.Kind, layer, head.Line, head.Order));
            }
        }
    }

    private void Insert(DxfInsert insert, SpaceFrame frame, string layer, int depth)
    {
        if (Refused(insert, depth) is { } trouble)
        {
            _book.Repair(trouble);
            return;
        }

        DxfBlock block = _content.Blocks[insert.Block];
        SpaceFrame own = SpaceFrame.OfExtrusion(insert.Extrusion);
        (double sin, double cos) = Sharp(insert.Turn);
        var turned = new SpaceFrame(new(cos, sin, 0), new(-sin, cos, 0), new(0, 0, 1), default);
        _open.Add(insert.Block);
        for (int row = 0; row < insert.Rows; row++)
        {
            for (int column = 0; column < insert.Columns && _book.Spend(1); column++)
            {
                // Rows and columns are turned with the block but not scaled with it.
                Space3 step = turned.Vector(new Space3(column * insert.ColumnStep, row * insert.RowStep, 0));
                var inner = new SpaceFrame(turned.X * insert.Scale.X, turned.Y * insert.Scale.Y, turned.Z * insert.Scale.Z, insert.At + step);
                SpaceFrame placed = frame.Of(own).Of(inner);
                placed = placed with { Zero = placed.Point(block.Base * -1) };
                Place(block.Shapes, placed, layer, depth + 1);
            }

            if (_book.Stopped)
            {
                break;
            }
        }

        _open.Remove(insert.Block);
    }

    private Finding? Refused(DxfInsert insert, int depth)
    {
        Place at = _book.At(insert.Head.Line);
        Arg what = Arg.Of("what", $"{insert.Head.Kind} on layer '{insert.Head.Layer}'");
        if (!_content.Blocks.TryGetValue(insert.Block, out DxfBlock? block) || block.IsElsewhere)
        {
            return Finding.Of(RepairFindings.BlockMissing, at, what, Arg.Of("text", insert.Block));
        }

        if (_open.Contains(insert.Block))
        {
            return Finding.Of(RepairFindings.BlockRecursive, at, what, Arg.Of("text", insert.Block));
        }

        return depth < _book.Limits.Depth
            ? null
            : Finding.Of(RepairFindings.TooDeep, at, Quantity.Number(depth + 1), Quantity.Number(_book.Limits.Depth), what);
    }

    /// <summary>Sine and cosine that are exact at quarter turns.</summary>
    private static (double Sin, double Cos) Sharp(double angle)
    {
        double quarters = angle / (Math.PI / 2);
        return quarters == Math.Round(quarters) && Math.Abs(quarters) < 1e6
            ? (((int)quarters % 4 + 4) % 4) switch { 0 => (0, 1), 1 => (1, 0), 2 => (0, -1), _ => (-1, 0) }
            : Math.SinCos(angle);
    }
}
