using System.Text;
using CsCheck;
using ToolpathForge.Exchange.Dxf;
using ToolpathForge.Exchange.Reading;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Exchange.Reading;

/// <summary>Cases worked by hand, by the DXF reference.</summary>
public class DxfReaderTests
{
    private const string TwoLayers = "0 LAYER 2 off 70 0 62 -3 0 LAYER 2 cold 70 1 62 3 0 LAYER 2 seen 70 0 62 3";

    private const string Block = "0 BLOCK 8 0 2 PEG 70 0 10 1 20 0 30 0 3 PEG 0 CIRCLE 8 0 10 1 20 0 30 0 40 2 0 LINE 8 seen 10 1 20 0 11 3 21 1 0 ENDBLK 8 0";

    private static Curve Only(ReadDrawing drawing)
    {
        Assert.True(drawing.IsUsable, Drawn.Codes(drawing.Findings));
        return Assert.Single(Assert.Single(drawing.Entities).Path.Curves);
    }

    private static void Near(Point2 expected, Point2 actual) => Assert.True(expected.DistanceTo(actual) < 1e-9, $"{actual} instead of {expected}");

    [Fact]
    public void A_line_has_its_layer_its_line_of_the_file_and_its_length_in_millimetres()
    {
        string text = Drawn.File("0 LINE 8 edge 10 1 20 2 30 0 11 4 21 6 31 0", header: "9 $INSUNITS 70 1");
        ReadDrawing read = Drawn.Strict(text);
        DrawnEntity line = Assert.Single(read.Entities);
        Assert.Equal("DXF without version, text", read.Format);
        Assert.Equal(("LINE", "edge", 1), (line.Kind, line.Layer, line.Order));
        Assert.Equal("LINE", text.Split('\n')[line.Line - 1]);
        Assert.Equal(5 * 25.4, line.Path.Curves[0].Length, 1e-12);
    }

    [Theory]
    [InlineData("\n")]
    [InlineData("\r\n")]
    [InlineData("\r")]
    [InlineData("\r\r\n")]
    public void Any_line_end_does(string end)
    {
        string text = Drawn.File("0 LINE 8 edge 10 1 20 2 11 4 21 6").ReplaceLineEndings(end);
        Assert.Equal(new LineCurve(new(1, 2), new(4, 6)), Only(Drawn.Strict(text)));
    }

    [Fact]
    public void Comments_signs_of_order_and_two_byte_text_do_no_harm()
    {
        string text = "999\na comment\n" + Drawn.File("0 LINE 8 edge 10 +1. 20 2e0 11 .4E1 21 6").Replace("LINE\n", "LINE\n999\nanother\n", StringComparison.Ordinal) + "\n\u001a";
        Curve expected = new LineCurve(new(1, 2), new(4, 6));
        Assert.Equal(expected, Only(Drawn.Strict(text)));
        Assert.Equal(expected, Only(Drawn.Strict([.. Encoding.UTF8.Preamble, .. Encoding.UTF8.GetBytes(text)])));
        Assert.Equal(expected, Only(Drawn.Strict([.. Encoding.Unicode.Preamble, .. Encoding.Unicode.GetBytes(text)])));
        Assert.Equal(expected, Only(Drawn.Strict([.. Encoding.BigEndianUnicode.Preamble, .. Encoding.BigEndianUnicode.GetBytes(text)])));
    }

    [Theory]
    [InlineData("AC1015", "ANSI_1251", new byte[] { 0xea, 0xf0, 0xe0, 0xe9 }, "край")]
    [InlineData("AC1009", "", new byte[] { 0x6b, 0xf6, 0x72 }, "kör")]
    [InlineData("AC1015", "ANSI_1252", new byte[] { 0x5c, 0x55, 0x2b, 0x30, 0x34, 0x33, 0x41 }, "к")]
    [InlineData("AC1021", "ANSI_1252", new byte[] { 0xd0, 0xba }, "к")]
    [InlineData("AC1015", "ANSI_99999", new byte[] { 0xe9 }, "é")]
    public void Layer_names_are_read_in_the_files_code_page(string version, string page, byte[] name, string expected)
    {
        string codePage = page.Length > 0 ? $"9 $DWGCODEPAGE 3 {page}" : "";
        string text = Drawn.File("0 LINE 8 NAME 10 1 20 2 11 4 21 6", header: $"9 $ACADVER 1 {version} {codePage} 9 $INSUNITS 70 4");
        int at = text.IndexOf("NAME", StringComparison.Ordinal);
        byte[] bytes = [.. Encoding.ASCII.GetBytes(text[..at]), .. name, .. Encoding.ASCII.GetBytes(text[(at + 4)..])];
        Assert.Equal(expected, Assert.Single(Drawn.Strict(bytes).Entities).Layer);
    }

