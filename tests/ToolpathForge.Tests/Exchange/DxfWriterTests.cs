using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using CsCheck;
using ToolpathForge.Drawings;
using ToolpathForge.Exchange.Dxf;
using ToolpathForge.Geometry;
using ToolpathForge.Lettering;
using ToolpathForge.Tests.Drawings;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Exchange;

/// <summary>What we write is read back by ezdxf, a general-purpose library with its own idea of the format, and audited by it.</summary>
public class DxfWriterTests
{
    private const double Near = 1e-9;

    [Fact]
    public void A_drawing_passes_the_audit_without_errors_or_repairs()
    {
        JsonElement file = Read(DxfWriter.Write(ScoopPlate.Sheet(0.5), 0.5));
        Assert.Empty(Strings(file, "errors"));
        Assert.Empty(Strings(file, "fixes"));
        Assert.Equal("AC1015", file.GetProperty("version").GetString());
        Assert.Equal(4, file.GetProperty("units").GetInt32());
        Assert.Equal(1, file.GetProperty("measurement").GetInt32());
        Assert.Equal(2, file.GetProperty("lineTypeScale").GetDouble());
        Assert.Equal(["Model", "Layout1"], Strings(file, "layouts"));
    }

    [Fact]
    public void Layers_carry_colour_line_type_and_weight_of_their_meaning()
    {
        JsonElement layers = Read(DxfWriter.Write(ScoopPlate.Sheet(0.5), 0.5)).GetProperty("layers");
        string Row(string name) => string.Join(' ', layers.GetProperty(name).EnumerateArray().Select(v => v.ToString()));
        Assert.Equal("7 Continuous 60", Row("finished-edge"));
        Assert.Equal("5 Continuous 35", Row("cut-path"));
        Assert.Equal("5 ramp-path 35", Row("ramp-path"));
        Assert.Equal("7 hidden-edge 25", Row("hidden-edge"));
        Assert.Equal("8 axis 18", Row("axis"));
        Assert.Equal("7 Continuous -3", Row("0"));
    }

    [Fact]
    public void Lines_arcs_and_circles_arrive_as_they_were()
    {
        var arc = new ArcCurve(new Point2(3, -4), 12.5, 0.3, 2.1);
        var outline = new Outline([new LineCurve(new Point2(1.25, 1 / 3.0), new Point2(-800000.125, 7)), arc, arc.Reversed(), new ArcCurve(new Point2(1, 2), 5, 1, -2 * Math.PI)], false);
        JsonElement[] entities = Entities(Layer("profile", [outline], []));

        Assert.Equal("LINE ARC ARC CIRCLE", Kinds(entities));
        Assert.All(entities, e => Assert.Equal("profile", e.GetProperty("layer").GetString()));
        Close([1.25, 1 / 3.0, 0, -800000.125, 7, 0], Numbers(entities[0]));
        double degrees = 180 / Math.PI;
        Close([3, -4, 0, 12.5, 0.3 * degrees, 2.4 * degrees], Numbers(entities[1]));

        // A clockwise arc is the same set of points; the format knows counter-clockwise ones only.
        Close(Numbers(entities[1]), Numbers(entities[2]));
        Close([1, 2, 0, 5], Numbers(entities[3]));
    }

    [Fact]
    public void A_quarter_ellipse_is_written_with_the_parameters_of_its_definition()
    {
        // Scoop of the sample: from (0, 120) clockwise to (200, 0). Counter-clockwise it runs over the parameters 0 to π/2.
        JsonElement e = Entities(Layer("scoop", [new Outline([ScoopPlate.Edge.Curves[0]], false)], [])).Single();
        Close([0, 0, 0, 200, 0, 0, 0.6, 0, Math.PI / 2], Numbers(e));
        Close([0, 0, 1], [.. e.GetProperty("extrusion").EnumerateArray().Select(v => v.GetDouble())]);
    }

    [Fact]
    public void Any_ellipse_keeps_its_points_with_axes_and_sense_as_the_format_wants_them()
    {
        // One file with many ellipses, so that the outside library starts once.
        Gen<EllipseCurve> ellipses =
            from centerX in Gen.Double[-1000, 1000]
            from centerY in Gen.Double[-1000, 1000]
            from angle in Gen.Double[-7, 7]
            from major in Gen.Double[0.5, 400]
            from share in Gen.Double[0.01, 3]
            from left in Gen.Bool
            from start in Gen.Double[-9, 9]
            from sweep in Gen.OneOf(Gen.Double[0.01, 2 * Math.PI], Gen.Const(Math.PI / 2), Gen.Const(Math.PI), Gen.Const(2 * Math.PI))
            from backwards in Gen.Bool
            let axis = Point2.Direction(angle) * major
            select new EllipseCurve(new Point2(centerX, centerY), axis, (left ? axis.Left : axis.Right) * share, start, backwards ? -sweep : sweep);
        ellipses.Array[40].Sample(
            curves =>
            {
                JsonElement[] entities = Entities(Layer("ellipses", [new Outline([.. curves], false)], []));
                Assert.Equal(curves.Length, entities.Length);
                for (int i = 0; i < curves.Length; i++)
                {
                    CheckEllipse(curves[i], entities[i]);
                }
            },
            iter: 3,
            threads: 1);
    }

