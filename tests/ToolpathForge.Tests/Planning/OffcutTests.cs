using System.Collections.Immutable;
using ToolpathForge.Clampings;
using ToolpathForge.Cutting;
using ToolpathForge.Geometry;
using ToolpathForge.Planning;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Planning;

/// <summary>What stays whole of a blank is told, and is whole.</summary>
public class OffcutTests
{
    private static readonly Lazy<Plan> s_family = new(() =>
        Planner.Plan(SamplePlan.Read(File.ReadAllText(Repo.Path("samples", "boathouse", "family.toml"))), cancel: CancellationToken.None));

    [Fact]
    public void No_track_enters_an_offcut_and_no_offcut_another()
    {
        foreach (PlannedProgram program in s_family.Value.Programs)
        {
            ImmutableArray<Box2> offcuts = Offcuts.Of(program.Cut.Clamping, program.Cut.Settings.TrackRoom(program.Cut.Clamping.Make.Bit));
            Assert.All(offcuts, o => Assert.True(o.Width >= Offcuts.Least && o.Height >= Offcuts.Least));
            Box2 stock = program.Cut.Clamping.Stock.Box;
            for (int i = 0; i < offcuts.Length; i++)
            {
                Box2 o = offcuts[i];
                Assert.True(o.MinX >= stock.MinX && o.MinY >= stock.MinY && o.MaxX <= stock.MaxX && o.MaxY <= stock.MaxY);
                Assert.All(offcuts.Skip(i + 1), other => Assert.False(o.Grown(-1e-6).Meets(other.Grown(-1e-6))));

                // The bit itself, wherever it cuts, seen from the moves and not from the outlines.
                foreach (BitWork work in program.Cut.Works.Where(w => w.Outline))
                {
                    Assert.All(
                        work.Path.Moves.Where(m => m.End.Z < program.Cut.Clamping.Stock.Top),
                        m => Assert.False(o.Grown(work.Path.Bit.Radius).Meets(new Box2(m.End.X, m.End.Y, m.End.X, m.End.Y))));
                }
            }
        }
    }

    [Fact]
    public void The_largest_offcut_is_as_large_as_trying_every_rectangle_finds()
    {
        PlannedProgram program = s_family.Value.Programs[3];
        double track = program.Cut.Settings.TrackRoom(program.Cut.Clamping.Make.Bit);
        Box2 largest = Offcuts.Of(program.Cut.Clamping, track)[0];
        Assert.True(largest.Width * largest.Height >= 0.97 * LargestByTrying(program.Cut.Clamping, track));
    }

    // Every rectangle of a 5 mm grid whose points, grown by the track, are clear of the pieces: from corner sums of a raster.
    private static double LargestByTrying(Clamping clamping, double track)
    {
        const double Step = 5;
        Region[] pieces = [.. clamping.Pieces.Select(p => Region.Of(ArcFit.Fit(p.Exact, 0.01).Contour))];
        Box2 stock = clamping.Stock.Box;
        int across = (int)(stock.Width / Step);
        int up = (int)(stock.Height / Step);
        int[,] sums = new int[across + 1, up + 1];
        for (int x = 0; x < across; x++)
        {
            for (int y = 0; y < up; y++)
            {
                Region cell = Region.Of(Contour.Rectangle(new Box2(x * Step, y * Step, (x + 1) * Step, (y + 1) * Step)));
                int taken = pieces.Any(p => !Spacing(p, cell, track)) ? 1 : 0;
                sums[x + 1, y + 1] = taken + sums[x, y + 1] + sums[x + 1, y] - sums[x, y];
            }
        }

        double most = 0;
        for (int x0 = 0; x0 < across; x0++)
        {
            for (int y0 = 0; y0 < up; y0++)
            {
                for (int x1 = x0 + 1; x1 <= across; x1++)
                {
                    for (int y1 = y0 + 1; y1 <= up && sums[x1, y1] - sums[x0, y1] - sums[x1, y0] + sums[x0, y0] == 0; y1++)
                    {
                        if ((x1 - x0) * Step >= Offcuts.Least && (y1 - y0) * Step >= Offcuts.Least)
                        {
                            most = Math.Max(most, (x1 - x0) * (y1 - y0) * Step * Step);
                        }
                    }
                }
            }
        }

        return most;
    }

    private static bool Spacing(Region piece, Region cell, double track) => ToolpathForge.Nesting.Spacing.IsKept(piece, cell, track);
}
