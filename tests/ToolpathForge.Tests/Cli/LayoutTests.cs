using ToolpathForge.Cli;
using ToolpathForge.Service;

namespace ToolpathForge.Tests.Cli;

public class LayoutTests
{
    private static string Remarks(bool colour, params Remark[] remarks)
    {
        using var text = new StringWriter { NewLine = "\n" };
        Layout.Remarks([.. remarks], text, colour);
        return text.ToString();
    }

    [Fact]
    public void Remarks_come_heaviest_first_and_are_counted()
    {
        string text = Remarks(
            false,
            new Remark(Weight.Note, "n", "", "Good to know.", ""),
            new Remark(Weight.Problem, "p", "porch.toml:3:9", "It is wrong.", "Put it right."),
            new Remark(Weight.Warning, "w", "porch.toml:7, tail", "Mind the grain.", "Turn it."),
            new Remark(Weight.Problem, "p", "", "Again.", "Do."));
        Assert.Equal(
            "problem: porch.toml:3:9: It is wrong.\n    Put it right.\nproblem: Again.\n    Do.\nwarning: porch.toml:7, tail: Mind the grain.\n    Turn it.\n"
            + "note: Good to know.\n2 problems, 1 warning, 1 note.\n",
            text);
    }

    [Fact]
    public void Nothing_found_prints_nothing() => Assert.Equal("", Remarks(false));

    [Fact]
    public void Colour_is_put_on_the_word_alone_and_taken_off_again() =>
        Assert.Equal("\e[1;31mproblem\e[0m: Wrong.\n1 problem.\n", Remarks(true, new Remark(Weight.Problem, "p", "", "Wrong.", "")));

    [Fact]
    public void Columns_line_up_and_no_line_ends_in_spaces()
    {
        using var text = new StringWriter { NewLine = "\n" };
        Layout.Sections(
            [
                Section.Of("First."),
                new Section(["Then:"], [new Column("word"), new Column("size", true), new Column("source")], [["a", "1", ""], ["longer", "12.5", "x"]]),
            ],
            text);
        Assert.Equal("First.\n\nThen:\nword    size  source\na          1\nlonger  12.5  x\n", text.ToString());
    }
}