    [Fact]
    public void Polylines_carry_arcs_as_bulges_and_say_whether_they_are_closed()
    {
        var open = new Contour([new Vertex(0, 0, 0.5), new Vertex(10, 0, 0), new Vertex(10, 7.1, -1), new Vertex(3, 3, 0.7)], false);
        Contour circle = Contour.Circle(new Point2(5, 5), 2);
        JsonElement[] entities = Entities(Layer("lines", [], [open, circle, Contour.Polyline(new(1, 2), new(3, 4))]));
        Assert.Equal("LWPOLYLINE LWPOLYLINE LINE", Kinds(entities));
        Close([0, 0, 0.5, 10, 0, 0, 10, 7.1, -1, 3, 3, 0], Numbers(entities[0]));
        Assert.False(entities[0].GetProperty("closed").GetBoolean());
        Close([7, 5, 1, 3, 5, 1], Numbers(entities[1]));
        Assert.True(entities[1].GetProperty("closed").GetBoolean());
    }

    [Fact]
    public void An_empty_file_and_unusual_names_are_sound()
    {
        JsonElement empty = Read(DxfWriter.Write(ImmutableArray<DxfLayer>.Empty));
        Assert.Empty(Strings(empty, "errors"));
        Assert.Empty(Strings(empty, "fixes"));

        string text = DxfWriter.Write([new DxfLayer("Rafter tail 2x8 (left) #1", LineRole.KeepOut, [], [Contour.Circle(Point2.Origin, 1)])]);
        Assert.All(text, c => Assert.InRange(c, '\n', '~'));
        JsonElement named = Read(text);
        Assert.Empty(Strings(named, "errors"));
        Assert.Empty(Strings(named, "fixes"));
        Assert.Equal("Rafter tail 2x8 (left) #1", named.GetProperty("entities")[0].GetProperty("layer").GetString());
    }

    [Theory]
    [InlineData("")]
    [InlineData("0")]
    [InlineData(" edge")]
    [InlineData("a/b")]
    [InlineData("a\nb")]
    [InlineData("a=b")]
    [InlineData("Träger")]
    public void Names_that_the_format_keeps_for_itself_are_refused(string name) =>
        Assert.Throws<ArgumentException>(() => DxfWriter.Write([Layer(name, [], [])]));

    [Fact]
    public void Two_layers_of_one_name_are_refused() =>
        Assert.Throws<ArgumentException>(() => DxfWriter.Write([Layer("Edge", [], []), Layer("edge", [], [])]));

    [Theory]
    [InlineData(0.0, "0.0")]
    [InlineData(-1e-14, "0.0")]
    [InlineData(1e-7, "0.0000001")]
    [InlineData(-2.5, "-2.5")]
    [InlineData(280.1, "280.1")]
    [InlineData(1000000, "1000000.0")]
    public void Reals_have_a_point_and_neither_exponent_nor_minus_zero(double value, string expected) => Assert.Equal(expected, DxfTags.Real(value));

