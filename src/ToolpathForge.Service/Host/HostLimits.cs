using ToolpathForge.Plugin.Contract;

namespace ToolpathForge.Service.Host;

/// <summary>What the service takes at most.</summary>
public static class HostLimits
{
    /// <summary>Bytes of one message: an outline of 100,000 arcs has about a tenth of that.</summary>
    public const int MessageBytes = 64 * 1024 * 1024;

    /// <summary>Requests of one batch.</summary>
    public const int BatchRequests = 100;

    /// <summary>Entities of all outlines of a plan.</summary>
    public const int Entities = 200_000;

    /// <summary>Plans kept at a time.</summary>
    public const int Plans = 32;

    /// <summary>Entities of one page of a preview.</summary>
    public const int PreviewEntities = 5000;

    internal static WireLimits Wire => new()
    {
        MessageBytes = MessageBytes,
        BatchRequests = BatchRequests,
        Entities = Entities,
        Plans = Plans,
        PreviewEntities = PreviewEntities,
    };
}
