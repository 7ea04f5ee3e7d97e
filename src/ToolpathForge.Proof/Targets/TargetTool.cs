namespace ToolpathForge.Proof;

/// <summary>A bit as the proof sees it: a cylinder with a flat end, unless it has a point.</summary>
public sealed record TargetTool
{
    /// <summary>The number a T word gives it; 0 or more.</summary>
    public required int Number { get; init; }

    /// <summary>Cutting diameter, mm, more than 0.</summary>
    public required double Diameter { get; init; }

    /// <summary>Whether it may go straight down into material.</summary>
    public bool MayPlunge { get; init; }

    /// <summary>Steepest way down into material other than straight down, degrees from level.</summary>
    public double MaxRampAngle { get; init; } = 90;

    /// <summary>
    /// Deepest that it may go through material that no cut before has opened, mm; null for no limit. Opened is what lies within the bit's radius of an earlier
    /// cut's centre.
    /// </summary>
    public double? MaxUncutDepth { get; init; }

    /// <summary>Number of cutting edges; only for the chip load.</summary>
    public int Flutes { get; init; } = 1;

    /// <summary>Largest feed per tooth in material, mm; null for no limit.</summary>
    public double? MaxChipLoad { get; init; }

    /// <summary>Least feed per tooth in material on the level, mm; null for no limit. Below it an edge rubs, and a lost F word shows.</summary>
    public double? MinChipLoad { get; init; }

    /// <summary>Lowest speed, revolutions a minute; null for none of the bit's own.</summary>
    public double? MinSpeed { get; init; }

    /// <summary>Highest speed, revolutions a minute; null for none of the bit's own.</summary>
    public double? MaxSpeed { get; init; }

    /// <summary>Included angle of a pointed bit, degrees; null for a flat end. Only engraving uses it: everywhere else the full cylinder counts.</summary>
    public double? PointAngle { get; init; }

    /// <summary>Width of the flat at the point of a pointed bit, mm.</summary>
    public double PointWidth { get; init; }

    internal double Radius => Diameter / 2;

    /// <summary>Half the width of the groove at the surface when the tip is this deep below it, mm.</summary>
    internal double HalfWidthAt(double depth) =>
        PointAngle is { } angle ? Math.Min(Radius, (PointWidth / 2) + (depth * Math.Tan(angle * Math.PI / 360))) : Radius;
}

/// <summary>How bits get into the spindle.</summary>
public enum ToolChangeStyle
{
    /// <summary>The program changes none: the target's first bit is in the spindle all along.</summary>
    None,

    /// <summary>T selects, M6 changes; no bit is in the spindle before the first M6.</summary>
    ByCommand,

    /// <summary>
    /// M0 is the change: the target's first bit is in the spindle at the start; a pause puts in the bit of the latest T word, or, in a program
    /// without T words, the target's next bit. The spindle has to stand still for it.
    /// </summary>
    ByPause,
}
