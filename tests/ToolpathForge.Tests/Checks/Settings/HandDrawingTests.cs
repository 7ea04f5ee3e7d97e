using CsCheck;
using ToolpathForge.Catalogue;
using ToolpathForge.Checks.Hand;
using ToolpathForge.Checks.Settings;
using ToolpathForge.Drawings;
using ToolpathForge.Geometry;
using ToolpathForge.Measures;
using ToolpathForge.Tests.Cli;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Checks.Settings;

/// <summary>The section of a hand router: what is drawn has the sizes that were asked about, and shows what the limits promise.</summary>
public class HandDrawingTests
{
    private static readonly Bit s_top = Catalogues.Shipped.Bits.Find("top-bearing-1/2-long")!;

    private static ScaledDrawing Draw(HandQuestion question) => HandDrawing.Of(HandSettings.Of(question), LengthUnit.Millimetre)!;

    // The tinted areas of a tone, in the order drawn; the drawing's own zero is that of the first section but for a shift.
    private static List<Box2> Areas(ScaledDrawing drawing, Tone tone) =>
        [.. drawing.Drawing.Elements.OfType<Fill>().Where(f => f.Tone == tone).Select(f => f.Rings.Aggregate(Box2.Empty, (box, r) => r.Curves.Aggregate(box, (b, c) => b.Including(c.Start))))];

    // The least and the greatest depth, each with a board, a pattern and a bearing: lengths as asked, contact and overcut as the limits say.
    [Fact]
    public void Board_pattern_and_bearing_are_to_scale_and_touch() => Gen.Select(Gen.Double[10, 26.5], Gen.Double[4.5, 12]).Sample((board, pattern) =>
    {
        DepthWindow window = HandSettings.Of(new HandQuestion(s_top, board) { Pattern = pattern }).Windows.Single().Window;
        if (!window.IsOpen)
        {
            return;
        }

        ScaledDrawing drawing = Draw(new HandQuestion(s_top, board) { Pattern = pattern });
        List<Box2> boards = Areas(drawing, Tone.Wood);
        List<Box2> patterns = Areas(drawing, Tone.Panel);
        List<Box2> cutters = [.. Areas(drawing, Tone.Paper).Where(b => Math.Abs(b.Width - s_top.Diameter) < 1e-9 && Math.Abs(b.Height - s_top.FluteLength) < 1e-9)];
        List<Box2> bearings = [.. Areas(drawing, Tone.Clamp).Where(b => Math.Abs(b.Height - s_top.Bearing!.Height) < 1e-9)];
        Assert.Equal((2, 2, 2, 2), (boards.Count, patterns.Count, cutters.Count, bearings.Count));
        for (int i = 0; i < 2; i++)
        {
            double depth = i == 0 ? window.Least : window.Most;
            Assert.Equal(board, boards[i].Height, 1e-9);
            Assert.Equal(pattern, patterns[i].Height, 1e-9);
            Assert.Equal(depth, patterns[i].MaxY - cutters[i].MinY, 1e-9);
            Assert.True(Math.Min(bearings[i].MaxY, patterns[i].MaxY) - Math.Max(bearings[i].MinY, patterns[i].MinY) >= 3 - 1e-6);
            Assert.True(boards[i].MinY - cutters[i].MinY >= 1 - 1e-6 && cutters[i].MaxY - boards[i].MaxY >= 1 - 1e-6);
            Assert.Equal(patterns[i].MaxX, bearings[i].MinX, 1e-9);
            Assert.Equal(boards[i].MaxX, cutters[i].MinX, 1e-9);
        }
    });

    [Fact]
    public void A_larger_guide_leaves_the_board_proud_of_the_pattern()
    {
        ScaledDrawing drawing = Draw(new HandQuestion(Catalogues.Shipped.Bits.Find("straight-1/2")!, 18) { Pattern = 12.7, Bushing = 20, BushingLength = 6 });
        Assert.Equal((20 - 12.7) / 2, Areas(drawing, Tone.Wood)[0].MaxX - Areas(drawing, Tone.Panel)[0].MaxX, 1e-9);
        Assert.Contains(Areas(drawing, Tone.Clamp), b => Math.Abs(Areas(drawing, Tone.Panel)[0].MaxY - b.MinY - 6) < 1e-9);
    }

    [Fact]
    public void Two_passes_are_two_pairs_of_sections_and_every_sum_is_told()
    {
        var question = new HandQuestion(Catalogues.Shipped.Bits.Find("top-bearing-1/2")!, 38) { Pattern = 12.7 };
        ScaledDrawing drawing = Draw(question);
        Assert.Equal(4, Areas(drawing, Tone.Wood).Count);
        string[] words = [.. drawing.Drawing.Elements.OfType<Text>().SelectMany(t => t.Value.Split('\n'))];
        foreach (NamedWindow pass in HandSettings.Of(question).Windows)
        {
            Assert.All(HandWords.Limits(pass.Window, LengthUnit.Millimetre), l =>
                Assert.Contains(words, w => w.StartsWith(l.Sum, StringComparison.Ordinal)));
        }
    }

    [Fact]
    public void A_depth_that_does_not_exist_is_drawn_as_what_is_needed_and_what_is_allowed()
    {
        ScaledDrawing drawing = Draw(new HandQuestion(s_top, 25.4) { Pattern = 3 });
        Assert.Contains(drawing.Drawing.Elements.OfType<Text>(), t => t.Value.EndsWith("no depth serves", StringComparison.Ordinal));
        Assert.Contains(drawing.Drawing.Elements.OfType<Text>(), t => t.Value.StartsWith("needed", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("hand-section.svg", "top-bearing-1/2-long", 25.4, 6.0, null)]
    [InlineData("hand-section-tip.svg", "tip-bearing-1/2-long", 38.1, 12.0, null)]
    [InlineData("hand-section-edge.svg", "top-bearing-1/2", 38.1, null, 16.0)]
    public void It_looks_as_it_was_looked_at(string file, string bit, double board, double? pattern, double? machined)
    {
        ScaledDrawing drawing = Draw(new HandQuestion(Catalogues.Shipped.Bits.Find(bit)!, board) { Pattern = pattern, Machined = machined });
        Golden.Same(file, SvgWriter.Write(drawing.Drawing, drawing.Scale));
    }

    [Fact]
    public void The_command_writes_it_replaces_its_own_and_leaves_what_is_yours()
    {
        using var scratch = new Scratch();
        string[] line = ["check", "--hand", "--bit", "top-bearing-1/2-long", "--pattern", "6mm", "--board", "25.4mm", "--drawing"];
        string file = scratch.Path("section.svg");
        Command.Ran ran = Command.Run([.. line, file]);
        Assert.Equal(0, ran.Code);
        Assert.EndsWith($"Drawn to scale: {file}\n", ran.Out, StringComparison.Ordinal);
        string first = File.ReadAllText(file);
        Assert.Equal(0, Command.Run([.. line, file, "--unit", "mm"]).Code);
        Assert.NotEqual(first, File.ReadAllText(file));
        string yours = scratch.Write("yours.svg", "<svg/>");
        Command.Ran refused = Command.Run([.. line, yours]);
        Assert.Equal(("<svg/>", "section.svg yours.svg"), (File.ReadAllText(yours), Scratch.Names(scratch.Root)));
        Assert.NotEqual(0, refused.Code);
        Assert.DoesNotContain("Drawn", refused.Out, StringComparison.Ordinal);
    }
}
