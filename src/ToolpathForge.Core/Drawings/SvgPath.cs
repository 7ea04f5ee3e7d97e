using System.Text;
using ToolpathForge.Geometry;

namespace ToolpathForge.Drawings;

/// <summary>
/// Path data on paper: millimetres, Y downwards, three decimals. Arcs and ellipses are written as arcs in pieces below half a turn,
/// so that their large-arc flag is always 0 and rounding cannot turn an arc into its complement.
/// </summary>
internal sealed class SvgPath(SheetPaper paper)
{
    private const double LongestPiece = Math.PI * 2 / 3;

    private readonly StringBuilder _data = new();
    private Counted _at;

    internal string Data => _data.ToString();

    internal void Add(Contour contour)
    {
        MoveTo(contour.Start);
        int count = contour.SegmentCount;
        for (int i = 0; i < count; i++)
        {
            Segment s = contour[i];
            if (s.IsLine)
            {
                // A closing line is drawn by Z.
                if (!(contour.IsClosed && i == count - 1))
                {
                    LineTo(s.End);
                }
            }
            else
            {
                int pieces = Math.Abs(s.Sweep) > LongestPiece ? 2 : 1;
                for (int k = 1; k <= pieces; k++)
                {
                    ArcTo(k == pieces ? s.End : s.PointAt((double)k / pieces), s.Radius, s.Radius, 0, s.Bulge > 0);
                }
            }
        }

        Close(contour.IsClosed);
    }

    internal void Add(Outline outline)
    {
        MoveTo(outline.Curves[0].Start);
        foreach (Curve curve in outline.Curves)
        {
            switch (curve)
            {
                case LineCurve line:
                    LineTo(line.To);
                    break;
                case ArcCurve arc:
                    AddArc(arc, arc.Radius, arc.Radius, 0, arc.Sweep, arc.Sweep > 0);
                    break;
                case EllipseCurve e:
                    bool counterClockwise = e.Major.Cross(e.Minor) > 0 == e.Sweep > 0;
                    AddArc(e, e.Major.Length, e.Minor.Length, e.Major.Angle, e.Sweep, counterClockwise);
                    break;
                default:
                    for (int i = 1; i <= CurveExtent.ChordsOfUnknownCurve; i++)
                    {
                        LineTo(curve.PointAt((double)i / CurveExtent.ChordsOfUnknownCurve));
                    }

                    break;
            }
        }

        Close(outline.IsClosed);
    }

    private void AddArc(Curve curve, double radiusX, double radiusY, double turn, double sweep, bool counterClockwise)
    {
        int pieces = Math.Max(1, (int)Math.Ceiling((Math.Abs(sweep) / LongestPiece) - 1e-9));
        for (int k = 1; k <= pieces; k++)
        {
            ArcTo(curve.PointAt((double)k / pieces), radiusX, radiusY, turn, counterClockwise);
        }
    }

    private void MoveTo(Point2 p)
    {
        _at = Count(p);
        _data.Append('M');
        Append(_at);
    }

    private void LineTo(Point2 p)
    {
        Counted to = Count(p);
        if (to == _at)
        {
            return;
        }

        _data.Append('L');
        Append(to);
        _at = to;
    }

    private void ArcTo(Point2 p, double radiusX, double radiusY, double turn, bool counterClockwise)
    {
        Counted to = Count(p);
        if (to == _at)
        {
            return;
        }

        _data.Append('A');
        SvgNumber.Append(_data, radiusX * paper.Scale);
        _data.Append(' ');
        SvgNumber.Append(_data, radiusY * paper.Scale);
        _data.Append(' ');

        // Paper's Y points down: a turn changes its sign, and what was counter-clockwise has the sweep flag 0.
        SvgNumber.Append(_data, -turn * 180 / Math.PI);
        _data.Append(counterClockwise ? " 0 0 " : " 0 1 ");
        Append(to);
        _at = to;
    }

    private void Close(bool closed)
    {
        if (closed)
        {
            _data.Append('Z');
        }
    }

    private void Append(Counted at)
    {
        SvgNumber.AppendCounted(_data, at.X);
        _data.Append(' ');
        SvgNumber.AppendCounted(_data, at.Y);
    }

    private Counted Count(Point2 p)
    {
        Point2 onPaper = paper.ToPaper(p);
        return new Counted(SvgNumber.Count(onPaper.X), SvgNumber.Count(paper.Height - onPaper.Y));
    }

    /// <summary>A point in thousandths of a millimetre.</summary>
    private readonly record struct Counted(long X, long Y);
}

/// <summary>Numbers as counts of thousandths: no culture, no exponent, no minus zero.</summary>
internal static class SvgNumber
{
    private const int Steps = 1000;

    internal static long Count(double value) => (long)Math.Round(value * Steps, MidpointRounding.AwayFromZero);

    internal static void Append(StringBuilder text, double value) => AppendCounted(text, Count(value));

    internal static string Format(double value)
    {
        var text = new StringBuilder();
        Append(text, value);
        return text.ToString();
    }

    internal static void AppendCounted(StringBuilder text, long count)
    {
        if (count < 0)
        {
            text.Append('-');
            count = -count;
        }

        text.Append(System.Globalization.CultureInfo.InvariantCulture, $"{count / Steps}");
        long rest = count % Steps;
        if (rest == 0)
        {
            return;
        }

        text.Append('.').Append((char)('0' + (rest / 100)));
        if (rest % 100 != 0)
        {
            text.Append((char)('0' + (rest / 10 % 10)));
            if (rest % 10 != 0)
            {
                text.Append((char)('0' + (rest % 10)));
            }
        }
    }
}
