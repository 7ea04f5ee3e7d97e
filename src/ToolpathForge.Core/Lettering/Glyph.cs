using System.Text;
using ToolpathForge.Geometry;

namespace ToolpathForge.Lettering;

/// <summary>One letter: its strokes on a baseline, in cap heights, with its ink beginning at x = 0.</summary>
/// <param name="Strokes">In the order and direction of the pen.</param>
/// <param name="Before">Air kept free before the ink, cap heights.</param>
/// <param name="InkWidth">Width of the ink's centre line, cap heights.</param>
/// <param name="After">Air kept free after the ink, cap heights.</param>
internal sealed record Glyph(Contour[] Strokes, double Before, double InkWidth, double After)
{
    /// <summary>How far the next letter's origin lies beyond this one's.</summary>
    internal double Advance => Before + InkWidth + After;
}

/// <summary>
/// All letters by code point; see the tables of capitals, small letters, figures and signs. A letter's notation is read when the letter is first written:
/// a run that draws nothing pays nothing.
/// </summary>
internal static class GlyphTable
{
    private static readonly Dictionary<int, Lazy<Glyph>> s_all = Build();

    /// <summary>Stands for a character that the alphabet does not hold: an upright box.</summary>
    internal static Glyph Unknown { get; } = Make("0 0 L 0 100 L 56 100 L 56 0 Z", 'n', 'n');

    internal static IEnumerable<Rune> Known => s_all.Keys.Order().Select(code => new Rune(code));

    internal static Glyph? Find(Rune rune) => s_all.GetValueOrDefault(rune.Value)?.Value;

    private static Dictionary<int, Lazy<Glyph>> Build()
    {
        var all = new Dictionary<int, Lazy<Glyph>>();
        foreach ((string characters, string pen, string air) in (ReadOnlySpan<(string, string, string)>)
            [.. Capitals.Table, .. SmallLetters.Table, .. Figures.Table, .. Signs.Table])
        {
            var glyph = new Lazy<Glyph>(() => Make(pen, air[0], air[1]));
            foreach (Rune rune in characters.EnumerateRunes())
            {
                all.Add(rune.Value, glyph);
            }
        }

        // A space is air alone.
        foreach (char space in " \u00A0\u2002")
        {
            all.Add(space, new Lazy<Glyph>(new Glyph([], 0, 0.36, 0)));
        }

        foreach (char thin in "\u2009\u202F")
        {
            all.Add(thin, new Lazy<Glyph>(new Glyph([], 0, 0.12, 0)));
        }

        return all;
    }

    private static Glyph Make(string pen, char before, char after)
    {
        Contour[] strokes = PenNotation.Read(pen);
        Box2 ink = strokes.Aggregate(Box2.Empty, (box, s) => box.Union(s.Box));
        Contour[] shifted = [.. strokes.Select(s => s.Placed(Placement.At(-ink.MinX, 0)))];
        return new Glyph(shifted, Air(before), ink.Width, Air(after));
    }

    /// <summary>
    /// Air beside a letter by the form of its side: a stem (n) wants most, a bowl (o) less, a slanted or open side (v) least,
    /// so that the white between letters looks even.
    /// </summary>
    private static double Air(char side) => side switch
    {
        'n' => 0.17,
        'o' => 0.13,
        'v' => 0.08,
        _ => throw new FormatException($"'{side}' is no form of side."),
    };
}
