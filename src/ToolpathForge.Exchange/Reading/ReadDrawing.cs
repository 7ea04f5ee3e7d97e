using System.Collections.Immutable;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;

namespace ToolpathForge.Exchange.Reading;

/// <summary>One thing drawn, as exact curves in the plane, X to the right and Y up.</summary>
/// <param name="Path">Its curves, each beginning where the one before ends (to rounding). In mm; in the drawing's own units when the drawing states none.</param>
/// <param name="Kind">What the file calls it: LINE, SPLINE, rect.</param>
/// <param name="Layer">The layer it lies on; for SVG the id, or else the class, of the nearest group that has one, or nothing.</param>
/// <param name="Line">Line of the file that it begins on, from 1; 0 in a binary file.</param>
/// <param name="Order">Which of the file's entities it is, from 1. What a block holds bears the number within its own file order, however often it is put in.</param>
public sealed record DrawnEntity(Outline Path, string Kind, string Layer, int Line, int Order);

/// <summary>Why something drawn is no part of what was read.</summary>
public enum IgnoreReason
{
    /// <summary>It is no line or curve: text, dimensions, hatching, pictures.</summary>
    NoCurve,

    /// <summary>Its layer is switched off.</summary>
    LayerOff,

    /// <summary>Its layer is frozen.</summary>
    LayerFrozen,

    /// <summary>It is marked as not to be seen itself.</summary>
    Hidden,

    /// <summary>It belongs to a sheet for printing, not to the model.</summary>
    OnSheet,
}

/// <summary>How many of a kind were left alone, and why.</summary>
/// <param name="Kind">What the file calls it.</param>
/// <param name="Reason">Why.</param>
/// <param name="Count">How many.</param>
public readonly record struct IgnoredCount(string Kind, IgnoreReason Reason, int Count);

/// <summary>A layer of a drawing.</summary>
/// <param name="Name">Its name.</param>
/// <param name="IsOff">Whether it is switched off.</param>
/// <param name="IsFrozen">Whether it is frozen.</param>
public sealed record DrawnLayer(string Name, bool IsOff, bool IsFrozen);

/// <summary>A drawing as read from a file.</summary>
/// <param name="Format">The form of the file: "DXF AC1027, text", "DXF AC1009, binary", "SVG"; empty when it was not recognised.</param>
/// <param name="Unit">The unit that the file states or the caller gave; null when neither did: then lengths are in the drawing's own units, and no one may cut from it.</param>
/// <param name="Entities">What was drawn, in the order of the file, blocks put in place. Empty when a stop was found.</param>
/// <param name="Layers">The layers that the file declares, in its order.</param>
/// <param name="Ignored">What was left alone, by kind and reason.</param>
/// <param name="Repairs">Each thing that had to be put right or left out, as a warning with its place.</param>
/// <param name="Findings">Everything else that a person should know. A stop here means that nothing can be used.</param>
public sealed record ReadDrawing(
    string Format,
    DrawingUnit? Unit,
    ImmutableArray<DrawnEntity> Entities,
    ImmutableArray<DrawnLayer> Layers,
    ImmutableArray<IgnoredCount> Ignored,
    ImmutableArray<Finding> Repairs,
    ImmutableArray<Finding> Findings)
{
    /// <summary>Whether there is something to work with.</summary>
    public bool IsUsable => !Findings.Any(f => f.Kind.Severity == Severity.Stop);
}
