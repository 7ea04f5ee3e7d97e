namespace ToolpathForge.Plugin.Contract;

/// <summary>What settings may be: the answer of <c>check</c> without a job.</summary>
public sealed class SettingsReply
{
    /// <summary>See <see cref="ContractVersion"/>.</summary>
    public string Contract { get; set; } = ContractVersion.Current;

    /// <summary>Always <c>check</c>.</summary>
    public string Command { get; set; } = "check";

    /// <summary>The exit code of the command.</summary>
    public int ExitCode { get; set; }

    /// <summary><c>machine</c> or <c>hand</c>.</summary>
    public string About { get; set; } = "";

    /// <summary>What is wrong.</summary>
    public WireFinding[] Findings { get; set; } = [];

    /// <summary>The settings, one a line; empty when the question could not be read.</summary>
    public WireSetting[] Settings { get; set; } = [];

    /// <summary>Depths of a hand router, pass by pass; empty for a machine.</summary>
    public WireDepthWindow[] Depths { get; set; } = [];

    /// <summary>Which way to feed by hand, in English; absent for a machine.</summary>
    public string? Feed { get; set; }
}

/// <summary>The settings of one bit of a make.</summary>
public sealed class WireMakeSettings
{
    /// <summary>Id of the make.</summary>
    public string Make { get; set; } = "";

    /// <summary>What was looked at, in English.</summary>
    public string About { get; set; } = "";

    /// <summary>The settings, one a line.</summary>
    public WireSetting[] Settings { get; set; } = [];

    /// <summary>Depths of a hand router, pass by pass; empty for a machine.</summary>
    public WireDepthWindow[] Depths { get; set; } = [];

    /// <summary>Which way to feed by hand, in English; absent for a machine.</summary>
    public string? Feed { get; set; }
}

/// <summary>A setting, what it is, what it may be.</summary>
public sealed class WireSetting
{
    /// <summary>Its name, in English.</summary>
    public string Name { get; set; } = "";

    /// <summary>What it is; absent where the person sets it within the limits.</summary>
    public WireQuantity? Is { get; set; }

    /// <summary>The least it may be; absent for no limit.</summary>
    public WireQuantity? AtLeast { get; set; }

    /// <summary>The most it may be; absent for no limit.</summary>
    public WireQuantity? AtMost { get; set; }

    /// <summary>Where the limit comes from, in English.</summary>
    public string Because { get; set; } = "";

    /// <summary><c>fits</c>, <c>set-it</c>, <c>doubtful</c> or <c>broken</c>.</summary>
    public string Verdict { get; set; } = "";

    /// <summary>Code of the finding that says what is wrong; absent for none.</summary>
    public string? Finding { get; set; }
}

/// <summary>The depths that one pass of a hand router may be set to: the cutter's end below the base.</summary>
public sealed class WireDepthWindow
{
    /// <summary>What the pass is, in English.</summary>
    public string Pass { get; set; } = "";

    /// <summary>Whether there is any such depth.</summary>
    public bool Open { get; set; }

    /// <summary>Least depth, mm; above <see cref="Most"/> where there is none.</summary>
    public double Least { get; set; }

    /// <summary>Greatest depth, mm.</summary>
    public double Most { get; set; }

    /// <summary>The limits.</summary>
    public WireLimit[] Limits { get; set; } = [];
}

/// <summary>A limit on a depth, as the sum that makes it.</summary>
public sealed class WireLimit
{
    /// <summary><c>at-least</c> or <c>at-most</c>.</summary>
    public string Sense { get; set; } = "";

    /// <summary>The limit, mm.</summary>
    public double Value { get; set; }

    /// <summary>Why it is one, in English.</summary>
    public string Reason { get; set; } = "";

    /// <summary>The terms of the sum.</summary>
    public WireTerm[] Terms { get; set; } = [];
}

/// <summary>One length in a sum.</summary>
public sealed class WireTerm
{
    /// <summary>What it is, in English.</summary>
    public string Name { get; set; } = "";

    /// <summary>The length, mm; negative where it is taken off.</summary>
    public double Value { get; set; }
}
