using System.Collections.Immutable;
using ToolpathForge.Measures;

namespace ToolpathForge.Catalogue;

/// <summary>How a dialect writes arcs.</summary>
public enum ArcForm
{
    /// <summary>Centre relative to the start (I, J).</summary>
    Centre,

    /// <summary>Radius (R), at most a quarter turn a line.</summary>
    Radius,

    /// <summary>No arcs: chords within the budget.</summary>
    Lines,
}

/// <summary>How a dialect writes comments.</summary>
public enum CommentForm
{
    /// <summary>In round brackets.</summary>
    Brackets,

    /// <summary>From a semicolon to the end of the line.</summary>
    Semicolon,

    /// <summary>Not at all.</summary>
    None,
}

/// <summary>What happens where another bit is needed.</summary>
public enum BitChange
{
    /// <summary>A bit-change command, on a machine that changes bits by itself; a pause on any other.</summary>
    Command,

    /// <summary>The spindle stops, the program pauses, the person changes the bit.</summary>
    Pause,

    /// <summary>Every bit has a program of its own.</summary>
    SeparatePrograms,
}

/// <summary>
/// A dialect of G-code, by what it does. Fixed fields and fixed placeholders; a dialect file holds no expressions and runs no code.
/// Header and footer lines may use {program}, {bit}, {tool}, {speed}; nothing else.
/// </summary>
/// <param name="Id">The word a job uses.</param>
/// <param name="Name">What it does, in a few words.</param>
/// <param name="Unit">Unit of every length in the text.</param>
/// <param name="Decimals">Decimals of straight moves, 2 to 6.</param>
/// <param name="ArcDecimals">Decimals on lines that hold an arc, not fewer than <paramref name="Decimals"/>.</param>
/// <param name="FeedDecimals">Decimals of feeds, 0 to 3.</param>
/// <param name="Arcs">How arcs are written.</param>
/// <param name="Comments">How comments are written.</param>
/// <param name="LineNumberStep">Step of line numbers; 0 for none.</param>
/// <param name="Modal">Whether unchanged words are left out.</param>
/// <param name="Header">First lines.</param>
/// <param name="Footer">Last lines.</param>
/// <param name="BitChange">What happens at a bit change.</param>
/// <param name="BitChangeLines">Lines written at a bit change, with the same placeholders.</param>
/// <param name="PauseLines">Lines that stop the spindle and make the program wait for the person.</param>
/// <param name="SpindleLines">Lines that start the spindle; empty when it is switched by hand.</param>
/// <param name="SpindleDwell">Seconds to wait for the spindle to come up to speed; 0 for none.</param>
/// <param name="DwellWord">The dwell line with {seconds}; used when <paramref name="SpindleDwell"/> is more than 0.</param>
/// <param name="LongestLine">Longest line in characters, at most 256.</param>
/// <param name="LineEnding">The characters that end a line.</param>
/// <param name="FileEnding">The file's ending with its dot.</param>
/// <param name="Source">Where the row comes from.</param>
public sealed record Dialect(
    string Id,
    string Name,
    LengthUnit Unit,
    int Decimals,
    int ArcDecimals,
    int FeedDecimals,
    ArcForm Arcs,
    CommentForm Comments,
    int LineNumberStep,
    bool Modal,
    ImmutableArray<string> Header,
    ImmutableArray<string> Footer,
    BitChange BitChange,
    ImmutableArray<string> BitChangeLines,
    ImmutableArray<string> PauseLines,
    ImmutableArray<string> SpindleLines,
    double SpindleDwell,
    string DwellWord,
    int LongestLine,
    string LineEnding,
    string FileEnding,
    Source Source)
{
    /// <summary>Seconds that the program waits after it has stopped the spindle, until the bit stands still; 0 for none.</summary>
    public double SpindleStopDwell { get; init; }

    /// <summary>Whether the program starts and stops the spindle; otherwise it is switched by hand.</summary>
    public bool RunsSpindle => SpindleLines.Length > 0;

    /// <summary>
    /// How bits are changed in this dialect's programs on a machine. A command is for machines that change bits by themselves: any other may pass over it and run on with the wrong bit, so
    /// there the program pauses, which no controller passes over; so it does where no program stops the spindle before the changer takes hold of the bit. Where the spindle is switched by hand and no comment can say so at the pause, every bit has a program of its own.
    /// </summary>
    /// <param name="machine">The machine.</param>
    public BitChange ChangeOn(Machine machine)
    {
        ArgumentNullException.ThrowIfNull(machine);
        BitChange change = BitChange == BitChange.Command && (!machine.ChangesBits || IsSwitchedByHand(machine)) ? BitChange.Pause : BitChange;
        return change == BitChange.Pause && Comments == CommentForm.None && IsSwitchedByHand(machine) ? BitChange.SeparatePrograms : change;
    }

    /// <summary>Whether a hand switches the spindle: because the program does not, or because the machine heeds no program in this.</summary>
    /// <param name="machine">The machine.</param>
    public bool IsSwitchedByHand(Machine machine)
    {
        ArgumentNullException.ThrowIfNull(machine);
        return !RunsSpindle || machine.SwitchedByHand;
    }
}
