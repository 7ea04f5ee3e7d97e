using System.Collections.Immutable;
using System.Diagnostics;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;

namespace ToolpathForge.Exchange.Reading;

/// <summary>What is noted while a drawing is read: repairs, findings, what was left alone, and how much of the limits is spent.</summary>
internal sealed class ReadingBook(string file, DrawingLimits limits, CancellationToken cancel)
{
    /// <summary>Repairs of one kind that are told one by one; a file full of rubbish would bury everything else.</summary>
    private const int ToldOfAKind = 20;

    /// <summary>How many steps lie between two looks at the clock.</summary>
    private const int StepsBetweenLooks = 1 << 12;

    private readonly Dictionary<FindingKind, (List<Finding> Told, int More)> _repairs = [];
    private readonly List<FindingKind> _order = [];
    private readonly List<Finding> _findings = [];
    private readonly SortedDictionary<(string Kind, IgnoreReason Reason), int> _ignored =
        new(Comparer<(string Kind, IgnoreReason Reason)>.Create((a, b) => string.CompareOrdinal(a.Kind, b.Kind) is var c && c != 0 ? c : a.Reason.CompareTo(b.Reason)));

    private readonly long _from = Stopwatch.GetTimestamp();
    private int _spent;
    private int _steps;
    private int _otherHeights;

    /// <summary>Whether a limit is reached: whoever loops ends.</summary>
    internal bool Stopped { get; private set; }

    internal DrawingLimits Limits => limits;

    internal string File => file;

    internal void Repair(FindingKind kind, int line, params ImmutableArray<Arg> more) => Repair(Finding.Of(kind, At(line), more));

    internal void Repair(Finding finding)
    {
        if (!_repairs.TryGetValue(finding.Kind, out (List<Finding> Told, int More) of))
        {
            of = ([], 0);
            _order.Add(finding.Kind);
        }

        if (of.Told.Count < ToldOfAKind)
        {
            of.Told.Add(finding);
        }
        else
        {
            of.More++;
        }

        _repairs[finding.Kind] = of;
    }

    internal void Tell(Finding finding) => _findings.Add(finding);

    internal void Ignore(string kind, IgnoreReason reason) =>
        _ignored[(kind, reason)] = _ignored.GetValueOrDefault((kind, reason)) + 1;

    /// <summary>Counts something that lies flat at a height of its own.</summary>
    internal void SeeOtherHeight() => _otherHeights++;

    /// <summary>Where, and as what, a length within the drawing first has a unit of its own.</summary>
    internal (int Line, string Text)? OwnUnit { get; private set; }

    internal void SeeOwnUnit(int line, string text) => OwnUnit ??= (line, text);

    /// <summary>Takes from what may be drawn; false once nothing is left.</summary>
    internal bool Spend(int curves)
    {
        _spent += curves;
        if (!Stopped && (_spent > limits.Curves || _spent < 0))
        {
            Stopped = true;
            Tell(Finding.Of(ReadingFindings.OverCurves, At(0), Quantity.Number(limits.Curves), Quantity.Number(limits.Curves)));
        }

        return Step();
    }

    /// <summary>Takes note of some work done; false once there is no time left.</summary>
    /// <exception cref="OperationCanceledException">The caller wants no more of it.</exception>
    internal bool Step()
    {
        if (++_steps % StepsBetweenLooks == 0 || _steps == 1)
        {
            cancel.ThrowIfCancellationRequested();
            if (!Stopped && Stopwatch.GetElapsedTime(_from) > limits.Time)
            {
                Stopped = true;
                Tell(Finding.Of(ReadingFindings.OverTime, At(0), Arg.Of("seconds", Quantity.Number(Math.Ceiling(limits.Time.TotalSeconds)))));
            }
        }

        return !Stopped;
    }

    internal Place At(int line) => Place.InFile(file, line, 0);

    /// <summary>Puts together what was read.</summary>
    /// <param name="door">Whether repairs are allowed.</param>
    /// <param name="format">The form of the file.</param>
    /// <param name="unit">Its unit, if known.</param>
    /// <param name="layers">Its layers.</param>
    /// <param name="entities">What was drawn.</param>
    internal ReadDrawing Close(Door door, string format, DrawingUnit? unit, ImmutableArray<DrawnLayer> layers, IReadOnlyCollection<DrawnEntity> entities)
    {
        ImmutableArray<Finding> repairs = Repairs();
        if (!Stopped && unit is null && entities.Count > 0)
        {
            Box2 box = Box2.Empty;
            foreach (Curve curve in entities.SelectMany(e => e.Path.Curves))
            {
                box = box.Including(curve.Start).Including(curve.End).Including(curve.PointAt(0.5));
            }

            Tell(Finding.Of(
                ReadingFindings.UnitMissing, At(0), Arg.Of("width", Quantity.Number(Math.Round(box.Width, 3))), Arg.Of("height", Quantity.Number(Math.Round(box.Height, 3)))));
        }

        if (_otherHeights > 0)
        {
            Tell(Finding.Of(ReadingFindings.OtherHeight, At(0), Arg.Of("count", Quantity.Number(_otherHeights))));
        }

        if (!Stopped && door == Door.Strict && repairs.Length > 0)
        {
            int count = _repairs.Values.Sum(r => r.Told.Count + r.More);
            Tell(Finding.Of(ReadingFindings.NeedsRepair, At(0), Arg.Of("count", Quantity.Number(count))));
        }

        if (!Stopped && entities.Count == 0 && format.Length > 0)
        {
            Tell(Finding.Of(ReadingFindings.Empty, At(0)));
        }

        bool stop = _findings.Any(f => f.Kind.Severity == Severity.Stop);
        return new ReadDrawing(
            format,
            unit,
            stop ? [] : [.. entities],
            layers,
            [.. _ignored.Select(p => new IgnoredCount(p.Key.Kind, p.Key.Reason, p.Value))],
            repairs,
            [.. _findings]);
    }

    private ImmutableArray<Finding> Repairs()
    {
        var all = ImmutableArray.CreateBuilder<Finding>();
        foreach (FindingKind kind in _order)
        {
            (List<Finding> told, int more) = _repairs[kind];
            all.AddRange(told);
            if (more > 0)
            {
                all.Add(Finding.Of(ReadingFindings.MoreRepairs, told[^1].Place, Arg.Of("count", Quantity.Number(more))));
            }
        }

        return all.ToImmutable();
    }
}

/// <summary>The ways into a drawing.</summary>
internal enum Door
{
    /// <summary>Only a sound file is taken.</summary>
    Strict,

    /// <summary>What can be put right is, and told.</summary>
    Repairing,
}
