using ToolpathForge.Plugin.Contract;

namespace ToolpathForge.Plugin;

/// <summary>
/// What a CAD must be able to do for the plugin: the one thing that an adapter writes. Lengths are in the host's own unit, X to the right and Y up as on the screen. All members
/// but <see cref="Post"/> and <see cref="Name"/> are called on the thread that <see cref="Post"/> leads to, one at a time.
/// </summary>
public interface ICadHost
{
    /// <summary>The host's name, not empty; may be read on any thread.</summary>
    string Name { get; }

    /// <summary>The unit of the drawing: <c>mm</c>, <c>cm</c>, <c>dm</c>, <c>m</c>, <c>in</c>, <c>ft</c> or <c>yd</c>.</summary>
    string Unit { get; }

    /// <summary>
    /// What the person has selected, each line and curve as it is: arcs as arcs, ellipses and splines as such, with its layer. Empty for nothing, never null; what is no line or curve
    /// is left out.
    /// </summary>
    IReadOnlyList<WireEntity> Selected();

    /// <summary>Draws lines and arcs as a preview, each on the layer that it names, beside what has been drawn so far. Layers are made where they are missing.</summary>
    /// <param name="entities">In the host's unit; of the kinds <c>line</c> and <c>arc</c>.</param>
    void DrawPreview(IReadOnlyList<WireEntity> entities);

    /// <summary>Takes the preview and all marks away and nothing else; does nothing where there is none.</summary>
    void ClearPreview();

    /// <summary>Shows something at a place of the drawing until the preview is cleared: a point with its text, for instance.</summary>
    /// <param name="x">Where, host's unit.</param>
    /// <param name="y">Where, host's unit.</param>
    /// <param name="text">What is so.</param>
    void Mark(double x, double y, string text);

    /// <summary>Asks the person for a line of text.</summary>
    /// <param name="question">The question.</param>
    /// <param name="proposal">What is proposed; may be empty.</param>
    /// <returns>The answer; null when the person would rather not go on.</returns>
    string? Ask(string question, string proposal);

    /// <summary>Tells the person something, without waiting.</summary>
    /// <param name="severity"><c>stop</c>, <c>warn</c> or <c>note</c>.</param>
    /// <param name="text">What is so, perhaps over several lines.</param>
    void Tell(string severity, string text);

    /// <summary>Has an action done on the thread that the host's drawing may be touched on: once, soon, after those posted before, without waiting for it. May be called on any thread.</summary>
    /// <param name="action">The action. It throws nothing.</param>
    void Post(Action action);
}
