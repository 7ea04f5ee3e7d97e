using System.Globalization;
using ToolpathForge.Exchange.Reading;
using ToolpathForge.Geometry;

namespace ToolpathForge.Tests.Exchange.Reading;

/// <summary>Where things of an SVG drawing come to lie, and how large.</summary>
public class SvgPlaceTests
{
    [Theory]
    [InlineData("width=\"100mm\" height=\"50mm\" viewBox=\"0 0 100 50\"", "mm", 1, 1)]
    [InlineData("width=\"10cm\" height=\"5cm\" viewBox=\"0 0 100 50\"", "mm", 1, 1)]
    [InlineData("width=\"10cm\" height=\"5cm\" viewBox=\"0 0 10 5\"", "cm", 10, 10)]
    [InlineData("width=\"4in\" height=\"2in\" viewBox=\"0 0 4 2\"", "in", 25.4, 25.4)]
    [InlineData("width=\"4in\" height=\"2in\" viewBox=\"0 0 400 200\"", "0.01 in", 0.254, 0.254)]
    [InlineData("width=\"72pt\" height=\"36pt\" viewBox=\"0 0 72 36\"", "pt", 25.4 / 72, 25.4 / 72)]
    [InlineData("width=\"6pc\" height=\"3pc\" viewBox=\"0 0 96 48\"", "px", 25.4 / 96, 25.4 / 96)]
    [InlineData("width=\"100mm\" height=\"50mm\"", "px", 25.4 / 96, 25.4 / 96)]
    [InlineData("width=\"100mm\" viewBox=\"0 0 200 50\"", "0.5 mm", 0.5, 0.5)]
    [InlineData("height=\"100mm\" width=\"100%\" viewBox=\"0 0 200 50\"", "2 mm", 2, 2)]
    [InlineData("width=\"100mm\" height=\"100mm\" viewBox=\"0 0 50 20\" preserveAspectRatio=\"none\"", "2 mm", 2, 5)]
    [InlineData("width=\"100mm\" height=\"100mm\" viewBox=\"0 0 50 20\" preserveAspectRatio=\"xMidYMid slice\"", "5 mm", 5, 5)]
    [InlineData("width=\"100\" height=\"50\"", null, 1, 1)]
    [InlineData("width=\"100px\" height=\"50px\" viewBox=\"0 0 10 5\"", null, 1, 1)]
    [InlineData("viewBox=\"0 0 10 5\"", null, 1, 1)]
    [InlineData("", null, 1, 1)]
    public void The_size_of_the_picture_says_what_a_coordinate_measures(string size, string? unit, double x, double y)
    {
        string text = SvgDrawn.File("<path d=\"M0 0H1V1\"/>", size);
        ReadDrawing read = SvgDrawn.Strict(text);
        Assert.True(read.IsUsable);
        Assert.Equal(unit, read.Unit?.Name);
        if (unit is not null)
        {
            Assert.Equal(x, read.Unit!.Millimetres, 1e-12 * x);
        }

        Assert.Equal(unit is null, Drawn.Codes(read.Findings) == "drawing-unit-missing");
        Assert.Equal(x, read.Entities[0].Path.Curves[0].Length, 1e-12 * x);
        Assert.Equal(y, read.Entities[0].Path.Curves[1].Length, 1e-12 * y);

        // What the person says counts for the coordinates, whatever the file states.
        ReadDrawing said = SvgDrawn.Repairing(text, DrawingUnit.InchUnit);
        Assert.Equal("in", said.Unit?.Name);
        Assert.Equal(25.4, said.Entities[0].Path.Curves[0].Length, 1e-12);
        Assert.Equal(unit is null or "in" ? "" : "drawing-unit-overruled", Drawn.Codes(said.Findings));
    }

    [Theory]
    [InlineData("xMinYMin", 0, 100)]
    [InlineData("xMidYMid", 0, 70)]
    [InlineData("xMaxYMax meet", 0, 40)]
    [InlineData("xMinYMin slice", 0, 100)]
    [InlineData("xMidYMin slice", -75, 100)]
    [InlineData("xMaxYMid slice", -150, 100)]
    public void A_view_lies_in_its_place_as_it_says(string fit, double x, double top)
    {
        // 50 x 20 in 100 x 100: whole it is 100 x 40, filling 250 x 100.
        ReadDrawing read = SvgDrawn.Strict(SvgDrawn.File("<path d=\"M5 7h1\"/>", $"width=\"100mm\" height=\"100mm\" viewBox=\"5 7 50 20\" preserveAspectRatio=\"{fit}\""));
        SvgDrawn.Near(new(x, top), read.Entities[0].Path.Curves[0].Start);
    }

