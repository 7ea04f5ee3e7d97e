using CsCheck;
using ToolpathForge.Findings;
using ToolpathForge.Pieces;
using ToolpathForge.Planning;
using ToolpathForge.Shapes;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Checks.Jobs;

/// <summary>Depth left where a board bears, and the residential code's figures (IRC R502.8.1, R802.7.1, R802.7.1.1) as published.</summary>
public class CarryingDepthTests
{
    private static (Profile Profile, Finding[] Findings) Scoop(string bears)
    {
        (Plan? plan, Finding[] findings) = SetUpJobs.Plan(SetUpJobs.With(SetUpJobs.Plate, ("board = \"2x8\"", $"board = \"2x8\"\nbears-at = \"{bears}\""), (", end-cut = \"10 deg\", long-side = \"top\"", "")));
        return (plan!.Pieces.Single().Profile, findings);
    }

    // A 2x10 of 9 1/4 in: 1.54 in deep, 3.08 in long, 2.31 in at an end.
    [Fact]
    public void The_figures_for_a_2x10_are_those_of_the_code()
    {
        var limits = new CodeLimits(9.25 * 25.4);
        Assert.Equal((1.54, 3.08, 2.31), (Math.Round(limits.Notch / 25.4, 2), Math.Round(limits.NotchLength / 25.4, 2), Math.Round(limits.EndNotch / 25.4, 2)));
        Assert.Contains("local code and a licensed designer decide", CodeLimits.InWords(ToolpathForge.Measures.LengthUnit.Inch)[^1], StringComparison.Ordinal);
    }

    // A scoop of 7 1/2 x 4 1/4 from the lower edge: x²/a² + y²/b² = 1 about its corner, so b √(1 - ((a - x)/a)²) or its mirror is cut away; both ends are sure.
    [Fact]
    public void Depth_left_is_that_of_the_curve_itself()
    {
        Profile profile = Scoop("12").Profile;
        (double a, double b, double w) = (7.5 * 25.4, 4.25 * 25.4, 7.25 * 25.4);
        Assert.Equal(w, DepthLeft.At(profile, a + 0.5), 1e-6);
        Assert.Equal(w, DepthLeft.At(profile, 5000), 1e-9);
        Gen.Double[0.01, 0.99].Sample(share =>
        {
            double x = share * a;
            double left = DepthLeft.At(profile, x);
            double cut = w - left;
            double run = a - x;

            // On the ellipse whose centre is where the profile's scoop has it: one of the two quarters, decided by the profile's own nose.
            double centredAtTip = b * Math.Sqrt(1 - (x * x / (a * a)));
            double centredAtStart = b * (1 - Math.Sqrt(1 - (run * run / (a * a))));
            Assert.True(Math.Abs(cut - centredAtTip) < 1e-6 || Math.Abs(cut - centredAtStart) < 1e-6, $"{cut} at {x}");
        });
    }

    // The scoop leaves 7 1/4 - 4 1/4 = 3 in at its nose, under the 3 1/2 in of R802.7.1.1, wherever the board bears; at 1 in it takes the seat too.
    [Theory]
    [InlineData("14", "depth-at-bearing overhang-thin")]
    [InlineData("7 1/2", "depth-at-bearing overhang-thin")]
    [InlineData("7", "depth-at-bearing overhang-thin seat-cut-away")]
    [InlineData("1", "bearing-cut-into depth-at-bearing overhang-thin seat-cut-away")]
    [InlineData("26", "depth-at-bearing overhang-long overhang-thin")]
    public void What_the_code_speaks_of_is_told_and_stops_nothing(string bears, string codes)
    {
        Finding[] found = [.. Scoop(bears).Findings.Where(f => f.Place.Line == 11)];
        Assert.Equal(codes, string.Join(' ', found.Select(f => f.Kind.Code).Order(StringComparer.Ordinal)));
        Assert.DoesNotContain(found, f => f.Kind.Severity == Severity.Stop);
        Assert.All(found, f => Assert.Contains("local code and a licensed designer decide", f.Kind.Advice, StringComparison.Ordinal));
    }

