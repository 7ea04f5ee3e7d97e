using ToolpathForge.Catalogue;
using ToolpathForge.Checks;
using ToolpathForge.Cutting;
using ToolpathForge.Tests.Cli;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Checks;

/// <summary>The program's own figures are listed with what they rest on.</summary>
public class FiguresTests
{
    [Fact]
    public void Every_figure_has_an_id_of_its_own_and_a_basis()
    {
        Assert.Equal(Figures.All.Length, Figures.All.Select(f => f.Id).Distinct(StringComparer.Ordinal).Count());
        Assert.All(Figures.All, f =>
        {
            Assert.Matches("^[a-z]+(-[a-z]+)*$", f.Id);
            Assert.True(f.Value.Value > 0 && f.Source.Text.Length > 10, f.Id);
            Assert.NotEqual(SourceKind.User, f.Source.Kind);
        });
    }

    // What was asked about most: nobody publishes these, so none may call itself published.
    [Theory]
    [InlineData("tab-strength", SourceKind.Memory)]
    [InlineData("tab-safety", SourceKind.Judgment)]
    [InlineData("corner-risk", SourceKind.Judgment)]
    [InlineData("grain-along", SourceKind.Judgment)]
    [InlineData("grain-end", SourceKind.Judgment)]
    [InlineData("screw-apart", SourceKind.Judgment)]
    [InlineData("plunge-share", SourceKind.Practice)]
    [InlineData("step-over", SourceKind.Practice)]
    public void What_no_source_says_is_called_no_source(string id, SourceKind kind) => Assert.Equal(kind, Figures.All.Single(f => f.Id == id).Source.Kind);

    // The list tells what a job is cut with: a plate whose job says nothing of it.
    [Fact]
    public void The_list_tells_what_is_used()
    {
        double Of(string id) => Figures.All.Single(f => f.Id == id).Value.Value;
        CutSettings s = CutSettings.For(TestJobs.Pattern(TestJobs.Scoop()), TestJobs.Machine with { MaxPlunge = 5000 }, 2000);
        Assert.Equal((Of("allowance"), Of("panel-overcut"), Of("tab-length")), (s.Allowance, s.Overcut, s.TabLength));
        Assert.Equal(Of("plunge-share"), s.Plunge / s.Feed, 0.005);
        Assert.Equal((int)Math.Ceiling(2000 / Of("tab-spacing")), s.TabCount);
    }

    [Fact]
    public void The_command_lists_them_with_their_basis()
    {
        Command.Ran ran = Command.Run("list", "figures", "--unit", "mm");
        Assert.Equal((0, ""), (ran.Code, ran.Error));
        Assert.Matches("(?m)^Most between tabs +250 mm  common practice", ran.Out);
        Assert.Matches("(?m)^Corners are cut first +0\\.5  judgment", ran.Out);
    }
}
