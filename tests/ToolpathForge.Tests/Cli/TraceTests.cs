using System.Text;
using System.Text.Json;
using ToolpathForge.Exchange.Reading;
using ToolpathForge.Geometry;
using ToolpathForge.Tests.Support;
using Drawn = ToolpathForge.Tests.Exchange.Reading.Drawn;
using SvgDrawn = ToolpathForge.Tests.Exchange.Reading.SvgDrawn;

namespace ToolpathForge.Tests.Cli;

/// <summary>trace, from a drawing to its answer.</summary>
public class TraceTests
{
    // A plate of 100 x 50 with a hole of radius 10, an island of radius 2 in it, a text, and a layer that holds a slot 4 wide.
    private const string Plate =
        "0 LWPOLYLINE 8 edge 90 4 70 1 10 0 20 0 10 100 20 0 10 100 20 50 10 0 20 50 "
        + "0 CIRCLE 8 holes 10 30 20 25 40 10 0 CIRCLE 8 holes 10 30 20 25 40 2 0 TEXT 8 edge 1 word "
        + "0 LWPOLYLINE 8 slot 90 4 70 1 10 60 20 20 42 0 10 80 20 20 42 1 10 80 20 24 42 0 10 60 20 24 42 1";

    [Fact]
    public void Areas_boxes_holes_and_the_tightest_radius_are_those_of_the_drawing()
    {
        using var scratch = new Scratch();
        string file = scratch.Write("plate.dxf", Drawn.File(Plate));
        using JsonDocument json = JsonDocument.Parse(Command.Run("trace", file, "--json").Out);
        JsonElement root = json.RootElement;
        Assert.Equal(["unit", "mmPerUnit", "netAreaMm2", "boxMm", "regions", "ignored", "repairs", "findings"], root.EnumerateObject().Select(p => p.Name));
        Assert.Equal("mm", root.GetProperty("unit").GetString());
        Assert.Equal(1, root.GetProperty("ignored").GetInt32());
        Assert.Equal(0, root.GetProperty("repairs").GetInt32());
        Assert.Equal([0, 0, 100, 50], root.GetProperty("boxMm").EnumerateArray().Select(n => n.GetDouble()));

        // The slot: a rectangle of 20 x 4 and a circle of radius 2.
        double plate = 5000 - (Math.PI * 100) - 80 - (Math.PI * 4);
        Assert.Equal(plate + (Math.PI * 4), root.GetProperty("netAreaMm2").GetDouble(), 1e-6);
        JsonElement[] regions = [.. root.GetProperty("regions").EnumerateArray()];
        Assert.Equal(2, regions.Length);
        Assert.Equal(plate, regions[0].GetProperty("areaMm2").GetDouble(), 1e-6);
        Assert.Equal(300 + (2 * Math.PI * 10) + 40 + (2 * Math.PI * 2), regions[0].GetProperty("lengthMm").GetDouble(), 1e-6);
        Assert.Equal(3, regions[0].GetProperty("loops").GetInt32());
        Assert.Equal(2, regions[0].GetProperty("tightestInsideRadiusMm").GetDouble(), 1e-6);
        Assert.False(regions[1].TryGetProperty("tightestInsideRadiusMm", out _));
        Assert.Equal(4, regions[0].GetProperty("narrowestSlotMm").GetDouble(), 1e-6);
        Assert.False(regions[1].TryGetProperty("narrowestSlotMm", out _));

        // Its heading takes two lines.
        Assert.Contains("narrowest", Command.Run("trace", file).Out, StringComparison.Ordinal);

        using JsonDocument one = JsonDocument.Parse(Command.Run("trace", file, "--layer", "slot", "--json").Out);
        Assert.Equal(80 + (Math.PI * 4), one.RootElement.GetProperty("netAreaMm2").GetDouble(), 1e-6);
        Command.Ran none = Command.Run("trace", file, "--layer", "egde");
        Assert.Equal(2, none.Code);
        Assert.Contains("'edge', 'holes', 'slot'", none.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_bit_that_is_too_large_for_the_slot_is_told_with_its_place()
    {
        using var scratch = new Scratch();
        string file = scratch.Write("plate.dxf", Drawn.File(Plate));
        Command.Ran fits = Command.Run("trace", file, "--bit", "3.9mm");
        Assert.Equal(0, fits.Code);
        Assert.Contains("A bit of 3.9 mm reaches all", fits.Error, StringComparison.Ordinal);
        Command.Ran large = Command.Run("trace", file, "--bit", "6mm", "--layer", "slot", "--json");
        Assert.Equal(0, large.Code);
        Assert.DoesNotContain("trace-bit-leaves", large.Out, StringComparison.Ordinal);
        Command.Ran left = Command.Run("trace", file, "--bit", "6mm", "--json");
        Assert.Equal(0, left.Code);
        Assert.Contains("trace-bit-leaves", left.Out, StringComparison.Ordinal);
        Assert.Equal(2, Command.Run("trace", file, "--bit", "0").Code);
        Assert.Equal(2, Command.Run("trace", file, "--bit", "three").Code);
    }

    [Fact]
    public void A_picture_without_a_size_asks_for_its_unit_and_one_with_it_is_cut_by()
    {
        using var scratch = new Scratch();
        const string Inner = "<g id=\"plate\"><rect width=\"4\" height=\"2\"/><circle cx=\"1\" cy=\"1\" r=\".5\"/></g><path class=\"note\" d=\"M0 0L9 9\"/>";
        string bare = scratch.Write("bare.svg", SvgDrawn.File(Inner, "width=\"96\" height=\"48\" viewBox=\"0 0 4 2\""));
        string made = scratch.Path("parallel.dxf");
        Command.Ran asks = Command.Run("trace", bare, "--layer", "plate", "--offset", "1mm", "--dxf", made);
        Assert.Equal(1, asks.Code);
        Assert.Contains("does not say what unit", asks.Error, StringComparison.Ordinal);
        Assert.False(File.Exists(made));
        Assert.Equal(0, Command.Run("trace", bare, "--layer", "plate", "--unit", "in", "--offset", "1mm", "--dxf", made).Code);
        Assert.True(File.Exists(made));

        string sized = scratch.Write("sized.svg", SvgDrawn.File(Inner, "width=\"4in\" height=\"2in\" viewBox=\"0 0 4 2\""));
        using JsonDocument json = JsonDocument.Parse(Command.Run("trace", sized, "--layer", "plate", "--json").Out);
        Assert.Equal("in", json.RootElement.GetProperty("unit").GetString());
        Assert.Equal(25.4, json.RootElement.GetProperty("mmPerUnit").GetDouble(), 1e-12);
        Assert.Equal((8 - (Math.PI / 4)) * 25.4 * 25.4, json.RootElement.GetProperty("netAreaMm2").GetDouble(), 1e-6);
    }

    [Fact]
    public void The_parallel_is_written_and_read_again_at_its_distance()
    {
        using var scratch = new Scratch();
        string file = scratch.Write("plate.dxf", Drawn.File(Plate));
        string made = scratch.Path("parallel.dxf");
        Assert.Equal(0, Command.Run("trace", file, "--layer", "edge", "--offset", "-3mm", "--dxf", made).Code);
        var trace = DrawingTrace.Of(Drawn.Strict(File.ReadAllBytes(made)), made);
        Assert.Equal(94 * 44, trace.Area, 1e-6);

        // Again is no loss; another file in its place is never touched.
        Assert.Equal(0, Command.Run("trace", file, "--layer", "edge", "--offset", "-3mm", "--dxf", made).Code);
        byte[] before = File.ReadAllBytes(made);
        Assert.Equal(2, Command.Run("trace", file, "--layer", "edge", "--offset", "-4mm", "--dxf", made).Code);
        Assert.Equal(before, File.ReadAllBytes(made));
        Assert.Equal(1, Command.Run("trace", file, "--layer", "edge", "--offset", "-30mm", "--dxf", scratch.Path("none.dxf")).Code);
        Assert.False(File.Exists(scratch.Path("none.dxf")));
    }

    [Fact]
    public void Without_a_unit_sizes_are_told_and_nothing_is_made()
    {
        using var scratch = new Scratch();
        string file = scratch.Write("plate.dxf", Drawn.File(Plate, header: "9 $ACADVER 1 AC1015"));
        Command.Ran ran = Command.Run("trace", file, "--json");
        Assert.Equal(0, ran.Code);
        Assert.Contains("drawing-unit-missing", ran.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("mmPerUnit", ran.Out, StringComparison.Ordinal);
        Assert.Equal(1, Command.Run("trace", file, "--offset", "3mm", "--dxf", scratch.Path("p.dxf")).Code);
        Assert.False(File.Exists(scratch.Path("p.dxf")));
        using JsonDocument inches = JsonDocument.Parse(Command.Run("trace", file, "--unit", "in", "--json").Out);
        Assert.Equal(2540, inches.RootElement.GetProperty("boxMm")[2].GetDouble(), 1e-6);
        Assert.Equal(2, Command.Run("trace", file, "--unit", "pt").Code);
    }

    [Fact]
    public void Crossing_outlines_stop_and_rubbish_is_unusable()
    {
        using var scratch = new Scratch();
        string bow = scratch.Write("bow.dxf", Drawn.File("0 LWPOLYLINE 8 0 90 4 70 1 10 0 20 0 10 100 20 50 10 100 20 0 10 0 20 50"));
        Command.Ran ran = Command.Run("trace", bow, "--json");
        Assert.Equal(1, ran.Code);
        Assert.Contains("outline-crosses-itself", ran.Out, StringComparison.Ordinal);
        Assert.Equal(1, Command.Run("trace", bow, "--offset", "3mm", "--dxf", scratch.Path("p.dxf")).Code);
        Assert.False(File.Exists(scratch.Path("p.dxf")));
        Assert.Equal(2, Command.Run("trace", scratch.Write("rubbish.dxf", "ceci n'est pas"), "--json").Code);
        Assert.Equal(2, Command.Run("trace", scratch.Path("missing.dxf"), "--json").Code);
        Assert.Equal(2, Command.Run("trace", scratch.Root).Code);
    }

    // Gaps are closed as asked: here 0.5 mm, with a line.
    [Fact]
    public void Gaps_are_closed_as_wide_as_asked()
    {
        using var scratch = new Scratch();
        string file = scratch.Write("gap.dxf", Drawn.File("0 LWPOLYLINE 8 0 90 4 70 0 10 0 20 0 10 100 20 0 10 100 20 50 10 0 20 0.5"));
        Command.Ran open = Command.Run("trace", file, "--json");
        Assert.Contains("trace-nothing-closed", open.Out, StringComparison.Ordinal);
        Assert.Contains("\"regions\": []", open.Out, StringComparison.Ordinal);
        using JsonDocument closed = JsonDocument.Parse(Command.Run("trace", file, "--gap", "0.6mm", "--json").Out);
        Assert.Equal(2525, closed.RootElement.GetProperty("netAreaMm2").GetDouble(), 1e-6);
        Assert.Equal(1, closed.RootElement.GetProperty("repairs").GetInt32());
    }

    // The least radius of an ellipse is b²/a, at the ends of its longer axis.
    [Fact]
    public void The_tightest_radius_of_an_ellipse_is_that_of_its_ends()
    {
        using var scratch = new Scratch();
        string file = scratch.Write("oval.dxf", Drawn.File(
            "0 CIRCLE 8 0 10 0 20 0 40 30 0 ELLIPSE 8 0 10 0 20 0 11 15 21 0 40 0.4 41 0 42 6.283185307179586"));
        using JsonDocument json = JsonDocument.Parse(Command.Run("trace", file, "--json").Out);
        JsonElement region = json.RootElement.GetProperty("regions")[0];
        Assert.Equal(36 / 15.0, region.GetProperty("tightestInsideRadiusMm").GetDouble(), 1e-6);

        // The ellipse is 12 wide where it is narrow, but widens to neither side of a slot there: it only bulges.
        Assert.False(region.TryGetProperty("narrowestSlotMm", out _));
    }

    // A block with a trough along its upper edge, y = x²/20, which has the radius 10 at its vertex; the corners beside it stand out. The trough is drawn in either direction,
    // and put in as it is or turned over.
    [Theory]
    [InlineData("1", "10 -10 20 5 10 0 20 -5 10 10 20 5")]
    [InlineData("1", "10 10 20 5 10 0 20 -5 10 -10 20 5")]
    [InlineData("-1", "10 -10 20 5 10 0 20 -5 10 10 20 5")]
    [InlineData("-1", "10 10 20 5 10 0 20 -5 10 -10 20 5")]
    public void The_tightest_radius_of_a_spline_is_exact_whatever_its_direction(string mirrored, string poles)
    {
        using var scratch = new Scratch();
        string file = scratch.Write("trough.dxf", Drawn.File(
            "0 INSERT 8 0 2 TROUGH 10 0 20 0 41 " + mirrored,
            "0 BLOCK 8 0 2 TROUGH 70 0 10 0 20 0 0 LWPOLYLINE 8 0 90 4 70 0 10 -10 20 5 10 -10 20 -20 10 10 20 -20 10 10 20 5 "
            + $"0 SPLINE 8 0 71 2 72 6 73 3 40 0 40 0 40 0 40 1 40 1 40 1 {poles} 0 ENDBLK"));
        using JsonDocument json = JsonDocument.Parse(Command.Run("trace", file, "--json").Out);
        JsonElement region = json.RootElement.GetProperty("regions")[0];
        Assert.Equal(10, region.GetProperty("tightestInsideRadiusMm").GetDouble(), 1e-6);

        // Upper edge of the material: the parabola at 20 wide; between its two sides nothing is narrower to both sides.
        Assert.Equal((25 * 20) - (20 * 5.0 * 2 / 3), region.GetProperty("areaMm2").GetDouble(), 0.01);
    }
}
