using System.Globalization;
using System.Text.RegularExpressions;
using ToolpathForge.Planning;
using ToolpathForge.Proof;

namespace ToolpathForge.Tests.Planning;

/// <summary>Faults put into the sample's finished programs, one at a time: the proof must catch each, and must have passed the program before.</summary>
public partial class FaultInjectionTests
{
    [Theory]
    [InlineData("rafter-tail")]
    [InlineData("beam-end")]
    [InlineData("purlin-end")]
    [InlineData("bracket")]
    public void Every_fault_is_caught(string name)
    {
        PlannedProgram program = SamplePlan.Program(name);
        Assert.True(Prover.Prove(program.Text, program.Target).Passed);
        var escaped = new List<string>();
        int tried = 0;
        foreach ((string fault, string text) in Faults(program))
        {
            tried++;
            if (text == program.Text || Prover.Prove(text, program.Target).Passed)
            {
                escaped.Add(fault);
            }
        }

        Assert.True(tried >= 15);
        Assert.Empty(escaped);
    }

    private static IEnumerable<(string Fault, string Text)> Faults(PlannedProgram program)
    {
        string text = program.Text;
        string[] lines = text.TrimEnd('\n').Split('\n');
        string Joined(IEnumerable<string> changed) => string.Join('\n', changed) + "\n";
        string With(int at, string line) => Joined(lines.Select((l, i) => i == at ? line : l));
        string Without(int at) => Joined(lines.Where((_, i) => i != at));
        int finish = Array.FindLastIndex(lines, l => l.StartsWith("(Finish", StringComparison.Ordinal));

        // An arc of the finished edge, past the lead-in (which, mirrored, would only turn in the waste).
        int arc = Enumerable.Range(finish, lines.Length - finish).Where(i => CentreWord().IsMatch(lines[i])).ElementAt(3);
        int last = Array.FindLastIndex(lines, l => l.StartsWith("G0 Z", StringComparison.Ordinal));
        int firstLift = Array.FindIndex(lines, l => l.StartsWith("G0 Z", StringComparison.Ordinal));
        int middleLift = Array.FindIndex(lines, firstLift + 1, l => l.StartsWith("G0 Z", StringComparison.Ordinal));

        yield return ("arc's center shifted", With(arc, Changed(lines[arc], 'I', v => v + 0.9)));
        yield return ("arc mirrored", With(arc, MotionSwapped(lines, arc)));
        yield return ("wrong plane", text.Replace("G17", "G18", StringComparison.Ordinal));
        yield return ("last retract missing", Without(last));
        if (program.Cut.Tabs.IsEmpty)
        {
            // Round a plate every pass begins where the last one ended, in the slot; beside a board end the way back leads through the wood.
            yield return ("retract between passes missing", Without(middleLift));
        }

        yield return ("everything 0.6 deeper", AllWords(text, 'Z', v => v - 0.6));
        yield return ("everything 0.6 higher", AllWords(text, 'Z', v => v + 0.6));
        yield return ("wrong units", text.Replace("G21", "G20", StringComparison.Ordinal));
        yield return ("relative instead of absolute", text.Replace("G90", "G91", StringComparison.Ordinal));
        yield return ("feeds lost", AnyFeed().Replace(text, ""));
        yield return ("spindle never started", Joined(lines.Where(l => !l.StartsWith("M3", StringComparison.Ordinal))));
        yield return ("spindle left running", Joined(lines.Where(l => l != "M5")));
        yield return ("no end of program", Joined(lines.Where(l => l != "M30")));
        yield return ("X mirrored", AllWords(AllWords(text, 'X', v => -v), 'I', v => -v));
        yield return ("sign flipped in one Y", With(arc, Changed(lines[arc], 'Y', v => -v)));
        yield return ("half a millimeter to the right", AllWords(text, 'X', v => v + 0.5));
        yield return ("half a millimeter to the left", AllWords(text, 'X', v => v - 0.5));
        yield return ("decimals cut off", AllWords(text, 'I', v => Math.Truncate(v)));
        yield return ("an arc line dropped from the finish", Without(arc));
        yield return ("a cut turned into a rapid", With(arc, "G0" + Regex.Replace(lines[arc], "^G[123]| ?[IJF]-?[0-9.]+", "")));
        if (program.Cut.Tabs.Length > 0)
        {
            yield return ("tabs lost", AllWords(text, 'Z', v => Math.Abs(v - program.Cut.Tabs[0].Tab.Top) < 1e-3 ? -program.Cut.Settings.Overcut : v));
            yield return ("tabs raised", AllWords(text, 'Z', v => Math.Abs(v - program.Cut.Tabs[0].Tab.Top) < 1e-3 ? v + 1 : v));
        }
    }

    private static string MotionSwapped(string[] lines, int at)
    {
        // The motion word may stand on an earlier line.
        int word = at;
        while (!ArcWord().IsMatch(lines[word]))
        {
            word--;
        }

        string now = lines[word].StartsWith("G2", StringComparison.Ordinal) ? "G3" : "G2";
        return now + " " + Regex.Replace(lines[at], "^G[23] ?", "");
    }

    private static string Changed(string line, char letter, Func<double, double> change) => Regex.Replace(
        line, $"{letter}(-?[0-9.]+)", m => letter + Number(change(double.Parse(m.Groups[1].Value, CultureInfo.InvariantCulture))));

    private static string AllWords(string text, char letter, Func<double, double> change) => string.Join(
        '\n', text.Split('\n').Select(l => l.StartsWith('(') ? l : Changed(l, letter, change)));

    private static string Number(double value) => value.ToString("0.####", CultureInfo.InvariantCulture);

    [GeneratedRegex("I-?[0-9]")]
    private static partial Regex CentreWord();

    [GeneratedRegex("^G[23]")]
    private static partial Regex ArcWord();

    [GeneratedRegex(" F[0-9.]+")]
    private static partial Regex AnyFeed();
}
