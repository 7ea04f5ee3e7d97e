using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using ToolpathForge.Findings;
using ToolpathForge.Measures;

namespace ToolpathForge.Wording;

/// <summary>A finding in words, in one person's unit.</summary>
/// <param name="Code">The kind's code.</param>
/// <param name="Severity">Its weight.</param>
/// <param name="Where">The place in words; empty when there is none.</param>
/// <param name="Message">What is so.</param>
/// <param name="Advice">What to do about it.</param>
public sealed record WordedFinding(string Code, Severity Severity, string Where, string Message, string Advice)
{
    /// <summary>The weight as a person reads it: problem, warning or note.</summary>
    public string Weight => Severity switch
    {
        Severity.Stop => "problem",
        Severity.Warn => "warning",
        _ => "note",
    };

    /// <summary>All in one line, for a terminal.</summary>
    public override string ToString() => Where.Length == 0 ? $"{Weight}: {Message} {Advice}" : $"{Where}: {Weight}: {Message} {Advice}";
}

/// <summary>Puts a finding into words: the one place where numbers, places and the wording of a kind come together.</summary>
public static class FindingText
{
    /// <summary>Words a finding.</summary>
    /// <param name="finding">The finding.</param>
    /// <param name="unit">The unit that lengths and feeds are told in.</param>
    public static WordedFinding Word(Finding finding, LengthUnit unit)
    {
        ArgumentNullException.ThrowIfNull(finding);
        return new WordedFinding(
            finding.Kind.Code,
            finding.Kind.Severity,
            WordPlace(finding.Place, unit),
            Fill(finding.Kind.Says, finding, unit),
            Fill(finding.Kind.Advice, finding, unit));
    }

    /// <summary>A place in words: <c>porch.toml:12:5, rafter-tail, at 3 in along and 1 in from the reference edge</c>.</summary>
    /// <param name="place">The place.</param>
    /// <param name="unit">The unit of a point.</param>
    public static string WordPlace(Place place, LengthUnit unit)
    {
        ArgumentNullException.ThrowIfNull(place);
        var parts = new List<string>();
        if (place.File is not null)
        {
            string line = place.Line > 0 ? string.Create(CultureInfo.InvariantCulture, $":{place.Line}") : "";
            string column = place.Line > 0 && place.Column > 0 ? string.Create(CultureInfo.InvariantCulture, $":{place.Column}") : "";
            parts.Add(place.File + line + column);
        }

        if (place.Make is not null)
        {
            parts.Add(place.Make);
        }

        if (place.Point is { } point)
        {
            // A place on a piece is looked for with a rule. Only pieces have a reference edge; what lies in a file and in no make is a point of a drawing.
            parts.Add(place.File is not null && place.Make is null
                ? $"at x {LengthText.Write(point.X, unit)}, y {LengthText.Write(point.Y, unit)}"
                : $"at {RuleText.Size(point.X, unit)} along and {RuleText.Size(point.Y, unit)} from the reference edge");
        }

        return string.Join(", ", parts);
    }

    /// <summary>The names in braces in a kind's wording, each once, in ordinal order.</summary>
    internal static ImmutableSortedSet<string> Placeholders(FindingKind kind) =>
        [.. Pieces(kind.Says).Concat(Pieces(kind.Advice)).Where(p => p.IsName).Select(p => p.Text).Order(StringComparer.Ordinal)];

    /// <summary>What a name in braces stands for; null when the finding has nothing of that name.</summary>
    private static string? Value(string name, Finding finding, LengthUnit unit)
    {
        Quantity? quantity = name switch
        {
            "found" => finding.Found,
            "allowed" => finding.Allowed,
            _ => null,
        };
        if (quantity is { } told)
        {
            return QuantityText.Write(told, unit);
        }

        foreach (Arg arg in finding.Args)
        {
            if (arg.Name == name)
            {
                return arg.Text ?? (arg.Quantity is { } q ? QuantityText.Write(q, unit) : null);
            }
        }

        return null;
    }

    // A name that nothing fills stays as it is: the sentence still stands, and the test over all kinds has failed long before.
    private static string Fill(string wording, Finding finding, LengthUnit unit)
    {
        var text = new StringBuilder();
        foreach ((string piece, bool isName) in Pieces(wording))
        {
            text.Append(isName ? Value(piece, finding, unit) ?? $"{{{piece}}}" : piece);
        }

        return text.ToString();
    }

    private static IEnumerable<(string Text, bool IsName)> Pieces(string wording)
    {
        int at = 0;
        while (at < wording.Length)
        {
            int open = wording.IndexOf('{', at);
            int close = open < 0 ? -1 : wording.IndexOf('}', open);
            if (close < 0)
            {
                break;
            }

            if (open > at)
            {
                yield return (wording[at..open], false);
            }

            yield return (wording[(open + 1)..close], true);
            at = close + 1;
        }

        if (at < wording.Length)
        {
            yield return (wording[at..], false);
        }
    }
}
