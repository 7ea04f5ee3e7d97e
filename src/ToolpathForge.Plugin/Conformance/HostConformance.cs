using System.Globalization;
using ToolpathForge.Plugin.Contract;

namespace ToolpathForge.Plugin.Conformance;

/// <summary>
/// Checks that an adapter does what the plugin counts on. It needs no test framework: call <see cref="Run"/> on any thread but the host's own, and read the report. Every check stands
/// for itself: one that fails, throws or never ends doesn't keep the others from being made.
/// </summary>
public static class HostConformance
{
    private static readonly string[] Severities = ["stop", "warn", "note"];

    /// <summary>Makes all checks.</summary>
    /// <param name="host">The host.</param>
    /// <param name="probe">Its other side.</param>
    /// <param name="patience">How long anything may take; ten seconds when null.</param>
    public static ConformanceReport Run(ICadHost host, IHostProbe probe, TimeSpan? patience = null)
    {
        var run = new ConformanceRun(host, probe, patience ?? TimeSpan.FromSeconds(10));
        run.Check("name-is-given", () => string.IsNullOrWhiteSpace(host.Name) ? "the name is empty" : null);
        run.Check("post-runs-once", () => PostRunsOnce(run));
        run.Check("post-keeps-order", () => PostKeepsOrder(run));
        run.Check("post-leads-to-one-thread", () => PostLeadsToOneThread(run));
        run.Check("post-does-not-wait", () => PostDoesNotWait(run));
        run.Check("unit-is-known", () => run.OnHost(() => host.Unit) is var unit && HostUnit.Millimetres(unit) is null ? "'" + unit + "' is no unit of the contract" : null);
        run.Check("selection-may-be-empty", () => Selection(run, []));
        foreach (WireEntity sample in ConformanceSamples.Each)
        {
            run.Check("selection-gives-" + sample.Kind, () => Selection(run, [sample]));
        }

        run.Check("selection-gives-parts", () => Selection(run, ConformanceSamples.Parts));
        run.Check("selection-is-the-present-one", () => Selection(run, [ConformanceSamples.Each[0]]) ?? Selection(run, [ConformanceSamples.Each[2]]));
        run.Check("preview-is-drawn-on-its-layers", () => Drawn(run, ConformanceSamples.Ways));
        run.Check("preview-is-added-to", () => AddedTo(run));
        run.Check("preview-leaves-the-selection-alone", () => LeavesSelection(run));
        run.Check("preview-takes-many", () => Drawn(run, ConformanceSamples.Many));
        run.Check("clear-takes-all-away", () => Clears(run));
        run.Check("clear-may-be-repeated", () => run.OnHost(() => { host.ClearPreview(); host.ClearPreview(); }));
        run.Check("clear-leaves-the-drawing-alone", () => ClearLeavesDrawing(run));
        run.Check("mark-is-shown-where-it-is", () => Marked(run));
        run.Check("ask-gives-the-answer", () => Asked(run, "5.6 mm"));
        run.Check("ask-may-be-turned-down", () => Asked(run, null));
        run.Check("tell-takes-any-text", () => Told(run));
        run.CleanUp();
        return run.Report();
    }

    private static string? PostRunsOnce(ConformanceRun run)
    {
        int times = 0;
        run.Host.Post(() => Interlocked.Increment(ref times));
        return run.OnHost(() => { }) ?? run.OnHost(() => { }) ?? (times == 1 ? null : string.Format(CultureInfo.InvariantCulture, "an action ran {0} times", times));
    }

    private static string? PostKeepsOrder(ConformanceRun run)
    {
        var order = new List<int>();
        for (int i = 0; i < 100; i++)
        {
            int number = i;
            run.Host.Post(() =>
            {
                lock (order)
                {
                    order.Add(number);
                }
            });
        }

        string? late = run.OnHost(() => { });
        lock (order)
        {
            return late ?? (order.SequenceEqual(Enumerable.Range(0, 100)) ? null : "actions ran in another order than they were posted, or not at all");
        }
    }

    private static string? PostLeadsToOneThread(ConformanceRun run)
    {
        var threads = new HashSet<int>();
        int within = 0;
        bool overlapped = false;
        void Action()
        {
            overlapped |= Interlocked.Increment(ref within) != 1;
            lock (threads)
            {
                threads.Add(Environment.CurrentManagedThreadId);
            }

            Thread.Sleep(1);
            Interlocked.Decrement(ref within);
        }

        Thread[] posters = [.. Enumerable.Range(0, 4).Select(_ => new Thread(() =>
        {
            for (int i = 0; i < 5; i++)
            {
                run.Host.Post(Action);
            }
        }))];
        Array.ForEach(posters, t => t.Start());
        Array.ForEach(posters, t => t.Join());
        string? late = run.OnHost(() => { });
        lock (threads)
        {
            return late ?? (overlapped ? "two actions ran at the same time" : threads.Count == 1 ? null : "actions ran on several threads");
        }
    }

