using System.Globalization;
using System.Text;
using CsCheck;
using ToolpathForge.Geometry;
using ToolpathForge.Tests.Geometry.Offsets;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Geometry.Cleaning;

public class CleaningFuzzTests
{
    /// <summary>Everything a result says, to the last digit.</summary>
    internal static string Written(CleanOutlines made)
    {
        var text = new StringBuilder();
        foreach (CleanContour c in made.Closed.Concat(made.Open))
        {
            text.Append(CultureInfo.InvariantCulture, $"{c.Contour.IsClosed} {c.Depth} {c.Parent} {c.IsSound} [{string.Join(',', c.Sources)}]");
            foreach (Vertex v in c.Contour.Vertices)
            {
                text.Append(CultureInfo.InvariantCulture, $" {v.X:R} {v.Y:R} {v.Bulge:R};");
            }

            text.Append('\n');
        }

        foreach (Repair r in made.Repairs)
        {
            text.Append(CultureInfo.InvariantCulture, $"{r.Kind} {r.At} {r.Size:R} [{string.Join(',', r.Sources)}]\n");
        }

        foreach (ToolpathForge.Findings.Finding f in made.Findings)
        {
            text.Append(CultureInfo.InvariantCulture, $"{f.Kind.Code} {f.Place} {f.Found} {f.Allowed} {string.Join(' ', f.Args)}\n");
        }

        return text.Append(string.Join(' ', made.Regions.Select(r => r.Area.ToString("R", CultureInfo.InvariantCulture)))).ToString();
    }

    /// <summary>The same pieces in another order, some walked the other way, closed ones begun elsewhere.</summary>
    internal static LoosePiece[] Stirred(LoosePiece[] pieces, Random random)
    {
        LoosePiece[] result = [.. pieces];
        random.Shuffle(result);
        for (int i = 0; i < result.Length; i++)
        {
            LoosePiece p = result[i];
            if (random.Next(2) == 0)
            {
                p = LoosePiece.Of(new Contour(p.Vertices.AsSpan(), p.IsClosed).Reversed(), p.Source);
            }

            if (p.IsClosed)
            {
                int first = random.Next(p.Vertices.Length);
                p = p with { Vertices = [.. p.Vertices[first..], .. p.Vertices[..first]] };
            }

            result[i] = p;
        }

        return result;
    }

    // Lines and arcs between the points of a small grid: everything meets everything in every way.
    private static LoosePiece[] Litter(Random random)
    {
        int count = 1 + random.Next(14);
        int side = 2 + random.Next(4);
        double noise = random.Next(3) switch { 0 => 0, 1 => 1e-5, _ => 0.004 };
        double[] bulges = [0, 0, 0, 1, -1, Math.Tan(Math.PI / 8), -Math.Tan(Math.PI / 8)];
        Point2 At() => new(random.Next(side) + (noise * random.NextDouble()), random.Next(side) + (noise * random.NextDouble()));
        var pieces = new LoosePiece[count];
        for (int i = 0; i < count; i++)
        {
            int vertices = random.Next(3) == 0 ? 2 + random.Next(5) : 2;
            pieces[i] = new LoosePiece(
                [.. Enumerable.Range(0, vertices).Select(_ => new Vertex(At(), bulges[random.Next(bulges.Length)]))], vertices > 2 && random.Next(2) == 0, i);
        }

        return pieces;
    }

    [Fact]
    public void Litter_is_cleaned_the_same_whatever_its_order_and_direction() =>
        Gen.Int[0, int.MaxValue].Sample(
            seed =>
            {
                var random = new Random(seed);
                LoosePiece[] litter = Litter(random);
                var options = new CleaningOptions { Gap = random.Next(3) switch { 0 => 0, 1 => 0.01, _ => 1.2 } };
                string once = Written(ContourCleaner.Clean(litter, options));
                Assert.Equal(once, Written(ContourCleaner.Clean(Stirred(litter, random), options)));
            },
            iter: LongRun.Iterations(400, 100_000));

    [Fact]
    public void A_shape_taken_apart_and_shaken_comes_together_again() =>
        Gen.Int[0, int.MaxValue].Sample(
            seed =>
            {
                var random = new Random(seed);
                Region shape = RandomShapes.Any(seed).Shape;
                double shake = random.Next(3) switch { 0 => 0, 1 => 2e-5, _ => 0.002 };
                List<LoosePiece> pieces = [];
                double perimeter = 0;
                foreach (Contour loop in shape.Loops)
                {
                    perimeter += loop.Length;
                    for (int i = 0; i < loop.SegmentCount; i++)
                    {
                        Segment s = loop[i];
                        Point2 Off() => new((random.NextDouble() - 0.5) * shake, (random.NextDouble() - 0.5) * shake);
                        pieces.Add(LoosePiece.Of(s with { Start = s.Start + Off(), End = s.End + Off() }, pieces.Count));
                    }
                }

                // Segments a few times the shake long may be told for doubled or turned round: that is another test's matter.
                if (shape.Loops.Any(l => Enumerable.Range(0, l.SegmentCount).Any(i => l[i].Chord < 0.05)))
                {
                    return;
                }

                CleanOutlines made = ContourCleaner.Clean(Stirred([.. pieces], random));
                Assert.Equal(shape.Loops.Length, made.Closed.Length);
                Assert.Empty(made.Open);
                Assert.Equal(shape.Area, made.Regions.Sum(r => r.Area), 1e-9 + (shake * perimeter));
                Assert.Equal(Region.Of(shape.Loops.AsSpan()).Loops.Count(l => l.IsCounterClockwise), made.Regions.Length);
            },
            iter: LongRun.Iterations(200, 20_000));
}
