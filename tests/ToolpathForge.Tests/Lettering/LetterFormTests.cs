using System.Text;
using ToolpathForge.Geometry;
using ToolpathForge.Lettering;

namespace ToolpathForge.Tests.Lettering;

/// <summary>
/// What makes a letter readable once it is cut: its parts hang together, its bowls stay open, and nothing that must be apart closes up,
/// looked at as a picture and not through the notation that the letters are written in.
/// </summary>
public class LetterFormTests
{
    private const double Cell = 0.02;

    [Theory]
    [InlineData("CEFGHIJKLMNSTUVWXYZ", 1, 0)]
    [InlineData("ADOPR", 1, 1)]
    [InlineData("Q", 1, 1)]
    [InlineData("B", 1, 2)]
    [InlineData("cfhklmnrstuvwxyz", 1, 0)]
    [InlineData("abdegopq", 1, 1)]
    [InlineData("ij", 2, 0)]
    [InlineData("12357", 1, 0)]
    [InlineData("0469", 1, 1)]
    [InlineData("8", 1, 2)]
    [InlineData(".,-–/()[]<>+_·", 1, 0)]
    [InlineData("=:;\"!?≤≥±", 2, 0)]
    [InlineData("÷…", 3, 0)]
    [InlineData("°#", 1, 1)]
    [InlineData("⌀", 1, 2)]
    [InlineData("×←→↑↓↗↔↺↻", 1, 0)]
    [InlineData("%", 3, 2)]
    [InlineData("½", 3, 0)]
    [InlineData("¾", 3, 1)]
    [InlineData("\u2206", 1, 1)]
    public void Parts_and_open_bowls_as_engraved(string characters, int parts, int bowls)
    {
        foreach (Rune character in characters.EnumerateRunes())
        {
            // Engraved at 4 mm with a 0.3 mm point, and drawn with the pen meant for it.
            foreach (double pen in (double[])[0.075, StrokeAlphabet.PenShare])
            {
                (int Parts, int Bowls) seen = Look(StrokeAlphabet.Write(character.ToString(), 1, Point2.Origin), pen);
                Assert.True(seen == (parts, bowls), $"'{character}' at pen {pen}: {seen.Parts} parts and {seen.Bowls} bowls, not {parts} and {bowls}.");
            }
        }
    }

    [Fact]
    public void Strokes_of_a_letter_touch_or_stay_a_tenth_of_the_height_apart()
    {
        foreach (Rune character in StrokeAlphabet.Characters)
        {
            Contour[] strokes = [.. StrokeAlphabet.Write(character.ToString(), 1, Point2.Origin).Strokes];
            for (int i = 0; i < strokes.Length; i++)
            {
                for (int j = i + 1; j < strokes.Length; j++)
                {
                    double gap = Gap(strokes[i], strokes[j], 0.004);
                    Assert.True(gap is < 0.005 or > 0.0995, $"'{character}': strokes {i} and {j} are {gap:F3} apart.");
                }
            }
        }
    }

    [Fact]
    public void Neighbouring_letters_stay_a_tenth_of_the_height_apart()
    {
        const string Letters = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789.,:;'\"-/()×°+=";
        Dictionary<char, int> strokes = Letters.ToDictionary(c => c, c => StrokeAlphabet.Write(c.ToString(), 1, Point2.Origin).Strokes.Length);
        foreach (char left in Letters)
        {
            foreach (char right in Letters)
            {
                Contour[] both = [.. StrokeAlphabet.Write($"{left}{right}", 1, Point2.Origin).Strokes];
                double gap = double.PositiveInfinity;
                foreach (Contour a in both[..strokes[left]])
                {
                    foreach (Contour b in both[strokes[left]..])
                    {
                        // Far boxes need no closer look.
                        gap = a.Box.Grown(0.1).Meets(b.Box) ? Math.Min(gap, Gap(a, b, 0.04)) : gap;
                    }
                }

                Assert.True(gap > 0.0995, $"'{left}{right}': {gap:F3} apart.");
            }
        }
    }

    [Fact]
    public void Letters_stand_between_their_lines()
    {
        Assert.All("ABCDEFGHIJKLMNOPRSTUVWXYZ0123456789".ToCharArray(), c => Height(c, 0, 1));
        Assert.All("acemnorsuvwxz".ToCharArray(), c => Height(c, 0, StrokeAlphabet.SmallHeight));
        Assert.All("bdhkl".ToCharArray(), c => Height(c, 0, 1));
        Assert.All("gpqy".ToCharArray(), c => Height(c, -StrokeAlphabet.TailDepth, StrokeAlphabet.SmallHeight));
        Height('½', -0.28, 1.28);
    }