    [Fact]
    public void An_arc_runs_counter_clockwise_from_its_first_angle_even_across_zero()
    {
        var arc = (ArcCurve)Only(Drawn.Strict(Drawn.File("0 ARC 8 0 10 5 20 0 40 2 50 350 51 10")));
        Assert.Equal(20 * Math.PI / 180, arc.Sweep, 1e-12);
        Near(new Point2(5, 0) + (Point2.Direction(-10 * Math.PI / 180) * 2), arc.Start);
    }

    [Fact]
    public void Angles_of_countless_turns_leave_curves_of_one_turn()
    {
        ReadDrawing read = Drawn.Strict(Drawn.File("0 ELLIPSE 8 0 10 0 20 0 11 5 21 0 40 0.5 41 1e17 42 3 0 ARC 8 0 10 0 20 0 40 2 50 1e18 51 7"));
        Assert.All(read.Entities, e => Assert.InRange(e.Path.Curves[0].Length, 1e-3, 10 * Math.PI));
    }

    [Fact]
    public void Extrusion_downwards_mirrors_x()
    {
        // By the arbitrary axis algorithm the X axis of (0, 0, -1) is (-1, 0, 0).
        var arc = (ArcCurve)Only(Drawn.Strict(Drawn.File("0 ARC 8 0 10 5 20 1 40 2 50 0 51 90 210 0 220 0 230 -1")));
        Near(new Point2(-5, 1), arc.Center);
        Near(new Point2(-7, 1), arc.Start);
        Near(new Point2(-5, 3), arc.End);
    }

    [Fact]
    public void Bulges_beyond_one_are_more_than_half_a_circle()
    {
        // tan(270°/4): three quarters of the circle round (0, 0) from (1, 0) to (0, -1).
        var arc = (ArcCurve)Only(Drawn.Strict(Drawn.File("0 LWPOLYLINE 8 0 90 2 70 0 10 1 20 0 42 2.414213562373095 10 0 20 -1")));
        Near(default, arc.Center);
        Assert.Equal(1.5 * Math.PI, arc.Sweep, 1e-12);
        Near(new Point2(0, -1), arc.End);
    }

    [Fact]
    public void A_block_is_put_in_by_its_base_point_scaled_turned_and_repeated()
    {
        string insert = "0 INSERT 8 seen 2 peg 10 10 20 20 41 2 42 2 43 2 50 90 70 2 71 3 44 5 45 7";
        ReadDrawing read = Drawn.Strict(Drawn.File(insert, Block, TwoLayers));
        Assert.Equal(12, read.Entities.Length);

        // Columns run along the turned X axis, rows along the turned Y axis, and neither is scaled.
        Point2[] centers = [.. read.Entities.Select(e => e.Path.Curves[0]).OfType<ArcCurve>().Select(a => a.Center)];
        Point2[] expected = [new(10, 20), new(10, 25), new(3, 20), new(3, 25), new(-4, 20), new(-4, 25)];
        for (int i = 0; i < 6; i++)
        {
            Near(expected[i], centers[i]);
        }

        Assert.All(read.Entities.Select(e => e.Path.Curves[0]).OfType<ArcCurve>(), a => Assert.Equal(4, a.Radius, 1e-12));
        Near(new Point2(10 - 2, 20 + 4), read.Entities[1].Path.Curves[0].End);
    }

    [Fact]
    public void An_uneven_scale_makes_an_ellipse_of_a_circle_and_a_mirror_turns_it_round()
    {
        ReadDrawing read = Drawn.Strict(Drawn.File("0 INSERT 8 0 2 PEG 10 0 20 0 41 3 42 -0.5 50 30", Block));
        var ellipse = (EllipseCurve)read.Entities[0].Path.Curves[0];
        Assert.Equal(6, Math.Max(ellipse.Major.Length, ellipse.Minor.Length), 1e-12);
        Assert.Equal(1, Math.Min(ellipse.Major.Length, ellipse.Minor.Length), 1e-12);
        Assert.True(ellipse.Major.Cross(ellipse.Minor) * ellipse.Sweep < 0);
    }

