using System.Collections.Immutable;
using ToolpathForge.Findings;
using ToolpathForge.Measures;

namespace ToolpathForge.Shapes;

/// <summary>An answer to a question; which member holds it follows from the question's kind.</summary>
/// <param name="Size">The size, for <see cref="AnswerKind.Size"/>; a plain number, a length and a flag (1 for yes) as a fixed size.</param>
/// <param name="Angle">The angle, for <see cref="AnswerKind.Angle"/>.</param>
/// <param name="Word">The word, for <see cref="AnswerKind.Choice"/> and <see cref="AnswerKind.Text"/>; the name, for <see cref="AnswerKind.Drawing"/>.</param>
/// <param name="At">Where the job says so; the table itself when the default was taken.</param>
public sealed record Answer(Measure Size, Angle Angle, string Word, Place At)
{
    /// <summary>The parts, for <see cref="AnswerKind.Parts"/>, in the order written.</summary>
    public ImmutableArray<PartSpec> Parts { get; init; } = [];

    /// <summary>The line, for <see cref="AnswerKind.Drawing"/>; null for everything else.</summary>
    public LineOfDrawing? Line { get; init; }
}

/// <summary>Answers to the questions of a shape or of a part.</summary>
/// <param name="Answers">One for every question that the job answers or that has a default.</param>
/// <param name="At">Where the job describes it.</param>
public abstract record AnswerSet(ImmutableDictionary<string, Answer> Answers, Place At)
{
    /// <summary>Whether a question is answered.</summary>
    /// <param name="key">The question.</param>
    public bool Has(string key) => Answers.ContainsKey(key);

    /// <summary>A size for a board of the width given, mm; 0 when the job leaves it open.</summary>
    /// <param name="key">The question.</param>
    /// <param name="width">Design width of the board, mm.</param>
    public double Size(string key, double width) => Answers.TryGetValue(key, out Answer? answer) ? answer.Size.Resolve(width) : 0;

    /// <summary>An angle in radians; 0 when the job leaves it open.</summary>
    /// <param name="key">The question.</param>
    public double Radians(string key) => Answers.TryGetValue(key, out Answer? answer) ? answer.Angle.Radians : 0;

    /// <summary>A plain number.</summary>
    /// <param name="key">The question.</param>
    public double Number(string key) => Answers[key].Size.Amount;

    /// <summary>Yes or no; no when the job leaves it open.</summary>
    /// <param name="key">The question.</param>
    public bool Flag(string key) => Answers.TryGetValue(key, out Answer? answer) && answer.Size.Amount > 0;

    /// <summary>A word.</summary>
    /// <param name="key">The question.</param>
    public string Word(string key) => Answers[key].Word;

    /// <summary>Where the job answers a question; where it describes the whole when it does not.</summary>
    /// <param name="key">The question.</param>
    public Place Where(string key) => Answers.TryGetValue(key, out Answer? answer) ? answer.At : At;
}

/// <summary>A shape with its questions answered, before it is scaled to a board.</summary>
/// <param name="Shape">Which shape.</param>
/// <param name="Answers">The answers.</param>
/// <param name="At">Where the job describes it.</param>
public sealed record ShapeSpec(Shape Shape, ImmutableDictionary<string, Answer> Answers, Place At) : AnswerSet(Answers, At);

/// <summary>A part of a composed shape with its questions answered.</summary>
/// <param name="Part">Which part.</param>
/// <param name="Answers">The answers.</param>
/// <param name="At">Where the job describes it.</param>
public sealed record PartSpec(ShapePart Part, ImmutableDictionary<string, Answer> Answers, Place At) : AnswerSet(Answers, At);
