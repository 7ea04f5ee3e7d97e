using System.Diagnostics;
using CsCheck;
using ToolpathForge.Proof;

namespace ToolpathForge.Tests.Proof;

/// <summary>The proof's bounds: never below what dense sampling finds, and not far above it.</summary>
public class BoundTests
{
    [Fact]
    public void Farthest_from_cover_is_a_bound_and_a_tight_one()
    {
        Gen<double> offsets = Gen.Double[-3, 0];
        Gen.Select(DistanceTests.Parts.Array[1, 4], DistanceTests.Parts.Array[1, 8], offsets.Array[8]).Sample((parts, cover, offset) =>
        {
            var tree = new PartTree(cover, offset[..cover.Length]);
            const double accuracy = 1e-4;
            Farthest found = CoverSearch.Find(parts, tree, 0, accuracy);
            double sampled = 0, longest = 0;
            foreach (PathPart part in parts)
            {
                for (int i = 0; i <= 500; i++)
                {
                    PlanePoint q = part.PointAt(i / 500.0);
                    double there = double.PositiveInfinity;
                    for (int k = 0; k < cover.Length; k++)
                    {
                        there = Math.Min(there, Distances.Between(q, cover[k], out _) + offset[k]);
                    }

                    sampled = Math.Max(sampled, there);
                }

                longest = Math.Max(longest, part.Length);
            }

            Assert.InRange(found.Value, sampled - 1e-9, sampled + (longest / 1000) + accuracy + 1e-9);
            if (found.Value > accuracy)
            {
                double at = Enumerable.Range(0, cover.Length).Min(k => Distances.Between(found.At, cover[k], out _) + offset[k]);
                Assert.InRange(at, found.Value - (2 * accuracy) - 1e-9, found.Value + 1e-9);
            }
        }, iter: 400);
    }

    [Fact]
    public void Nearest_in_the_tree_is_the_nearest_of_all() =>
        Gen.Select(DistanceTests.Parts.Array[1, 60], DistanceTests.Parts, Gen.Double[-3, 0].Array[60]).Sample((cover, part, offset) =>
        {
            var tree = new PartTree(cover, offset[..cover.Length]);
            PlanePoint p = part.Start;
            int i = tree.NearestTo(p, -1, out double value);
            Assert.Equal(Enumerable.Range(0, cover.Length).Min(k => Distances.Between(p, cover[k], out _) + offset[k]), value, 1e-12);
            Assert.Equal(value, Distances.Between(p, cover[i], out _) + offset[i], 1e-12);
            double cutoff = double.PositiveInfinity;
            var nearest = default(Nearest);
            tree.NearestTo(part, part.Box, ref cutoff, ref nearest);
            Assert.Equal(Enumerable.Range(0, cover.Length).Min(k => Distances.Between(part, cover[k]).Value + offset[k]), cutoff, 1e-12);
            var near = new List<int>();
            tree.AddNear(part.Box, 1, near);
            Assert.Equal(near.Order(), near);
            Assert.All(Enumerable.Range(0, cover.Length).Where(k => Distances.Between(part, cover[k]).Value + offset[k] <= 1), k => Assert.Contains(k, near));
        }, iter: 500);

