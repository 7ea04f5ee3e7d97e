using System.Collections.Immutable;
using ToolpathForge.Exchange.Reading;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;

namespace ToolpathForge.Exchange.Svg;

/// <summary>Puts everything in place: elements of a file become exact curves in the plane.</summary>
internal sealed class SvgExpansion
{
    private readonly SvgDocument _document;
    private readonly ReadingBook _book;
    private readonly SvgShapes _shapes;
    private readonly SvgPlacing _placing;
    private readonly HashSet<SvgNode> _open = [];
    private readonly List<DrawnEntity> _entities = [];
    private int _uses;
    private SvgNode? _clipped;
    private int _clips;

    private SvgExpansion(SvgDocument document, ReadingBook book)
    {
        _document = document;
        _book = book;
        _shapes = new SvgShapes(book);
        _placing = new SvgPlacing(book);
    }

    /// <summary>What holds for an element from those around it.</summary>
    /// <param name="Map">From its coordinates to those of the drawing.</param>
    /// <param name="Around">What shares of lengths are of.</param>
    /// <param name="Layer">The id, or else the class, of the nearest group that has one.</param>
    /// <param name="IsVisible">Whether it is to be seen unless it says otherwise itself.</param>
    /// <param name="Depth">How many elements it lies in.</param>
    private readonly record struct Surroundings(Affine Map, SvgExtent Around, string Layer, bool IsVisible, int Depth);

    internal static List<DrawnEntity> Entities(SvgDocument document, SvgFrame frame, ReadingBook book)
    {
        var expansion = new SvgExpansion(document, book);
        SvgNode root = document.Root!;
        if (SvgStyle.IsNotDisplayed(root))
        {
            book.Ignore(root.Name, IgnoreReason.Hidden);
            return [];
        }

        // SVG 1.1 has no transform of the outermost element, and what others make of one turns the whole picture, which changes nothing that is cut.
        if (root.Property("transform") is { } text)
        {
            book.Repair(RepairFindings.ValueUnusable, root.Line, Arg.Of("what", root.Shown), Arg.Of("key", "transform"), Arg.Of("text", $"'{SvgNode.Told(text)}'"));
        }

        expansion._open.Add(root);
        expansion.Children(root, new Surroundings(frame.Map, frame.Around, "", SvgStyle.IsVisible(root, true), 1));
        if (expansion._clipped is { } clipped)
        {
            book.Tell(Finding.Of(SvgFindings.Clipped, book.At(clipped.Line), Arg.Of("what", clipped.Shown), Arg.Of("count", Quantity.Number(expansion._clips))));
        }

        if (document.StyleLine is { } line)
        {
            book.Tell(Finding.Of(SvgFindings.StyleNotApplied, book.At(line), Arg.Of("count", Quantity.Number(document.Sheet.NotApplied))));
        }

        return expansion._entities;
    }

    private void Children(SvgNode node, Surroundings around)
    {
        foreach (SvgNode child in node.Children)
        {
            if (!(_uses > 0 ? _book.Spend(1) : _book.Step()))
            {
                return;
            }

            Place(child, around, null);

            // Of a switch one child alone is drawn; they say the same in several ways.
            if (node.Name == "switch" && (SvgShapes.Has(child.Name) || child.Name is "g" or "svg" or "use" or "a"))
            {
                return;
            }
        }
    }

    private void Place(SvgNode node, Surroundings around, SvgNode? use)
    {
        string name = node.Name;
        bool isShape = SvgShapes.Has(name), isGroup = name is "g" or "a" or "switch" or "svg" || (name == "symbol" && use is not null);
        if (!isShape && !isGroup && name != "use")
        {
            // These say something about the rest, or are drawn only when something uses them.
            if (name is not ("defs" or "symbol" or "title" or "desc" or "metadata" or "view" or "linearGradient" or "radialGradient" or "filter" or "solidcolor" or "style"))
            {
                _book.Ignore(name, IgnoreReason.NoCurve);
            }

            return;
        }

        if (SvgStyle.IsNotDisplayed(node))
        {
            _book.Ignore(name, IgnoreReason.Hidden);
            return;
        }

        if (around.Depth > _book.Limits.Depth)
        {
            _book.Repair(Finding.Of(
                RepairFindings.TooDeep, _book.At(node.Line), Quantity.Number(around.Depth), Quantity.Number(_book.Limits.Depth), Arg.Of("what", node.Shown)));
            return;
        }

        if (_placing.Transform(node, around.Around) is not { } own)
        {
            return;
        }

        bool visible = SvgStyle.IsVisible(node, around.IsVisible);
        Surroundings here = around with { Map = around.Map.Of(own), IsVisible = visible, Depth = around.Depth + 1 };
        if (isShape)
        {
            Shape(node, here);
        }
        else if (name == "use")
        {
            Use(node, here);
        }
        else
        {
            Group(node, here, use);
        }

        if (visible || !isShape)
        {
            Clipped(node);
        }
    }

