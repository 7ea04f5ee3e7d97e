namespace ToolpathForge.Plugin.Contract;

/// <summary>What the catalogues hold: the answer of <c>list</c>. A list that was not asked for is absent.</summary>
public sealed class CatalogueReply
{
    /// <summary>See <see cref="ContractVersion"/>.</summary>
    public string Contract { get; set; } = ContractVersion.Current;

    /// <summary>Always <c>list</c>.</summary>
    public string Command { get; set; } = "list";

    /// <summary>The exit code of the command.</summary>
    public int ExitCode { get; set; }

    /// <summary>What is wrong with the files that were asked for.</summary>
    public WireFinding[] Findings { get; set; } = [];

    /// <summary>Dressed sizes of lumber.</summary>
    public WireLumber[]? Lumber { get; set; }

    /// <summary>Kinds of panel.</summary>
    public WirePanel[]? Panels { get; set; }

    /// <summary>Router bits.</summary>
    public WireBit[]? Bits { get; set; }

    /// <summary>Materials.</summary>
    public WireMaterial[]? Materials { get; set; }

    /// <summary>Machines.</summary>
    public WireMachine[]? Machines { get; set; }

    /// <summary>Dialects of G-code.</summary>
    public WireDialect[]? Dialects { get; set; }

    /// <summary>Shapes.</summary>
    public WireShape[]? Shapes { get; set; }

    /// <summary>Figures of the program's own that no row of a catalogue holds.</summary>
    public WireFigure[]? Figures { get; set; }
}

/// <summary>A figure of the program's own, and how well founded it is.</summary>
public sealed class WireFigure
{
    /// <summary>A word for it.</summary>
    public string Id { get; set; } = "";

    /// <summary>What it is, for a person.</summary>
    public string Says { get; set; } = "";

    /// <summary>How much.</summary>
    public double Value { get; set; }

    /// <summary>Its unit, as <c>mm</c>, <c>deg</c>, <c>rpm</c>, <c>N/mm²</c>; empty for a share or a count.</summary>
    public string Unit { get; set; } = "";

    /// <summary>Where it comes from.</summary>
    public WireSource Source { get; set; } = new();
}

/// <summary>Where a row of a catalogue comes from.</summary>
public sealed class WireSource
{
    /// <summary><c>published</c>, <c>practice</c> (common practice), <c>judgment</c>, <c>memory</c> (check it) or <c>user</c>.</summary>
    public string Kind { get; set; } = "";

    /// <summary>The source in words.</summary>
    public string Text { get; set; } = "";
}

/// <summary>A dressed size of lumber.</summary>
public sealed class WireLumber
{
    /// <summary>The word a job uses.</summary>
    public string Id { get; set; } = "";

    /// <summary>What a person calls it.</summary>
    public string Name { get; set; } = "";

    /// <summary>Dressed thickness, mm.</summary>
    public double Thickness { get; set; }

    /// <summary>Dressed width, mm.</summary>
    public double Width { get; set; }

    /// <summary>Whether it is engineered timber, which is cut only as its maker allows.</summary>
    public bool Engineered { get; set; }

    /// <summary>Where the row comes from.</summary>
    public WireSource Source { get; set; } = new();
}

/// <summary>A kind of panel.</summary>
public sealed class WirePanel
{
    /// <summary>The word a job uses.</summary>
    public string Id { get; set; } = "";

    /// <summary>What a person calls it.</summary>
    public string Name { get; set; } = "";

    /// <summary>Id of its material.</summary>
    public string Material { get; set; } = "";

    /// <summary>Nominal thickness, mm.</summary>
    public double Nominal { get; set; }

    /// <summary>Thinnest that passes the standard, mm.</summary>
    public double Thinnest { get; set; }

    /// <summary>Thickest that passes the standard, mm.</summary>
    public double Thickest { get; set; }

    /// <summary>Where the row comes from.</summary>
    public WireSource Source { get; set; } = new();
}

/// <summary>A router bit.</summary>
public sealed class WireBit
{
    /// <summary>The word a job uses.</summary>
    public string Id { get; set; } = "";

