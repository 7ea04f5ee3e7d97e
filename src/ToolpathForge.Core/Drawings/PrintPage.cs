using System.Collections.Immutable;
using ToolpathForge.Geometry;

namespace ToolpathForge.Drawings;

/// <summary>A drawing on a page, or the part of it that a window shows.</summary>
/// <param name="Drawing">What is shown. Pages that show the same drawing at the same scale share it in the file.</param>
/// <param name="Scale">mm of paper for a mm of the thing drawn, more than 0.</param>
/// <param name="Origin">Where the drawing's origin lies, mm from the page's lower left corner; it may lie outside.</param>
/// <param name="Window">What is seen of it, mm of the page; null for all.</param>
public sealed record PageView(Drawing Drawing, double Scale, Point2 Origin, Box2? Window = null);

/// <summary>A page to print.</summary>
/// <param name="Width">mm, more than 0.</param>
/// <param name="Height">mm, more than 0.</param>
/// <param name="Views">From the bottom to the top.</param>
public sealed record PrintPage(double Width, double Height, ImmutableArray<PageView> Views);

/// <summary>A size of paper that office printers take.</summary>
/// <param name="Id">The word in file names.</param>
/// <param name="Name">What people call it.</param>
/// <param name="Width">The shorter side, mm.</param>
/// <param name="Height">The longer side, mm.</param>
public sealed record PrintPaper(string Id, string Name, double Width, double Height)
{
    /// <summary>A4, 210 by 297 mm (ISO 216).</summary>
    public static PrintPaper A4 { get; } = new("a4", "A4", 210, 297);

    /// <summary>Letter, 8 1/2 by 11 in (ANSI/ASME Y14.1, size A).</summary>
    public static PrintPaper Letter { get; } = new("letter", "Letter", 215.9, 279.4);

    /// <summary>The sizes that prints are made for.</summary>
    public static ImmutableArray<PrintPaper> All { get; } = [A4, Letter];
}
