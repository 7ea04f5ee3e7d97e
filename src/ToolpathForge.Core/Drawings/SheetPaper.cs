using System.Collections.Immutable;
using ToolpathForge.Geometry;

namespace ToolpathForge.Drawings;

/// <summary>The paper that a drawing is put on, and where.</summary>
/// <param name="Width">mm.</param>
/// <param name="Height">mm.</param>
/// <param name="Scale">mm of paper for a mm of the thing drawn: 0.5 for 1:2.</param>
/// <param name="Origin">Where the drawing's origin lies, mm from the paper's lower left corner; it may lie outside.</param>
public sealed record SheetPaper(double Width, double Height, double Scale, Point2 Origin)
{
    /// <summary>Scales that a shop drawing uses, the largest first: a rule reads them without a calculator.</summary>
    public static ImmutableArray<double> CommonScales { get; } = [1, 1 / 2.0, 1 / 2.5, 1 / 4.0, 1 / 5.0, 1 / 8.0, 1 / 10.0, 1 / 20.0, 1 / 25.0, 1 / 50.0, 1 / 100.0];

    /// <summary>Paper that just holds a drawing.</summary>
    /// <param name="drawing">What it has to hold.</param>
    /// <param name="scale">mm of paper for a mm of the thing drawn, more than 0.</param>
    /// <param name="margin">Free space on every side, mm of paper.</param>
    public static SheetPaper Around(Drawing drawing, double scale, double margin = 4) => Around(Draughting.Marks(drawing, scale), scale, margin);

    /// <summary>Paper that just holds what is already drawn out for the scale.</summary>
    internal static SheetPaper Around(ImmutableArray<Mark> marks, double scale, double margin)
    {
        Box2 box = ScaledBox(marks, scale);
        return new SheetPaper(
            Math.Ceiling(box.Width + (2 * margin)), Math.Ceiling(box.Height + (2 * margin)), scale, new Point2(margin - box.MinX, margin - box.MinY));
    }

    /// <summary>Paper of a given size with the drawing in its middle, at the largest of <see cref="CommonScales"/> that lets it fit.</summary>
    /// <param name="drawing">What it has to hold.</param>
    /// <param name="width">mm.</param>
    /// <param name="height">mm.</param>
    /// <param name="margin">Free space on every side, mm.</param>
    /// <returns>None when even the smallest scale is too large.</returns>
    public static SheetPaper? Within(Drawing drawing, double width, double height, double margin = 4)
    {
        foreach (double scale in CommonScales)
        {
            Box2 box = ScaledBox(Draughting.Marks(drawing, scale), scale);
            if (box.Width + (2 * margin) <= width && box.Height + (2 * margin) <= height)
            {
                return new SheetPaper(width, height, scale, new Point2((width / 2) - box.Center.X, (height / 2) - box.Center.Y));
            }
        }

        return null;
    }

    /// <summary>Where a point of the drawing lies on the paper, mm from its lower left corner.</summary>
    /// <param name="p">The point, mm of the drawing.</param>
    public Point2 ToPaper(Point2 p) => Origin + (p * Scale);

    private static Box2 ScaledBox(ImmutableArray<Mark> marks, double scale)
    {
        Box2 box = Draughting.BoxOf(marks);
        return box.IsEmpty ? new Box2(0, 0, 0, 0) : new Box2(box.MinX * scale, box.MinY * scale, box.MaxX * scale, box.MaxY * scale);
    }
}
