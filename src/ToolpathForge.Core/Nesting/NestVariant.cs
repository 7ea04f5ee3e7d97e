using ToolpathForge.Geometry;

namespace ToolpathForge.Nesting;

/// <summary>A part turned one way, with its lower left corner at the origin, in rows: itself, and grown by the gap.</summary>
internal sealed class NestVariant
{
    /// <summary>How far above the beginning of a row the lowest point lies, mm: rounding must not put it into the row below.</summary>
    internal const double Foot = 4e-9;

    /// <summary>Pieces are laid this much farther apart than asked, mm, so that the rounding of an offset (2e-7 mm) does not count.</summary>
    private const double Spare = 1e-6;

    private NestVariant(int part, double turn, Region shape, Point2 corner, Region grown, double rowHeight)
    {
        (Part, Turn, Shape, Corner, Grown) = (part, turn, shape, corner, grown);
        Box2 box = shape.Box;
        (Width, Height) = (box.Width, box.Height);
        Rows = RowSpans.Of(shape, rowHeight, -Foot);
        GrownRows = RowSpans.Of(grown, rowHeight, -Foot);
        Area = shape.Area;
    }

    /// <summary>Index of the part.</summary>
    internal int Part { get; }

    /// <summary>How it is turned, radians.</summary>
    internal double Turn { get; }

    /// <summary>Where the lower left corner of its box was after the turn.</summary>
    internal Point2 Corner { get; }

    /// <summary>The part, turned, the lower left corner of its box at the origin.</summary>
    internal Region Shape { get; }

    /// <summary>The same grown by the gap.</summary>
    internal Region Grown { get; }

    /// <summary>Extent along X, mm.</summary>
    internal double Width { get; }

    /// <summary>Extent along Y, mm.</summary>
    internal double Height { get; }

    /// <summary>Area, mm².</summary>
    internal double Area { get; }

    /// <summary>The part in rows.</summary>
    internal RowSpans Rows { get; }

    /// <summary>The grown part in rows.</summary>
    internal RowSpans GrownRows { get; }

    /// <summary>Turns a part.</summary>
    internal static NestVariant Of(int part, Region shape, Region grown, double turn, double rowHeight)
    {
        Region turned = shape.Placed(new Placement(turn, default, false));
        Box2 box = turned.Box;
        var corner = new Point2(box.MinX, box.MinY);
        var toCorner = new Placement(turn, -corner, false);
        return new NestVariant(part, turn, shape.Placed(toCorner), corner, grown.Placed(toCorner), rowHeight);
    }

    /// <summary>A region with room round it: every point within the gap.</summary>
    internal static Region Grow(Region shape, double gap)
    {
        OffsetResult grown = Offsetter.Closed(shape, gap + Spare);
        if (grown.Unproven is null)
        {
            return grown.ToRegion();
        }

        // Where the offset cannot be vouched for, the box with the gap round it is safe.
        return Region.Of(Contour.Rectangle(shape.Box.Grown(gap + Spare)));
    }

    /// <summary>Where the part's own frame goes when the variant's corner is laid at a point.</summary>
    internal Placement At(Point2 corner) => new(Turn, corner - Corner, false);
}
