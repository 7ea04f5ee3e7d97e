using System.Collections.Immutable;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;

namespace ToolpathForge.Jobs;

/// <summary>What a job asks of a drawing.</summary>
/// <param name="Name">The drawing as the job names it: a file from the job's own folder, or <c>@name</c> for one that came with the job.</param>
/// <param name="Unit">mm, cm, dm, m, in, ft or yd, for a drawing that does not state its unit, or states a wrong one; null for what it states.</param>
/// <param name="Layer">The one layer to look at; null for all.</param>
/// <param name="Gap">Ends no farther apart than this are joined, mm; null for the usual.</param>
public sealed record DrawingRequest(string Name, string? Unit, string? Layer, double? Gap);

/// <summary>What a drawing holds, X to the right and Y up. In mm; in the drawing's own units where no unit is known.</summary>
/// <param name="UnitIsKnown">Whether the drawing states its unit, or the request did.</param>
/// <param name="Layers">The layers that anything seen lies on, in ordinal order.</param>
/// <param name="Regions">Each closed outline with the holes directly in it, as lines and arcs.</param>
/// <param name="Open">Lines that do not close, each whole; as the curves that were drawn where there are few, else as lines and arcs.</param>
public sealed record DrawingContents(bool UnitIsKnown, ImmutableArray<string> Layers, ImmutableArray<Region> Regions, ImmutableArray<Outline> Open);

/// <summary>The answer to a request.</summary>
/// <param name="Contents">Null where the drawing cannot be had or used.</param>
/// <param name="Findings">
/// What is wrong or worth knowing, repairs among them, each with its place in the drawing. Where there are no contents and no finding, there is no such drawing.
/// </param>
public sealed record DrawingAnswer(DrawingContents? Contents, ImmutableArray<Finding> Findings)
{
    /// <summary>There is no such drawing.</summary>
    public static DrawingAnswer None { get; } = new(null, []);
}

/// <summary>
/// The door by which a job gets the drawings that it names. The core opens no file and reads no drawing format: whoever embeds it does. Nothing may be opened that a
/// request does not name, nor anything outside the job's own folder.
/// </summary>
public interface IDrawings
{
    /// <summary>Reads a drawing.</summary>
    /// <param name="request">Which, and how.</param>
    DrawingAnswer Find(DrawingRequest request);
}

/// <summary>Has no drawing.</summary>
public sealed class NoDrawings : IDrawings
{
    /// <summary>The one there is.</summary>
    public static NoDrawings Instance { get; } = new();

    /// <inheritdoc/>
    public DrawingAnswer Find(DrawingRequest request) => DrawingAnswer.None;
}
