using System.Collections.Immutable;
using ToolpathForge.Findings;
using ToolpathForge.Measures;
using ToolpathForge.Plugin.Contract;
using ToolpathForge.Service.Wire;
using ToolpathForge.Wording;

namespace ToolpathForge.Service.Telling;

/// <summary>Puts findings into words, once for people and once for the wire.</summary>
/// <param name="unit">The person's unit.</param>
internal sealed class Teller(LengthUnit unit)
{
    /// <summary>The exit code that findings ask for.</summary>
    internal static int ExitCode(IEnumerable<Finding> findings)
    {
        Finding[] stops = [.. findings.Where(f => f.Kind.Severity == Severity.Stop)];
        return stops.Length == 0 ? ExitCodes.Fine : Array.Exists(stops, f => f.Kind.Unusable) ? ExitCodes.Unusable : ExitCodes.Stopped;
    }

    internal ImmutableArray<Remark> Remarks(IEnumerable<Finding> findings) => [.. findings.Select(Remark)];

    internal WireFinding[] Wire(IEnumerable<Finding> findings) => [.. findings.Select(Wire)];

    private Remark Remark(Finding finding)
    {
        WordedFinding worded = FindingText.Word(finding, unit);
        Weight weight = finding.Kind.Severity switch
        {
            Severity.Stop => Weight.Problem,
            Severity.Warn => Weight.Warning,
            _ => Weight.Note,
        };
        return new Remark(weight, worded.Code, worded.Where, worded.Message, worded.Advice);
    }

    private WireFinding Wire(Finding finding)
    {
        WordedFinding worded = FindingText.Word(finding, unit);
        return new WireFinding
        {
            Severity = finding.Kind.Severity switch
            {
                Severity.Stop => "stop",
                Severity.Warn => "warn",
                _ => "note",
            },
            Code = worded.Code,
            Message = worded.Message,
            Advice = worded.Advice,
            Where = Wire(finding.Place),
            Found = WireNumber.Of(finding.Found),
            Allowed = WireNumber.Of(finding.Allowed),
        };
    }

    private static WirePlace? Wire(Place place) => place == Place.None
        ? null
        : new WirePlace
        {
            File = place.File,
            Line = place.Line > 0 ? place.Line : null,
            Column = place.Column > 0 ? place.Column : null,
            Make = place.Make,
            Point = place.Point is { } p ? new WirePoint { X = WireNumber.Rounded(p.X), Y = WireNumber.Rounded(p.Y) } : null,
        };
}
