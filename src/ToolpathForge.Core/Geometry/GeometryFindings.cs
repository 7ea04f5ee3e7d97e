using ToolpathForge.Findings;

namespace ToolpathForge.Geometry;

/// <summary>The findings that geometry raises about its own results.</summary>
public static class GeometryFindings
{
    /// <summary>An offset whose own check could not vouch for it. {reproducer} holds the input as text.</summary>
    public static readonly FindingKind OffsetUnproven = new(
        "offset-unproven",
        Severity.Stop,
        "The parallel at {found} could not be proven right: {reason}.",
        "Send the reproducer to the maintainers: {reproducer}; a distance changed by a thousandth of a millimetre usually gets round it.");
}
