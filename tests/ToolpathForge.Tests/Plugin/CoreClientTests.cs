using System.Diagnostics;
using ToolpathForge.Plugin.Client;
using ToolpathForge.Plugin.Contract;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Plugin;

/// <summary>The plugin's side of the process: what it makes of a core that misbehaves, with one that does so on purpose.</summary>
public class CoreClientTests
{
    private static readonly CorePatience Short = new() { Silence = TimeSpan.FromSeconds(2), Longest = TimeSpan.FromSeconds(4), End = TimeSpan.FromSeconds(1), MessageBytes = 1 << 20 };

    // Starting an interpreter on a machine at work takes a while; only what must time out is short.
    private static readonly CorePatience Patient = new() { Silence = TimeSpan.FromSeconds(60), End = TimeSpan.FromSeconds(5), MessageBytes = 1 << 20 };

    [Theory]
    [InlineData("dies-at-once", CoreFailure.Ended, "no such machine")]
    [InlineData("crashes", CoreFailure.Ended, "out of wood")]
    [InlineData("killed", CoreFailure.Ended, "without an answer")]
    [InlineData("dies-in-mid-message", CoreFailure.Ended, "middle of a message")]
    [InlineData("rubbish", CoreFailure.Rubbish, "makes no sense")]
    [InlineData("no-utf8", CoreFailure.Rubbish, "makes no sense")]
    [InlineData("endless", CoreFailure.Rubbish, "message without end")]
    [InlineData("wrong-id", CoreFailure.Rubbish, "nothing that was asked")]
    [InlineData("wrong-form", CoreFailure.Rubbish, "result.findings")]
    [InlineData("neither", CoreFailure.Rubbish, "either a result or an error")]
    [InlineData("no-object", CoreFailure.Rubbish, "no message of JSON-RPC")]
    public void A_core_that_fails_is_told_and_ended(string mode, CoreFailure failure, string says)
    {
        using CoreClient client = Client(Patient, mode);
        int? id = null;
        client.Progress = _ => { };
        CoreException e = Assert.Throws<CoreException>(() =>
        {
            client.Initialize(TestContext.Current.CancellationToken);
            id = client.ProcessId;
            client.Plan(new PlanRequest(), TestContext.Current.CancellationToken);
        });
        Assert.Equal(failure, e.Failure);
        Assert.Contains(says, e.Message, StringComparison.Ordinal);
        Assert.True(e.IsBroken);
        Assert.Null(client.ProcessId);
        AssertGone(id);
    }

    [Theory]
    [InlineData("hangs")]
    [InlineData("babbles")]
    [InlineData("deaf")]
    public void A_core_that_hangs_is_told_and_ended(string mode)
    {
        using CoreClient client = Client(Short, mode);
        var watch = Stopwatch.StartNew();
        CoreException e = Assert.Throws<CoreException>(() => client.Plan(
            new PlanRequest { Job = new string('x', 4 << 20) }, TestContext.Current.CancellationToken));
        Assert.Equal(CoreFailure.TimedOut, e.Failure);
        Assert.InRange(watch.Elapsed.TotalSeconds, 2, 40);
        Assert.Null(client.ProcessId);
    }

    [Fact]
    public void After_a_crash_it_is_started_anew()
    {
        using var scratch = new Scratch();
        using CoreClient client = Client(Patient, "crashes", scratch.Path("count"));
        Assert.Throws<CoreException>(() => client.Plan(new PlanRequest(), TestContext.Current.CancellationToken));
        var stages = new List<string>();
        client.Progress = p => stages.Add(p.Stage);
        Assert.Equal("p1", client.Plan(new PlanRequest(), TestContext.Current.CancellationToken).Plan);
        Assert.Equal(["reading", "proof"], stages);
        Assert.Equal(2, File.ReadAllLines(scratch.Path("count")).Length);
    }

    [Fact]
    public void It_is_given_up_after_three_failures_in_a_row()
    {
        using CoreClient client = Client(Patient, "crashes");
        CoreFailure[] met = [.. Enumerable.Range(0, 5).Select(_ => Assert.Throws<CoreException>(() => client.Plan(new PlanRequest(), TestContext.Current.CancellationToken)).Failure)];
        Assert.Equal([CoreFailure.Ended, CoreFailure.Ended, CoreFailure.Ended, CoreFailure.GivenUp, CoreFailure.GivenUp], met);
        client.TryAgain();
        Assert.Equal(CoreFailure.Ended, Assert.Throws<CoreException>(() => client.Plan(new PlanRequest(), TestContext.Current.CancellationToken)).Failure);
    }

