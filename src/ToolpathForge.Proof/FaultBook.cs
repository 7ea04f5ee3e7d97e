using System.Collections.Immutable;

namespace ToolpathForge.Proof;

/// <summary>Collects faults: one for each code and subject, at its worst, with a count of the lines.</summary>
internal sealed class FaultBook
{
    private readonly Dictionary<(string Code, string? Subject), Entry> entries = [];

    internal void Add(FaultCode code, int line, double? found = null, double? allowed = null, SpacePoint? at = null, string? subject = null)
    {
        double excess = found is { } f && allowed is { } a ? Math.Abs(f - a) : 0;
        ProofPlace? place = at is { } p ? new ProofPlace(line, p.X, p.Y, p.Z) : null;
        var fault = new Fault(code, line, found, allowed, place, subject, 1);
        if (!entries.TryGetValue((code.Name, subject), out Entry? entry))
        {
            entries.Add((code.Name, subject), new Entry { Worst = fault, Excess = excess, LastLine = line, Count = 1 });
            return;
        }

        if (excess > entry.Excess)
        {
            entry.Worst = fault;
            entry.Excess = excess;
        }

        if (line != entry.LastLine)
        {
            entry.LastLine = line;
            entry.Count++;
        }
    }

    internal ImmutableArray<Fault> ToFaults() =>
    [
        .. entries.Values.Select(e => e.Worst with { Count = e.Count })
            .OrderBy(f => f.Line).ThenBy(f => f.Code.Name, StringComparer.Ordinal).ThenBy(f => f.Subject, StringComparer.Ordinal),
    ];

    private sealed class Entry
    {
        internal required Fault Worst { get; set; }

        internal required double Excess { get; set; }

        internal required int LastLine { get; set; }

        internal required int Count { get; set; }
    }
}
