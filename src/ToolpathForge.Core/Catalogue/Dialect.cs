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
    /// <summary>A bit-change command.</summary>
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
/// <param name="PauseLines">Lines that make the program wait for the person.</param>
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
    Source Source);
