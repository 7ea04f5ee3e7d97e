using ToolpathForge.DrawingHost;
using ToolpathForge.Plugin;
using ToolpathForge.Plugin.Conformance;
using ToolpathForge.Plugin.Contract;

namespace ToolpathForge.Tests.Plugin;

/// <summary>The checks for adapters: ours passes all, and each fault that is put into it is found by the check that is meant for it.</summary>
public class ConformanceTests
{
    [Fact]
    public void The_host_of_the_samples_conforms()
    {
        using var host = new DrawingFileHost(new DrawingDocument(), null, TextWriter.Null);
        ConformanceReport report = HostConformance.Run(host, host);
        Assert.True(report.Passed, report.ToString());
        Assert.Equal(report.Checks.Count, report.Checks.Select(c => c.Name).Distinct().Count());
        Assert.StartsWith("Drawing file: conforms\n  pass  name-is-given\n", report.ToString(), StringComparison.Ordinal);
    }

    // A star: what else fails follows from the fault, and depends on how threads run.
    [Theory]
    [InlineData("no name", "name-is-given")]
    [InlineData("posts twice", "post-runs-once *")]
    [InlineData("posts backwards", "post-keeps-order *")]
    [InlineData("posts in place", "post-leads-to-one-thread post-does-not-wait")]
    [InlineData("posts anywhere", "post-leads-to-one-thread *")]
    [InlineData("posts nowhere", "post-runs-once post-keeps-order *")]
    [InlineData("waits", "post-does-not-wait *")]
    [InlineData("odd unit", "unit-is-known")]
    [InlineData("null for nothing", "selection-may-be-empty")]
    [InlineData("throws for nothing", "selection-may-be-empty")]
    [InlineData("no arcs", "selection-gives-arc")]
    [InlineData("chords", "selection-gives-spline selection-gives-parts")]
    [InlineData("no bulges", "selection-gives-polyline")]
    [InlineData("no weights", "selection-gives-parts")]
    [InlineData("no layers", "selection-gives-line *")]
    [InlineData("old selection", "selection-gives-line *")]
    [InlineData("selects its preview", "preview-leaves-the-selection-alone")]
    [InlineData("one layer", "preview-is-drawn-on-its-layers preview-is-added-to preview-takes-many")]
    [InlineData("arcs turned round", "preview-is-drawn-on-its-layers preview-is-added-to")]
    [InlineData("in inches", "preview-is-drawn-on-its-layers preview-is-added-to preview-takes-many")]
    [InlineData("replaces", "preview-is-added-to")]
    [InlineData("a hundred at most", "preview-takes-many")]
    [InlineData("keeps preview", "preview-is-added-to preview-takes-many clear-takes-all-away *")]
    [InlineData("keeps marks", "clear-takes-all-away mark-is-shown-where-it-is")]
    [InlineData("clears all", "clear-leaves-the-drawing-alone")]
    [InlineData("marks upside down", "mark-is-shown-where-it-is")]
    [InlineData("asks on", "ask-may-be-turned-down")]
    [InlineData("tells one line", "tell-takes-any-text")]
    [InlineData("formats what it tells", "tell-takes-any-text")]
    public void Each_fault_is_found_by_its_check(string fault, string fails)
    {
        using var sound = new DrawingFileHost(new DrawingDocument(), null, TextWriter.Null);
        ConformanceReport report = HostConformance.Run(new BrokenHost(sound, fault), sound, TimeSpan.FromSeconds(fault == "posts nowhere" ? 0.1 : 1));
        string[] failed = [.. report.Checks.Where(c => !c.Passed).Select(c => c.Name)];
        string[] wanted = fails.Replace(" *", "", StringComparison.Ordinal).Split(' ');
        if (fails.EndsWith('*'))
        {
            Assert.All(wanted, w => Assert.Contains(w, failed));
        }
        else
        {
            Assert.Equal(wanted, failed);
        }

        Assert.False(report.Passed);
        Assert.All(report.Checks.Where(c => !c.Passed), c => Assert.NotEqual("", c.Reason));
    }

    /// <summary>A sound host with one fault.</summary>
    private sealed class BrokenHost(ICadHost sound, string fault) : ICadHost
    {
        private readonly List<Action> _held = [];
        private IReadOnlyList<WireEntity>? _first;
        private bool _drawn;

