using System.Collections.Immutable;
using System.Globalization;
using ToolpathForge.Exchange.Reading;
using ToolpathForge.Geometry;

namespace ToolpathForge.Tests.Exchange.Reading;

/// <summary>Path data, command by command.</summary>
public class SvgPathTests
{
    /// <summary>A path, and the ends of its curves after the first point: x,y with blanks between; a letter before them is the kind of curve.</summary>
    [Theory]
    [InlineData("M10 10 L20 30", "l20,30")]
    [InlineData("M10,10 20,30 40,50", "l20,30 l40,50")]
    [InlineData("m10 10 l5-5 5 5", "l15,5 l20,10")]
    [InlineData("m10 10 5 5", "l15,15")]
    [InlineData("M10 10 H50 V20", "l50,10 l50,20")]
    [InlineData("M10 10 h5 6 v7", "l15,10 l21,10 l21,17")]
    [InlineData("M10 10 L20 10 L20 20 Z", "l20,10 l20,20 l10,10")]
    [InlineData("M10 10 C10 20 20 20 20 10", "s20,10")]
    [InlineData("M10 10 c0 10 10 10 10 0 s10-10 10 0", "s20,10 s30,10")]
    [InlineData("M10 10 S20 20 20 10", "s20,10")]
    [InlineData("M10 10 Q20 20 30 10 T50 10", "s30,10 s50,10")]
    [InlineData("M10 10 q10 10 20 0 t20 0", "s30,10 s50,10")]
    [InlineData("M10 10 A5 5 0 0 1 20 10", "a20,10")]
    [InlineData("M10 10 a5 5 0 0110 0", "a20,10")]
    [InlineData("M10 10 a5,5,0,01,10,0a5 5 0 00-10 0", "a20,10 a10,10")]
    [InlineData("M10 10 A9 5 30 1 0 20 10", "e20,10")]
    [InlineData("M10 10 A0 5 0 0 1 20 10", "l20,10")]
    [InlineData("M.5.5.25.75", "l0.25,0.75")]
    [InlineData("M1e1 1E+1L2e1 100e-1", "l20,10")]
    [InlineData("M 10-10 L-5-6", "l-5,-6")]
    [InlineData("\n\tM10\n10\r\nL20 , 30", "l20,30")]
    public void Each_command_draws_what_the_specification_says(string data, string expected)
    {
        ImmutableArray<Curve> curves = SvgDrawn.Curves($"<path d=\"{data}\"/>");
        string[] ends = expected.Split(' ');
        Assert.Equal(ends.Length, curves.Length);
        for (int i = 0; i < ends.Length; i++)
        {
            double[] at = [.. ends[i][1..].Split(',').Select(n => double.Parse(n, CultureInfo.InvariantCulture))];
            SvgDrawn.Near(new Point2(at[0], at[1]), SvgDrawn.Down(curves[i].End), 1e-12 * 100);
            Assert.Equal(ends[i][0], curves[i] switch { LineCurve => 'l', ArcCurve => 'a', EllipseCurve => 'e', _ => 's' });
        }
    }

    [Fact]
    public void Bezier_curves_go_through_the_points_of_their_polynomials()
    {
        Point2[] p = [new(10, 10), new(15, 40), new(50, 42), new(60, 11), new(70, -20), new(80, 0), new(90, 30)];
        ImmutableArray<Curve> curves = SvgDrawn.Curves("<path d=\"M10 10 C15 40 50 42 60 11 S80 0 90 30 Q95 50 80 60 T60 60\"/>");
        Point2 Cubic(Point2 a, Point2 b, Point2 c, Point2 d, double t) => (a * Math.Pow(1 - t, 3)) + (b * (3 * t * (1 - t) * (1 - t))) + (c * (3 * t * t * (1 - t))) + (d * (t * t * t));
        Point2 Quadratic(Point2 a, Point2 b, Point2 c, double t) => (a * ((1 - t) * (1 - t))) + (b * (2 * t * (1 - t))) + (c * (t * t));
        Point2 turned = new Point2(80, 60) + (new Point2(80, 60) - new Point2(95, 50));
        for (int i = 0; i <= 8; i++)
        {
            double t = i / 8.0;
            SvgDrawn.Near(Cubic(p[0], p[1], p[2], p[3], t), SvgDrawn.Down(curves[0].PointAt(t)));

            // The first control point of S is the last one of C, on the other side of where they meet.
            SvgDrawn.Near(Cubic(p[3], (p[3] * 2) - p[2], p[5], p[6], t), SvgDrawn.Down(curves[1].PointAt(t)));
            SvgDrawn.Near(Quadratic(p[6], new(95, 50), new(80, 60), t), SvgDrawn.Down(curves[2].PointAt(t)));
            SvgDrawn.Near(Quadratic(new(80, 60), turned, new(60, 60), t), SvgDrawn.Down(curves[3].PointAt(t)));
        }
    }

    [Fact]
    public void Sub_paths_are_things_of_their_own_and_begin_where_they_say()
    {
        ReadDrawing read = SvgDrawn.Strict(SvgDrawn.File("<path d=\"M10 10h10v10z m30 0 h5 v5 z l-5 -5 M1 1\"/>"));
        Assert.Equal(3, read.Entities.Length);
        Assert.Equal([true, true, false], read.Entities.Select(e => e.Path.IsClosed));
        SvgDrawn.Near(new(40, 10), SvgDrawn.Down(read.Entities[1].Path.Curves[0].Start));

        // After a close the next one begins where the closed one began.
        SvgDrawn.Near(new(40, 10), SvgDrawn.Down(read.Entities[2].Path.Curves[0].Start));
        SvgDrawn.Near(new(35, 5), SvgDrawn.Down(read.Entities[2].Path.Curves[0].End));
    }