    /// <summary>What a person calls it.</summary>
    public string Name { get; set; } = "";

    /// <summary>
    /// <c>straight</c>, <c>up-cut</c>, <c>down-cut</c>, <c>compression</c>, <c>top-bearing</c>, <c>tip-bearing</c>, <c>round-over</c>, <c>chamfer</c>,
    /// <c>v</c> or <c>ball</c>. More may be added.
    /// </summary>
    public string Kind { get; set; } = "";

    /// <summary><c>carbide</c> or <c>steel</c>.</summary>
    public string Substance { get; set; } = "";

    /// <summary>Cutting diameter, mm.</summary>
    public double Diameter { get; set; }

    /// <summary>Usable length of the cutting edges, mm.</summary>
    public double FluteLength { get; set; }

    /// <summary>Number of cutting edges.</summary>
    public int Flutes { get; set; }

    /// <summary>Shank diameter, mm.</summary>
    public double Shank { get; set; }

    /// <summary>Tip to the end of the shank, mm.</summary>
    public double OverallLength { get; set; }

    /// <summary>Highest speed marked on it, rev/min.</summary>
    public double MaxSpeed { get; set; }

    /// <summary>Whether it may go straight down.</summary>
    public bool CanPlunge { get; set; }

    /// <summary>Where the row comes from.</summary>
    public WireSource Source { get; set; } = new();

    /// <summary>Length of the up-cut part of a compression bit, mm.</summary>
    public double? UpCutLength { get; set; }

    /// <summary>Outside diameter of its bearing, mm; absent for a bit without one.</summary>
    public double? BearingDiameter { get; set; }

    /// <summary>Length of the bearing along the shank, mm.</summary>
    public double? BearingHeight { get; set; }

    /// <summary>Between the bearing and the cutting edges, mm.</summary>
    public double? BearingGap { get; set; }

    /// <summary>Between opposite edges of a V or chamfer bit, degrees.</summary>
    public double? TipAngle { get; set; }

    /// <summary>Radius of the rounding that a round-over bit leaves, mm.</summary>
    public double? EdgeRadius { get; set; }
}

/// <summary>A material and how it cuts.</summary>
public sealed class WireMaterial
{
    /// <summary>The word a job uses.</summary>
    public string Id { get; set; } = "";

    /// <summary>What a person calls it.</summary>
    public string Name { get; set; } = "";

    /// <summary><c>softwood</c>, <c>hardwood</c> or <c>panel</c>.</summary>
    public string Kind { get; set; } = "";

    /// <summary>Density, kg/m³: of timber at 12 % moisture, of panels as delivered.</summary>
    public double Density { get; set; }

    /// <summary>Largest depth of one pass as a share of the bit's diameter.</summary>
    public double PassDepth { get; set; }

    /// <summary>Steepest ramp, degrees below horizontal.</summary>
    public double RampAngle { get; set; }

    /// <summary>The chip load that a bit may take, by its diameter.</summary>
    public WireChipBand[] Chips { get; set; } = [];

    /// <summary>Where the row comes from.</summary>
    public WireSource Source { get; set; } = new();
}

/// <summary>The chip load that a bit of one diameter may take, at a depth of one diameter.</summary>
public sealed class WireChipBand
{
    /// <summary>Cutting diameter, mm.</summary>
    public double Diameter { get; set; }

    /// <summary>Thinner rubs and heats, mm a tooth.</summary>
    public double Least { get; set; }

    /// <summary>Thicker overloads, mm a tooth.</summary>
    public double Most { get; set; }
}

/// <summary>A machine.</summary>
public sealed class WireMachine
{
    /// <summary>The word a job uses.</summary>
    public string Id { get; set; } = "";

    /// <summary>What a person calls it.</summary>
    public string Name { get; set; } = "";

    /// <summary>Travel along X, mm.</summary>
    public double TravelX { get; set; }

    /// <summary>Travel along Y, mm.</summary>
    public double TravelY { get; set; }

