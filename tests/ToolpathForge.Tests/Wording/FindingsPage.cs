using System.Collections.Immutable;
using System.Text;
using System.Text.RegularExpressions;
using ToolpathForge.Findings;
using ToolpathForge.Measures;
using ToolpathForge.Proof;
using ToolpathForge.Service.Telling;
using ToolpathForge.Tests.Support;
using ToolpathForge.Wording;

namespace ToolpathForge.Tests.Wording;

/// <summary>The reference of findings as text: all kinds of the code, and all faults that a proof can find.</summary>
internal static partial class FindingsPage
{
    private const string Usual = "*";

    internal static string Text(ImmutableArray<DeclaredFinding> kinds)
    {
        Dictionary<string, Dictionary<string, string>> examples = Examples();
        Assert.All(examples.Keys.Where(c => c != Usual), c => Assert.Contains(kinds, k => k.Kind.Code == c));
        var text = new StringBuilder("""
            # Findings

            What ToolpathForge may tell you, by code: what it means, an example, and what to do. This page is made from the code; do not edit it.

            A **stop** means that no program is handed over until it is put right. A **warn** leaves the decision to you. A **note** needs nothing done.
            Words in *italics* are filled in with what was found, what is allowed, and the names of what it is about.

            ## From job, drawing and settings


            """);
        foreach (DeclaredFinding declared in kinds)
        {
            FindingKind kind = declared.Kind;
            text.Append("### `").Append(kind.Code).Append("`\n\n");
            text.Append("**").Append(Weight(kind.Severity)).Append("**").Append(kind.Unusable ? ", and the input cannot be used at all" : "").Append(". ");
            text.Append(Name().Replace(kind.Says, "*${name}*")).Append("\n\n");
            if (FindingText.Placeholders(kind).Count > 0)
            {
                text.Append("Example: ").Append(Filled(kind.Says, kind.Code, examples)).Append("\n\n");
            }

            text.Append("What to do: ").Append(Filled(kind.Advice, kind.Code, examples)).Append("\n\n");
        }

        text.Append("""
            ## From the proof

            Every program is read back and held against the exact piece. A fault of a program written here is a fault of ToolpathForge: nothing is handed over,
            and a report with the job file is welcome. A fault of a program from elsewhere (`prove`) lies in that program: put it right where it was made.


            """);
        foreach (FaultCode code in FaultCodes.All.OrderBy(c => c.Name, StringComparer.Ordinal))
        {
            text.Append("### `").Append(code.Name).Append("`\n\n").Append(code.Meaning).Append(code.Unit == FaultUnit.None ? "" : $" In {Unit(code.Unit)}.").Append("\n\n");
            text.Append("Example: `").Append(FaultText.Line(Example(code), "tail.nc", LengthUnit.Millimetre)).Append("`\n\n");
            text.Append("What to do: ").Append(FaultAdvice.For(code)).Append("\n\n");
        }

        return text.ToString().TrimEnd('\n') + "\n";
    }

    private static string Filled(string wording, string code, Dictionary<string, Dictionary<string, string>> examples) => Name().Replace(wording, match =>
    {
        string name = match.Groups["name"].Value;
        bool has = (examples.TryGetValue(code, out Dictionary<string, string>? own) && own.TryGetValue(name, out string? value))
            | examples[Usual].TryGetValue(name, out string? usual);
        Assert.True(has, $"tests/data/findings/examples.txt has nothing for {{{name}}} of {code}.");
        return own?.GetValueOrDefault(name) ?? usual!;
    });

    private static Dictionary<string, Dictionary<string, string>> Examples()
    {
        var examples = new Dictionary<string, Dictionary<string, string>>(StringComparer.Ordinal);
        foreach (string line in File.ReadAllLines(Repo.Path("tests", "data", "findings", "examples.txt")).Where(l => l.Length > 0 && l[0] != '#'))
        {
            string[] parts = line.Split(" | ");
            if (!examples.TryGetValue(parts[0], out Dictionary<string, string>? own))
            {
                examples.Add(parts[0], own = new Dictionary<string, string>(StringComparer.Ordinal));
            }

            foreach (string part in parts[1..])
            {
                string[] pair = part.Split(" = ", 2);
                own.Add(pair[0], pair[1]);
            }
        }

        return examples;
    }

    private static string Weight(Severity severity) => severity switch
    {
        Severity.Stop => "stop",
        Severity.Warn => "warn",
        _ => "note",
    };

    // Numbers that such a fault could carry, whatever it is about.
    private static Fault Example(FaultCode code)
    {
        (double? found, double? allowed) = code.Unit switch
        {
            FaultUnit.None => ((double?)null, (double?)null),
            FaultUnit.Length => (0.31, 0.1),
            FaultUnit.Feed => (5000, 4000),
            FaultUnit.Speed => (30000, 24000),
            FaultUnit.Angle => (12, 5),
            FaultUnit.Time => (1, 4),
            _ => (300, 256),
        };
        return new Fault(code, 40, found, allowed, null, null, 1);
    }

    private static string Unit(FaultUnit unit) => unit switch
    {
        FaultUnit.Length => "mm",
        FaultUnit.Feed => "mm/min",
        FaultUnit.Speed => "rpm",
        FaultUnit.Angle => "degrees",
        FaultUnit.Time => "seconds",
        FaultUnit.Count => "a count",
        _ => "-",
    };

    [GeneratedRegex(@"\{(?<name>[a-z-]+)\}", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Name();
}
