using ToolpathForge.Geometry;

namespace ToolpathForge.Benchmarks.Ratios;

/// <summary>Loose lines and arcs made into outlines.</summary>
internal static class CleaningFigures
{
    private const string Linear = "1 is linear";

    internal static IEnumerable<Func<Figure>> All()
    {
        yield return () => Growth("clean a gear taken apart, 1,000 to 100,000 pieces", 100, Loose(Shapes.Gear(1_000)), Loose(Shapes.Gear(100_000)));
        yield return () => Growth("clean circles in a row, 1,000 to 100,000 pieces", 100, Row(500), Row(50_000));
        yield return () => Growth("clean dashes with gaps, 1,000 to 100,000 pieces", 100, Dashes(1_000), Dashes(100_000));
    }

    private static Figure Growth(string name, double sizes, LoosePiece[] small, LoosePiece[] large) =>
        Pairs.Growth(name, Linear, 1.25, sizes, () => ContourCleaner.Clean(small), () => ContourCleaner.Clean(large));

    // Each segment a piece of its own, in an order and direction without sense.
    private static LoosePiece[] Loose(Contour contour)
    {
        var pieces = new LoosePiece[contour.SegmentCount];
        for (int i = 0; i < pieces.Length; i++)
        {
            pieces[i] = LoosePiece.Of((i & 1) == 0 ? contour[i] : contour[i].Reversed, i);
        }

        new Random(1).Shuffle(pieces);
        return pieces;
    }

    private static LoosePiece[] Row(int count) => [.. Enumerable.Range(0, count).SelectMany(i => Loose(Contour.Circle(new Point2(i * 3, i % 7), 1)))];

    // Lines of 1 end to end along a wave, each 0.005 from the next.
    private static LoosePiece[] Dashes(int count) =>
    [
        .. Enumerable.Range(0, count).Select(i => LoosePiece.Of(new Segment(Wave(i), Wave(i + 1) - ((Wave(i + 1) - Wave(i)).Unit() * 0.005)), i)),
    ];

    private static Point2 Wave(int i) => new(i, 20 * Math.Sin(i / 50.0));
}
