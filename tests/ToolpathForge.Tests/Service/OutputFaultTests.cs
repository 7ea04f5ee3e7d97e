using System.Collections.Immutable;
using ToolpathForge.Findings;
using ToolpathForge.Service.Output;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Service;

/// <summary>Breaks the writing of an output folder off at every single step, in every starting state, and looks at what is left.</summary>
public class OutputFaultTests
{
    private const string Aside = ".out.toolpathforge-old";

    private static readonly ImmutableArray<OutputFile> Old =
        [OutputFile.Text("tail.nc", "G1 old\n"), OutputFile.Text("gone.nc", "G1 only before\n"), OutputFile.Text("drawings/tail.svg", "<old/>")];

    private static readonly ImmutableArray<OutputFile> New =
        [OutputFile.Text("tail.nc", "G1 new\n"), OutputFile.Text("drawings/tail.svg", "<new/>"), OutputFile.Text("drawings/deep/x.dxf", "0"), OutputFile.Text("empty.txt", "")];

    /// <summary>A process that has been killed does nothing any more: from the fatal step on, every further step is refused as well.</summary>
    private sealed class Killed : Exception;

    private sealed class Faults(int at, bool kill)
    {
        internal int Steps { get; private set; }

        internal Disk Disk => new((_, _) =>
        {
            int step = Steps++;
            if (kill ? step >= at : step == at)
            {
                throw kill ? new Killed() : new IOException("No space left on device");
            }
        }, forces: false);
    }

    public static TheoryData<string> States => ["absent", "parents absent", "empty", "ours", "ours, shown by a file manager", "set aside", "broken off", "swapped, old remains", "set aside, empty made anew"];

    private static string Arrange(Scratch scratch, string state)
    {
        string folder = state == "parents absent" ? scratch.Path("a", "b", "out") : scratch.Path("out");
        switch (state)
        {
            case "empty":
                Directory.CreateDirectory(folder);
                break;
            case "ours":
                Write(folder, Old);
                break;
            case "ours, shown by a file manager":
                Write(folder, Old);
                File.WriteAllText(Path.Combine(folder, ".DS_Store"), "view");
                break;
            case "set aside":
                Write(folder, Old);
                Directory.Move(folder, scratch.Path(Aside));
                break;
            case "set aside, empty made anew":
                Write(folder, Old);
                Directory.Move(folder, scratch.Path(Aside));
                Directory.CreateDirectory(folder);
                break;
            case "broken off":
                Write(folder, New);
                Directory.Move(folder, scratch.Path(".out.toolpathforge-new"));
                File.WriteAllText(scratch.Path(".out.toolpathforge-new", "tail.nc"), "G1 n");
                Write(folder, Old);
                break;
            case "swapped, old remains":
                Write(folder, [OutputFile.Text("gone.nc", "G1 half removed\n"), OutputFile.Text("x.nc", "")]);
                File.Delete(Path.Combine(folder, "x.nc"));
                Directory.Move(folder, scratch.Path(Aside));
                Write(folder, Old);
                break;
        }

        return folder;
    }

    private static void Write(string folder, ImmutableArray<OutputFile> files) =>
        Assert.Empty(OutputFolder.Write(folder, files, null, new Disk(forces: false), CancellationToken.None).Findings);

    private static SortedDictionary<string, string?> Expected(ImmutableArray<OutputFile> files)
    {
        using var scratch = new Scratch();
        Write(scratch.Path("out"), files);
        return Scratch.Snapshot(scratch.Path("out"));
    }

    private static void WithoutView(SortedDictionary<string, string?> state) => state.Remove(".DS_Store");

    [Theory]
    [MemberData(nameof(States))]
    public void Killed_at_any_step_it_leaves_old_or_new_or_the_old_one_beside(string state)
    {
        SortedDictionary<string, string?> whole = Expected(New);
        SortedDictionary<string, string?> before = Expected(Old);
        bool hadOld = state is not ("absent" or "parents absent" or "empty");
        int killed = 0;
        bool sawOld = false, sawAside = false, sawNew = false;
        for (int k = 0; ; k++)
        {
            using var scratch = new Scratch();
            string folder = Arrange(scratch, state);
            var faults = new Faults(k, kill: true);
            try
            {
                OutputFolder.Write(folder, New, null, faults.Disk, CancellationToken.None);
                break;
            }
            catch (Killed)
            {
                killed++;
            }

            SortedDictionary<string, string?>? now = Directory.Exists(folder) ? Scratch.Snapshot(folder) : null;
            if (now is not null)
            {
                WithoutView(now);
            }

            if (now is { Count: > 0 })
            {
                bool isNew = now.SequenceEqual(whole);
                Assert.True(isNew || (hadOld && now.SequenceEqual(before)), $"step {k} left neither old nor new: {string.Join(", ", now.Keys)}");
                sawNew |= isNew;
                sawOld |= !isNew;
            }
            else if (hadOld)
            {
                SortedDictionary<string, string?> beside = Scratch.Snapshot(scratch.Path(Aside));
                WithoutView(beside);
                Assert.Equal(before, beside);
                sawAside = true;
            }

            // The next run finds its way from whatever was left, and leaves nothing beside.
            Write(folder, New);
            SortedDictionary<string, string?> after = Scratch.Snapshot(folder);
            WithoutView(after);
            Assert.Equal(whole, after);
            Assert.Equal("out", Scratch.Names(Path.GetDirectoryName(folder)!));
        }

        Assert.True(killed > 15, $"only {killed} steps were broken off");
        Assert.True(sawNew);
        Assert.Equal(hadOld, sawOld && sawAside);
    }