    [Fact]
    public void Round_letters_are_rings_of_arcs_that_run_on_without_a_corner()
    {
        foreach (char c in "Oo0°")
        {
            Contour ring = Assert.Single(StrokeAlphabet.Write(c.ToString(), 1, Point2.Origin).Strokes);
            Assert.True(ring.IsClosed);
            for (int i = 0; i < ring.SegmentCount; i++)
            {
                Assert.False(ring[i].IsLine);
                Point2 next = ring[(i + 1) % ring.SegmentCount].StartDirection;
                Assert.InRange(ring[i].EndDirection.DistanceTo(next), 0, 1e-9);
            }
        }
    }

    [Fact]
    public void Look_alikes_differ_by_more_than_a_tenth_of_the_height()
    {
        foreach (string pair in (string[])["Il", "I1", "l1", "O0", "S5", "Z2", "B8", "G6", "uv", "gq", "-–", "xx×"[1..]])
        {
            Contour[] a = [.. StrokeAlphabet.Write(pair[..1], 1, Point2.Origin).Strokes];
            Contour[] b = [.. StrokeAlphabet.Write(pair[1..], 1, Point2.Origin).Strokes];
            double apart = Math.Max(Farthest(a, b), Farthest(b, a));
            Assert.True(apart > 0.1, $"'{pair}' differ by no more than {apart:F3}.");
        }
    }

    private static void Height(char character, double low, double high)
    {
        Box2 box = StrokeAlphabet.Write(character.ToString(), 1, Point2.Origin).Box;
        Assert.True(Math.Abs(box.MinY - low) < 0.006 && Math.Abs(box.MaxY - high) < 0.006, $"'{character}' reaches from {box.MinY:F3} to {box.MaxY:F3}.");
    }

    private static IEnumerable<Point2> Points(Contour stroke, double step)
    {
        for (int i = 0; i < stroke.SegmentCount; i++)
        {
            int pieces = Math.Max(1, (int)Math.Ceiling(stroke[i].Length / step));
            for (int k = 0; k <= pieces; k++)
            {
                yield return stroke[i].PointAt((double)k / pieces);
            }
        }
    }

    private static double Gap(Contour a, Contour b, double step) => Math.Min(Points(a, step).Min(b.Distance), Points(b, step).Min(a.Distance));

    private static double Farthest(Contour[] from, Contour[] to) => from.SelectMany(s => Points(s, 0.02)).Max(p => to.Min(t => t.Distance(p)));

    /// <summary>Inks a grid with a round pen and counts inked parts and white areas that are shut in (both joined over edges, not corners).</summary>
    private static (int Parts, int Bowls) Look(WrittenText text, double pen)
    {
        Box2 box = text.Box.Grown(pen + (2 * Cell));
        int columns = (int)Math.Ceiling(box.Width / Cell);
        int rows = (int)Math.Ceiling(box.Height / Cell);
        var inked = new bool[columns, rows];
        for (int x = 0; x < columns; x++)
        {
            for (int y = 0; y < rows; y++)
            {
                var p = new Point2(box.MinX + ((x + 0.5) * Cell), box.MinY + ((y + 0.5) * Cell));
                inked[x, y] = text.Strokes.Any(s => s.Distance(p) <= pen / 2);
            }
        }

        var seen = new bool[columns, rows];
        int parts = 0;
        int whites = 0;
        for (int x = 0; x < columns; x++)
        {
            for (int y = 0; y < rows; y++)
            {
                // The sliver that a pen leaves in a sharp corner is no bowl: a white area counts from four cells on.
                if (!seen[x, y] && Flood(inked, seen, x, y) is int size && (inked[x, y] || size >= 4))
                {
                    _ = inked[x, y] ? parts++ : whites++;
                }
            }
        }

        return (parts, whites - 1);
    }

    private static int Flood(bool[,] inked, bool[,] seen, int x, int y)
    {
        bool ink = inked[x, y];
        var open = new Stack<(int X, int Y)>([(x, y)]);
        seen[x, y] = true;
        int size = 0;
        while (open.TryPop(out (int X, int Y) at))
        {
            size++;
            foreach ((int nx, int ny) in (ReadOnlySpan<(int, int)>)[(at.X + 1, at.Y), (at.X - 1, at.Y), (at.X, at.Y + 1), (at.X, at.Y - 1)])
            {
                if (nx >= 0 && ny >= 0 && nx < inked.GetLength(0) && ny < inked.GetLength(1) && !seen[nx, ny] && inked[nx, ny] == ink)
                {
                    seen[nx, ny] = true;
                    open.Push((nx, ny));
                }
            }
        }

        return size;
    }
}
