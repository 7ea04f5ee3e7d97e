using System.Globalization;
using System.Text.RegularExpressions;
using ToolpathForge.Jobs;
using ToolpathForge.Planning;
using ToolpathForge.Proof;

namespace ToolpathForge.Tests.Planning;

/// <summary>Faults put into a finished program with three bits, holes, a slot and marks: the proof must catch each.</summary>
public class OpeningFaultTests
{
    private static readonly Lazy<PlannedProgram> s_program = new(() =>
    {
        // On a machine that changes bits by itself: what may go wrong with the commands is among the faults.
        Job job = MarkedPattern.Job();
        return Planner.Plan(job with { Machine = job.Machine with { ChangesBits = true } }, cancel: CancellationToken.None).Programs.Single();
    });

    public static TheoryData<string> Faults => [.. All(s_program.Value.Text).Select(f => f.Name)];

    [Theory]
    [MemberData(nameof(Faults))]
    public void Each_fault_is_caught(string name)
    {
        PlannedProgram program = s_program.Value;
        Assert.True(program.Proof.Passed);
        string text = All(program.Text).Single(f => f.Name == name).Text;
        Assert.NotEqual(program.Text, text);
        Assert.False(Prover.Prove(text, program.Target).Passed, $"{name} escaped.");
    }

    // All roughing at the last depth at once: 5.9 mm through solid stock where 2.95 mm is one pass.
    [Fact]
    public void Going_down_in_one_pass_where_two_are_meant_is_caught()
    {
        PlannedProgram program = s_program.Value;
        string text = program.Text.Replace("Z2.65", "Z-0.3", StringComparison.Ordinal);
        Fault fault = Prover.Prove(text, program.Target).Faults.Single(f => f.Code == FaultCodes.UncutTooDeep);
        Assert.InRange(fault.Found!.Value, 5.8, 5.9001);
        Assert.Equal(2.95, fault.Allowed!.Value, 9);
    }

    private static IEnumerable<(string Name, string Text)> All(string text)
    {
        string[] lines = text.TrimEnd('\n').Split('\n');
        string Joined(IEnumerable<string> some) => string.Join('\n', some) + "\n";
        (int From, int To) Part(string comment)
        {
            int from = Array.FindIndex(lines, l => l.StartsWith(comment, StringComparison.Ordinal));
            int to = Array.FindIndex(lines, from + 1, l => l.StartsWith('(') || l == "M5");
            return (from, to < 0 ? lines.Length : to);
        }

        string Without(int from, int to) => Joined(lines.Where((_, i) => i < from || i >= to));
        string In((int From, int To) part, string pattern, Func<double, double> change) => Joined(lines.Select((l, i) =>
            i >= part.From && i < part.To
                ? Regex.Replace(l, pattern + "(-?[0-9.]+)", m => m.Value[0] + change(double.Parse(m.Groups[1].Value, CultureInfo.InvariantCulture)).ToString("0.####", CultureInfo.InvariantCulture))
                : l));

        (int From, int To) engraved = Part("(Engrave");
        (int From, int To) hole = Part("(Hole hanging");
        (int From, int To) drilled = Part("(Hole screw");
        (int From, int To) slot = Part("(Slot adjust");
        int stroke = Enumerable.Range(engraved.From + 40, 100).First(i => lines[i].StartsWith("G1 Z", StringComparison.Ordinal) && lines[i + 1].StartsWith('X'));
        yield return ("a stroke of a mark lost", Without(stroke, stroke + 2));
        yield return ("a stroke turned into a rapid", Joined(lines.Select((l, i) => i == stroke + 1 ? "G0 " + Regex.Replace(l, " F.*", "") : l)));
        yield return ("marks half a millimeter deeper", In(engraved, "(?<=G1 )Z", z => z - 0.5));
        yield return ("marks in the air", In(engraved, "(?<=G1 )Z", z => z + 0.5));
        yield return ("marks shifted", In(engraved, "X", x => x + 0.4));
        yield return ("marks mirrored", In(engraved, "X", x => 350 - x));
        yield return ("a hole lost", Without(hole.From + 1, hole.To));
        yield return ("a drilled hole lost", Without(drilled.From + 1, drilled.To));
        yield return ("a drilled hole moved", In(drilled, "Y", y => y + 0.5));
        yield return ("a hole moved", In(hole, "X", x => x + 0.4));
        yield return ("a slot lost", Without(slot.From + 1, slot.To));
        yield return ("a slot not deep enough", In(slot, "Z", z => Math.Max(z, 1)));
        yield return ("a slot's last round lost", Without(slot.To - 16, slot.To - 1));
        yield return ("the second bit never fitted", Joined(lines.Where(l => !l.StartsWith("T2", StringComparison.Ordinal))));
        yield return ("bits swapped", text.Replace("T2 M6", "T9 M6", StringComparison.Ordinal).Replace("T3 M6", "T2 M6", StringComparison.Ordinal).Replace("T9 M6", "T3 M6", StringComparison.Ordinal));
        yield return ("a bit that is not there", text.Replace("T3 M6", "T4 M6", StringComparison.Ordinal));
        yield return ("no start of the spindle after a change", Without(Array.FindLastIndex(lines, l => l.StartsWith('S')), Array.FindLastIndex(lines, l => l.StartsWith('S')) + 1));
    }
}
