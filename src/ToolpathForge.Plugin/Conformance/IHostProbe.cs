using ToolpathForge.Plugin.Contract;

namespace ToolpathForge.Plugin.Conformance;

/// <summary>
/// What the checks must be able to do with a host from its other side, as the person at it does. A fresh empty drawing is at hand when the checks begin; all members may be called on
/// any thread, and wait until what they do is done.
/// </summary>
public interface IHostProbe
{
    /// <summary>Draws entities as the person would, on the layers that they name, and selects exactly those; none to select nothing.</summary>
    /// <param name="entities">In the host's unit; of every kind of the contract.</param>
    void DrawAndSelect(IReadOnlyList<WireEntity> entities);

    /// <summary>All that is drawn now and was not drawn by the person: previews, marks aside; host's unit.</summary>
    IReadOnlyList<WireEntity> Preview();

    /// <summary>The marks that are shown now: where, in the host's unit, and their texts.</summary>
    IReadOnlyList<(double X, double Y, string Text)> Marks();

    /// <summary>Says what the person answers to the next question; null for turning it down.</summary>
    /// <param name="answer">The answer.</param>
    void WillAnswer(string? answer);

    /// <summary>What the person has been told since the checks began, in order.</summary>
    IReadOnlyList<string> Told();
}
