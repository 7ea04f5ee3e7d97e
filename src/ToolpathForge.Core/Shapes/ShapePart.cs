using System.Collections.Immutable;
using ToolpathForge.Findings;

namespace ToolpathForge.Shapes;

/// <summary>A part of a composed or drawn shape: what it asks, and what it draws. One file a part, listed in <see cref="PartList"/> or <see cref="DrawnCurves"/>.</summary>
public abstract class ShapePart
{
    /// <summary>The word a job uses.</summary>
    public abstract string Id { get; }

    /// <summary>What it looks like, one sentence.</summary>
    public abstract string Says { get; }

    /// <summary>What it asks, in the order a person would think of it.</summary>
    public abstract ImmutableArray<Question> Questions { get; }

    /// <summary>Draws the part from where the pen stands.</summary>
    /// <param name="pen">Has drawn the parts before.</param>
    /// <param name="spec">The answers, already within the ranges of the questions.</param>
    /// <param name="sizes">Reads and rounds its sizes.</param>
    /// <param name="findings">Takes what is wrong when the answers do not make a line.</param>
    /// <returns>False when a finding says why not.</returns>
    internal abstract bool Draw(ShapePen pen, PartSpec spec, ShapeSizes sizes, ICollection<Finding> findings);
}

/// <summary>The parts there are.</summary>
public static class PartList
{
    /// <summary>Every part, in the order of the reference page.</summary>
    public static ImmutableArray<ShapePart> All { get; } =
        [new StraightPart(), new ArcPart(), new EllipsePart(), new QuarterRoundPart(), new StepPart(), new FilletPart()];
}
