namespace ToolpathForge.Plugin.Contract;

/// <summary>What a drawing holds: the answer of <c>trace</c>. Lengths are in mm; in the drawing's own unit where <see cref="Unit"/> is absent.</summary>
public sealed class TraceReply
{
    /// <summary>The unit that the drawing is drawn in: <c>mm</c>, <c>in</c>, <c>cm</c>; absent when neither the drawing nor the command says.</summary>
    public string? Unit { get; set; }

    /// <summary>Millimeters in one of it.</summary>
    public double? MmPerUnit { get; set; }

    /// <summary>Area of all regions without their holes.</summary>
    public double NetAreaMm2 { get; set; }

    /// <summary>The box round everything: left, lower, right, upper side; empty when there is nothing.</summary>
    public double[] BoxMm { get; set; } = [];

    /// <summary>Each piece of material that the drawing bounds, by its lowest leftmost point.</summary>
    public TraceRegion[] Regions { get; set; } = [];

    /// <summary>How many things of the drawing were left alone: text, dimensions, what lies on hidden layers.</summary>
    public int Ignored { get; set; }

    /// <summary>How many things were put right, in the file or in its outlines.</summary>
    public int Repairs { get; set; }

    /// <summary>What was found.</summary>
    public TraceFinding[] Findings { get; set; } = [];
}

/// <summary>A piece of material in a drawing: an outer outline with its holes.</summary>
public sealed class TraceRegion
{
    /// <summary>Its area without the holes.</summary>
    public double AreaMm2 { get; set; }

    /// <summary>Length of its outlines, holes included.</summary>
    public double LengthMm { get; set; }

    /// <summary>The box round it: left, lower, right, upper side.</summary>
    public double[] BoxMm { get; set; } = [];

    /// <summary>How many outlines it has: one, and one for each hole.</summary>
    public int Loops { get; set; }

    /// <summary>Radius of the tightest bend that is hollow for a bit outside the material; 0 for a sharp corner, absent when there is none.</summary>
    public double? TightestInsideRadiusMm { get; set; }

    /// <summary>Width of the narrowest gap between parts of its outlines, by opposite points; absent when there is none up to 50 mm.</summary>
    public double? NarrowestSlotMm { get; set; }
}

/// <summary>Something about a drawing that the person should know.</summary>
public sealed class TraceFinding
{
    /// <summary>How much it weighs: <c>stop</c>, <c>warn</c> or <c>note</c>.</summary>
    public string Severity { get; set; } = "";

    /// <summary>A stable word for this kind of finding, lower case with hyphens.</summary>
    public string Code { get; set; } = "";

    /// <summary>What is so, in English.</summary>
    public string Message { get; set; } = "";

    /// <summary>Where it lies; absent when it lies nowhere in particular. The point is one of the drawing.</summary>
    public WirePlace? Where { get; set; }
}
