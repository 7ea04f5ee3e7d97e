using System.Collections.Immutable;
using ToolpathForge.Findings;

namespace ToolpathForge.Shapes;

/// <summary>A shape with every question answered, before it is scaled to a board.</summary>
/// <param name="Shape">Which shape.</param>
/// <param name="Answers">An answer for every question of the shape.</param>
/// <param name="At">Where the job describes it.</param>
public sealed record ShapeSpec(Shape Shape, ImmutableDictionary<string, Answer> Answers, Place At)
{
    /// <summary>A size for a board of the width given, mm.</summary>
    /// <param name="key">The question.</param>
    /// <param name="width">Design width of the board, mm.</param>
    public double Size(string key, double width) => Answers[key].Size.Resolve(width);

    /// <summary>An angle in radians.</summary>
    /// <param name="key">The question.</param>
    public double Radians(string key) => Answers[key].Angle.Radians;

    /// <summary>A word.</summary>
    /// <param name="key">The question.</param>
    public string Word(string key) => Answers[key].Word;

    /// <summary>Where the job answers a question.</summary>
    /// <param name="key">The question.</param>
    public Place Where(string key) => Answers[key].At;
}
