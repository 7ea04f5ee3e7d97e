namespace ToolpathForge.Plugin.Contract;

/// <summary>
/// What reading a program back and measuring it against its pieces gave. Gouges and left-overs are proven: the truth is not above them.
/// </summary>
public sealed class WireProof
{
    /// <summary>Whether it may be run: nothing is wrong.</summary>
    public bool Passed { get; set; }

    /// <summary>Deepest cut into any exact piece, mm; 0 if there is none.</summary>
    public double Gouge { get; set; }

    /// <summary>Thickest material left on any exact piece outside its tabs, mm; absent when somewhere nothing cuts at all.</summary>
    public double? LeftOver { get; set; }

    /// <summary>The most that either may be: the tolerance of the job, mm.</summary>
    public double Tolerance { get; set; }

    /// <summary>What is wrong, in the order of the lines.</summary>
    public WireFault[] Faults { get; set; } = [];

    /// <summary>The figures piece by piece; empty when the program could not be read to its end.</summary>
    public WirePieceProof[] Pieces { get; set; } = [];

    /// <summary>Plain measures of the motion.</summary>
    public WireMotion Motion { get; set; } = new();
}

/// <summary>One way in which a program fails, at its worst place.</summary>
public sealed class WireFault
{
    /// <summary>Line of the program, from 1; absent when it is about the whole.</summary>
    public int? Line { get; set; }

    /// <summary>A stable word for this kind of fault.</summary>
    public string Code { get; set; } = "";

    /// <summary>What is so, in English.</summary>
    public string Message { get; set; } = "";

    /// <summary>Name of the piece, axis or other thing it is about, or the words of the program; absent if none.</summary>
    public string? Subject { get; set; }

    /// <summary>The value found, when the fault is about one.</summary>
    public WireQuantity? Found { get; set; }

    /// <summary>The value allowed, when there is one.</summary>
    public WireQuantity? Allowed { get; set; }

    /// <summary>On how many lines it occurs.</summary>
    public int Count { get; set; }
}

/// <summary>What was measured on one piece.</summary>
public sealed class WirePieceProof
{
    /// <summary>The piece's name.</summary>
    public string Name { get; set; } = "";

    /// <summary>Between one height and the next, from the bottom up.</summary>
    public WireSlabProof[] Slabs { get; set; } = [];
}

/// <summary>What was measured on one piece between two heights, in the frame of the program.</summary>
public sealed class WireSlabProof
{
    /// <summary>Lower limit, mm.</summary>
    public double Bottom { get; set; }

    /// <summary>Upper limit, mm.</summary>
    public double Top { get; set; }

    /// <summary>Deepest cut into the piece, mm; 0 if there is none.</summary>
    public double Gouge { get; set; }

    /// <summary>Line of the program that cuts it; absent if nothing comes near.</summary>
    public int? GougeLine { get; set; }

    /// <summary>Thickest material left outside tabs, mm; absent when nothing cuts at this height.</summary>
    public double? LeftOver { get; set; }

    /// <summary>Line of the motion nearest to it; absent if no edge must be cut.</summary>
    public int? LeftOverLine { get; set; }
}

/// <summary>Plain measures of a program's motion.</summary>
public sealed class WireMotion
{
    /// <summary>Lines of text.</summary>
    public int Lines { get; set; }

    /// <summary>Straight motions at feed.</summary>
    public int StraightFeeds { get; set; }

    /// <summary>Arcs.</summary>
    public int Arcs { get; set; }

    /// <summary>Rapids.</summary>
    public int Rapids { get; set; }

    /// <summary>Length of all motions at feed, mm.</summary>
    public double FeedLength { get; set; }

    /// <summary>Length of all rapids, mm.</summary>
    public double RapidLength { get; set; }
}

/// <summary>The proof of every program of a job: the file <c>proof.json</c> that <c>cut</c> writes beside the programs.</summary>
public sealed class ProofFile
{
    /// <summary>See <see cref="ContractVersion"/>.</summary>
    public string Contract { get; set; } = ContractVersion.Current;

    /// <summary>The job.</summary>
    public WireJob Job { get; set; } = new();

    /// <summary>The programs with their proofs, in the order of the job.</summary>
    public WireProgram[] Programs { get; set; } = [];
}