    [Fact]
    public void Transforms_are_the_matrices_of_the_specification()
    {
        int seed = Random.Shared.Next();
        var random = new Random(seed);
        for (int n = 0; n < 500; n++)
        {
            double[,] all = { { 1, 0, 0 }, { 0, 1, 0 }, { 0, 0, 1 } };
            string text = "";
            for (int i = random.Next(1, 5); i > 0; i--)
            {
                double a = Number(), b = Number(), c = Number();
                double radians = a * 40 * Math.PI / 180;
                (string written, double[,] m) = random.Next(7) switch
                {
                    0 => ($"translate({T(a)})", Matrix(1, 0, 0, 1, a, 0)),
                    1 => ($"translate({T(a)} , {T(b)})", Matrix(1, 0, 0, 1, a, b)),
                    2 => ($"scale({T(a)},{T(b)})", Matrix(a, 0, 0, b, 0, 0)),
                    3 => ($"rotate({T(a * 40)})", Matrix(Math.Cos(radians), Math.Sin(radians), -Math.Sin(radians), Math.Cos(radians), 0, 0)),
                    4 => ($"rotate({T(a * 40)} {T(b)} {T(c)})", Times(Times(Matrix(1, 0, 0, 1, b, c), Matrix(Math.Cos(radians), Math.Sin(radians), -Math.Sin(radians), Math.Cos(radians), 0, 0)), Matrix(1, 0, 0, 1, -b, -c))),
                    5 => ($"skewX({T(a * 20)}) skewY({T(b * 20)})", Times(Matrix(1, 0, Math.Tan(a * Math.PI / 9), 1, 0, 0), Matrix(1, Math.Tan(b * Math.PI / 9), 0, 1, 0, 0))),
                    _ => ($"matrix({T(a)} {T(b)} {T(-b)} {T(a)},{T(c)} 2)", Matrix(a, b, -b, a, c, 2)),
                };
                text += written + (random.Next(2) == 0 ? " " : ",");
                all = Times(all, m);
            }

            // Split between a group and what is in it, it comes to the same.
            ReadDrawing read = SvgDrawn.Strict(SvgDrawn.File($"<g transform=\"{text.Trim(' ', ',')}\"><path d=\"M3 4L7 -2\"/><circle cx=\"1\" cy=\"2\" r=\"3\"/></g>"));
            Assert.True(read.IsUsable, $"seed {seed}: {text}: {Drawn.Codes(read.Repairs)}");
            double size = 1 + Enumerable.Range(0, 9).Max(i => Math.Abs(all[i / 3, i % 3]));
            SvgDrawn.Near(At(all, 7, -2), SvgDrawn.Down(read.Entities[0].Path.Curves[0].End), 1e-11 * size * 100);

            // Each point of the circle's image, taken back, lies on the circle.
            double determinant = (all[0, 0] * all[1, 1]) - (all[0, 1] * all[1, 0]);
            for (int i = 0; i < 5; i++)
            {
                Point2 p = SvgDrawn.Down(read.Entities[1].Path.Curves[0].PointAt(i / 5.0)) - new Point2(all[0, 2], all[1, 2]);
                var back = new Point2(((all[1, 1] * p.X) - (all[0, 1] * p.Y)) / determinant, ((all[0, 0] * p.Y) - (all[1, 0] * p.X)) / determinant);
                double may = 1e-11 * size * size * 100 / Math.Abs(determinant);
                Assert.True(Math.Abs(back.DistanceTo(new(1, 2)) - 3) <= may, $"seed {seed}: {text}: {back}");
            }
        }

        double Number() => Math.Round(((random.NextDouble() * 2.5) + 0.5) * (random.Next(2) == 0 ? -1 : 1), 4);

        static string T(double value) => value.ToString("R", CultureInfo.InvariantCulture);

        static double[,] Matrix(double a, double b, double c, double d, double e, double f) => new[,] { { a, c, e }, { b, d, f }, { 0, 0, 1 } };

        static Point2 At(double[,] m, double x, double y) => new((m[0, 0] * x) + (m[0, 1] * y) + m[0, 2], (m[1, 0] * x) + (m[1, 1] * y) + m[1, 2]);

        static double[,] Times(double[,] a, double[,] b)
        {
            double[,] product = new double[3, 3];
            for (int i = 0; i < 9; i++)
            {
                product[i / 3, i % 3] = Enumerable.Range(0, 3).Sum(k => a[i / 3, k] * b[k, i % 3]);
            }

            return product;
        }
    }

