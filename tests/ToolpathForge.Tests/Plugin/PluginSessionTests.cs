using ToolpathForge.DrawingHost;
using ToolpathForge.Plugin;
using ToolpathForge.Plugin.Client;
using ToolpathForge.Plugin.Contract;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Plugin;

/// <summary>The session between a host and the core: the real one, and one that misbehaves.</summary>
public class PluginSessionTests
{
    private const double Inch = 25.4;

    private static string CoreFile { get; } = Path.Combine(AppContext.BaseDirectory, "toolpathforge.dll");

    // 200 x 120 mm with one bowed side, held down by a skin so that no tabs are needed.
    private static readonly double[][] Plate = [[0, 0], [200, 0], [200, 120], [0, 120]];

    private static string Job { get; } = new SelectionJob { Thickness = "5.6 mm\", flatness = \"0.1 mm" }.Text()
        .Replace("\\\"", "\"", StringComparison.Ordinal) + "cut = { skin = \"0.5 mm\" }\n";

    [Theory]
    [InlineData("mm", 1)]
    [InlineData("in", Inch)]
    [InlineData("m", 1000)]
    public async Task A_selection_is_planned_drawn_and_written(string unit, double mm)
    {
        using var scratch = new Scratch();
        using var host = new UnitHost(unit, Outline(mm, Plate));
        using var session = new PluginSession(host, scratch.Root, CoreFile);
        SessionResult result = await session.FulfilAsync(new SessionWish { Job = Job, Folder = "programs", X = 1000 / mm }, TestContext.Current.CancellationToken);
        Assert.True(result.End == SessionEnd.Done, string.Join('\n', host.News));
        WireProgram program = Assert.Single(result.Programs);
        Assert.True(program.Proof!.Passed);
        Assert.Contains(result.Files, f => f.Name == program.File && f.Sha256 == program.Sha256);
        Assert.True(File.Exists(scratch.Path("programs", program.File)));

        // As large as the plate and the bit beside it, where it was asked for, whatever the unit.
        WireEntity[] finish = [.. host.Sound.Document.Preview.Where(e => e.Layer!.EndsWith("-finish", StringComparison.Ordinal) && e.Kind == "line")];
        Assert.NotEmpty(finish);
        double width = finish.Max(e => Math.Max(e.From![0], e.To![0])) - finish.Min(e => Math.Min(e.From![0], e.To![0]));
        Assert.InRange(width * mm, 195, 200 + (2 * 6.35) + 1);
        Assert.All(finish, e => Assert.True(e.From![0] * mm >= 1000));
        Assert.Equal(result.Drawn, host.Sound.Document.Preview.Count);
    }

    [Fact]
    public async Task A_finding_is_marked_where_it_is()
    {
        // An inside corner at (100, 60) that no round bit can reach.
        using var host = new UnitHost("in", Outline(Inch, [[0, 0], [200, 0], [200, 120], [100, 120], [100, 60], [0, 60]]));
        using var session = new PluginSession(host, null, CoreFile);
        SessionResult result = await session.FulfilAsync(new SessionWish { Job = Job }, TestContext.Current.CancellationToken);
        Assert.Equal(SessionEnd.Stopped, result.End);
        Assert.Contains(result.Findings, f => f.Code == "outline-too-tight");
        (double x, double y, string text) = Assert.Single(host.Sound.Document.Marks);
        Assert.Contains("cannot follow", text, StringComparison.Ordinal);
        Assert.InRange(Math.Abs((x * Inch) - 100) + Math.Abs((y * Inch) - 60), 0, 3);
        Assert.Contains(host.News, n => n.StartsWith("stop: ", StringComparison.Ordinal));
        Assert.Empty(host.Sound.Document.Preview);
    }

    [Fact]
    public async Task The_person_is_asked_and_may_turn_it_down()
    {
        using var host = new UnitHost("mm", Outline(1, Plate)) { TurnsDown = true };
        using var session = new PluginSession(host, null, CoreFile);
        Assert.Equal(SessionEnd.Cancelled, (await session.FulfilAsync(new SessionWish(), TestContext.Current.CancellationToken)).End);
        host.TurnsDown = false;
        SessionResult result = await session.FulfilAsync(new SessionWish(), TestContext.Current.CancellationToken);
        Assert.True(result.End is SessionEnd.Done or SessionEnd.Stopped, string.Join('\n', host.News));
    }

