namespace ToolpathForge.Catalogue;

/// <summary>A size of router table. All lengths in mm, feeds in mm/min. The user's own manual wins over any row here.</summary>
/// <param name="Id">The word a job uses.</param>
/// <param name="Name">What a person calls it.</param>
/// <param name="TravelX">Travel along X.</param>
/// <param name="TravelY">Travel along Y.</param>
/// <param name="TravelZ">Travel along Z.</param>
/// <param name="MinSpeed">Slowest spindle speed, rev/min.</param>
/// <param name="MaxSpeed">Fastest spindle speed, rev/min.</param>
/// <param name="MaxFeed">Fastest feed in the plane.</param>
/// <param name="MaxPlunge">Fastest feed downwards.</param>
/// <param name="Acceleration">In the plane, mm/s².</param>
/// <param name="PassDepth">Largest depth of one pass that the frame stands, as a share of the bit's diameter.</param>
/// <param name="ChipShare">Share of a production machine's chip load that the frame stands, 0 to 1.</param>
/// <param name="Stiffness">Side stiffness of the frame at the bit, N/mm.</param>
/// <param name="Mass">kg.</param>
/// <param name="HalfFootprint">From the middle to the edge it would tip over.</param>
/// <param name="Homing">Whether it finds its own limits.</param>
/// <param name="MovingBed">Whether the bed moves.</param>
/// <param name="SwitchedByHand">Whether the spindle is switched and set by hand.</param>
/// <param name="Source">Where the row comes from.</param>
public sealed record Machine(
    string Id,
    string Name,
    double TravelX,
    double TravelY,
    double TravelZ,
    double MinSpeed,
    double MaxSpeed,
    double MaxFeed,
    double MaxPlunge,
    double Acceleration,
    double PassDepth,
    double ChipShare,
    double Stiffness,
    double Mass,
    double HalfFootprint,
    bool Homing,
    bool MovingBed,
    bool SwitchedByHand,
    Source Source)
{
    /// <summary>Height under the gantry, from the bed, mm: nothing thicker passes. Where nobody has measured it, the travel along Z.</summary>
    public double Opening { get; init; } = TravelZ;

    /// <summary>Whether it changes bits by itself when a program commands it; nobody's hands are needed then.</summary>
    public bool ChangesBits { get; init; }

    /// <summary>Thickest shank that its collet takes, mm; infinite where nobody has said.</summary>
    public double Collet { get; init; } = double.PositiveInfinity;

    /// <summary>Highest number on the speed dial of a spindle set by hand, 1 being its slowest speed; null where there is none or nobody has said.</summary>
    public int? DialMarks { get; init; }

    /// <summary>
    /// Where the dial stands for a speed, to the nearest quarter mark; null without a dial. Taken as even between the slowest and the fastest speed (common
    /// practice; the table in the router's manual wins).
    /// </summary>
    /// <param name="speed">rev/min.</param>
    public double? DialFor(double speed) => DialMarks is { } marks && MaxSpeed > MinSpeed
        ? Math.Round(4 * (1 + ((marks - 1) * (Math.Clamp(speed, MinSpeed, MaxSpeed) - MinSpeed) / (MaxSpeed - MinSpeed)))) / 4
        : null;
}
