using ToolpathForge.Catalogue;

namespace ToolpathForge.Jobs;

/// <summary>For which ends of boards a pattern is. A board's profile is the same right through, so that the hands differ by the face that lies up only.</summary>
public enum PlateHands
{
    /// <summary>Right-hand ends: face up, profile edge towards you, end at your right.</summary>
    Right,

    /// <summary>Left-hand ends: face up, profile edge towards you, end at your left; the plate is cut as the other's mirror image, its labels on the upper face.</summary>
    Left,

    /// <summary>Both: block and stop are screwed to whichever face lies down.</summary>
    Both,
}

/// <summary>A strip of wood that is screwed under a plate to guide it: the block along the board, or the stop at its end. Lengths in mm.</summary>
/// <param name="Width">How wide; of a block null for the seat's width.</param>
/// <param name="Thickness">How far it hangs below the plate.</param>
/// <param name="SetBack">How far it stays from the finished edge, out of the cutter's way.</param>
/// <param name="Screws">How many screws; null for as many as its length asks.</param>
/// <param name="Hole">Diameter of the holes through the plate.</param>
/// <param name="Pilot">Diameter of the holes in the strip.</param>
/// <param name="Bit">What bores the plate's holes.</param>
/// <param name="At">Where its keys stand.</param>
public sealed record StripChoices(double? Width, double Thickness, double SetBack, int? Screws, double Hole, double Pilot, Bit Bit, Places At);

/// <summary>Where brads go through a plate into the board. Lengths in mm.</summary>
/// <param name="Count">How many.</param>
/// <param name="Off">How far they stay from the finished edge.</param>
/// <param name="Bit">What bores holes for them; null where they are only marked, and shot through.</param>
/// <param name="Hole">Diameter of those holes; 0 without a bit.</param>
/// <param name="At">Where its keys stand.</param>
public sealed record BradChoices(int Count, double Off, Bit? Bit, double Hole, Places At);

/// <summary>A hole to hang a plate up by.</summary>
/// <param name="Width">Its diameter, mm.</param>
/// <param name="Bit">What bores it.</param>
/// <param name="At">Where its keys stand.</param>
public sealed record HangChoice(double Width, Bit Bit, Places At);

/// <summary>What a plate has besides its edge.</summary>
/// <param name="Block">The guide block along the board's reference edge; null where the job asks for none.</param>
/// <param name="Stop">The stop against an end that was sawn first; null for a plate whose edge goes on over the end cut.</param>
/// <param name="Brads">Places for brads; null for none.</param>
/// <param name="Hang">The hole to hang it up by; null for none.</param>
/// <param name="Hands">For which ends it is.</param>
public sealed record PlateFittings(StripChoices? Block, StripChoices? Stop, BradChoices? Brads, HangChoice? Hang, PlateHands Hands)
{
    /// <summary>A bare plate for right-hand ends.</summary>
    public static PlateFittings None { get; } = new(null, null, null, null, PlateHands.Right);
}