    [Theory]
    [MemberData(nameof(States))]
    public void A_fault_of_the_disk_at_any_step_is_told_and_leaves_the_old_state(string state)
    {
        SortedDictionary<string, string?> whole = Expected(New);
        SortedDictionary<string, string?> before = Expected(Old);
        bool hadOld = state is not ("absent" or "parents absent" or "empty");
        bool told = false;
        for (int k = 0; ; k++)
        {
            using var scratch = new Scratch();
            string folder = Arrange(scratch, state);
            var faults = new Faults(k, kill: false);
            OutputResult result = OutputFolder.Write(folder, New, null, faults.Disk, CancellationToken.None);
            if (faults.Steps <= k)
            {
                Assert.Empty(result.Findings);
                break;
            }

            SortedDictionary<string, string?>? now = Directory.Exists(folder) ? Scratch.Snapshot(folder) : null;
            if (now is not null)
            {
                WithoutView(now);
            }

            if (result.Written)
            {
                Assert.Equal(whole, now);
            }
            else
            {
                told = true;
                Finding finding = Assert.Single(result.Findings);
                Assert.Equal("output-cannot-write", finding.Kind.Code);
                Assert.Contains(finding.Args, a => a.Text == "No space left on device");
                if (hadOld && now is { Count: > 0 })
                {
                    Assert.Equal(before, now);
                }
                else if (hadOld)
                {
                    Assert.Equal(before, Scratch.Snapshot(scratch.Path(Aside)));
                }
                else
                {
                    Assert.True(now is null or { Count: 0 });
                }
            }

            Write(folder, New);
            Assert.Equal("out", Scratch.Names(Path.GetDirectoryName(folder)!));
        }

        Assert.True(told);
    }

    [Fact]
    public void Killed_twice_in_a_row_at_any_two_steps_nothing_is_lost()
    {
        SortedDictionary<string, string?> whole = Expected(New);
        SortedDictionary<string, string?> before = Expected(Old);
        int pairs = 0;
        for (int first = 0; first < 60; first += 5)
        {
            for (int second = 0; second < 60; second += 4)
            {
                using var scratch = new Scratch();
                string folder = Arrange(scratch, "ours");
                foreach (int at in (int[])[first, second])
                {
                    try
                    {
                        OutputFolder.Write(folder, New, null, new Faults(at, kill: true).Disk, CancellationToken.None);
                    }
                    catch (Killed)
                    {
                        pairs++;
                    }
                }

                SortedDictionary<string, string?> now = Scratch.Snapshot(Directory.Exists(folder) ? folder : scratch.Path(Aside));
                Assert.True(now.SequenceEqual(whole) || now.SequenceEqual(before), $"steps {first} and {second}");
                Assert.Empty(OutputFolder.Prepare(folder, null, new Disk(forces: false)));
                Assert.True(Directory.Exists(folder));
                Assert.Equal("out", Scratch.Names(scratch.Root).Replace(".out.toolpathforge-lock ", "", StringComparison.Ordinal));
            }
        }

        Assert.True(pairs > 100);
    }

    [Fact]
    public void Cancelled_between_any_two_files_everything_is_as_it_was()
    {
        SortedDictionary<string, string?> before = Expected(Old);
        int cancelled = 0;
        for (int k = 0; k < 60; k++)
        {
            using var scratch = new Scratch();
            string folder = Arrange(scratch, "ours");
            using var source = new CancellationTokenSource();
            int step = 0;
            var disk = new Disk((_, _) =>
            {
                if (step++ == k)
                {
                    source.Cancel();
                }
            }, forces: false);
            try
            {
                OutputFolder.Write(folder, New, null, disk, source.Token);
            }
            catch (OperationCanceledException)
            {
                cancelled++;
                Assert.Equal(before, Scratch.Snapshot(folder));
                Assert.Equal("out", Scratch.Names(scratch.Root));
            }
        }

        Assert.True(cancelled > 10);
    }
}