    /// <summary>Travel along Z, mm.</summary>
    public double TravelZ { get; set; }

    /// <summary>Slowest spindle speed, rev/min.</summary>
    public double MinSpeed { get; set; }

    /// <summary>Fastest spindle speed, rev/min.</summary>
    public double MaxSpeed { get; set; }

    /// <summary>Fastest feed in the plane, mm/min.</summary>
    public double MaxFeed { get; set; }

    /// <summary>Fastest feed downwards, mm/min.</summary>
    public double MaxPlunge { get; set; }

    /// <summary>Where the row comes from.</summary>
    public WireSource Source { get; set; } = new();

    /// <summary>Height under the gantry, from the bed, mm.</summary>
    public double Opening { get; set; }

    /// <summary>Thickest shank that its collet takes, mm; absent where nobody has said.</summary>
    public double? Collet { get; set; }

    /// <summary>Side stiffness of the frame at the bit, N/mm.</summary>
    public double Stiffness { get; set; }

    /// <summary>Its mass, kg.</summary>
    public double Mass { get; set; }

    /// <summary>From its middle to the edge it would tip over, mm.</summary>
    public double HalfFootprint { get; set; }

    /// <summary>Whether it finds its own limits.</summary>
    public bool Homing { get; set; }

    /// <summary>Whether its bed moves.</summary>
    public bool MovingBed { get; set; }

    /// <summary>Whether it changes bits by itself at a command; programs pause for every bit where it does not.</summary>
    public bool ChangesBits { get; set; }
}

/// <summary>A dialect of G-code, by what it does.</summary>
public sealed class WireDialect
{
    /// <summary>The word a job uses.</summary>
    public string Id { get; set; } = "";

    /// <summary>What it does, in a few words.</summary>
    public string Name { get; set; } = "";

    /// <summary>Unit of the lengths in its text: <c>mm</c> or <c>in</c>.</summary>
    public string Unit { get; set; } = "";

    /// <summary>Decimals of a coordinate.</summary>
    public int Decimals { get; set; }

    /// <summary>How arcs are written: <c>centre</c>, <c>radius</c> or <c>lines</c>.</summary>
    public string Arcs { get; set; } = "";

    /// <summary>What happens at a change of bit: <c>command</c>, <c>pause</c> or <c>separate-programs</c>.</summary>
    public string BitChange { get; set; } = "";

    /// <summary>Ending of its files, with the dot.</summary>
    public string FileEnding { get; set; } = "";

    /// <summary>Where the row comes from.</summary>
    public WireSource Source { get; set; } = new();
}

/// <summary>A shape and what it asks.</summary>
public sealed class WireShape
{
    /// <summary>The word a job uses.</summary>
    public string Id { get; set; } = "";

    /// <summary>What it looks like.</summary>
    public string Says { get; set; } = "";

    /// <summary>What it asks, in order.</summary>
    public WireQuestion[] Questions { get; set; } = [];
}

/// <summary>One thing a shape asks.</summary>
public sealed class WireQuestion
{
    /// <summary>The key in the job.</summary>
    public string Key { get; set; } = "";

    /// <summary><c>size</c> (a length or a share of the width), <c>length</c>, <c>angle</c>, <c>number</c>, <c>choice</c>, <c>flag</c>, <c>text</c>, <c>drawing</c> (its name) or <c>parts</c> (a list of tables).</summary>
    public string Kind { get; set; } = "";

    /// <summary>What it means.</summary>
    public string Asks { get; set; } = "";

    /// <summary>What is taken when the job is silent, as a job would write it; absent when the job must say.</summary>
    public string? Default { get; set; }

    /// <summary>Smallest size or length (mm), angle (degrees), number, or fewest parts; absent for what has no range.</summary>
    public double? Least { get; set; }

    /// <summary>Largest size or length (mm), angle (degrees), number, or most parts; absent for what has no range.</summary>
    public double? Most { get; set; }

    /// <summary>The words of a choice.</summary>
    public string[]? Choices { get; set; }
}
