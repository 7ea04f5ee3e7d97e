using System.Collections.Immutable;
using System.Text;
using ToolpathForge.Geometry;

namespace ToolpathForge.Lettering;

/// <summary>
/// The project's own lettering: upright, single strokes of lines and arcs, as a calm hand letters a shop drawing. The same strokes are engraved,
/// drawn into pictures and written into drawings, so no font is needed anywhere.
/// Sizes are given as the height of a capital; small letters stand 0.66 of it, tails reach 0.28 below the baseline, a stacked fraction from 0.28 below to 1.28 above.
/// Strokes that must stay apart do so by at least a tenth of the height, so letters of 4 mm can be engraved with a 0.3 mm point.
/// </summary>
public static class StrokeAlphabet
{
    /// <summary>Height of a small x as a share of the capitals' height.</summary>
    public const double SmallHeight = 0.66;

    /// <summary>How far tails reach below the baseline as a share of the capitals' height.</summary>
    public const double TailDepth = 0.28;

    /// <summary>A pen this wide, as a share of the capitals' height, gives the lettering its intended colour.</summary>
    public const double PenShare = 0.09;

    /// <summary>Distance of baselines as a share of the capitals' height; leaves room for stacked fractions.</summary>
    public const double LineSpacing = 1.8;

    private const double FractionFigure = 0.64;
    private const double FractionGap = 0.14;
    private const double FractionMiddle = 0.5;
    private const double BarOverhang = 0.04;
    private const double FractionAir = 0.12;

    /// <summary>Every character that has a letter of its own, in order of code point. Fractions like ½ are built and not listed.</summary>
    public static IEnumerable<Rune> Characters => GlyphTable.Known;

    /// <summary>Width of a line of text from first to last ink, mm.</summary>
    /// <param name="text">What to set.</param>
    /// <param name="height">Height of a capital, mm, more than 0.</param>
    public static double WidthOf(string text, double height) => Write(text, height, Point2.Origin).Width;

    /// <summary>Sets one line of text. A line break counts as a character that the alphabet does not hold: split lines beforehand.</summary>
    /// <param name="text">What to set; a fraction like 3/8 is stacked.</param>
    /// <param name="height">Height of a capital, mm, more than 0.</param>
    /// <param name="at">A point of the baseline, mm.</param>
    /// <param name="align">Which point of the line <paramref name="at"/> is.</param>
    /// <param name="turn">Direction of the baseline, radians counter-clockwise from X.</param>
    /// <exception cref="ArgumentOutOfRangeException">A height that is not more than 0, or not finite.</exception>
    public static WrittenText Write(string text, double height, Point2 at, TextAlign align = TextAlign.Start, double turn = 0)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (!(height > 0 && double.IsFinite(height)))
        {
            throw new ArgumentOutOfRangeException(nameof(height), height, "A letter's height is more than 0.");
        }

        var line = new Line();
        line.Set(Fractions.Split(text));
        double width = Math.Max(0, line.InkEnd - line.InkStart);
        double origin = align switch
        {
            TextAlign.Middle => line.InkStart + (width / 2),
            TextAlign.End => line.InkStart + width,
            _ => line.InkStart,
        };

        var placement = new Placement(turn, at, false);
        var strokes = ImmutableArray.CreateBuilder<Contour>(line.Strokes.Count);
        Box2 box = Box2.Empty;
        foreach (Contour stroke in line.Strokes)
        {
            Contour placed = Scaled(stroke, height, -origin, 0).Placed(placement);
            strokes.Add(placed);
            box = box.Union(placed.Box);
        }

        return new WrittenText(text, strokes.MoveToImmutable(), width * height, box, [.. line.Unknown]);
    }

    /// <summary>Shifts by (<paramref name="dx"/>, <paramref name="dy"/>) in the stroke's own units, then scales; an evenly scaled arc keeps its bulge.</summary>
    private static Contour Scaled(Contour stroke, double scale, double dx, double dy)
    {
        var vertices = new Vertex[stroke.Vertices.Length];
        for (int i = 0; i < vertices.Length; i++)
        {
            Vertex v = stroke.Vertices[i];
            vertices[i] = new Vertex((v.X + dx) * scale, (v.Y + dy) * scale, v.Bulge);
        }

        return new Contour(vertices, stroke.IsClosed);
    }

    /// <summary>A line being set, in cap heights.</summary>
    private sealed class Line
    {
        private double _pen;
        private bool _inked;

        internal List<Contour> Strokes { get; } = [];

        internal List<Rune> Unknown { get; } = [];

        internal double InkStart { get; private set; }

        internal double InkEnd { get; private set; }

        internal void Set(List<Sort> sorts)
        {
            Rune? before = null;
            foreach (Sort sort in sorts)
            {
                if (sort.IsFraction)
                {
                    SetFraction(sort.Numerator, sort.Denominator);
                    before = null;
                    continue;
                }

                if (before is { } left)
                {
                    _pen += Kerning.Between(left, sort.Character);
                }

                SetLetter(sort.Character);
                before = sort.Character;
            }
        }

        private void SetLetter(Rune character)
        {
            Glyph? glyph = GlyphTable.Find(character);
            if (glyph is null)
            {
                glyph = GlyphTable.Unknown;
                if (!Unknown.Contains(character))
                {
                    Unknown.Add(character);
                }
            }

            double left = _pen + glyph.Before;
            foreach (Contour stroke in glyph.Strokes)
            {
                Strokes.Add(Scaled(stroke, 1, left, 0));
            }

            if (glyph.Strokes.Length > 0)
            {
                Ink(left, left + glyph.InkWidth);
            }

            _pen += glyph.Advance;
        }

        private void SetFraction(string numerator, string denominator)
        {
            var above = new Line();
            above.Set([.. numerator.EnumerateRunes().Select(r => new Sort(r))]);
            var below = new Line();
            below.Set([.. denominator.EnumerateRunes().Select(r => new Sort(r))]);
            double widest = Math.Max(above.InkEnd - above.InkStart, below.InkEnd - below.InkStart) * FractionFigure;
            double bar = widest + (2 * BarOverhang);
            double left = _pen + FractionAir;
            AddRow(above, left + (bar / 2), FractionMiddle + FractionGap);
            Strokes.Add(Contour.Polyline(new Point2(left, FractionMiddle), new Point2(left + bar, FractionMiddle)));
            AddRow(below, left + (bar / 2), FractionMiddle - FractionGap - FractionFigure);
            Ink(left, left + bar);
            _pen = left + bar + FractionAir;
        }

        private void AddRow(Line row, double middle, double baseline)
        {
            double rowMiddle = (row.InkStart + row.InkEnd) / 2;
            foreach (Contour stroke in row.Strokes)
            {
                Strokes.Add(Scaled(stroke, FractionFigure, (middle / FractionFigure) - rowMiddle, baseline / FractionFigure));
            }
        }

        private void Ink(double from, double to)
        {
            InkStart = _inked ? Math.Min(InkStart, from) : from;
            InkEnd = _inked ? Math.Max(InkEnd, to) : to;
            _inked = true;
        }
    }
}