    [Fact]
    public async Task Nothing_selected_is_told_before_anything_starts()
    {
        using var host = new UnitHost("mm");
        using var session = new PluginSession(host, null, "/nowhere");
        Assert.Equal(SessionEnd.NothingSelected, (await session.FulfilAsync(new SessionWish(), TestContext.Current.CancellationToken)).End);
        Assert.Contains(host.News, n => n.Contains("Nothing is selected", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_core_that_is_not_there_is_told()
    {
        using var host = new UnitHost("mm", Outline(1, Plate));
        using var session = new PluginSession(host, null, "/nowhere");
        Assert.Equal(SessionEnd.Failed, (await session.FulfilAsync(new SessionWish { Job = "" }, TestContext.Current.CancellationToken)).End);
        Assert.Contains(host.News, n => n.Contains("/nowhere", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_core_that_crashes_is_told_started_again_and_asked_again()
    {
        using var scratch = new Scratch();
        using var host = new UnitHost("mm", Outline(1, Plate));
        using var session = new PluginSession(host, Fake("crashes", scratch.Path("count")));
        SessionResult result = await session.FulfilAsync(new SessionWish { Job = "x", Preview = false }, TestContext.Current.CancellationToken);
        Assert.Equal(SessionEnd.Done, result.End);
        Assert.Contains(host.News, n => n.Contains("out of wood", StringComparison.Ordinal) && n.Contains("started again", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_core_that_crashes_every_time_is_given_up()
    {
        using var host = new UnitHost("mm", Outline(1, Plate));
        using var session = new PluginSession(host, Fake("dies-in-mid-message"));
        for (int i = 0; i < 3; i++)
        {
            Assert.Equal(SessionEnd.Failed, (await session.FulfilAsync(new SessionWish { Job = "x" }, TestContext.Current.CancellationToken)).End);
        }

        Assert.Contains(host.News, n => n.Contains("not started again", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_host_that_throws_harms_nobody()
    {
        using var host = new UnitHost("mm", Outline(1, Plate)) { Throws = true };
        using var session = new PluginSession(host, null, CoreFile);
        Assert.Equal(SessionEnd.Failed, (await session.FulfilAsync(new SessionWish { Job = Job }, TestContext.Current.CancellationToken)).End);
        Assert.Contains(host.News, n => n.Contains("no pen", StringComparison.Ordinal));
        host.Throws = false;
        Assert.Equal(SessionEnd.Done, (await session.FulfilAsync(new SessionWish { Job = Job }, TestContext.Current.CancellationToken)).End);
    }

    [Fact]
    public async Task Plans_are_let_go_of()
    {
        using var host = new UnitHost("mm", Outline(1, Plate));
        using var session = new PluginSession(host, null, CoreFile);
        for (int i = 0; i < 40; i++)
        {
            Assert.Equal(SessionEnd.Done, (await session.FulfilAsync(new SessionWish { Job = Job, Preview = false }, TestContext.Current.CancellationToken)).End);
        }
    }

    private static CoreClient Fake(params string[] arguments) =>
        new(() => new CoreCommand("/usr/bin/python3", [Repo.Path("tests", "outside", "fake_core.py"), .. arguments]), "test");

    private static WireEntity Outline(double mm, double[][] corners) =>
        new() { Kind = "polyline", Layer = "outline", Points = [.. corners.Select(p => new[] { p[0] / mm, p[1] / mm })], Closed = true };

    /// <summary>The host of the samples in another unit.</summary>
    private sealed class UnitHost : ICadHost, IDisposable
    {
        internal UnitHost(string unit, params WireEntity[] selected)
        {
            Unit = unit;
            var document = new DrawingDocument();
            document.Selected.AddRange(selected);
            Sound = new DrawingFileHost(document, null, TextWriter.Null);
        }

        internal DrawingFileHost Sound { get; }

        internal List<string> News { get; } = [];

        internal bool TurnsDown { get; set; }

        internal bool Throws { get; set; }

        public string Name => "Test";

        public string Unit { get; }

        public IReadOnlyList<WireEntity> Selected() => Sound.Selected();

        public void DrawPreview(IReadOnlyList<WireEntity> entities)
        {
            if (Throws)
            {
                throw new InvalidOperationException("no pen");
            }

            Sound.DrawPreview(entities);
        }

        public void ClearPreview() => Sound.ClearPreview();

        public void Mark(double x, double y, string text) => Sound.Mark(x, y, text);

        public string? Ask(string question, string proposal) => TurnsDown ? null : proposal;

        public void Tell(string severity, string text) => News.Add(severity + ": " + text);

        public void Post(Action action) => Sound.Post(action);

        public void Dispose() => Sound.Dispose();
    }
}
