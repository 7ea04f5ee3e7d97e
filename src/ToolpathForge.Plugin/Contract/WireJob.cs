namespace ToolpathForge.Plugin.Contract;

/// <summary>A job as it was understood.</summary>
public sealed class WireJob
{
    /// <summary>The job's file, as it was named.</summary>
    public string File { get; set; } = "";

    /// <summary>What the person calls the job.</summary>
    public string Name { get; set; } = "";

    /// <summary>The unit it is written in, and messages are worded in: <c>mm</c> or <c>in</c>.</summary>
    public string Unit { get; set; } = "";

    /// <summary>Largest departure of the finished piece from the exact one, mm.</summary>
    public double Tolerance { get; set; }

    /// <summary>Id of the machine.</summary>
    public string Machine { get; set; } = "";

    /// <summary>Id of the dialect.</summary>
    public string Dialect { get; set; } = "";

    /// <summary>What is made, in the order of the job.</summary>
    public WireMake[] Makes { get; set; } = [];
}

/// <summary>One thing to make.</summary>
public sealed class WireMake
{
    /// <summary>The person's word for it.</summary>
    public string Id { get; set; } = "";

    /// <summary><c>pattern</c>, <c>board-end</c> or <c>outline</c>. More may be added.</summary>
    public string Kind { get; set; } = "";

    /// <summary>How many.</summary>
    public int Count { get; set; }

    /// <summary>Id of the size of lumber that the shape is drawn for; absent for what is no end of a board nor a pattern of one.</summary>
    public string? Board { get; set; }

    /// <summary>The width that the shape is scaled to, mm; absent without a board.</summary>
    public double? DesignWidth { get; set; }

    /// <summary>Id of what the bit cuts.</summary>
    public string Material { get; set; } = "";

    /// <summary>Thickness of what the bit cuts, mm.</summary>
    public double Thickness { get; set; }

    /// <summary>Id of the shape; absent without a board.</summary>
    public string? Shape { get; set; }

    /// <summary>Id of the bit.</summary>
    public string Bit { get; set; } = "";

    /// <summary>How many ends of boards; absent for what is not cut into boards.</summary>
    public int? Ends { get; set; }
}

/// <summary>What would go wrong: the answer of <c>check</c>. Nothing is written.</summary>
public sealed class CheckReply
{
    /// <summary>See <see cref="ContractVersion"/>.</summary>
    public string Contract { get; set; } = ContractVersion.Current;

    /// <summary>Always <c>check</c>.</summary>
    public string Command { get; set; } = "check";

    /// <summary>The exit code of the command.</summary>
    public int ExitCode { get; set; }

    /// <summary>The job; absent when it could not be read.</summary>
    public WireJob? Job { get; set; }

    /// <summary>What was found, in the order of the job.</summary>
    public WireFinding[] Findings { get; set; } = [];

    /// <summary>The programs that <c>cut</c> would write; empty when a finding stops it.</summary>
    public WireProgram[] Programs { get; set; } = [];

    /// <summary>The settings of every bit of every make, and of hand routers; told even where a finding stops the job.</summary>
    public WireMakeSettings[] Settings { get; set; } = [];
}

/// <summary>What was written: the answer of <c>cut</c>.</summary>
public sealed class CutReply
{
    /// <summary>See <see cref="ContractVersion"/>.</summary>
    public string Contract { get; set; } = ContractVersion.Current;

    /// <summary>Always <c>cut</c>.</summary>
    public string Command { get; set; } = "cut";

    /// <summary>The exit code of the command.</summary>
    public int ExitCode { get; set; }

    /// <summary>The job; absent when it could not be read.</summary>
    public WireJob? Job { get; set; }

    /// <summary>What was found, in the order of the job.</summary>
    public WireFinding[] Findings { get; set; } = [];

    /// <summary>The folder written to, as it was named; absent when nothing was written.</summary>
    public string? Folder { get; set; }

    /// <summary>The programs, in the order they are to be run. Where one failed its proof nothing was written, and its figures say why.</summary>
    public WireProgram[] Programs { get; set; } = [];

    /// <summary>Every file written, by name, the manifest aside.</summary>
    public WireFile[] Files { get; set; } = [];
}

/// <summary>What was drawn: the answer of <c>draw</c>.</summary>
public sealed class DrawReply
{
    /// <summary>See <see cref="ContractVersion"/>.</summary>
    public string Contract { get; set; } = ContractVersion.Current;

    /// <summary>Always <c>draw</c>.</summary>
    public string Command { get; set; } = "draw";

    /// <summary>The exit code of the command.</summary>
    public int ExitCode { get; set; }

    /// <summary>The job; absent when it could not be read.</summary>
    public WireJob? Job { get; set; }

    /// <summary>What was found, in the order of the job.</summary>
    public WireFinding[] Findings { get; set; } = [];

    /// <summary>The folder written to, as it was named; absent when nothing was written.</summary>
    public string? Folder { get; set; }

    /// <summary>Every file written, by name, the manifest aside.</summary>
    public WireFile[] Files { get; set; } = [];
}

/// <summary>A file that was written.</summary>
public sealed class WireFile
{
    /// <summary>Relative to the folder, <c>/</c> between parts.</summary>
    public string Name { get; set; } = "";

    /// <summary>Its size.</summary>
    public long Bytes { get; set; }

    /// <summary>Its SHA-256, lower-case hexadecimal.</summary>
    public string Sha256 { get; set; } = "";
}
