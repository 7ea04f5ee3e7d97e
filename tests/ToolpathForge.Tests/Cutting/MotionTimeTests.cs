using ToolpathForge.Cutting;
using static ToolpathForge.Cutting.MotionTime;

namespace ToolpathForge.Tests.Cutting;

public class MotionTimeTests
{
    private static readonly Point3 X = new(1, 0, 0);
    private static readonly Point3 Y = new(0, 1, 0);

    // Worked by hand from v = √(aδs/(1-s)) with a 500 mm/s², δ 0.01 mm.
    [Theory]
    [InlineData(45, 7.790)]
    [InlineData(90, 3.474)]
    [InlineData(120, 2.236)]
    public void Corner_speeds_follow_the_junction_formula(double turn, double expected)
    {
        double radians = turn * Math.PI / 180;
        Assert.Equal(expected, JointSpeed(X, new Point3(Math.Cos(radians), Math.Sin(radians), 0), 500), 3);
    }

    // The trapezoid D/v + v/a, else 2√(D/a): any textbook on motion control.
    [Fact]
    public void A_lone_straight_is_a_trapezoid_or_a_triangle()
    {
        Assert.Equal((100.0 / 50) + (50.0 / 500), Seconds([new Stretch(100, 50, double.PositiveInfinity, X, X)], 500), 9);
        Assert.Equal(2 * Math.Sqrt(2.0 / 500), Seconds([new Stretch(2, 50, double.PositiveInfinity, X, X)], 500), 9);
    }

    // A path worked by hand: 100, corner of 90°, 60, arc R72 quarter, 5, arc R2 quarter, 3, corner of 90°, 5.
    [Fact]
    public void The_worked_path_takes_its_worked_time()
    {
        double inf = double.PositiveInfinity;
        Stretch[] path =
        [
            new(100, 50, inf, X, X), new(60, 50, inf, Y, Y), new(72 * Math.PI / 2, 50, 72, Y, X), new(5, 50, inf, X, X),
            new(2 * Math.PI / 2, 50, 2, X, Y), new(3, 50, inf, Y, Y), new(5, 50, inf, X, X),
        ];
        Assert.Equal(6.10689, Seconds(path, 500), 5);
    }

    [Fact]
    public void A_square_of_100_takes_its_worked_time()
    {
        double inf = double.PositiveInfinity;
        var back = new Point3(-1, 0, 0);
        var down = new Point3(0, -1, 0);
        Assert.Equal(8.35976, Seconds([new(100, 50, inf, X, X), new(100, 50, inf, Y, Y), new(100, 50, inf, back, back), new(100, 50, inf, down, down)], 500), 5);
    }
}
