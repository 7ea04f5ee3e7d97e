using System.Collections.Immutable;
using ToolpathForge.Catalogue;
using ToolpathForge.Geometry;

namespace ToolpathForge.Jobs;

/// <summary>
/// A hole or a slot right through a piece: everything within half its width of a centre line, so that a hole is a slot of no length. In the piece
/// frame: X along the board from its tip inwards, Y from the reference edge.
/// </summary>
/// <param name="Name">The person's word for it, or a number.</param>
/// <param name="From">Where its centre line begins, mm.</param>
/// <param name="To">Where it ends, mm; the same point for a hole.</param>
/// <param name="Width">Diameter of a hole, width of a slot, finished, mm.</param>
/// <param name="Bit">What it is cut with.</param>
/// <param name="At">Where each key stands.</param>
public sealed record Opening(string Name, Point2 From, Point2 To, double Width, Bit Bit, Places At)
{
    /// <summary>
    /// The edge of an opening that is neither a hole nor a slot, clockwise, piece frame; null for those. Its centre line is then the diagonal of its box, and its width
    /// that of the box, for whoever only wants to know where it is.
    /// </summary>
    public Outline? Edge { get; init; }

    /// <summary>
    /// Whether it is cut round at its edge and its waste stays whole, held by tabs or a skin like a piece; otherwise all of it goes to chips. With the bit of the make then, so
    /// that what lies in the waste is cut before.
    /// </summary>
    public bool Held { get; init; }

    /// <summary>What people call it: a slot is long with round ends, anything else is a hole.</summary>
    public string Called => FormattableString.Invariant($"{(IsHole || Edge is not null ? "hole" : "slot")} {Name}");

    /// <summary>Whether it is round.</summary>
    public bool IsHole => From == To && Edge is null;
}

/// <summary>What is engraved into the upper face of a piece, with the project's single-stroke alphabet.</summary>
/// <param name="Bit">What engraves.</param>
/// <param name="Depth">Of the strokes below the upper face, mm.</param>
/// <param name="Height">Of a capital, mm.</param>
/// <param name="Labels">Whether job, size, hand, face, arrows and the guide-block line are engraved.</param>
/// <param name="Texts">Lines of the person's own, after those.</param>
/// <param name="At">Where each key stands.</param>
public sealed record Marking(Bit Bit, double Depth, double Height, bool Labels, ImmutableArray<string> Texts, Places At)
{
    /// <summary>Whether a line is left to write the date on.</summary>
    public bool Dated { get; init; }

    /// <summary>How wide a stroke is at the upper face, mm.</summary>
    public double StrokeWidth => Bit.TipAngle > 0 ? Math.Min(Bit.Diameter, 2 * Depth * Math.Tan(Bit.TipAngle * Math.PI / 360)) : Bit.Diameter;
}

/// <summary>Where the job wants a tab or the lead, in the piece frame.</summary>
/// <param name="Point">Near the edge it belongs on, mm.</param>
/// <param name="At">Where each key stands.</param>
public sealed record PlaceOnEdge(Point2 Point, Places At);

/// <summary>How a tab is shaped along the edge.</summary>
public enum TabForm
{
    /// <summary>The bit climbs and sinks along slopes: no plunge, no dwell.</summary>
    Ramped,

    /// <summary>The bit goes straight up and straight down.</summary>
    Square,
}

/// <summary>How a slot as narrow as the bit is made easier.</summary>
public enum SlotChoice
{
    /// <summary>By depth: as it is up to one diameter, slowed up to three, widened beyond.</summary>
    ByDepth,

    /// <summary>Fed more slowly.</summary>
    Slow,

    /// <summary>A second track beside the first at every depth.</summary>
    Wide,
}