    [Fact]
    public void Layers_that_are_off_or_frozen_are_left_out_and_counted_and_layer_0_of_a_block_follows_where_it_is_put()
    {
        string entities = "0 LINE 8 OFF 10 0 20 0 11 1 21 1 0 LINE 8 cold 10 0 20 0 11 1 21 1 0 LINE 8 seen 10 0 20 0 11 1 21 1 "
            + "0 LINE 8 seen 60 1 10 0 20 0 11 1 21 1 0 LINE 8 seen 67 1 10 0 20 0 11 1 21 1 0 TEXT 8 seen 1 word 0 HATCH 8 cold "
            + "0 INSERT 8 off 2 PEG 10 0 20 0 0 INSERT 8 cold 2 PEG 10 0 20 0 0 INSERT 8 seen 2 PEG 10 0 20 0";
        ReadDrawing read = Drawn.Strict(Drawn.File(entities, Block, TwoLayers));

        // The line within the block lies on a layer of its own, which is seen though the block's is off.
        Assert.Equal("LINE LINE CIRCLE LINE", string.Join(' ', read.Entities.Select(e => e.Kind)));
        Assert.All(read.Entities, e => Assert.Equal("seen", e.Layer));
        Assert.Equal(
            "CIRCLE LayerOff 1, HATCH NoCurve 1, INSERT LayerFrozen 1, LINE LayerOff 1, LINE LayerFrozen 1, LINE Hidden 1, LINE OnSheet 1, TEXT NoCurve 1",
            string.Join(", ", read.Ignored.Select(i => $"{i.Kind} {i.Reason} {i.Count}")));
        Assert.Equal("off+, cold*, seen", string.Join(", ", read.Layers.Select(l => l.Name + (l.IsOff ? "+" : "") + (l.IsFrozen ? "*" : ""))));
    }

    [Theory]
    [InlineData(1, 25.4)]
    [InlineData(2, 304.8)]
    [InlineData(4, 1)]
    [InlineData(5, 10)]
    [InlineData(6, 1000)]
    [InlineData(9, 0.0254)]
    [InlineData(13, 0.001)]
    [InlineData(21, 304.800609601219)]
    public void Every_unit_of_the_header_has_its_millimetres(int code, double millimetres)
    {
        // Survey foot: 1200/3937 m. The others by definition of the metre and the inch.
        ReadDrawing read = Drawn.Strict(Drawn.File("0 LINE 8 0 10 0 20 0 11 3 21 0", header: $"9 $INSUNITS 70 {code}"));
        Assert.Equal(3 * millimetres, Only(read).Length, 3e-12 * millimetres);
    }

    [Theory]
    [InlineData("")]
    [InlineData("9 $INSUNITS 70 0")]
    [InlineData("9 $INSUNITS 70 77")]
    public void Without_a_unit_it_asks_and_a_unit_given_answers(string header)
    {
        byte[] bytes = Encoding.UTF8.GetBytes(Drawn.File("0 LINE 8 0 10 0 20 0 11 3 21 0", header: header));
        ReadDrawing asks = Drawn.Repairing(bytes);
        Assert.Null(asks.Unit);
        Finding finding = Assert.Single(asks.Findings);
        Assert.Equal(("drawing-unit-missing", Severity.Warn), (finding.Kind.Code, finding.Kind.Severity));
        ReadDrawing told = Drawn.Repairing(bytes, DrawingUnit.InchUnit);
        Assert.Empty(told.Findings);
        Assert.Equal(76.2, Only(told).Length, 1e-12);
    }

    [Fact]
    public void A_unit_given_against_the_files_own_is_told()
    {
        ReadDrawing read = Drawn.Repairing(Encoding.UTF8.GetBytes(Drawn.File("0 LINE 8 0 10 0 20 0 11 3 21 0")), DrawingUnit.InchUnit);
        Assert.Equal("drawing-unit-overruled", Drawn.Codes(read.Findings));
        Assert.Equal(76.2, Only(read).Length, 1e-12);
    }

    [Fact]
    public void What_lies_at_another_height_is_taken_and_told_and_what_is_tilted_is_left_out()
    {
        ReadDrawing read = Drawn.Repairing(Drawn.File("0 LINE 8 0 10 0 20 0 30 5 11 3 21 0 31 5 0 LINE 8 0 10 0 20 0 30 5 11 3 21 0 31 6 0 CIRCLE 8 0 10 0 20 0 40 2 210 0 220 0.6 230 0.8"));
        Assert.Equal("drawing-other-height", Drawn.Codes(read.Findings));
        Assert.Equal("drawing-out-of-plane drawing-out-of-plane", Drawn.Codes(read.Repairs));
        Assert.Single(read.Entities);
    }

