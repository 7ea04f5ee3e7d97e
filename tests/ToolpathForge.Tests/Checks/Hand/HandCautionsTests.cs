using System.Net;
using ToolpathForge.Catalogue;
using ToolpathForge.Checks.Hand;
using ToolpathForge.Checks.Settings;
using ToolpathForge.Measures;
using ToolpathForge.Planning;
using ToolpathForge.RunSheets;
using ToolpathForge.Tests.Checks.Jobs;

namespace ToolpathForge.Tests.Checks.Hand;

/// <summary>Cautions of the hand router: on the sheet wherever a hand router works, once a program, with the figure of the cutter below the board.</summary>
public class HandCautionsTests
{
    private static readonly Bit s_top = Catalogues.Shipped.Bits.Find("top-bearing-1/2-long")!;

    // From the section by hand: 33 below the base, less a pattern of 6 and a board of 25.4, leaves 1.6; along a cut edge there is no pattern to take off; below a
    // tip bearing the bearing hangs out as well.
    [Fact]
    public void The_bit_comes_out_by_what_is_left_of_its_depth()
    {
        HandSection Section(HandQuestion q) => HandSettings.Of(q).Windows[^1].Section!;
        Assert.Equal(33 - 6 - 25.4, Section(new(s_top, 25.4) { Pattern = 6 }).ComesOut(33), 9);
        Assert.Equal(40 - 38.1, Section(new(s_top, 38.1) { Machined = 16 }).ComesOut(40), 9);
        Bit tip = Catalogues.Shipped.Bits.Find("tip-bearing-1/2")!;
        Assert.Equal(20 - 18 + tip.Bearing!.Height + tip.Bearing.Gap, Section(new(tip, 18) { Pattern = 12.7 }).ComesOut(20), 9);
        Assert.Equal(0, Section(new(s_top, 25.4) { Pattern = 6 }).ComesOut(20));
    }

    [Theory]
    [InlineData("Unplug")]
    [InlineData("both hands")]
    [InlineData("below the board")]
    [InlineData("until it stands")]
    [InlineData("Fire")]
    [InlineData("Eyes, ears and lungs")]
    public void Each_hazard_has_its_caution(string word) =>
        Assert.Contains(HandCautions.Of(1.6, LengthUnit.Inch), c => c.Contains(word, StringComparison.Ordinal));

    [Fact]
    public void The_sheet_has_them_once_where_a_hand_router_works_and_nowhere_else()
    {
        const string Title = "By hand, every time";
        string Sheet(string text)
        {
            (Plan? plan, _) = SetUpJobs.Plan(text);
            return WebUtility.HtmlDecode(RunSheetPage.Write(plan!));
        }

        string with = Sheet(SetUpJobs.With(SetUpJobs.Plate, ("[[make]]", "[[make]]\nhand = { bit = \"top-bearing-3/4\" }")));
        Assert.Equal(2, with.Split(Title).Length);
        Assert.Contains("The bit comes out 1/8 in below the board, at most", with, StringComparison.Ordinal);
        Assert.DoesNotContain(Title, Sheet(SetUpJobs.Plate), StringComparison.Ordinal);
    }
}
