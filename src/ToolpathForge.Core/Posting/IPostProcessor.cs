using System.Collections.Immutable;
using ToolpathForge.Catalogue;
using ToolpathForge.Cutting;

namespace ToolpathForge.Posting;

/// <summary>What a post-processor is given: toolpaths in the program's frame, mm, and what to tell the person in comments.</summary>
/// <param name="Name">The program's name, letters, digits and hyphens.</param>
/// <param name="Notes">Lines for the head of the program, in plain words; left out by dialects without comments.</param>
/// <param name="Paths">One a bit, in order; at least one.</param>
/// <param name="ChordTolerance">For dialects without arcs: furthest that a chord may lie from its arc, mm.</param>
public sealed record ProgramInput(string Name, ImmutableArray<string> Notes, ImmutableArray<Toolpath> Paths, double ChordTolerance)
{
    /// <summary>
    /// The paths are gone through once more after each of these messages: the spindle is stopped, the program waits for the person, and goes on.
    /// Only for a single path.
    /// </summary>
    public ImmutableArray<string> Waits { get; init; } = [];

    /// <summary>Whether the machine changes bits by itself at a command; where it does not, the program pauses for every bit after the first.</summary>
    public bool ChangesBits { get; init; }

    /// <summary>Whether a hand switches the spindle, whatever the program says: each stop and the end tell it so.</summary>
    public bool SwitchedByHand { get; init; }
}

/// <summary>
/// Turns toolpaths into program text. It converts units and rounds; it moves nothing. Whatever it writes is read back and proven against the
/// piece before anyone gets it. Implementations are registered in code by whoever embeds the core; the command never loads one.
/// </summary>
public interface IPostProcessor
{
    /// <summary>The dialect it writes: its unit, decimals and file ending are used for checks and file names.</summary>
    Dialect Dialect { get; }

    /// <summary>The whole program.</summary>
    /// <param name="input">What to write.</param>
    string Write(ProgramInput input);
}

/// <summary>Writes any dialect that a dialect file describes.</summary>
/// <param name="dialect">The dialect.</param>
public sealed class DialectPostProcessor(Dialect dialect) : IPostProcessor
{
    /// <inheritdoc/>
    public Dialect Dialect { get; } = dialect;

    /// <inheritdoc/>
    public string Write(ProgramInput input) => new ProgramWriter(Dialect).Write(input);
}
