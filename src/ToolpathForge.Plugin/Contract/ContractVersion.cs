namespace ToolpathForge.Plugin.Contract;

/// <summary>The version of the forms in this namespace.</summary>
public static class ContractVersion
{
    /// <summary>Major and minor. Within a major version properties are only ever added; none is removed, renamed or given another meaning.</summary>
    public const string Current = "1.0";
}