    [Fact]
    public void Same_bytes_in_any_culture()
    {
        string text = DxfWriter.Write(ScoopPlate.Sheet(0.5), 0.5);
        var foreign = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        foreign.NumberFormat.NumberDecimalSeparator = ",";
        foreign.NumberFormat.NegativeSign = "−";
        CultureInfo before = CultureInfo.CurrentCulture;
        CultureInfo.CurrentCulture = foreign;
        try
        {
            Assert.Equal(text, DxfWriter.Write(ScoopPlate.Sheet(0.5), 0.5));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void A_plate_as_exact_and_as_fitted_lines_byte_by_byte() => Golden.Same("plate-layers.dxf", DxfWriter.Write(
        [
            new DxfLayer("plate exact", LineRole.FinishedEdge, [ScoopPlate.Edge], []),
            new DxfLayer("blank", LineRole.Board, [], [new Contour([new Vertex(-25, -25, 0), new Vertex(330, -25, 0.25), new Vertex(330, 210, 0), new Vertex(-25, 210, 0)], true)]),
            new DxfLayer("hole", LineRole.HiddenEdge, [new Outline([new ArcCurve(new Point2(250, 90), 6, 0, 2 * Math.PI)], true)], []),
        ]));

    [Fact]
    public void Text_goes_out_as_its_strokes_and_an_arrowhead_as_a_filled_triangle()
    {
        WrittenText written = StrokeAlphabet.Write("R 3/4", 2 * DrawingStyle.TextHeight, new Point2(7, 8));
        var arrow = new Arrow(LineRole.CutPath, new Point2(0, 0), new Point2(0, 40));
        JsonElement file = Read(DxfWriter.Write(new Drawing("", "", [new Text("R 3/4", new Point2(7, 8)), arrow]), 0.5));
        JsonElement[] entities = [.. file.GetProperty("entities").EnumerateArray()];
        JsonElement[] letters = [.. entities.Where(e => e.GetProperty("layer").GetString() == "lettering")];
        Assert.Equal(written.Strokes.Length, letters.Length);
        for (int i = 0; i < letters.Length; i++)
        {
            Close([written.Strokes[i].Start.X, written.Strokes[i].Start.Y], Numbers(letters[i])[..2]);
        }

        JsonElement head = entities.Single(e => e.GetProperty("kind").GetString() == "SOLID");
        Assert.Equal("cut-path", head.GetProperty("layer").GetString());
        double[] corners = Numbers(head);
        Close([0, 40, 0], corners[..3]);
        Close(corners[6..9], corners[9..]);

        // The file's extent is that of what is in it.
        double[] extent = [.. file.GetProperty("extent").EnumerateArray().Select(v => v.GetDouble())];
        Assert.Equal(40, extent[4], Near);
        Assert.Equal(written.Box.MaxX, extent[3], Near);
    }

    private static void CheckEllipse(EllipseCurve curve, JsonElement entity)
    {
        double[] n = Numbers(entity);
        double ratio = n[6];
        double start = n[7];
        double end = n[8];
        Assert.InRange(ratio, 1e-6, 1);
        Assert.InRange(start, 0, 2 * Math.PI);
        Assert.Equal(Math.Abs(curve.Sweep), end - start, Near);
        Close([curve.Center.X, curve.Center.Y, 0], n[..3]);
        Assert.Equal(Math.Max(curve.Major.Length, curve.Minor.Length), new Point2(n[3], n[4]).Length, Near);

        // A piece of no more than half a turn never runs across the parameter's zero.
        if (Math.Abs(curve.Sweep) <= Math.PI)
        {
            Assert.InRange(end, 0, (2 * Math.PI) + Near);
        }

        // The points that the library computes, against ours at the same shares of the sweep, in whichever direction.
        bool sameSense = curve.Major.Cross(curve.Minor) > 0 == curve.Sweep > 0;
        bool whole = Math.Abs(curve.Sweep) > (2 * Math.PI) - Near;
        double[][] points = [.. entity.GetProperty("points").EnumerateArray().Select(p => p.EnumerateArray().Select(v => v.GetDouble()).ToArray())];
        for (int i = 0; i < points.Length; i++)
        {
            var theirs = new Point2(points[i][0], points[i][1]);
            double t = i / 8.0;
            if (whole)
            {
                Point2 w = theirs - curve.Center;
                double level = Math.Pow(w.Dot(curve.Major) / curve.Major.LengthSquared, 2) + Math.Pow(w.Dot(curve.Minor) / curve.Minor.LengthSquared, 2);
                Assert.Equal(1, level, 1e-9);
            }
            else
            {
                Assert.InRange(theirs.DistanceTo(curve.PointAt(sameSense ? t : 1 - t)), 0, Near);
            }
        }
    }

    private static string Kinds(JsonElement[] entities) => string.Join(' ', entities.Select(e => e.GetProperty("kind").GetString()));

    private static DxfLayer Layer(string name, ImmutableArray<Outline> exact, ImmutableArray<Contour> contours) => new(name, LineRole.FinishedEdge, exact, contours);

    private static JsonElement[] Entities(DxfLayer layer)
    {
        JsonElement file = Read(DxfWriter.Write([layer]));
        Assert.Empty(Strings(file, "errors"));
        Assert.Empty(Strings(file, "fixes"));
        return [.. file.GetProperty("entities").EnumerateArray()];
    }

    private static JsonElement Read(string dxf) => JsonDocument.Parse(OutsideTool.Python("dxf_read.py", dxf, "ezdxf")).RootElement;

    private static double[] Numbers(JsonElement entity) => [.. entity.GetProperty("numbers").EnumerateArray().Select(v => v.GetDouble())];

    private static string[] Strings(JsonElement file, string name) => [.. file.GetProperty(name).EnumerateArray().Select(v => v.GetString()!)];

    private static void Close(double[] expected, double[] actual)
    {
        Assert.Equal(expected.Length, actual.Length);
        for (int i = 0; i < expected.Length; i++)
        {
            Assert.InRange(actual[i], expected[i] - Near, expected[i] + Near);
        }
    }
}