    [Theory]
    [InlineData("M10 10 L20 20 30", 1, 15)]
    [InlineData("M10 10 L20 20 L nan 4", 1, 17)]
    [InlineData("M10 10 L20 20 X", 1, 15)]
    [InlineData("M10 10 L20 20 L30 30,", 2, 22)]
    [InlineData("M10 10 L20 20 L,30 30", 1, 16)]
    [InlineData("M10 10 L20 20 A5 5 0 2 0 30 30", 1, 16)]
    [InlineData("M10 10 L20 20 L1e400 5", 1, 16)]
    [InlineData("M10 10 L20 20 Z 5 5", 2, 17)]
    public void A_broken_path_counts_up_to_its_last_sound_segment(string data, int curves, int position)
    {
        string text = SvgDrawn.File($"<path id=\"p\" d=\"{data}\"/>");
        Assert.False(SvgDrawn.Strict(text).IsUsable);
        ReadDrawing read = SvgDrawn.Repairing(text);
        Assert.Equal(curves, Assert.Single(read.Entities).Path.Curves.Length);
        ToolpathForge.Findings.Finding told = Assert.Single(read.Repairs);
        Assert.Equal("drawing-path-broken", told.Kind.Code);
        Assert.Contains($"character {position},", ToolpathForge.Wording.FindingText.Word(told, ToolpathForge.Measures.LengthUnit.Millimetre).ToString(), StringComparison.Ordinal);
    }

    /// <summary>
    /// The conversion as the implementation notes write it (SVG 1.1, F.6.5 and F.6.6), with angles between vectors by their arc cosine: on purpose not the way of the reader.
    /// </summary>
    [Fact]
    public void Arcs_are_those_of_the_implementation_notes()
    {
        int seed = Random.Shared.Next();
        var random = new Random(seed);
        int scaled = 0;
        for (int n = 0; n < 2000; n++)
        {
            double x1 = Number(0, 100), y1 = Number(0, 100), x2 = Number(0, 100), y2 = Number(0, 100), rx = Number(1, 80) * (random.Next(5) == 0 ? -1 : 1), ry = Number(1, 80), phi = Number(-400, 400);
            bool large = random.Next(2) == 0, sweep = random.Next(2) == 0;
            string d = FormattableString.Invariant($"M{x1} {y1}A{rx} {ry} {phi} {(large ? 1 : 0)} {(sweep ? 1 : 0)} {x2} {y2}");
            Curve curve = Assert.Single(SvgDrawn.Curves($"<path d=\"{d}\"/>"));

            (rx, ry) = (Math.Abs(rx), Math.Abs(ry));
            (double sin, double cos) = Math.SinCos(phi * Math.PI / 180);
            double xd = (x1 - x2) / 2, yd = (y1 - y2) / 2, xp = (cos * xd) + (sin * yd), yp = (-sin * xd) + (cos * yd);
            double lambda = (xp * xp / (rx * rx)) + (yp * yp / (ry * ry));

            // Where the chord is nearly the diameter, the centre depends on the root of a small difference.
            double near = Math.Abs(lambda - 1);
            if (near < 1e-4)
            {
                continue;
            }

            double root = 0;
            if (lambda > 1)
            {
                (rx, ry) = (rx * Math.Sqrt(lambda), ry * Math.Sqrt(lambda));
                scaled++;
            }
            else
            {
                root = Math.Sqrt(((rx * rx * ry * ry) - (rx * rx * yp * yp) - (ry * ry * xp * xp)) / ((rx * rx * yp * yp) + (ry * ry * xp * xp))) * (large == sweep ? -1 : 1);
            }

            double cxp = root * rx * yp / ry, cyp = -root * ry * xp / rx;
            double cx = (cos * cxp) - (sin * cyp) + ((x1 + x2) / 2), cy = (sin * cxp) + (cos * cyp) + ((y1 + y2) / 2);
            Point2 from = new((xp - cxp) / rx, (yp - cyp) / ry), to = new((-xp - cxp) / rx, (-yp - cyp) / ry);
            double theta = Between(new(1, 0), from), delta = Between(from, to) % (2 * Math.PI);
            delta += !sweep && delta > 0 ? -2 * Math.PI : sweep && delta < 0 ? 2 * Math.PI : 0;
            for (int i = 0; i <= 6; i++)
            {
                (double s, double c) = Math.SinCos(theta + (delta * i / 6));
                var expected = new Point2((cos * rx * c) - (sin * ry * s) + cx, (sin * rx * c) + (cos * ry * s) + cy);

                // An arc cosine near 1 loses half its digits; half turns of scaled arcs may go either way there.
                Point2 found = SvgDrawn.Down(curve.PointAt(i / 6.0));
                Assert.True(expected.DistanceTo(found) <= 3e-5, $"seed {seed}: {d}: {found}, not {expected}");
            }

            SvgDrawn.Near(new(x1, y1), SvgDrawn.Down(curve.Start), 1e-8);
            SvgDrawn.Near(new(x2, y2), SvgDrawn.Down(curve.End), 1e-8);
        }

        Assert.True(scaled > 100);

        double Number(double least, double most) => Math.Round(least + (random.NextDouble() * (most - least)), 3);

        static double Between(Point2 u, Point2 v) => Math.Acos(Math.Clamp(u.Dot(v) / (u.Length * v.Length), -1, 1)) * (u.Cross(v) < 0 ? -1 : 1);
    }
}
