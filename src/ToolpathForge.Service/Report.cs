using System.Collections.Immutable;

namespace ToolpathForge.Service;

/// <summary>What a use case has to say, worded in the unit of the job and ready to be laid out; and the same as JSON.</summary>
/// <param name="ExitCode">See <see cref="ExitCodes"/>.</param>
/// <param name="Remarks">What the person should know, problems first.</param>
/// <param name="Sections">The result, in the order it is to be read.</param>
/// <param name="Json">Writes the result in the form of the contract, mm and codes, ending in a line feed; null where the use case has no such form.</param>
public sealed record Report(int ExitCode, ImmutableArray<Remark> Remarks, ImmutableArray<Section> Sections, Func<string>? Json);

/// <summary>Something the person should know, in words.</summary>
/// <param name="Weight">How much it weighs.</param>
/// <param name="Code">The stable word for its kind.</param>
/// <param name="Where">Where it lies, <c>file:line:column, make</c> as far as known; empty when nowhere in particular.</param>
/// <param name="Says">What is so.</param>
/// <param name="Advice">What to do about it.</param>
public sealed record Remark(Weight Weight, string Code, string Where, string Says, string Advice);

/// <summary>How much a remark weighs, heaviest first.</summary>
public enum Weight
{
    /// <summary>Nothing is handed over until it is put right.</summary>
    Problem,

    /// <summary>The person decides.</summary>
    Warning,

    /// <summary>Worth knowing.</summary>
    Note,
}

/// <summary>A part of a result: lines of text, then a table. Either may be empty.</summary>
/// <param name="Lines">Whole sentences or figures, one a line.</param>
/// <param name="Columns">The table's columns; empty for no table.</param>
/// <param name="Rows">One text a column.</param>
public sealed record Section(ImmutableArray<string> Lines, ImmutableArray<Column> Columns, ImmutableArray<ImmutableArray<string>> Rows)
{
    /// <summary>Lines alone.</summary>
    /// <param name="lines">One a line.</param>
    public static Section Of(params ImmutableArray<string> lines) => new(lines, [], []);
}

/// <summary>A column of a table.</summary>
/// <param name="Heading">What stands above it.</param>
/// <param name="IsNumber">Whether it holds numbers, which stand with their last figures above each other.</param>
public sealed record Column(string Heading, bool IsNumber = false);

/// <summary>The exit codes of the commands.</summary>
public static class ExitCodes
{
    /// <summary>Done, with or without warnings.</summary>
    public const int Fine = 0;

    /// <summary>A finding stops the job: no program is handed over.</summary>
    public const int Stopped = 1;

    /// <summary>The job file or the arguments cannot be used.</summary>
    public const int Unusable = 2;

    /// <summary>A program failed its proof; nothing is left behind.</summary>
    public const int NotProven = 3;

    /// <summary>A fault of this program.</summary>
    public const int Fault = 70;

    /// <summary>Interrupted; nothing is half written.</summary>
    public const int Interrupted = 130;
}