    [Theory]
    [InlineData("<rect x=\"10\" y=\"20\" width=\"30\" height=\"10\"/>", 300)]
    [InlineData("<rect width=\"30\" height=\"10\" rx=\"2\"/>", 300 - (4 * (4 - Math.PI)))]
    [InlineData("<rect width=\"30\" height=\"10\" rx=\"2\" ry=\"1\"/>", 300 - (2 * (4 - Math.PI)))]
    [InlineData("<rect width=\"30\" height=\"10\" ry=\"99\" rx=\"99\"/>", Math.PI * 75)]
    [InlineData("<rect width=\"30\" height=\"10\" rx=\"0\" ry=\"4\"/>", 300)]
    [InlineData("<circle cx=\"5\" cy=\"6\" r=\"7\"/>", Math.PI * 49)]
    [InlineData("<ellipse cx=\"5\" cy=\"6\" rx=\"7\" ry=\"2\"/>", Math.PI * 14)]
    [InlineData("<polygon points=\"0,0 10,0 10 10\"/>", 50)]
    [InlineData("<polyline points=\"0,0 10,0 10 10 0 0\"/>", 50)]
    [InlineData("<path d=\"M0 0h10v10h-10z\" transform=\"rotate(30) scale(2,-3)\"/>", 600)]
    [InlineData("<rect width=\"50%\" height=\"10%\"/>", 500)]
    [InlineData("<svg x=\"10\" y=\"10\" width=\"20\" height=\"20\" viewBox=\"0 0 4 4\"><rect width=\"2\" height=\"2\"/></svg>", 100)]
    [InlineData("<defs><symbol id=\"s\" viewBox=\"0 0 4 4\"><rect width=\"2\" height=\"2\"/></symbol></defs><use xlink:href=\"#s\" x=\"3\" width=\"8\" height=\"8\"/>", 16)]
    [InlineData("<defs><g id=\"a\"><rect width=\"2\" height=\"2\"/></g><g id=\"b\"><use href=\"#a\"/><use href=\"#a\" x=\"5\"/></g></defs><use href=\"#b\"/><use href=\"#b\" y=\"5\" transform=\"scale(-1 1)\"/>", 16)]
    [InlineData("<rect width=\"3\" height=\"3\"/><g style=\"display : none\"><rect width=\"9\" height=\"9\"/></g>", 9)]
    [InlineData("<rect width=\"3\" height=\"3\"/><g visibility=\"hidden\"><rect width=\"9\" height=\"9\"/><rect x=\"20\" width=\"1\" height=\"1\" visibility=\"visible\"/></g>", 10)]
    [InlineData("<rect width=\"3\" height=\"3\"/><text>word</text><image href=\"file:///etc/passwd\"/>", 9)]
    [InlineData("<switch><rect width=\"3\" height=\"3\"/><rect width=\"9\" height=\"9\"/></switch>", 9)]
    public void Shapes_have_the_areas_that_they_must(string inner, double area)
    {
        ReadDrawing read = SvgDrawn.Strict(SvgDrawn.File(inner));
        Assert.True(read.IsUsable, Drawn.Codes([.. read.Findings, .. read.Repairs]));
        Assert.Equal(area, DrawingTrace.Of(read, "drawing.svg").Area, 1e-3);
    }

    [Fact]
    public void Groups_are_layers_and_what_is_left_alone_is_counted()
    {
        ReadDrawing read = SvgDrawn.Strict(SvgDrawn.File(
            "<g id=\"plate\"><g><rect width=\"3\" height=\"3\"/></g><g id=\"holes\"><circle r=\"1\"/></g><g class=\"cut\"><line x2=\"4\"/></g></g><line y2=\"4\"/><text/><clipPath id=\"c\"/><g clip-path=\"url(#c)\" display=\"none\"/>"));
        Assert.Equal(["plate", "holes", "cut", ""], read.Entities.Select(e => e.Layer));
        Assert.Equal(["rect", "circle", "line", "line"], read.Entities.Select(e => e.Kind));
        Assert.Equal([("clipPath", IgnoreReason.NoCurve, 1), ("g", IgnoreReason.Hidden, 1), ("text", IgnoreReason.NoCurve, 1)], read.Ignored.Select(i => (i.Kind, i.Reason, i.Count)));
    }
}
