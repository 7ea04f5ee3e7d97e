namespace ToolpathForge.Plugin.Contract;

/// <summary>Something the person should know.</summary>
public sealed class WireFinding
{
    /// <summary>How much it weighs: <c>stop</c> (no program is handed over), <c>warn</c> or <c>note</c>.</summary>
    public string Severity { get; set; } = "";

    /// <summary>A stable word for this kind of finding, lower case with hyphens.</summary>
    public string Code { get; set; } = "";

    /// <summary>What is so, in English, lengths in the unit of the job.</summary>
    public string Message { get; set; } = "";

    /// <summary>What to do about it, in English.</summary>
    public string Advice { get; set; } = "";

    /// <summary>Where it lies; absent when it lies nowhere in particular.</summary>
    public WirePlace? Where { get; set; }

    /// <summary>The value found, when the finding is about one.</summary>
    public WireQuantity? Found { get; set; }

    /// <summary>The value allowed, when there is one.</summary>
    public WireQuantity? Allowed { get; set; }
}

/// <summary>Where a finding lies. Whatever is not known is absent.</summary>
public sealed class WirePlace
{
    /// <summary>The file, as it was named.</summary>
    public string? File { get; set; }

    /// <summary>Line in the file, from 1.</summary>
    public int? Line { get; set; }

    /// <summary>Column in the line, from 1.</summary>
    public int? Column { get; set; }

    /// <summary>Id of the make it belongs to.</summary>
    public string? Make { get; set; }

    /// <summary>A point of the piece.</summary>
    public WirePoint? Point { get; set; }
}

/// <summary>A point in the frame of its piece: X along the board from its end inwards, Y from the reference edge, mm.</summary>
public sealed class WirePoint
{
    /// <summary>Along the board from its end inwards, mm.</summary>
    public double X { get; set; }

    /// <summary>From the reference edge, mm.</summary>
    public double Y { get; set; }
}

/// <summary>A number and its unit.</summary>
public sealed class WireQuantity
{
    /// <summary>The number, in <see cref="Unit"/>.</summary>
    public double Value { get; set; }

    /// <summary><c>mm</c>, <c>deg</c>, <c>mm/min</c>, <c>rpm</c>, <c>mm2</c>, <c>kg</c>, <c>N</c>, <c>N.m</c>, <c>m/s</c>, or <c>1</c> for a plain number.</summary>
    public string Unit { get; set; } = "";
}
