namespace ToolpathForge.Jobs;

/// <summary>How pieces are laid on panels.</summary>
/// <param name="Together">Whether makes that come from the same panel and are cut alike share blanks, nested by their outline.</param>
/// <param name="Turned">How pieces may be turned on shared blanks.</param>
/// <param name="Gap">Wood left standing between the tracks of two pieces, mm.</param>
/// <param name="Length">Length of a shared blank along X, mm; null for as far as the machine reaches.</param>
/// <param name="Width">Its width along Y, mm; null likewise.</param>
public sealed record PanelSharing(bool Together, PlateTurn Turned, double Gap, double? Length, double? Width)
{
    /// <summary>Every make on blanks of its own, 6 mm between tracks (common practice).</summary>
    public static PanelSharing None { get; } = new(false, PlateTurn.Quarter, 6, null, null);
}
