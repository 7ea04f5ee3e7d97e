using ToolpathForge.Catalogue;

namespace ToolpathForge.Checks.Settings;

/// <summary>A board that hangs out over the edge of the bed, mm.</summary>
/// <param name="Length">Length of the board.</param>
/// <param name="Width">Its width; of boards side by side the sum.</param>
/// <param name="OnBed">How much of its length lies on the bed.</param>
/// <param name="Stand">Whether a stand carries what hangs out.</param>
public sealed record Overhang(double Length, double Width, double OnBed, bool Stand)
{
    /// <summary>Its moisture, per cent.</summary>
    public double Moisture { get; init; } = WoodDensity.SoldAsDry;
}

/// <summary>A cut on a machine to be looked at before anything spins. Lengths in mm; null is for what the person has not said.</summary>
/// <param name="Bit">With what.</param>
/// <param name="Material">In what.</param>
/// <param name="Machine">On what.</param>
/// <param name="Depth">From the stock's upper face to the lowest point of the bit.</param>
public sealed record MachineQuestion(Bit Bit, Material Material, Machine Machine, double Depth)
{
    /// <summary>How much of the depth is below the stock; 0 for a cut that does not go through.</summary>
    public double Overcut { get; init; }

    /// <summary>Thickness of the spoilboard; null where the cut is not said to go through.</summary>
    public double? Spoilboard { get; init; }

    /// <summary>Spindle speed, rev/min.</summary>
    public double? Speed { get; init; }

    /// <summary>Feed in the plane, mm/min.</summary>
    public double? Feed { get; init; }

    /// <summary>Feed downwards, mm/min.</summary>
    public double? Plunge { get; init; }

    /// <summary>Depth of one pass.</summary>
    public double? PassDepth { get; init; }

    /// <summary>How far the bit sticks out of the collet.</summary>
    public double? StickOut { get; init; }

    /// <summary>What roughing leaves on the finished edge; half a millimetre is usual (common practice).</summary>
    public double Allowance { get; init; } = 0.5;

    /// <summary>The board that hangs out; null for none.</summary>
    public Overhang? Overhang { get; init; }

    /// <summary>How far above the stock the bit travels between cuts; null where it is not said.</summary>
    public double? Clearance { get; init; }

    /// <summary>Deepest that one finishing pass cuts anew; null for the whole depth.</summary>
    public double? FinishStep { get; init; }

    /// <summary>Whether the edges must reach over the whole depth even where the shank is thin enough to follow: a wall is finished in one pass.</summary>
    public bool WholeWall { get; init; }

    /// <summary>Thickness of the stock where the cut does not go through it; null for the depth without the overcut.</summary>
    public double? Thickness { get; init; }

    /// <summary>Thickness of the stock.</summary>
    public double Stock => Thickness ?? (Depth - Overcut);
}
