using ToolpathForge.Cutting;
using ToolpathForge.Geometry;
using ToolpathForge.Planning;
using ToolpathForge.Tests.Checks.Jobs;

namespace ToolpathForge.Tests.Cutting;

/// <summary>A tooth followed step by step: clockwise spindle seen from above, the bit fed along X with the finished edge below or above it.</summary>
public class ToothTests
{
    private const double Diameter = 12.7;
    private const double Engagement = 0.5;
    private const double Radius = Diameter / 2;

    /// <summary>Which way the tooth moves as it touches the finished edge, along the feed, and the chip's thickness where it enters and leaves the wood.</summary>
    private static (double AlongFeed, double Entering, double Leaving, double Degrees) Follow(bool partOnLeft)
    {
        const int Steps = 720_000;
        const double FeedPerTurn = 0.1;
        double edge = partOnLeft ? Radius : -Radius;
        double entering = -1;
        double leaving = 0;
        double alongFeed = 0;
        double nearest = double.PositiveInfinity;
        int inWood = 0;

        // The turn begins far from the wood: with the tooth on the side away from the edge.
        double start = partOnLeft ? -Math.PI / 2 : Math.PI / 2;
        for (int i = 0; i < Steps; i++)
        {
            Point2 now = At(i);
            Point2 motion = At(i + 1) - now;
            if (Math.Abs(now.Y - edge) < nearest)
            {
                (nearest, alongFeed) = (Math.Abs(now.Y - edge), motion.Unit().X);
            }

            // Wood: the allowance beside the finished edge, not yet swept by the circle of the turn before.
            bool allowance = partOnLeft ? now.Y > Radius - Engagement : now.Y < Engagement - Radius;
            double chip = now.DistanceTo(new Point2(Axis(i) - FeedPerTurn, 0)) - Radius;
            if (allowance && chip > 1e-7)
            {
                entering = entering < 0 ? chip : entering;
                leaving = chip;
                inWood++;
            }
        }

        return (alongFeed, entering, leaving, inWood * 360.0 / Steps);

        double Axis(int i) => FeedPerTurn * i / Steps;

        Point2 At(int i)
        {
            double angle = start - (2 * Math.PI * i / Steps);
            return new Point2(Axis(i) + (Radius * Math.Cos(angle)), Radius * Math.Sin(angle));
        }
    }

    // cos φ = 1 - 2 ae/D: D 12.7 and ae 0.5 engage 22.9° (any machining handbook).
    [Fact]
    public void Part_on_the_left_is_conventional_the_tooth_runs_with_the_feed_and_starts_at_nothing()
    {
        (double along, double entering, double leaving, double degrees) = Follow(partOnLeft: true);
        Assert.Equal(1, along, 3);
        Assert.True(entering < leaving / 50, $"{entering} to {leaving}");
        Assert.Equal(22.9, degrees, 0.6);
    }

    [Fact]
    public void Part_on_the_right_is_climb_the_tooth_runs_against_the_feed_and_ends_with_nothing()
    {
        (double along, double entering, double leaving, double degrees) = Follow(partOnLeft: false);
        Assert.Equal(-1, along, 3);
        Assert.True(leaving < entering / 50, $"{entering} to {leaving}");
        Assert.Equal(22.9, degrees, 0.6);
    }

    // What a plan calls climb and conventional is what the tooth does along its moves: the side of the travel that the piece is on is measured, the tooth followed there.
    [Theory]
    [InlineData("climb", -1)]
    [InlineData("conventional", 1)]
    [InlineData("by-grain", 1)]
    public void A_finish_goes_round_as_the_tooth_says(string direction, int alongFeed)
    {
        Plan plan = SetUpJobs.Plan(SetUpJobs.With(SetUpJobs.Board, ("overcut = \"0.4 mm\"", $"overcut = \"0.4 mm\", direction = \"{direction}\""))).Plan!;
        CutPlan cut = plan.Programs[0].Cut;
        Contour edge = ArcFit.Fit(cut.Clamping.Pieces[0].Exact, 0.001).Contour;
        Move[] moves = [.. cut.Path.Moves];
        int followed = 0;
        for (int i = 1; i < moves.Length; i++)
        {
            Move move = moves[i];

            // A corner that is cut first goes the other way, as its own test says.
            if (move.Purpose == Purpose.Finish && move.End.Flat != moves[i - 1].End.Flat && cut.Path.Runs[move.Run].Name.StartsWith("Finish", StringComparison.Ordinal))
            {
                var way = new Segment(moves[i - 1].End.Flat, move.End.Flat, move.Bulge);
                Point2 off = way.DirectionAt(0.5).Right * (cut.Path.Bit.Diameter / 2);
                bool left = edge.Distance(way.PointAt(0.5) - off) < 0.05;
                bool right = edge.Distance(way.PointAt(0.5) + off) < 0.05;
                if (left != right)
                {
                    followed++;
                    Assert.Equal(alongFeed, Follow(left).AlongFeed, 3);
                    Assert.Equal(left, !cut.Path.Runs[move.Run].Climb);
                }
            }
        }

        Assert.True(followed > 3);
    }

    // h = 2·fz·√(x(1 - x)), x = ae/D: the thickest chip of the light cut.
    [Fact]
    public void The_thickest_chip_is_the_one_that_the_formula_gives()
    {
        (_, double entering, double leaving, _) = Follow(partOnLeft: true);
        Assert.Equal(SideLoad.ThickestChip(0.1, Engagement, Diameter), Math.Max(entering, leaving), 0.001);
    }
}
