using System.Collections.Immutable;
using ToolpathForge.Catalogue;
using ToolpathForge.Cutting;

namespace ToolpathForge.Posting;

/// <summary>
/// The lines at which a program stops for a person or a bit changer, and at its end. Before the stop the spindle is off and has had time to stand; after it all modes are stated again,
/// because a hand at the controls may have changed them. The toolpath has brought the bit up, and out of the way, before.
/// </summary>
/// <param name="dialect">Says the lines.</param>
/// <param name="input">Says who switches the spindle and who changes bits.</param>
/// <param name="lines">Takes them.</param>
internal sealed class StopLines(Dialect dialect, ProgramInput input, ProgramLines lines)
{
    /// <summary>Said wherever a hand switches the spindle.</summary>
    internal const string SwitchOff = "Switch the spindle off and wait till it stands";

    private readonly bool _byHand = input.SwitchedByHand || !dialect.RunsSpindle;
    private readonly ImmutableArray<string> _modes = HeaderModes.Of(dialect.Header);

    /// <summary>Whether bits are changed by a command: the first is fetched so, too.</summary>
    internal bool ChangesByCommand => dialect.BitChange == BitChange.Command && input.ChangesBits;

    /// <summary>What a hand has to set for a bit, to be written behind its name; empty where the program starts the spindle.</summary>
    /// <param name="path">What it does.</param>
    internal string Setting(Toolpath path) => _byHand ? FormattableString.Invariant($"; {path.Speed:0} rpm, set and switched on by hand before the first move") : "";

    /// <summary>Another bit.</summary>
    /// <param name="path">What it does.</param>
    /// <param name="index">Its place among the program's bits, from 0.</param>
    /// <param name="fill">Fills placeholders.</param>
    internal void ForBit(Toolpath path, int index, Func<string, string> fill)
    {
        ImmutableArray<string> change = ChangesByCommand || dialect.BitChange == BitChange.Pause ? dialect.BitChangeLines : dialect.PauseLines;
        Stop(change, ChangesByCommand ? "" : FormattableString.Invariant($"Unplug the spindle, fit bit {index + 1}: {path.Bit.Name}, touch Z0 off, plug in again"), fill, fromStart: index == 0, FormattableString.Invariant($"set {path.Speed:0} rpm, "));
    }

    /// <summary>The next board, or boards.</summary>
    /// <param name="message">Which.</param>
    /// <param name="fill">Fills placeholders.</param>
    internal void ForBoards(string message, Func<string, string> fill) => Stop(dialect.PauseLines, message, fill, fromStart: false, "");

    /// <summary>The footer.</summary>
    /// <param name="fill">Fills placeholders.</param>
    internal void AtEnd(Func<string, string> fill)
    {
        if (_byHand)
        {
            lines.Message(SwitchOff + " before you reach in");
        }

        Write(dialect.Footer, fill, _ => { });
    }

    private void Stop(ImmutableArray<string> stop, string message, Func<string, string> fill, bool fromStart, string setting)
    {
        Write(stop, fill, line =>
        {
            // What to do is the last thing before the line that waits.
            if (!HeaderModes.Words(line).Any(w => w is "M0" or "M6"))
            {
                return;
            }

            if (_byHand && !fromStart)
            {
                lines.Message(SwitchOff);
            }

            if (message.Length > 0)
            {
                lines.Message(message);
            }

            if (_byHand && !fromStart)
            {
                lines.Message($"Hands clear: {setting}switch it on again, let it come up to speed, go on");
            }
        });
        foreach (string line in _modes)
        {
            lines.Line(line);
        }
    }

    private void Write(ImmutableArray<string> texts, Func<string, string> fill, Action<string> before)
    {
        foreach (string text in texts)
        {
            before(text);
            lines.Line(fill(text));
            if (dialect.SpindleStopDwell > 0 && dialect.RunsSpindle && HeaderModes.Words(text).Contains("M5", StringComparer.Ordinal))
            {
                lines.Line(Placeholders.FillSeconds(dialect.DwellWord, dialect.SpindleStopDwell));
            }
        }
    }
}
