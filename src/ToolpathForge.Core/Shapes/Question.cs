using System.Collections.Immutable;

namespace ToolpathForge.Shapes;

/// <summary>What kind of answer a question takes.</summary>
public enum AnswerKind
{
    /// <summary>A size: a length or a share of the width.</summary>
    Size,

    /// <summary>An angle in degrees or as rise:run.</summary>
    Angle,

    /// <summary>A plain number.</summary>
    Number,

    /// <summary>One of a few words.</summary>
    Choice,

    /// <summary>A list of parts, each with questions of its own.</summary>
    Parts,

    /// <summary>A drawing that holds one line.</summary>
    Drawing,

    /// <summary>A word of the person's own.</summary>
    Text,

    /// <summary>A length, which no share of the width stands for.</summary>
    Length,

    /// <summary>Yes or no.</summary>
    Flag,
}

/// <summary>One thing a shape, or a part of one, asks of the person who uses it.</summary>
/// <param name="Key">The key in the job's shape table.</param>
/// <param name="Kind">What kind of answer it takes.</param>
/// <param name="Asks">What it means, one sentence.</param>
/// <param name="Default">What is taken when the job is silent, as it would be written; null when there is no such value.</param>
/// <param name="Least">Smallest answer: mm, degrees or the number itself (a share and a length are both held to it); of parts the fewest, of a text its letters.</param>
/// <param name="Most">Largest answer; of parts the most.</param>
/// <param name="Choices">The words, for a choice.</param>
public sealed record Question(
    string Key, AnswerKind Kind, string Asks, string? Default, double Least, double Most, ImmutableArray<string> Choices)
{
    /// <summary>What happens without an answer where no value stands for it; null when the job must answer, or <see cref="Default"/> is taken.</summary>
    public string? WithoutIt { get; private init; }

    /// <summary>The kinds of part that a list may hold.</summary>
    public ImmutableArray<ShapePart> PartKinds { get; private init; } = [];

    /// <summary>What a plain number is counted in; empty for a count.</summary>
    public string Unit { get; private init; } = "";

    /// <summary>The same question, which the job may leave open.</summary>
    /// <param name="withoutIt">What happens then, a few words.</param>
    public Question ElseFrom(string withoutIt) => this with { WithoutIt = withoutIt };

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

    /// <summary>A question for a plain number.</summary>
    /// <param name="key">The key.</param>
    /// <param name="unit">What it is counted in; may be empty.</param>
    /// <param name="asks">What it means.</param>
    /// <param name="default">Taken when the job is silent; null when it must say.</param>
    /// <param name="least">Smallest.</param>
    /// <param name="most">Largest.</param>
    public static Question Number(string key, string unit, string asks, string? @default, double least, double most) =>
        new(key, AnswerKind.Number, asks, @default, least, most, []) { Unit = unit };

    /// <summary>A question with a few possible words.</summary>
    /// <param name="key">The key.</param>
    /// <param name="asks">What it means.</param>
    /// <param name="default">Taken when the job is silent; null when it must say.</param>
    /// <param name="choices">The words.</param>
    public static Question Choice(string key, string asks, string? @default, params ImmutableArray<string> choices) =>
        new(key, AnswerKind.Choice, asks, @default, 0, 0, choices);

    /// <summary>A question for a drawing.</summary>
    /// <param name="key">The key.</param>
    /// <param name="asks">What it means.</param>
    /// <param name="most">Most letters of its name.</param>
    public static Question Drawing(string key, string asks, int most) => new(key, AnswerKind.Drawing, asks, null, 1, most, []);

    /// <summary>A question for a word of the person's own.</summary>
    /// <param name="key">The key.</param>
    /// <param name="asks">What it means.</param>
    /// <param name="most">Most letters.</param>
    public static Question Text(string key, string asks, int most) => new(key, AnswerKind.Text, asks, null, 1, most, []);

    /// <summary>A question for a length.</summary>
    /// <param name="key">The key.</param>
    /// <param name="asks">What it means.</param>
    /// <param name="least">Smallest, mm.</param>
    /// <param name="most">Largest, mm.</param>
    public static Question Length(string key, string asks, double least, double most) => new(key, AnswerKind.Length, asks, null, least, most, []);

    /// <summary>A question for yes or no.</summary>
    /// <param name="key">The key.</param>
    /// <param name="asks">What it means.</param>
    /// <param name="default">true or false.</param>
    public static Question Flag(string key, string asks, string @default) => new(key, AnswerKind.Flag, asks, @default, 0, 1, []);

    /// <summary>A question for a list of parts.</summary>
    /// <param name="key">The key.</param>
    /// <param name="asks">What it means.</param>
    /// <param name="fewest">How many at least.</param>
    /// <param name="most">How many at most.</param>
    /// <param name="kinds">Which parts there are.</param>
    public static Question Parts(string key, string asks, int fewest, int most, ImmutableArray<ShapePart> kinds) =>
        new(key, AnswerKind.Parts, asks, null, fewest, most, []) { PartKinds = kinds };
}
