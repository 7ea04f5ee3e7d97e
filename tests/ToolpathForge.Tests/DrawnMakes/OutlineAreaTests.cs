using System.Text.Json;
using ToolpathForge.Clampings;
using ToolpathForge.Drawings;
using ToolpathForge.Exchange.Dxf;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;
using ToolpathForge.Planning;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.DrawnMakes;

/// <summary>Shapely's areas of what an outline's program takes and leaves, beside the drawing itself as ezdxf reads it; what is parallel to it is drawn, not offset.</summary>
public sealed class OutlineAreaTests
{
    private static readonly Contour[] s_holes =
    [
        FrameDrawing.Square(25, 20, 60, 40, 9), Contour.Circle(new Point2(125, 75), 14), new([new(100, 25, 0), new(140, 25, 1), new(140, 37, 0), new(100, 37, 1)], true),
    ];

    /// <summary>The outside, grown by an amount: the parallel of a rectangle with round corners is another one.</summary>
    private static Contour Outside(double by) => FrameDrawing.Square(-by, -by, 160 + (2 * by), 100 + (2 * by), 12 + by);

    private static string Dxf(params Contour[] drawn) => DxfWriter.Write([new DxfLayer("outline", LineRole.FinishedEdge, [], [.. drawn])]);

    [Theory]
    [InlineData("")]
    [InlineData("turn = 33\n")]
    [InlineData("mirrored = true\nturn = -90\n")]
    public void By_shapely_the_track_and_the_holes_are_taken_but_for_tabs_and_nothing_of_the_piece(string how)
    {
        JobReading reading = OutlineJobs.Read("drawing = '@part'\n" + how + OutlineJobs.Usual, [Outside(0), .. s_holes]);
        Plan plan = Planner.Plan(reading.Job!, cancel: CancellationToken.None);
        Assert.DoesNotContain(plan.Findings, f => f.Kind.Severity == Severity.Stop);
        PlannedProgram program = Assert.Single(plan.Programs);
        Assert.True(program.Proof.Passed);
        Assert.Equal(4, program.Cut.Tabs.Length);

        JsonElement said = Shapely(program, program.Cut.Path.Bit.Radius);
        double Of(string name) => said.GetProperty(name).GetDouble();
        double Rounded(double width, double height, double radius) => (width * height) - ((4 - Math.PI) * radius * radius);
        double area = Rounded(160, 100, 12) - Rounded(60, 40, 9) - (Math.PI * 14 * 14) - ((40 * 12) + (Math.PI * 36));
        Assert.Equal(area, Of("area"), Of("perimeter") * Of("sagitta"));
        Assert.InRange(Of("gouge"), 0, Of("perimeter") * (Of("sagitta") + program.Proof.WorstGouge));
        Assert.InRange(Of("left"), 0, Of("perimeter") * (Of("sagitta") + program.Proof.WorstLeftover));
        Assert.InRange(Of("beyond"), 0, Of("perimeter") * Of("sagitta"));

        // A bit 0.02 mm larger or smaller than the program is made for shows at once, by about the perimeter times half that.
        Assert.InRange(Shapely(program, program.Cut.Path.Bit.Radius + 0.01).GetProperty("gouge").GetDouble(), Of("perimeter") * 0.007, Of("perimeter") * 0.013);
        Assert.InRange(Shapely(program, program.Cut.Path.Bit.Radius - 0.01).GetProperty("left").GetDouble(), Of("perimeter") * 0.005, Of("perimeter") * 0.013);
    }

    private static JsonElement Shapely(PlannedProgram program, double radius)
    {
        Clamping clamping = program.Cut.Clamping;
        Placed placed = Assert.Single(clamping.Pieces);
        var make = (OutlineMake)clamping.Make;
        Placement place = placed.Placement.After(make.Laid);
        (Point2 x, Point2 y) = (place.Direction(new Point2(1, 0)), place.Direction(new Point2(0, 1)));
        string input = JsonSerializer.Serialize(new
        {
            text = program.Text,
            radius,
            bottom = clamping.Stock.Bottom,
            top = clamping.Stock.Top,
            drawing = Dxf([Outside(0), .. s_holes]),
            near = Dxf(Outside(program.Cut.Path.Bit.Radius)),
            far = Dxf(Outside(program.Cut.Settings.TrackRoom(clamping.Make.Bit))),
            place = new[] { x.X, y.X, x.Y, y.Y, place.Shift.X, place.Shift.Y },
            tabs = program.Cut.Tabs.Select(t => new[] { t.Tab.Center.X, t.Tab.Center.Y, t.Tab.Along.X, t.Tab.Along.Y, t.Tab.Reach }),
        });
        using JsonDocument said = JsonDocument.Parse(OutsideTool.Python("outline_area.py", input, "ezdxf", "shapely"));
        return said.RootElement.Clone();
    }
}
