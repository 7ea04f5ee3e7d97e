using System.Collections.Immutable;
using ToolpathForge.Findings;
using ToolpathForge.Measures;

namespace ToolpathForge.Shapes;

/// <summary>What kind of answer a shape's question takes.</summary>
public enum AnswerKind
{
    /// <summary>A size: a length or a share of the width.</summary>
    Size,

    /// <summary>An angle in degrees or as rise:run.</summary>
    Angle,

    /// <summary>One of a few words.</summary>
    Choice,
}

/// <summary>One thing a shape asks of the person who uses it.</summary>
/// <param name="Key">The key in the job's shape table.</param>
/// <param name="Kind">What kind of answer it takes.</param>
/// <param name="Asks">What it means, one sentence.</param>
/// <param name="Default">What is taken when the job is silent, as it would be written; null when the job must say.</param>
/// <param name="Least">Smallest answer: mm, share or degrees (a share and a length are both held to it).</param>
/// <param name="Most">Largest answer.</param>
/// <param name="Choices">The words, for a choice.</param>
public sealed record Question(
    string Key, AnswerKind Kind, string Asks, string? Default, double Least, double Most, ImmutableArray<string> Choices)
{
    /// <summary>A question for a size.</summary>
    /// <param name="key">The key.</param>
    /// <param name="asks">What it means.</param>
    /// <param name="default">Taken when the job is silent; null when it must say.</param>
    /// <param name="least">Smallest, mm.</param>
    /// <param name="most">Largest, mm.</param>
    public static Question Size(string key, string asks, string? @default, double least, double most) =>
        new(key, AnswerKind.Size, asks, @default, least, most, []);

    /// <summary>A question for an angle.</summary>
    /// <param name="key">The key.</param>
    /// <param name="asks">What it means.</param>
    /// <param name="default">Taken when the job is silent; null when it must say.</param>
    /// <param name="least">Smallest, degrees.</param>
    /// <param name="most">Largest, degrees.</param>
    public static Question Angle(string key, string asks, string? @default, double least, double most) =>
        new(key, AnswerKind.Angle, asks, @default, least, most, []);

    /// <summary>A question with a few possible words.</summary>
    /// <param name="key">The key.</param>
    /// <param name="asks">What it means.</param>
    /// <param name="default">Taken when the job is silent; null when it must say.</param>
    /// <param name="choices">The words.</param>
    public static Question Choice(string key, string asks, string? @default, params ImmutableArray<string> choices) =>
        new(key, AnswerKind.Choice, asks, @default, 0, 0, choices);
}

/// <summary>An answer to a shape's question; which member holds it follows from the question's kind.</summary>
/// <param name="Size">The size, for <see cref="AnswerKind.Size"/>.</param>
/// <param name="Angle">The angle, for <see cref="AnswerKind.Angle"/>.</param>
/// <param name="Word">The word, for <see cref="AnswerKind.Choice"/>.</param>
/// <param name="At">Where the job says so; the shape table itself when the default was taken.</param>
public sealed record Answer(Measure Size, Angle Angle, string Word, Place At);