    // By construction: a notch with 1 in of wood left, between 3 and 5 in from the tip, of a board that is 3 in deep at its nose. The depth at the bearing and at
    // the nose alone would not find it.
    [Fact]
    public void The_least_depth_is_found_wherever_it_is()
    {
        const string Notched = """
            shape = { kind = "drawn", run = "8", depth = "4 1/4", curve = [
                { kind = "line", x = 3, y = 0.75 }, { kind = "line", x = 3, y = 6.25 }, { kind = "line", x = 5, y = 6.25 }, { kind = "line", x = 5, y = 2.25 }, { kind = "line", x = 8, y = 4.25 } ] }
            """;
        string text = SetUpJobs.With(
            SetUpJobs.Plate,
            ("board = \"2x8\"", "board = \"2x8\"\nbears-at = \"14\""),
            ("shape = { kind = \"quarter-ellipse\", form = \"scoop\", run = \"7 1/2\", depth = \"4 1/4\", end-cut = \"10 deg\", long-side = \"top\" }", Notched));
        (Plan? plan, _) = SetUpJobs.Plan(text);
        Profile profile = plan!.Pieces.Single().Profile;
        (double depth, double at) = DepthLeft.Least(profile, 14 * 25.4);
        Assert.Equal(1 * 25.4, depth, 1e-3);
        Assert.InRange(at, 3 * 25.4, 5 * 25.4);

        // Up to a bearing nearer than the notch, the nose is least.
        (depth, at) = DepthLeft.Least(profile, 1 * 25.4);
        Assert.Equal(3 * 25.4, depth, 1e-3);
        Assert.Equal(0, at, 1e-3);
        Assert.Equal(8 * 25.4, DepthLeft.CutUpTo(profile), 1e-3);
    }

    // Against the definition: nothing that is looked at is less, for curves of every kind and leaning end cuts.
    [Fact]
    public void Nothing_between_end_cut_and_bearing_is_less_than_the_least()
    {
        string[] shapes =
        [
            "kind = \"quarter-ellipse\", form = \"scoop\", run = \"7 1/2\", depth = \"4 1/4\", end-cut = \"10 deg\", long-side = \"top\"",
            "kind = \"quarter-ellipse\", form = \"belly\", run = \"7 1/2\", depth = \"4 1/4\", end-cut = \"10 deg\", long-side = \"bottom\"",
            "kind = \"scallop\", form = \"scoop\", run = \"6\", depth = \"4\"",
            "kind = \"ogee\", form = \"scoop\", run = \"7\", depth = \"4\"",
        ];
        foreach (string shape in shapes)
        {
            (Plan? plan, Finding[] findings) = SetUpJobs.Plan(SetUpJobs.With(
                SetUpJobs.Plate, ("kind = \"quarter-ellipse\", form = \"scoop\", run = \"7 1/2\", depth = \"4 1/4\", end-cut = \"10 deg\", long-side = \"top\"", shape)));
            Assert.True(plan is { Pieces.Length: 1 }, shape + string.Join('\n', findings.Select(f => f.Kind.Code)));
            Profile profile = plan!.Pieces.Single().Profile;
            (double least, double at) = DepthLeft.Least(profile, double.PositiveInfinity);
            Assert.Equal(least, DepthLeft.At(profile, at), 1e-9);
            double from = Math.Max(profile.Nose.X, profile.End.X) + 1e-5;
            Gen.Double[from, DepthLeft.CutUpTo(profile) + 20].Sample(x => Assert.True(DepthLeft.At(profile, x) >= least - 1e-4, $"{shape}: {DepthLeft.At(profile, x)} at {x}, {least} at {at}"));
        }
    }
}
