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
}

/// <summary>What a bit is made of.</summary>
public enum BitSubstance
{
    /// <summary>Solid carbide.</summary>
    Carbide,

    /// <summary>Steel, or steel with brazed carbide edges.</summary>
    Steel,
}

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
}
