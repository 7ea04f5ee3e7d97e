using ToolpathForge.Catalogue;

namespace ToolpathForge.Jobs;

/// <summary>A trial piece: a square that is cut, measured and thrown away.</summary>
/// <param name="Id">See <see cref="Make"/>.</param>
/// <param name="Side">Side of the square, mm.</param>
/// <param name="Material">See <see cref="Make"/>.</param>
/// <param name="Thickness">See <see cref="Make"/>.</param>
/// <param name="Bit">The bit that is looked at.</param>
/// <param name="Cut">See <see cref="Make"/>.</param>
/// <param name="At">See <see cref="Make"/>.</param>
public sealed record TrialMake(string Id, double Side, Material Material, double Thickness, Bit Bit, CutChoices Cut, Places At)
    : Make(Id, 1, Material, Thickness, Bit, Cut, At);
