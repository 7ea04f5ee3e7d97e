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
        Assert.Contains("local code and a licensed designer decide", limits.InWords(ToolpathForge.Measures.LengthUnit.Inch)[^1], StringComparison.Ordinal);
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

    [Theory]
    [InlineData("14", "depth-at-bearing")]
    [InlineData("1", "bearing-cut-into depth-at-bearing overhang-thin")]
    [InlineData("26", "depth-at-bearing overhang-long")]
    public void What_the_code_speaks_of_is_told_and_stops_nothing(string bears, string codes)
    {
        Finding[] found = [.. Scoop(bears).Findings.Where(f => f.Place.Line == 11)];
        Assert.Equal(codes, string.Join(' ', found.Select(f => f.Kind.Code).Order(StringComparer.Ordinal)));
        Assert.DoesNotContain(found, f => f.Kind.Severity == Severity.Stop);
        Assert.All(found, f => Assert.Contains("local code and a licensed designer decide", f.Kind.Advice, StringComparison.Ordinal));
    }
}