    private static string? PostDoesNotWait(ConformanceRun run)
    {
        // Never disposed: a host with a fault may run the action again long after.
        var held = new ManualResetEventSlim();
        bool returned = false;
        var poster = new Thread(() =>
        {
            run.Host.Post(() => held.Wait(run.Patience));
            Volatile.Write(ref returned, true);
        })
        {
            IsBackground = true,
        };
        poster.Start();
        bool soon = poster.Join(TimeSpan.FromTicks(run.Patience.Ticks / 2)) && Volatile.Read(ref returned);
        held.Set();
        string? late = run.OnHost(() => { });
        poster.Join(run.Patience);
        return late ?? (soon ? null : "posting waits until the action is done");
    }

    private static string? Selection(ConformanceRun run, WireEntity[] entities)
    {
        run.Probe.DrawAndSelect(entities);
        return EntityComparison.Difference(run.OnHost(run.Host.Selected), entities);
    }

    private static string? Drawn(ConformanceRun run, WireEntity[] ways) =>
        run.OnHost(() => { run.Host.ClearPreview(); run.Host.DrawPreview(ways); }) ?? EntityComparison.Difference(run.Probe.Preview(), ways);

    private static string? AddedTo(ConformanceRun run)
    {
        WireEntity[] first = [.. ConformanceSamples.Ways.Take(1)];
        WireEntity[] rest = [.. ConformanceSamples.Ways.Skip(1)];
        return Drawn(run, first) ?? run.OnHost(() => run.Host.DrawPreview(rest)) ?? EntityComparison.Difference(run.Probe.Preview(), ConformanceSamples.Ways);
    }

    private static string? LeavesSelection(ConformanceRun run)
    {
        WireEntity[] chosen = [ConformanceSamples.Each[0]];
        run.Probe.DrawAndSelect(chosen);
        string? drawn = run.OnHost(() => run.Host.DrawPreview(ConformanceSamples.Ways));
        return drawn ?? EntityComparison.Difference(run.OnHost(run.Host.Selected), chosen);
    }

    private static string? Clears(ConformanceRun run)
    {
        string? drawn = run.OnHost(() =>
        {
            run.Host.DrawPreview(ConformanceSamples.Ways);
            run.Host.Mark(1, 2, "x");
            run.Host.ClearPreview();
        });
        return drawn ?? EntityComparison.Difference(run.Probe.Preview(), []) ?? (run.Probe.Marks().Count == 0 ? null : "a mark stays behind");
    }

    private static string? ClearLeavesDrawing(ConformanceRun run)
    {
        WireEntity[] chosen = [ConformanceSamples.Each[0], ConformanceSamples.OnPreviewLayer];
        run.Probe.DrawAndSelect(chosen);
        string? cleared = run.OnHost(() =>
        {
            run.Host.DrawPreview(ConformanceSamples.Ways);
            run.Host.ClearPreview();
        });
        return cleared ?? EntityComparison.Difference(run.OnHost(run.Host.Selected), chosen);
    }

    private static string? Marked(ConformanceRun run)
    {
        const string Text = "too tight: 0.3 mm";
        string? marked = run.OnHost(() => { run.Host.ClearPreview(); run.Host.Mark(12.5, -3, Text); });
        (double X, double Y, string Text)[] marks = [.. run.Probe.Marks()];
        return marked ?? (marks.Length == 1 && Math.Abs(marks[0].X - 12.5) < 1e-6 && Math.Abs(marks[0].Y + 3) < 1e-6 && marks[0].Text.Contains(Text)
            ? null
            : "the mark isn't where it was put, or lacks its text");
    }

    private static string? Asked(ConformanceRun run, string? answer)
    {
        run.Probe.WillAnswer(answer);
        string? given = run.OnHost(() => run.Host.Ask("How thick is it?", "6 mm") ?? "\0");
        return given == (answer ?? "\0") ? null : "the answer came back as '" + given + "'";
    }

    private static string? Told(ConformanceRun run)
    {
        string[] texts = ["Plain.", "Two\nlines", "100% {0} <b> \"quoted\" \\ é ½ 板", new string('x', 10_000), ""];
        int before = run.Probe.Told().Count;
        string? told = run.OnHost(() => Array.ForEach(texts, t => run.Host.Tell(Severities[t.Length % 3], t)));
        string[] heard = [.. run.Probe.Told().Skip(before)];
        return told ?? (heard.Length == texts.Length && heard.Zip(texts, (h, t) => h.Contains(t)).All(whole => whole) ? null : "what was told did not arrive whole");
    }
}
