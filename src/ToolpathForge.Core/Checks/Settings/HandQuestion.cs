using ToolpathForge.Catalogue;
using ToolpathForge.Checks.Hand;
using ToolpathForge.Cutting;
using ToolpathForge.Measures;

namespace ToolpathForge.Checks.Settings;

/// <summary>A cut with a hand router to be looked at before anything spins. Lengths in mm; null is for what the person has not said.</summary>
/// <param name="Bit">With what.</param>
/// <param name="Board">Thickness of the board.</param>
public sealed record HandQuestion(Bit Bit, double Board)
{
    /// <summary>Thickness of the pattern; null where an edge that is cut already guides.</summary>
    public double? Pattern { get; init; }

    /// <summary>How deep an edge is cut already, from the upper face, by a machine or a first pass; null for none.</summary>
    public double? Machined { get; init; }

    /// <summary>The depth the person means to set.</summary>
    public double? Depth { get; init; }

    /// <summary>Outside diameter of a guide bushing that is used instead of a bearing.</summary>
    public double? Bushing { get; init; }

    /// <summary>How far the bushing stands out below the base.</summary>
    public double? BushingLength { get; init; }

    /// <summary>How far inside the finished edge the pattern has been made for its guide; 0 for one of the finished size.</summary>
    public double PatternInset { get; init; }

    /// <summary>Smallest hollow radius that must be followed, of what guides.</summary>
    public double? InsideRadius { get; init; }

    /// <summary>What the saw leaves outside the line.</summary>
    public double? Bite { get; init; }

    /// <summary>How far the collet stays above the base when the router is pushed down.</summary>
    public double ColletHeight { get; init; }

    /// <summary>Whether a bearing at the tip may hang out below its pattern.</summary>
    public bool MayHang { get; init; }

    /// <summary>Where the end of the board lies, the profile edge towards the person.</summary>
    public EndSide? End { get; init; }

    /// <summary>The speed that it is to run at, rev/min; null where nobody has said.</summary>
    public double? Speed { get; init; }

    /// <summary>Slope of the fibres against the board's length, degrees: positive where they draw away from the person towards the tip's other side, so that it adds to the edge's lean.</summary>
    public double GrainSlope { get; init; }

    /// <summary>The grain class of the edge, where its curve is known; null leaves it to end, lean and slope.</summary>
    public GrainClass? Grain { get; init; }

    /// <summary>The person's unit, for depths on marks of a rule.</summary>
    public LengthUnit Unit { get; init; } = LengthUnit.Inch;

    /// <summary>How far the edge draws away from the board's length towards the tip, degrees; 30 where nobody has said, the middle of a usual curve.</summary>
    public double Lean { get; init; } = 30;
}