        public string Name => fault == "no name" ? " " : sound.Name;

        public string Unit => fault == "odd unit" ? "furlong" : sound.Unit;

        public IReadOnlyList<WireEntity> Selected()
        {
            IReadOnlyList<WireEntity> all = sound.Selected();
            _first ??= all;
            WireEntity[] Changed(string kind, Action<WireEntity> change) => [.. all.Select(e =>
            {
                WireEntity copy = HostUnit.Scaled(e, 1);
                if (kind.Length == 0 || copy.Kind == kind)
                {
                    change(copy);
                }

                return copy;
            })];
            return fault switch
            {
                "null for nothing" when all.Count == 0 => null!,
                "throws for nothing" when all.Count == 0 => throw new InvalidOperationException("nothing"),
                "no arcs" => [.. all.Where(e => e.Kind != "arc")],
                "chords" => Changed("spline", e => e.Kind = "polyline"),
                "no bulges" => Changed("polyline", e => e.Bulges = null),
                "no weights" => Changed("spline", e => e.Weights = null),
                "no layers" => Changed("", e => e.Layer = null),
                "old selection" => _first,
                "selects its preview" when _drawn => [.. all, all[0]],
                _ => all,
            };
        }

        public void DrawPreview(IReadOnlyList<WireEntity> entities)
        {
            _drawn = true;
            switch (fault)
            {
                case "one layer":
                    entities = [.. entities.Select(e => Copy(e, c => c.Layer = "preview"))];
                    break;
                case "arcs turned round":
                    entities = [.. entities.Select(e => Copy(e, c => c.Sweep = -c.Sweep))];
                    break;
                case "in inches":
                    entities = [.. entities.Select(e => HostUnit.Scaled(e, 1 / 25.4))];
                    break;
                case "replaces":
                    sound.ClearPreview();
                    break;
                case "a hundred at most":
                    entities = [.. entities.Take(100)];
                    break;
            }

            sound.DrawPreview(entities);
        }

        public void ClearPreview()
        {
            _drawn = false;
            if (fault == "keeps preview")
            {
                return;
            }

            (double X, double Y, string Text)[] marks = [.. ((DrawingFileHost)sound).Document.Marks];
            sound.ClearPreview();
            if (fault == "keeps marks")
            {
                Array.ForEach(marks, m => sound.Mark(m.X, m.Y, m.Text));
            }
            else if (fault == "clears all")
            {
                ((DrawingFileHost)sound).Document.Selected.RemoveAll(e => e.Layer!.StartsWith("toolpath", StringComparison.Ordinal));
            }
        }

        public void Mark(double x, double y, string text) => sound.Mark(x, fault == "marks upside down" ? -y : y, text);

        public string? Ask(string question, string proposal) => sound.Ask(question, proposal) ?? (fault == "asks on" ? proposal : null);

        public void Tell(string severity, string text) => sound.Tell(severity, fault switch
        {
            "tells one line" => text.Split('\n')[0],
            "formats what it tells" => string.Format(System.Globalization.CultureInfo.InvariantCulture, text, "x"),
            _ => text,
        });

        public void Post(Action action)
        {
            switch (fault)
            {
                case "posts twice":
                    sound.Post(action);
                    sound.Post(action);
                    break;
                case "posts backwards":
                    lock (_held)
                    {
                        _held.Insert(0, action);
                    }

                    sound.Post(() =>
                    {
                        Thread.Sleep(1);
                        Action next;
                        lock (_held)
                        {
                            next = _held[0];
                            _held.RemoveAt(0);
                        }

                        next();
                    });
                    break;
                case "posts in place":
                    lock (_held)
                    {
                        action();
                    }

                    break;
                case "posts anywhere":
                    // A thread each: a busy pool may have but one to give.
                    new Thread(() => action()) { IsBackground = true }.Start();
                    break;
                case "posts nowhere":
                    break;
                case "waits":
                    var done = new ManualResetEventSlim();
                    sound.Post(() =>
                    {
                        action();
                        done.Set();
                    });
                    done.Wait(TimeSpan.FromSeconds(5));
                    break;
                default:
                    sound.Post(action);
                    break;
            }
        }

        private static WireEntity Copy(WireEntity entity, Action<WireEntity> change)
        {
            WireEntity copy = HostUnit.Scaled(entity, 1);
            change(copy);
            return copy;
        }
    }
}
