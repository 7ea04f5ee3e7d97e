using System.Globalization;
using System.Text;
using System.Text.Json;
using ToolpathForge.Geometry;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Geometry.Offsets;

/// <summary>Outside references: shapely for the distance of every piece from the shape, pyclipper for the area.</summary>
public class OffsetOutsideTests
{
    private const int Count = 2_000;
    private const double ArcTolerance = 1e-4;

    /// <summary>
    /// How finely pyclipper gets the arcs, mm: its time grows faster than the number of chords. One shape in eight comes as finely as shapely has them all, every one of them in the long run.
    /// </summary>
    private static double AreaChordError(int seed) => LongRun.IsOn || seed % 8 == 7 ? PolygonOracle.ChordError : 1e-3;

    [Fact]
    public void Random_shapes_agree_with_shapely_and_pyclipper()
    {
        var lines = new List<string>();
        var input = new StringBuilder();
        var results = new List<(Region Shape, double Distance, Region Result)>();
        for (int seed = 0; seed < Count; seed++)
        {
            (Region shape, double distance) = RandomShapes.Any(seed);
            OffsetResult offset = Offsetter.Closed(shape, distance);
            Assert.Null(offset.Unproven);
            Region result = offset.ToRegion();
            results.Add((shape, distance, result));
            input.AppendLine(JsonSerializer.Serialize(new
            {
                rings = shape.Loops.Select(static l => PolygonOracle.Chords(l).SkipLast(1).Select(static c => new[] { c.X, c.Y })),
                areaRings = shape.Loops.Select(l => PolygonOracle.Chords(l, AreaChordError(seed)).SkipLast(1).Select(static c => new[] { c.X, c.Y })),
                distance,
                arcTolerance = ArcTolerance,
                points = result.Loops.SelectMany(static l => Enumerable.Range(0, l.SegmentCount).SelectMany(i => new[] { l[i].PointAt(0), l[i].PointAt(0.37) })).Select(static p => new[] { p.X, p.Y }),
            }));
            if (seed % 250 == 249)
            {
                lines.AddRange(OutsideTool.Python("offset_check.py", input.ToString(), "shapely", "pyclipper").Split('\n', StringSplitOptions.RemoveEmptyEntries));
                input.Clear();
            }
        }

        Assert.Equal(Count, lines.Count);
        for (int k = 0; k < Count; k++)
        {
            (Region shape, double distance, Region result) = results[k];
            double[] found = [.. lines[k].Split(' ').Select(static t => double.Parse(t, CultureInfo.InvariantCulture))];
            if (!result.IsEmpty)
            {
                // The rings leave the shape by the chord error.
                double slack = PolygonOracle.ChordError + Accuracy.OffsetCheck;
                Assert.InRange(found[0], Math.Abs(distance) - slack, Math.Abs(distance) + slack);
                Assert.InRange(found[1], Math.Abs(distance) - slack, Math.Abs(distance) + slack);
            }

            // Area changes with distance by the boundary's length: chord error of the input, arc tolerance, and the whole numbers of a millionth it counts in.
            double boundary = shape.Loops.Concat(result.Loops).Sum(static l => l.Length);
            double allowed = boundary * (AreaChordError(k) + ArcTolerance + 2e-6);
            Assert.True(Math.Abs(found[2] - result.Area) <= allowed, FormattableString.Invariant($"seed {k}: area {result.Area}, pyclipper {found[2]}, allowed {allowed}"));
        }
    }
}
