namespace ToolpathForge.Plugin.Contract;

/// <summary>What a program that drives the core says first.</summary>
public sealed class InitializeRequest
{
    /// <summary>Major version of the contract that it was made for: <c>1</c>.</summary>
    public string Protocol { get; set; } = "";

    /// <summary>Its name, for nobody but the person who looks for a fault.</summary>
    public string? Client { get; set; }

    /// <summary>The working folder, as a full path: nothing outside of it is read or written; absent where no file may be.</summary>
    public string? Folder { get; set; }

    /// <summary>Its process id: the core ends when that process has ended.</summary>
    public int? Parent { get; set; }
}

/// <summary>What the core is and can do.</summary>
public sealed class InitializeReply
{
    /// <summary>See <see cref="ContractVersion"/>.</summary>
    public string Contract { get; set; } = ContractVersion.Current;

    /// <summary>Version of the core.</summary>
    public string Version { get; set; } = "";

    /// <summary>The methods that may be called.</summary>
    public string[] Methods { get; set; } = [];

    /// <summary>The notifications that it sends.</summary>
    public string[] Notifications { get; set; } = [];

    /// <summary>What it takes at most.</summary>
    public WireLimits Limits { get; set; } = new();
}

/// <summary>What the core takes at most.</summary>
public sealed class WireLimits
{
    /// <summary>Bytes of one message.</summary>
    public int MessageBytes { get; set; }

    /// <summary>Requests of one batch.</summary>
    public int BatchRequests { get; set; }

    /// <summary>Entities of all outlines of a plan together.</summary>
    public int Entities { get; set; }

    /// <summary>Plans that are kept; the next is refused until one is released.</summary>
    public int Plans { get; set; }

    /// <summary>Entities of one page of a preview.</summary>
    public int PreviewEntities { get; set; }
}

/// <summary>Which catalogues are asked for.</summary>
public sealed class CatalogueRequest
{
    /// <summary><c>lumber</c>, <c>panels</c>, <c>bits</c>, <c>materials</c>, <c>machines</c>, <c>dialects</c>, <c>shapes</c> or <c>figures</c>; absent for all.</summary>
    public string[]? Lists { get; set; }
}

/// <summary>A drawing to trace.</summary>
public sealed class TraceRequest
{
    /// <summary>The drawing's file, from the working folder.</summary>
    public string Drawing { get; set; } = "";

    /// <summary>The one layer to look at; absent for all.</summary>
    public string? Layer { get; set; }

    /// <summary><c>mm</c>, <c>cm</c>, <c>dm</c>, <c>m</c>, <c>in</c>, <c>ft</c> or <c>yd</c>; absent for what the drawing says.</summary>
    public string? Unit { get; set; }

    /// <summary>How wide a gap is closed, as a person writes it; absent for the usual.</summary>
    public string? Gap { get; set; }

    /// <summary>Diameter of a bit to try, as a person writes it; absent for none.</summary>
    public string? Bit { get; set; }
}

/// <summary>Lines and curves that a job may name.</summary>
public sealed class WireOutline
{
    /// <summary>Its name; a job writes it with @ before it.</summary>
    public string Name { get; set; } = "";

    /// <summary>What it is drawn with, in any order.</summary>
    public WireEntity[] Entities { get; set; } = [];
}

/// <summary>A job to plan: its text, or its file.</summary>
public sealed class PlanRequest
{
    /// <summary>The text of a job; absent when <see cref="File"/> is given.</summary>
    public string? Job { get; set; }

    /// <summary>A job's file, from the working folder; absent when <see cref="Job"/> is given. Drawings and catalogues are looked for from its own folder.</summary>
    public string? File { get; set; }

    /// <summary>Outlines that the job names with @; absent for none.</summary>
    public WireOutline[]? Outlines { get; set; }
}

/// <summary>What came of a job.</summary>
public sealed class PlanReply
{
    /// <summary>The plan's id; absent when the job could not be read or a finding stops it.</summary>
    public string? Plan { get; set; }

    /// <summary>The job; absent when it could not be read.</summary>
    public WireJob? Job { get; set; }

