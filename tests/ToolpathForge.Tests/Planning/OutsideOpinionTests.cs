using System.Text.Json;
using ToolpathForge.Clampings;
using ToolpathForge.Geometry;
using ToolpathForge.Planning;
using ToolpathForge.Shapes;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Planning;

/// <summary>Shapely's opinion on the sample's programs, beside our own proof's.</summary>
public class OutsideOpinionTests
{
    [Theory]
    [InlineData("rafter-tail")]
    [InlineData("beam-end")]
    [InlineData("purlin-end")]
    [InlineData("bracket")]
    public void Shapely_finds_no_more_than_the_proof(string name)
    {
        PlannedProgram program = SamplePlan.Program(name);
        Placed placed = program.Cut.Clamping.Pieces[0];
        const int Steps = 400;
        var rings = new List<double[]>();
        var edges = new List<double[]>();
        for (int i = 0; i < placed.Exact.Curves.Length; i++)
        {
            Curve curve = placed.Exact.Curves[i];
            for (int k = 0; k < (curve is LineCurve ? 1 : Steps); k++)
            {
                Point2 p = curve.PointAt((double)k / Steps);
                rings.Add([p.X, p.Y]);
            }

            for (int k = 0; k <= 100; k++)
            {
                Point2 p = curve.PointAt(k / 100.0);
                bool inTab = program.Cut.Tabs.Any(t => Math.Abs(t.Tab.Along.Dot(p - t.Tab.Center)) < t.Tab.Reach + 1 && p.DistanceTo(t.Tab.Center) < t.Tab.Reach + 1);
                if (placed.Piece.Roles[i] != EdgeRole.Existing && !inTab)
                {
                    edges.Add([p.X, p.Y]);
                }
            }
        }

        string input = JsonSerializer.Serialize(new
        {
            text = OutlineOnly(program.Text),
            radius = program.Cut.Path.Bit.Radius,
            bottom = program.Cut.Clamping.Stock.Bottom,
            top = program.Cut.Clamping.Stock.Top,
            rings,
            edges,
        });
        using JsonDocument said = JsonDocument.Parse(OutsideTool.Python("program_against_piece.py", input, "shapely"));

        // Chords of 0.0005 mm for the path, and a polygon of 400 chords a curve for the piece: sagitta c²κ/8, below 0.002 mm on these curves.
        const double Chords = 0.0025;
        Assert.InRange(said.RootElement.GetProperty("gouge").GetDouble(), double.NegativeInfinity, program.Proof.WorstGouge + Chords);
        Assert.InRange(said.RootElement.GetProperty("left").GetDouble(), double.NegativeInfinity, program.Proof.WorstLeftover + Chords);
        Assert.InRange(said.RootElement.GetProperty("gouge").GetDouble(), program.Proof.WorstGouge - Chords, double.PositiveInfinity);
    }

    // Marks and openings have their own checks; here only what the last bit does from the roughing on is looked at, after the program's head.
    private static string OutlineOnly(string text)
    {
        string[] lines = text.Split('\n');
        int rough = Array.FindIndex(lines, l => l.StartsWith("(Rough", StringComparison.Ordinal));
        int travel = Array.FindLastIndex(lines, rough, l => l.StartsWith("G0 Z", StringComparison.Ordinal));
        int head = Array.FindIndex(lines, l => l.StartsWith("G17", StringComparison.Ordinal));
        return string.Join('\n', [.. lines[..(head + 1)], .. lines[travel..]]);
    }
}
