using ToolpathForge.Cli;

namespace ToolpathForge.Tests.Cli;

public class ArgumentTests
{
    [Theory]
    [InlineData("chekc porch.toml", "There is no command 'chekc'.", "Did you mean check?")]
    [InlineData("Cut porch.toml", "There is no command 'Cut'.", "Did you mean cut?")]
    [InlineData("frobnicate", "There is no command 'frobnicate'.", "toolpathforge --help shows the commands.")]
    [InlineData("help prov", "There is no command 'prov'.", "Did you mean prove?")]
    [InlineData("", "No command is given.", "toolpathforge --help shows them.")]
    [InlineData("--json check porch.toml", "--json stands before the command.", "Write it after the command and its file.")]
    [InlineData("--verison", "There is no option '--verison'.", "Did you mean --version?")]
    [InlineData("--json", "--json stands before the command.", "Write it after the command and its file.")]
    [InlineData("check porch.toml --json=yes", "--json takes no value.", "Write it alone.")]
    [InlineData("cut -- a.toml b.toml", "cut takes one name; 'b.toml' is one too many.", "A name with spaces goes in quotes.")]
    [InlineData("check porch.toml --jsno", "check has no option '--jsno'.", "Did you mean --json?")]
    [InlineData("check porch.toml --out x", "check has no option '--out'.", "toolpathforge check --help shows them.")]
    [InlineData("cut porch.toml --ot=x", "cut has no option '--ot'.", "Did you mean --out?")]
    [InlineData("check", "check needs the name of a job file.", "Write toolpathforge check porch.toml.")]
    [InlineData("cut --out out", "cut needs the name of a job file.", "Write toolpathforge cut porch.toml.")]
    [InlineData("new", "new needs the name of the file to write.", "Write toolpathforge new porch.toml.")]
    [InlineData("check a.toml b.toml", "check takes one name; 'b.toml' is one too many.", "A name with spaces goes in quotes.")]
    [InlineData("cut porch.toml --out", "--out needs a value.", "Write --out out.")]
    [InlineData("cut porch.toml --out a --out b", "--out is given 2 times.", "Give it once.")]
    [InlineData("new porch.toml --unit ft", "--unit knows in and mm, not 'ft'.", "Write --unit in or --unit mm.")]
    [InlineData("prove tail.nc", "prove needs to know the job that the program is meant for.", "Write toolpathforge prove tail.nc --job porch.toml.")]
    [InlineData("prove --job porch.toml", "prove needs the name of a program.", "Write toolpathforge prove out/rafter-tail.nc --job porch.toml.")]
    [InlineData("list", "list needs to know what to show.", "Write toolpathforge list, then one of lumber, panels, bits, materials, machines, dialects, shapes, figures.")]
    [InlineData("list bit", "There is no list of 'bit'.", "Did you mean bits?")]
    [InlineData("list lumbre", "There is no list of 'lumbre'.", "Did you mean lumber?")]
    [InlineData("list wood", "There is no list of 'wood'.", "Write toolpathforge list, then one of lumber, panels, bits, materials, machines, dialects, shapes, figures.")]
    [InlineData("list bits --kind upcut", "There are no bits of kind 'upcut'.", "Did you mean up-cut?")]
    [InlineData("list materials --kind metal", "There are no materials of kind 'metal'.", "Use one of softwood, hardwood, panel.")]
    [InlineData("list lumber --diameter 1/4", "list lumber cannot be filtered by --diameter.", "Use --thickness or --width, or leave it out.")]
    [InlineData("list shapes --width 4", "list shapes cannot be filtered by --width.", "Leave it out.")]
    public void What_is_mistyped_is_told_with_what_to_type_instead(string line, string says, string advice)
    {
        Command.Ran ran = Command.Run(line.Split(' ', StringSplitOptions.RemoveEmptyEntries));
        Assert.Equal(2, ran.Code);
        Assert.Equal("", ran.Out);
        Assert.Equal($"problem: {says}\n    {advice}\n", ran.Error);
    }

    [Theory]
    [InlineData("cut porch.toml --out=made --json", "porch.toml", "made", true, false)]
    [InlineData("cut --timings porch.toml -o made", "porch.toml", "made", false, true)]
    [InlineData("cut porch.toml", "porch.toml", "out", false, false)]
    [InlineData("cut -- -odd.toml", "-odd.toml", "out", false, false)]
    [InlineData("cut @porch.toml", "@porch.toml", "out", false, false)]
    public void Cut_understands_its_options_in_any_order(string line, string job, string folder, bool json, bool timings) =>
        Assert.Equal(new Request.Cut(job, folder, false, json, timings), Arguments.Read(line.Split(' ')));