    /// <summary>What was found, in the order of the job.</summary>
    public WireFinding[] Findings { get; set; } = [];

    /// <summary>The programs; empty when a finding stops them.</summary>
    public WireProgram[] Programs { get; set; } = [];
}

/// <summary>A page of a preview that is asked for.</summary>
public sealed class PreviewRequest
{
    /// <summary>The plan's id.</summary>
    public string Plan { get; set; } = "";

    /// <summary>Index of the one program to show; absent for all, one after the other.</summary>
    public int? Program { get; set; }

    /// <summary>Number of the first entity that is wanted, from 0; absent for 0.</summary>
    public int? From { get; set; }

    /// <summary>How many are wanted; absent for as many as one page takes.</summary>
    public int? Count { get; set; }
}

/// <summary>A page of a preview.</summary>
public sealed class PreviewReply
{
    /// <summary>How many entities there are in all.</summary>
    public int Total { get; set; }

    /// <summary>Those of this page, in the order in which they are cut.</summary>
    public WirePathEntity[] Entities { get; set; } = [];

    /// <summary>Where the next page begins; absent on the last.</summary>
    public int? Next { get; set; }

    /// <summary>What lies beneath each program that is shown; with the page that begins at 0, absent on all others.</summary>
    public WireBed[]? Beds { get; set; }
}

/// <summary>What lies beneath a program: for a host that draws it, and that lays programs out beside each other.</summary>
public sealed class WireBed
{
    /// <summary>Index of the program, from 0.</summary>
    public int Program { get; set; }

    /// <summary>Least X, least Y, greatest X and greatest Y of all that lies there and of the bit's ways, mm, seen from the work zero.</summary>
    public double[] Box { get; set; } = [];

    /// <summary>Edges of what is clamped, of the pieces with their openings, and of what the bit keeps clear of: lines and arcs, mm, each with a layer of the program and its kind: <c>p1-stock</c>, <c>p1-piece</c> or <c>p1-keep-out</c>.</summary>
    public WireEntity[] Shapes { get; set; } = [];
}

/// <summary>Programs that are asked for.</summary>
public sealed class ProgramsRequest
{
    /// <summary>The plan's id.</summary>
    public string Plan { get; set; } = "";

    /// <summary>A folder, from the working folder, that programs, run sheet, drawings and proof are written to, all or none: absent, empty, or written by ToolpathForge before; absent for none.</summary>
    public string? Folder { get; set; }
}

/// <summary>The programs of a plan.</summary>
public sealed class ProgramsReply
{
    /// <summary>Each program with its text.</summary>
    public WireProgramText[] Programs { get; set; } = [];

    /// <summary>What stands in the way of writing; empty when nothing was to be written or all was.</summary>
    public WireFinding[] Findings { get; set; } = [];

    /// <summary>What was written; empty for nothing.</summary>
    public WireFile[] Files { get; set; } = [];
}

/// <summary>A program and its text.</summary>
public sealed class WireProgramText
{
    /// <summary>What is known of it.</summary>
    public WireProgram Program { get; set; } = new();

    /// <summary>Its text, proven as it stands.</summary>
    public string Text { get; set; } = "";
}

/// <summary>A plan that is no longer wanted.</summary>
public sealed class ReleaseRequest
{
    /// <summary>The plan's id.</summary>
    public string Plan { get; set; } = "";
}

/// <summary>Nothing but that it was done.</summary>
public sealed class DoneReply
{
    /// <summary>Always true.</summary>
    public bool Done { get; set; } = true;
}

/// <summary>How far a request has come: the parameters of the notification <c>progress</c>.</summary>
public sealed class WireProgress
{
    /// <summary>The id of the request, as text.</summary>
    public string Request { get; set; } = "";

    /// <summary>What has begun: <c>reading</c>, <c>shapes</c>, <c>toolpaths</c>, <c>programs</c>, <c>proof</c>, <c>outlines</c> or <c>writing</c>. More may be added.</summary>
    public string Stage { get; set; } = "";
}