    [Fact]
    public void A_refusal_is_no_failure()
    {
        using CoreClient client = Client(Patient, "refuses");
        for (int i = 0; i < 5; i++)
        {
            CoreException e = Assert.Throws<CoreException>(() => client.Plan(new PlanRequest(), TestContext.Current.CancellationToken));
            Assert.Equal((CoreFailure.Refused, -32602, false), (e.Failure, e.Code, e.IsBroken));
        }

        Assert.NotNull(client.ProcessId);
    }

    [Theory]
    [InlineData("cancels", true)]
    [InlineData("hangs", false)]
    public void A_request_can_be_cancelled(string mode, bool stays)
    {
        using CoreClient client = Client(Patient, mode);
        client.Initialize(TestContext.Current.CancellationToken);
        int? id = client.ProcessId;
        using var cancel = new CancellationTokenSource(300);
        Assert.Equal(CoreFailure.Cancelled, Assert.Throws<CoreException>(() => client.Plan(new PlanRequest(), cancel.Token)).Failure);
        client.Catalogue(new CatalogueRequest(), TestContext.Current.CancellationToken);
        Assert.Equal(stays, client.ProcessId == id);
    }

    [Fact]
    public void A_second_answer_is_noticed_by_the_next_request()
    {
        using CoreClient client = Client(Patient, "twice");
        client.Plan(new PlanRequest(), TestContext.Current.CancellationToken);
        Thread.Sleep(500);
        Assert.Equal(CoreFailure.Rubbish, Assert.Throws<CoreException>(() => client.Plan(new PlanRequest(), TestContext.Current.CancellationToken)).Failure);
    }

    [Fact]
    public void Another_version_of_the_contract_is_refused()
    {
        using CoreClient client = Client(Patient, "other-contract");
        CoreException e = Assert.Throws<CoreException>(() => client.Initialize(TestContext.Current.CancellationToken));
        Assert.Equal(CoreFailure.Refused, e.Failure);
        Assert.Contains("9.0", e.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void The_core_is_found_in_the_order_that_is_told()
    {
        using var scratch = new Scratch();
        string Put(string name)
        {
            scratch.Write(name, "");
            return scratch.Path(name);
        }

        string named = Put("named"), variable = Put("variable"), beside = Put("beside/toolpathforge"), searched = Put("path/toolpathforge");
        string? B() => Path.GetDirectoryName(beside);
        string? P() => Path.GetDirectoryName(searched) + Path.PathSeparator + "\0bad";
        Assert.Equal(named, CoreCommand.Find(named, variable, B(), P()).File);
        Assert.Equal(variable, CoreCommand.Find(null, variable, B(), P()).File);
        Assert.Equal(beside, CoreCommand.Find(null, "", B(), P()).File);
        Assert.Equal(searched, CoreCommand.Find(null, null, scratch.Root, P()).File);
        Assert.Equal(CoreFailure.NotFound, Assert.Throws<CoreException>(() => CoreCommand.Find(null, null, scratch.Root, "")).Failure);

        // What is named and not there is never passed over.
        Assert.Contains("nowhere", Assert.Throws<CoreException>(() => CoreCommand.Find(null, scratch.Path("nowhere"), B(), P())).Message, StringComparison.Ordinal);
        Assert.Equal(CoreFailure.NotStarted, Assert.Throws<CoreException>(() => new CoreClient(() => new CoreCommand(named), "test").Initialize(TestContext.Current.CancellationToken)).Failure);
    }

    [Fact]
    public void Arguments_arrive_as_they_are()
    {
        string[] arguments = ["a b", "", "q\"q", "back\\", "\\\"", "tab\tend\\\\", "é"];
        using Process process = Process.Start(new ProcessStartInfo("/usr/bin/printf", new CoreCommand("printf", ["%s|", .. arguments]).Line()) { RedirectStandardOutput = true })!;
        Assert.Equal(string.Join('|', arguments) + "|", process.StandardOutput.ReadToEnd());
    }

    private static CoreClient Client(CorePatience patience, params string[] arguments) =>
        new(() => new CoreCommand("/usr/bin/python3", [Repo.Path("tests", "outside", "fake_core.py"), .. arguments]), "test", null, patience);

    private static void AssertGone(int? id)
    {
        if (id is not { } process)
        {
            return;
        }

        try
        {
            using var left = Process.GetProcessById(process);
            Assert.True(left.WaitForExit(5000), "The core still runs.");
        }
        catch (ArgumentException)
        {
            // No such process: that is what is wanted.
        }
    }
}