    [Fact]
    public void The_frame_of_points_that_a_polyline_was_smoothed_from_is_not_taken_and_meshes_are_no_curves()
    {
        ReadDrawing read = Drawn.Strict(Drawn.File(
            "0 POLYLINE 8 0 66 1 10 0 20 0 30 0 70 4 0 VERTEX 8 0 10 9 20 9 30 0 70 16 0 VERTEX 8 0 10 1 20 0 70 8 0 VERTEX 8 0 10 2 20 0 70 8 0 SEQEND 8 0 "
            + "0 POLYLINE 8 0 66 1 10 0 20 0 30 0 70 64 0 VERTEX 8 0 10 9 20 9 30 0 70 192 0 SEQEND 8 0"));
        Assert.Equal(new LineCurve(new(1, 0), new(2, 0)), Only(read));
        Assert.Equal("POLYLINE mesh", Assert.Single(read.Ignored).Kind);
    }

    [Fact]
    public void A_summary_counts_kinds_and_layers()
    {
        byte[] bytes = Encoding.UTF8.GetBytes(Drawn.File("0 INSERT 8 seen 2 PEG 10 0 20 0 0 LINE 8 edge 10 -4 20 0 11 1 21 1", Block));
        DrawingSummary summary = DrawingReader.Summarize(bytes, "drawing.dxf", cancel: TestContext.Current.CancellationToken);
        Assert.Equal("CIRCLE 1, LINE 2", string.Join(", ", summary.Kinds.Select(k => $"{k.Kind} {k.Count}")));
        Assert.Equal("edge 1, seen 2", string.Join(", ", summary.Layers.Select(k => $"{k.Layer} {k.Count}")));
        Assert.Equal(-4, summary.Box.MinX);
    }

    [Fact]
    public void What_we_write_we_read()
    {
        Gen<Curve> lines = from a in Gen.Double[-900, 900] from b in Gen.Double[-900, 900] from c in Gen.Double[-900, 900] select (Curve)new LineCurve(new(a, b), new(c, a + 1));
        Gen<Curve> arcs = from a in Gen.Double[-900, 900] from r in Gen.Double[0.1, 900] from s in Gen.Double[-4, 4] from w in Gen.Double[0.1, 6] select (Curve)new ArcCurve(new(a, r), r, s, w);
        Gen<Curve> ellipses =
            from a in Gen.Double[-900, 900]
            from r in Gen.Double[1, 900]
            from s in Gen.Double[-4, 4]
            from w in Gen.Double[0.1, 6]
            from share in Gen.Double[0.1, 0.99]
            select (Curve)new EllipseCurve(new(a, r), Point2.Direction(s) * r, Point2.Direction(s).Left * (r * share), s, w);
        // A line shorter than the last decimal has no length once written, and is rightly dropped.
        Gen.OneOf(lines, arcs, ellipses).Where(c => c.Start.DistanceTo(c.End) > 1e-6 || c is not LineCurve).Array[1, 20].Sample(
            curves =>
            {
                string text = DxfWriter.Write([new DxfLayer("edge", ToolpathForge.Drawings.LineRole.CutPath, [.. curves.Select(c => new Outline([c], false))], [])]);
                Curve[] read = [.. Drawn.Strict(text).Entities.Select(e => e.Path.Curves.Single())];
                Assert.Equal(curves.Length, read.Length);
                for (int i = 0; i < read.Length; i++)
                {
                    for (double t = 0; t <= 1; t += 0.25)
                    {
                        // Twelve decimals, angles in degrees: 1e-12 of 900 mm and a little rounding.
                        double off = Math.Min(curves[i].PointAt(t).DistanceTo(read[i].PointAt(t)), curves[i].PointAt(t).DistanceTo(read[i].PointAt(1 - t)));
                        Assert.True(off < 1e-9, $"{curves[i]} came back {off:G3} off");
                    }
                }
            },
            iter: LongRun.Iterations(60, 5000));
    }

    [Fact]
    public void Short_numbers_are_read_as_the_general_way_reads_them()
    {
        Gen<string> texts = from digits in Gen.Int[0, 17] from value in Gen.Double[-1e6, 1e6] select value.ToString("F" + digits, System.Globalization.CultureInfo.InvariantCulture);
        texts.Sample(
            text =>
            {
                Assert.True(DxfReal.TryParse(Encoding.ASCII.GetBytes(" " + text), out double value));
                Assert.Equal(double.Parse(text, System.Globalization.CultureInfo.InvariantCulture), value);
            },
            iter: LongRun.Iterations(20_000, 2_000_000));
    }
}
