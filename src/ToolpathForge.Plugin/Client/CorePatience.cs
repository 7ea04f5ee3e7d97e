namespace ToolpathForge.Plugin.Client;

/// <summary>How long the core is waited for, and how often it may fail. The defaults are our own choice: a plan of the sample takes well under a second.</summary>
public sealed class CorePatience
{
    /// <summary>How long it may be silent while a request is open; any message of its own begins this anew. A minute unless set.</summary>
    public TimeSpan Silence { get; set; } = TimeSpan.FromSeconds(60);

    /// <summary>How long a request may take in all, however much it says meanwhile. A quarter of an hour unless set.</summary>
    public TimeSpan Longest { get; set; } = TimeSpan.FromMinutes(15);

    /// <summary>How long it may take to end by itself, and to answer a request that was cancelled. Two seconds unless set.</summary>
    public TimeSpan End { get; set; } = TimeSpan.FromSeconds(2);

    /// <summary>How often in a row it may fail before it is given up. Three times unless set.</summary>
    public int Failures { get; set; } = 3;

    /// <summary>Bytes of one message at most. 256 MiB unless set; a page of preview has about 2.</summary>
    public int MessageBytes { get; set; } = 256 * 1024 * 1024;
}
