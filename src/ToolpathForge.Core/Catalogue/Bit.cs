namespace ToolpathForge.Catalogue;

/// <summary>How a bit's flutes are ground.</summary>
public enum BitKind
{
    /// <summary>Straight flutes.</summary>
    Straight,

    /// <summary>A spiral that lifts the chips.</summary>
    UpCut,

    /// <summary>A spiral that presses the chips down.</summary>
    DownCut,

    /// <summary>Up-cut at the tip, down-cut above.</summary>
    Compression,

    /// <summary>Straight, with a bearing on the shank above the edges: it follows a pattern that lies on the work.</summary>
    TopBearing,

    /// <summary>Straight, with a bearing below the edges: it follows a pattern that lies under the work.</summary>
    TipBearing,

    /// <summary>Rounds an edge by a quarter circle.</summary>
    RoundOver,

    /// <summary>Takes an edge off at a slope.</summary>
    Chamfer,

    /// <summary>Comes to a point; for lines and letters.</summary>
    V,

    /// <summary>Ends in a half ball.</summary>
    Ball,
}

/// <summary>What a bit is made of.</summary>
public enum BitSubstance
{
    /// <summary>Solid carbide.</summary>
    Carbide,

    /// <summary>Steel, or steel with brazed carbide edges.</summary>
    Steel,
}

/// <summary>A bearing that rides on a pattern or on an edge that is cut already. All lengths in mm.</summary>
/// <param name="Diameter">Outside diameter.</param>
/// <param name="Height">How long it is along the shank.</param>
/// <param name="Gap">Between the bearing and the cutting edges; 0 where they meet.</param>
public sealed record Bearing(double Diameter, double Height, double Gap);

/// <summary>A router bit. All lengths in mm.</summary>
/// <param name="Id">The word a job uses.</param>
/// <param name="Name">What a person calls it.</param>
/// <param name="Kind">How the flutes are ground.</param>
/// <param name="Substance">What it is made of.</param>
/// <param name="Diameter">Cutting diameter, more than 0.</param>
/// <param name="FluteLength">Usable length of the cutting edges.</param>
/// <param name="Flutes">Number of cutting edges, at least 1.</param>
/// <param name="Shank">Shank diameter.</param>
/// <param name="OverallLength">Tip to the end of the shank.</param>
/// <param name="MaxSpeed">Highest speed marked on it, rev/min.</param>
/// <param name="CanPlunge">Whether it cuts at the centre and may go straight down.</param>
/// <param name="RampAngle">Steepest ramp, degrees below horizontal.</param>
/// <param name="UpCutLength">For a compression bit, the length of its up-cut part; otherwise 0.</param>
/// <param name="Source">Where the row comes from.</param>
public sealed record Bit(
    string Id,
    string Name,
    BitKind Kind,
    BitSubstance Substance,
    double Diameter,
    double FluteLength,
    int Flutes,
    double Shank,
    double OverallLength,
    double MaxSpeed,
    bool CanPlunge,
    double RampAngle,
    double UpCutLength,
    Source Source)
{
    /// <summary>Half the cutting diameter, mm.</summary>
    public double Radius => Diameter / 2;

    /// <summary>Its bearing; null for a bit without one.</summary>
    public Bearing? Bearing { get; init; }

    /// <summary>Angle between opposite edges of a V or chamfer bit, degrees, more than 0 and less than 180; otherwise 0.</summary>
    public double TipAngle { get; init; }

    /// <summary>Radius of the rounding that a round-over bit leaves, mm; otherwise 0.</summary>
    public double EdgeRadius { get; init; }

    /// <summary>
    /// Whether it leaves a wall square to the stock's face on its way round an edge with nothing but the machine to guide it. Bits with bearings are for
    /// patterns; the bearing would rub where the machine already guides.
    /// </summary>
    public bool CutsSquareWall => Kind is BitKind.Straight or BitKind.UpCut or BitKind.DownCut or BitKind.Compression;
}
