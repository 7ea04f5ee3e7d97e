using CsCheck;
using ToolpathForge.Catalogue;
using ToolpathForge.Checks.Hand;
using ToolpathForge.Measures;

namespace ToolpathForge.Tests.Checks.Hand;

/// <summary>Depths of the hand router: worked examples, and against sections put together as polygons.</summary>
public class DepthWindowTests
{
    private static HandSetUp SetUp(double cutter, double height, double pattern, double board, double gap = 0, double reach = double.PositiveInfinity) =>
        new(cutter, new Bearing(12.7, height, gap), pattern, board, reach, HandMargins.Usual(height));

    // Worked from max(L + c, t + s + o) ≤ p ≤ L + t - m with c 3, m 1, o 1.
    [Theory]
    [InlineData(25.4, 12.7, 18, 31.70, 37.10)]
    [InlineData(25.4, 6.35, 18, 28.40, 30.75)]
    [InlineData(28.6, 6.0, 25.4, 32.4, 33.6)]
    [InlineData(41.3, 6.35, 38.1, 45.45, 46.65)]
    public void A_bearing_on_the_shank_has_the_depths_worked_by_hand(double cutter, double pattern, double board, double least, double most)
    {
        DepthWindow window = TopBearing.OnePass(SetUp(cutter, 4.76, pattern, board));
        Assert.True(window.IsOpen);
        Assert.Equal(least, window.Least, 9);
        Assert.Equal(most, window.Most, 9);
    }

    [Fact]
    public void A_pattern_too_thin_for_contact_and_margin_has_none()
    {
        HandSetUp thin = SetUp(25.4, 4.76, 3.2, 18);
        Assert.False(TopBearing.OnePass(thin).IsOpen);
        Assert.Equal(4, TopBearing.LeastPattern(thin), 9);
        Assert.Null(TopBearing.InTwo(thin));
        Assert.True(TopBearing.OnePass(thin with { Pattern = 4 }).IsOpen);
    }

    [Fact]
    public void A_cutter_too_short_for_one_pass_takes_two()
    {
        HandSetUp shortCutter = SetUp(19.05, 4.76, 12.7, 32);
        Assert.False(TopBearing.OnePass(shortCutter).IsOpen);
        Assert.Equal(34, TopBearing.LeastCutter(shortCutter), 9);
        Assert.Equal(35.1, TopBearing.MostBoardInTwo(shortCutter), 9);
        TwoPasses two = TopBearing.InTwo(shortCutter)!;
        Assert.Equal((27.65, 30.75), (Math.Round(two.First.Least, 9), Math.Round(two.First.Most, 9)));
        Assert.Equal(16.5, two.Edge, 9);
        Assert.Equal((33.0, 34.55), (Math.Round(two.Second.Least, 9), Math.Round(two.Second.Most, 9)));
        Assert.NotNull(TopBearing.InTwo(shortCutter with { Board = 35.1 }));
        Assert.Null(TopBearing.InTwo(shortCutter with { Board = 35.2 }));
    }

    // A 2x6 (38.1) machined 16 deep, then by hand with a cutter of 25.4.
    [Fact]
    public void A_machined_edge_is_followed_by_hand()
    {
        HandSetUp hand = SetUp(25.4, 4.76, 0, 38.1);
        DepthWindow window = TopBearing.AlongEdge(hand, 16);
        Assert.Equal((39.1, 40.4), (Math.Round(window.Least, 9), Math.Round(window.Most, 9)));
        Assert.Equal(14.7, TopBearing.LeastEdge(hand), 9);
        Assert.True(TopBearing.AlongEdge(hand, 14.7).IsOpen);
        Assert.False(TopBearing.AlongEdge(hand, 14.6).IsOpen);
    }

    [Fact]
    public void A_bearing_at_the_tip_has_the_depths_worked_by_hand()
    {
        DepthWindow window = TipBearing.OnePass(SetUp(25.4, 4.76, 12.7, 18, 0.3), mayHang: false);
        Assert.Equal((19.0, 24.4), (Math.Round(window.Least, 9), Math.Round(window.Most, 9)));
        Assert.False(TipBearing.OnePass(SetUp(25.4, 4.76, 12.7, 25, 0.3), mayHang: false).IsOpen);
    }

    [Fact]
    public void The_limits_that_decide_are_told_with_their_sums()
    {
        DepthWindow window = TopBearing.OnePass(SetUp(28.6, 4.76, 6, 25.4));
        Assert.Equal("pattern 6 mm + board 25.4 mm + overcut 1 mm = 32.4 mm", window.Lower.InWords(LengthUnit.Millimetre));
        Assert.Equal("cutter 28.6 mm + pattern 6 mm - margin 1 mm = 33.6 mm", window.Upper.InWords(LengthUnit.Millimetre));
        Assert.Equal("board 1 in + overcut 0.0394 in = 1.0394 in", new Limit("", Sense.AtLeast, [new("board", 25.4), new("overcut", 1)]).InWords(LengthUnit.Inch));
        Assert.Equal(33, window.Middle, 9);
    }