    /// <summary>Notes what is to be seen in part only: it is taken whole.</summary>
    private void Clipped(SvgNode node)
    {
        foreach (string cut in (ReadOnlySpan<string>)["clip-path", "mask"])
        {
            if (node.Styled(cut) is { } by && by.AsSpan().Trim() is not ("none" or ""))
            {
                _book.Ignore(cut, IgnoreReason.NoCurve);
                _clipped ??= node;
                _clips++;
            }
        }
    }

    private void Group(SvgNode node, Surroundings here, SvgNode? use)
    {
        if (!_open.Add(node))
        {
            return;
        }

        Surroundings? inner = here;
        if (node.Name is "svg" or "symbol")
        {
            inner = _placing.View(node, use, here.Around) is var (map, around) ? here with { Map = here.Map.Of(map), Around = around } : null;
        }

        if (inner is { } found)
        {
            Children(node, node.Layer is { Length: > 0 } layer ? found with { Layer = SvgNode.Told(layer) } : found);
        }

        _open.Remove(node);
    }

    private void Use(SvgNode node, Surroundings here)
    {
        string href = (node["href"] ?? "").Trim();
        Arg what = Arg.Of("what", node.Shown);
        if (href.Length == 0)
        {
            _book.Repair(RepairFindings.ValueMissing, node.Line, what, Arg.Of("key", "href"));
            return;
        }

        Arg told = Arg.Of("text", SvgNode.Told(href));
        if (href[0] != '#')
        {
            _book.Repair(SvgFindings.UseElsewhere, node.Line, what, told);
            return;
        }

        string id = href[1..];
        if (_document.Find(id) is not { } target)
        {
            _book.Repair(RepairFindings.BlockMissing, node.Line, what, told);
            return;
        }

        if (_open.Contains(target) || !_open.Add(node))
        {
            _book.Repair(RepairFindings.BlockRecursive, node.Line, what, told);
            return;
        }

        if (_document.IsTwice(id))
        {
            _book.Repair(RepairFindings.BlockTwice, target.Line, Arg.Of("what", SvgNode.Told(id)));
        }

        var sizes = new SvgSizes(node, here.Around, _book);
        Affine shift = Affine.Shift(sizes.X("x"), sizes.Y("y"));
        if (!sizes.Failed && _book.Spend(1))
        {
            _uses++;
            Place(target, here with { Map = here.Map.Of(shift) }, node);
            _uses--;
        }

        _open.Remove(node);
    }

    private void Shape(SvgNode node, Surroundings here)
    {
        if (!here.IsVisible)
        {
            _book.Ignore(node.Name, IgnoreReason.Hidden);
            return;
        }

        // What is used often is read once, unless the same words mean another size in another place.
        List<SvgRun> runs = node.Runs ?? _shapes.Read(node, here.Around);
        if (node.Name is "path" or "polyline" or "polygon")
        {
            node.Runs = runs;
        }

        foreach (SvgRun run in runs)
        {
            if (!_book.Spend(run.Segments.Count))
            {
                return;
            }

            ImmutableArray<Curve>.Builder curves = ImmutableArray.CreateBuilder<Curve>(run.Segments.Count);
            foreach (SvgSegment segment in run.Segments)
            {
                if (segment.Placed(here.Map) is not { } curve)
                {
                    var reach = Quantity.Length(Accuracy.LargestCoordinate);
                    _book.Repair(Finding.Of(RepairFindings.TooFar, _book.At(node.Line), reach, reach, Arg.Of("what", node.Shown)));
                    break;
                }

                curves.Add(curve);
            }

            if (curves.Count == run.Segments.Count)
            {
                _entities.Add(new DrawnEntity(DrawnCurves.Path(curves.DrainToImmutable(), run.IsClosed), node.Name, here.Layer, node.Line, node.Order));
            }
        }
    }
}
