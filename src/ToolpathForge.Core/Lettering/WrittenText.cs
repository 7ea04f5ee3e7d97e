using System.Collections.Immutable;
using System.Text;
using ToolpathForge.Geometry;

namespace ToolpathForge.Lettering;

/// <summary>Which point of a line of text its position names, along the line. Across it the position is always on the baseline.</summary>
public enum TextAlign
{
    /// <summary>Where the first stroke's ink begins.</summary>
    Start,

    /// <summary>The middle of the ink.</summary>
    Middle,

    /// <summary>Where the last stroke's ink ends.</summary>
    End,
}

/// <summary>A line of text as pen strokes, in place.</summary>
/// <param name="Text">What it says.</param>
/// <param name="Strokes">In writing order, in the direction of the pen: lines and arcs, open, but for rings like O, which are closed.</param>
/// <param name="Width">From the first ink to the last along the line, mm, measured on the strokes' centre line; 0 when there is no ink.</param>
/// <param name="Box">The smallest axis-parallel box round the strokes' centre line; empty when there are none.</param>
/// <param name="Unknown">Characters that the alphabet does not hold, each once, in order of appearance. A box was drawn for each.</param>
public sealed record WrittenText(string Text, ImmutableArray<Contour> Strokes, double Width, Box2 Box, ImmutableArray<Rune> Unknown);
