using System.Collections.Immutable;
using ToolpathForge.Findings;

namespace ToolpathForge.Shapes;

/// <summary>A kind of profile: what it asks, and how its answers become a line. One file a shape, listed in <see cref="ShapeList"/>.</summary>
public abstract class Shape
{
    /// <summary>The word a job uses.</summary>
    public abstract string Id { get; }

    /// <summary>What it looks like, one sentence.</summary>
    public abstract string Says { get; }

    /// <summary>What it asks, in the order a person would think of it.</summary>
    public abstract ImmutableArray<Question> Questions { get; }

    /// <summary>Scales the shape to a board.</summary>
    /// <param name="spec">The answers, already within the ranges of the questions.</param>
    /// <param name="width">Design width of the board, more than 0, mm.</param>
    /// <param name="findings">Takes what is wrong when the answers do not make a line.</param>
    /// <returns>The profile, or null when a finding says why not.</returns>
    public abstract Profile? Scale(ShapeSpec spec, double width, ICollection<Finding> findings);
}

/// <summary>The shapes there are.</summary>
public static class ShapeList
{
    /// <summary>Every shape, in the order of the reference page.</summary>
    public static ImmutableArray<Shape> All { get; } =
    [
        new QuarterEllipse(), new Arc(), new Cove(), new Straight(), new Splay(), new Ogee(), new EllipseOgee(), new Step(), new Shouldered(),
        new Scallop(), new EasedBevel(), new Composed(), new Drawn(), new FromDrawing(),
    ];
}