    [Fact]
    public void The_routers_reach_narrows_the_depths_and_is_told()
    {
        DepthWindow window = TopBearing.OnePass(SetUp(28.6, 4.76, 6, 25.4, reach: 33));
        Assert.Equal((32.4, 33.0), (Math.Round(window.Least, 9), window.Most));
        Assert.Equal("router's reach 33 mm", window.Upper.InWords(LengthUnit.Millimetre));
        Assert.False(TopBearing.OnePass(SetUp(28.6, 4.76, 6, 25.4, reach: 32)).IsOpen);
    }

    // A depth may be one of the window's own ends, where the section holds to a rounding only: 1e-6 is far above what lengths of 100 mm round to, and far
    // below the hundredth of a millimetre that the scan steps by.
    private const double Slack = 1e-6;

    private static readonly Gen<HandSetUp> Any =
        from cutter in Gen.Double[10, 60]
        from height in Gen.Double[2, 8]
        from gap in Gen.OneOf(Gen.Const(0.0), Gen.Double[0.1, 2])
        from pattern in Gen.Double[2, 20]
        from board in Gen.Double[8, 60]
        from contact in Gen.Double[0.3, 1]
        from margin in Gen.Double[0.2, 2]
        from overcut in Gen.Double[0.2, 2]
        select new HandSetUp(cutter, new Bearing(12.7, height, gap), pattern, board, double.PositiveInfinity, new HandMargins(contact * height, margin, overcut));

    [Fact]
    public void Depths_with_a_pattern_on_top_are_those_that_the_section_allows() => Any.Sample(s => Agrees(
        TopBearing.OnePass(s),
        p =>
        {
            Section section = Section.PatternOnTop(s, p);
            return section.Contact >= s.Margins.Contact - Slack && section.Below >= s.Margins.Overcut - Slack
                && section.Above(section.BoardTop) >= s.Margins.Margin - Slack;
        }));

    [Fact]
    public void Depths_along_an_edge_are_those_that_the_section_allows() => Gen.Select(Any, Gen.Double[3, 40]).Sample((s, share) =>
    {
        double edge = Math.Min(share, s.Board);
        Agrees(
            TopBearing.AlongEdge(s, edge),
            p =>
            {
                Section section = Section.EdgeOnTop(s, edge, p);
                return section.Contact >= s.Margins.Contact - Slack && section.Below >= s.Margins.Overcut - Slack
                    && section.Above(section.GuideBottom) >= s.Margins.Margin - Slack;
            });
    });

    [Fact]
    public void Depths_with_a_pattern_below_are_those_that_the_section_allows() => Gen.Select(Any, Gen.Bool).Sample((s, hangs) => Agrees(
        TipBearing.OnePass(s, hangs),
        p =>
        {
            Section section = Section.PatternBelow(s, p);
            return section.Contact >= s.Margins.Contact - Slack && section.Below >= s.Margins.Overcut - Slack
                && section.Above(section.BoardTop) >= s.Margins.Margin - Slack
                && (hangs || section.BearingBottom >= section.GuideBottom + s.Margins.Margin - Slack);
        }));

    // Two passes, each put together as a section: the first leaves the edge that the second runs on, and together they leave nothing standing.
    [Fact]
    public void Two_passes_leave_nothing_standing_and_are_found_wherever_there_are_any() => Any.Sample(s =>
    {
        TwoPasses? two = TopBearing.InTwo(s);
        bool any = s.Pattern >= TopBearing.LeastPattern(s) && s.Board <= TopBearing.MostBoardInTwo(s) + 1e-9
            && s.Cutter - s.Margins.Margin >= TopBearing.LeastEdge(s) - 1e-9;
        Assert.Equal(any, two is not null);
        if (two is null)
        {
            return;
        }

        Section first = Section.PatternOnTop(s, two.FirstDepth);
        Assert.True(first.Contact >= s.Margins.Contact - Slack && first.Above(first.BoardTop) >= s.Margins.Margin - Slack);
        foreach (double p in (double[])[two.Second.Least, two.Second.Middle, two.Second.Most])
        {
            Section second = Section.EdgeOnTop(s, two.FirstDepth - s.Pattern, p);
            Assert.True(second.Contact >= s.Margins.Contact - Slack && second.Below >= s.Margins.Overcut - Slack);
            Assert.True(second.Above(second.GuideBottom) >= s.Margins.Margin - Slack);
        }
    });

    /// <summary>
    /// Scans depths over all that a router has, and by a hundredth of a millimetre round both ends: every one inside the window is allowed by the section,
    /// every one outside is not. A depth that falls on a limit, where both only round, decides nothing.
    /// </summary>
    private static void Agrees(DepthWindow window, Func<double, bool> allowed)
    {
        IEnumerable<double> wide = Enumerable.Range(0, 350).Select(i => 0.5 + (0.37 * i));
        IEnumerable<double> near = from end in (double[])[window.Least, window.Most] from i in Enumerable.Range(-20, 41) select end + ((i + 0.5) * 0.01);
        foreach (double p in wide.Concat(near).Where(p => window.Limits.All(l => Math.Abs(l.Value - p) > 2 * Slack)))
        {
            Assert.Equal(window.Holds(p), allowed(p));
        }

        if (window.IsOpen)
        {
            Assert.True(allowed(window.Least) && allowed(window.Middle) && allowed(window.Most));
        }
    }
}