    [Fact]
    public void The_other_commands_understand_theirs()
    {
        Assert.Equal(new Request.New("a b.toml", "mm"), Arguments.Read(["new", "a b.toml", "--unit", "mm"]));
        Assert.Equal(new Request.Check("p.toml", true, true), Arguments.Read(["check", "p.toml", "--timings", "--json"]));
        Assert.Equal(new Request.Draw("p.toml", "made", true, "1/2", true, false, true), Arguments.Read(["draw", "--step", "1/2", "--family", "p.toml", "--out", "made", "--timings", "--replace"]));
        Assert.Equal(new Request.Draw("p.toml", "drawings", false, null, false, true, false), Arguments.Read(["draw", "p.toml", "--json"]));
        Assert.Equal(
            new Request.Trace("a.dxf", new ToolpathForge.Service.TraceOptions("edge", "cm", "0.2", "-3mm", "o.dxf", "1/4in"), true, false),
            Arguments.Read(["trace", "a.dxf", "--layer", "edge", "--unit", "cm", "--gap", "0.2", "--offset", "-3mm", "--dxf", "o.dxf", "--bit", "1/4in", "--json"]));
        Assert.IsType<Request.Misread>(Arguments.Read(["trace", "a.dxf", "--offset", "3mm"]));
        Assert.IsType<Request.Misread>(Arguments.Read(["trace", "a.dxf", "--dxf", "o.dxf"]));
        Assert.Equal(new Request.Prove("t.nc", "p.toml", "tail", false, false), Arguments.Read(["prove", "t.nc", "--make", "tail", "--job", "p.toml"]));
        Assert.Equal(new Request.List("bits", "p.toml", "mm", ToolpathForge.Service.ListFilter.None, true), Arguments.Read(["list", "bits", "--job", "p.toml", "--unit", "mm", "--json"]));
        Assert.IsType<Request.ShowVersion>(Arguments.Read(["--version"]));
    }

    [Theory]
    [InlineData("--help", null)]
    [InlineData("-h", null)]
    [InlineData("-?", null)]
    [InlineData("help", null)]
    [InlineData("help cut", "cut")]
    [InlineData("cut --help", "cut")]
    [InlineData("prove -h tail.nc", "prove")]
    public void Help_is_given_wherever_it_is_asked_for(string line, string? about)
    {
        Assert.Equal(new Request.ShowHelp(about), Arguments.Read(line.Split(' ')));
        Command.Ran ran = Command.Run(line.Split(' '));
        Assert.Equal((0, ""), (ran.Code, ran.Error));
        Assert.Equal(Help.Of(about), ran.Out);
    }

    [Fact]
    public void Help_names_every_command_and_every_option_and_fits_the_screen()
    {
        foreach (string command in (string[])["new", "check", "cut", "draw", "trace", "prove", "list"])
        {
            Assert.Contains($"toolpathforge {command} ", Help.Overview, StringComparison.Ordinal);
            string text = Help.Of(command);
            Assert.StartsWith($"toolpathforge {command} ", text, StringComparison.Ordinal);
            foreach (string option in Arguments.OptionsOf(command))
            {
                Assert.Contains($"\n  {option} ", text, StringComparison.Ordinal);
            }

            Assert.All(text.Split('\n'), l => Assert.True(l.Length <= 120, l));
        }

        Assert.All(Help.Overview.Split('\n'), l => Assert.True(l.Length <= 120, l));
    }

    [Fact]
    public void The_version_is_told()
    {
        Command.Ran ran = Command.Run("--version");
        Assert.Equal(0, ran.Code);
        Assert.Matches(@"^toolpathforge \d+\.\d+\.\d+( \(commit [0-9a-f]{7}\))?\n$", ran.Out);
    }

    [Theory]
    [InlineData("0.1.0+0123456789abcdef0123456789abcdef01234567", "0.1.0 (commit 0123456)")]
    [InlineData("0.1.0", "0.1.0")]
    [InlineData("0.1.0+abc", "0.1.0 (commit abc)")]
    [InlineData(null, "unknown")]
    public void The_version_names_the_commit_it_was_built_from(string? informational, string expected) =>
        Assert.Equal(expected, CommandLine.Version(informational));
}
