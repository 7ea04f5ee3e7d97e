namespace ToolpathForge.Plugin.Contract;

/// <summary>One program.</summary>
public sealed class WireProgram
{
    /// <summary>Name of its file.</summary>
    public string File { get; set; } = "";

    /// <summary>SHA-256 of its bytes, lower-case hexadecimal.</summary>
    public string Sha256 { get; set; } = "";

    /// <summary>Ids of the makes it cuts.</summary>
    public string[] Makes { get; set; } = [];

    /// <summary>Id of the bit that cuts its outline, or of its last bit.</summary>
    public string Bit { get; set; } = "";

    /// <summary>Ids of all its bits in the order of their use.</summary>
    public string[] Bits { get; set; } = [];

    /// <summary>Spindle speed, rev/min.</summary>
    public double Speed { get; set; }

    /// <summary>Feed in the plane, mm/min.</summary>
    public double Feed { get; set; }

    /// <summary>How many times it is to be run, each time with new stock, to make the count.</summary>
    public int Times { get; set; }

    /// <summary>How often it waits for the next boards while it runs; 0 for not at all.</summary>
    public int Waits { get; set; }

    /// <summary>Which board lies where, run by run; empty for panels.</summary>
    public WireTurn[] Turns { get; set; } = [];

    /// <summary>How long it runs once, minutes: an estimate.</summary>
    public double Minutes { get; set; }

    /// <summary>Length of its path at feed, mm.</summary>
    public double CuttingLength { get; set; }

    /// <summary>What the proof measured.</summary>
    public WireProof Proof { get; set; } = new();
}

/// <summary>A board's turn at the machine.</summary>
public sealed class WireTurn
{
    /// <summary>The run, from 1; one that the program waits before counts as a run.</summary>
    public int Run { get; set; }

    /// <summary>Its place on the bed, from 1 at the fence.</summary>
    public int Place { get; set; }

    /// <summary>Its number among the boards of the make, from 1.</summary>
    public int Board { get; set; }

    /// <summary>The person's word for it; absent for none.</summary>
    public string? Name { get; set; }

    /// <summary>Which end: 1, or 2 with the board turned end over end.</summary>
    public int End { get; set; }

    /// <summary>Its width as measured, mm.</summary>
    public double Width { get; set; }

    /// <summary>Its thickness as measured, mm.</summary>
    public double Thickness { get; set; }
}

/// <summary>How a program measures up to a job: the answer of <c>prove</c>.</summary>
public sealed class ProveReply
{
    /// <summary>See <see cref="ContractVersion"/>.</summary>
    public string Contract { get; set; } = ContractVersion.Current;

    /// <summary>Always <c>prove</c>.</summary>
    public string Command { get; set; } = "prove";

    /// <summary>The exit code of the command.</summary>
    public int ExitCode { get; set; }

    /// <summary>The file that was read, as it was named.</summary>
    public string File { get; set; } = "";

    /// <summary>The program of the job that it was measured against; absent when that could not be told.</summary>
    public string? Program { get; set; }

    /// <summary>Ids of the makes that this program cuts.</summary>
    public string[] Makes { get; set; } = [];

    /// <summary>What was found in the job.</summary>
    public WireFinding[] Findings { get; set; } = [];

    /// <summary>The figures; absent when it could not be measured.</summary>
    public WireProof? Proof { get; set; }
}