    /// <summary>Points of the path are shifted at random, so that the bit gouges here and leaves material there.</summary>
    [Theory]
    [InlineData(24, 0, 0, 1)]
    [InlineData(7, 0, 0, 1)]
    [InlineData(0, 200, 0, 1)]
    [InlineData(0, 60, 0, 1)]
    [InlineData(0, 60, 0.05, 2)]
    [InlineData(0, 60, 0.3, 3)]
    [InlineData(12, 0, 0.0005, 4)]
    public void Gouge_and_left_over_of_a_plate_bound_a_dense_sample(int arcs, int chords, double amplitude, int seed)
    {
        string text = EllipsePlate.Program(arcs, chords, nudge: (amplitude, seed)).Text;
        Target target = EllipsePlate.Target();
        ProofReport report = Prover.Prove(text, target);
        Assert.True(report.IsRead);

        var paths = new List<PathPart>();
        double gouge = 0;
        foreach (Motion motion in GcodeReader.Read(text).Steps.OfType<Motion>().Where(m => m.IsFeed))
        {
            new CutMotion(0, motion, null).AddAtOrBelow(paths, -HandWritten.Thickness);
            var below = new List<PathPart>();
            new CutMotion(0, motion, null).AddAtOrBelow(below, -target.Increment);
            foreach (PathPart part in below)
            {
                for (int i = 0; i <= 200; i++)
                {
                    PlanePoint p = part.PointAt(i / 200.0);
                    gouge = Math.Max(gouge, HandWritten.R - (EllipsePlate.Holds(p) ? 0 : EllipsePlate.DistanceToEdge(p)));
                }
            }
        }

        double left = 0;
        foreach (TargetEdge edge in EllipsePlate.Piece.Loops[0])
        {
            for (int i = 0; i <= 5000; i++)
            {
                PlanePoint q = edge.PointAt(i / 5000.0);
                left = Math.Max(left, paths.Min(p => Distances.Between(q, p, out _)) - HandWritten.R);
            }
        }

        // Sampling stands still for up to a fortieth of a millimetre of path, across which a distance changes by its square over twice the radius of the curve there.
        double sampling = amplitude > 0.01 ? 2e-3 : 2e-5;
        double slack = target.Tolerance / 50;
        Assert.InRange(report.WorstGouge, gouge - 1e-9, gouge + sampling + slack + 3e-4);
        Assert.InRange(report.WorstLeftover, left - 1e-9, left + sampling + slack + 3e-4);
        Assert.Equal(report.WorstGouge > target.Tolerance, report.Faults.Any(f => f.Code == FaultCodes.Gouge));
        Assert.Equal(report.WorstLeftover > target.Tolerance, report.Faults.Any(f => f.Code == FaultCodes.MaterialLeft));
    }

    /// <summary>Chords between points of the parallel curve: the deepest gouge is the sagitta of the flattest-lying chord, κ h² / 8 to first order.</summary>
    [Fact]
    public void Chords_gouge_by_their_rise()
    {
        const int n = 100;
        ProofReport report = Prover.Prove(EllipsePlate.Program(0, n).Text, EllipsePlate.Target());
        double rise = 0;
        for (int i = 0; i < n; i++)
        {
            PlanePoint a = EllipsePlate.OnParallel(Math.PI / 2 * i / n), b = EllipsePlate.OnParallel(Math.PI / 2 * (i + 1) / n);
            PlanePoint middle = a.Plus(b).Times(0.5);
            rise = Math.Max(rise, HandWritten.R - EllipsePlate.DistanceToEdge(middle));
        }

        Assert.InRange(report.WorstGouge, rise - 1e-4, rise + 2e-4);
        Assert.True(report.Passed);
    }

    /// <summary>Brief's aims: 300 motions in 5 ms, 20,000 motions against 20 pieces in 1 s. Held here with room for a busy machine; the figures are printed.</summary>
    [Fact]
    public void It_is_quick()
    {
        ITestOutputHelper output = TestContext.Current.TestOutputHelper!;
        string text = EllipsePlate.Program(0, 140).Text;
        Target target = EllipsePlate.Target();
        double best = double.PositiveInfinity;
        for (int i = 0; i < 30; i++)
        {
            long start = Stopwatch.GetTimestamp();
            Assert.True(Prover.Prove(text, target).Passed);
            best = Math.Min(best, Stopwatch.GetElapsedTime(start).TotalMilliseconds);
        }

        output.WriteLine($"one plate, {text.Count(c => c == '\n')} lines: {best:0.00} ms");
        Assert.InRange(best, 0, 100);
    }
}
