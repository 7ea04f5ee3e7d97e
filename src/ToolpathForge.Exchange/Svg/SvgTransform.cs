using ToolpathForge.Exchange.Reading;
using ToolpathForge.Geometry;

namespace ToolpathForge.Exchange.Svg;

/// <summary>Reads a list of transforms: matrix, translate, scale, rotate, skewX, skewY (SVG 1.1, 7.6), and the units that CSS lets angles and shifts have.</summary>
internal static class SvgTransform
{
    private const int MostArguments = 6;

    /// <summary>The mapping of a list, the last transform first; null when it cannot be read.</summary>
    internal static Affine? Read(string text)
    {
        Affine all = Affine.Identity;
        var scanner = new SvgScanner(text);
        scanner.Blanks();
        if (text.AsSpan().Trim().Equals("none", StringComparison.OrdinalIgnoreCase))
        {
            return all;
        }

        while (!scanner.IsAtEnd)
        {
            if (One(ref scanner) is not { } next)
            {
                return null;
            }

            all = all.Of(next);
            while (scanner.Comma())
            {
            }
        }

        return all;
    }

    private static Affine? One(ref SvgScanner scanner)
    {
        string name = scanner.Word().ToString();
        scanner.Blanks();
        if (scanner.Next != '(')
        {
            return null;
        }

        scanner.Skip();
        Span<double> a = stackalloc double[MostArguments];
        int count = 0;
        scanner.Blanks();
        while (scanner.Next != ')')
        {
            if (count == MostArguments || !scanner.Number(out a[count]) || !InPlainUnits(ref a[count], scanner.Word()))
            {
                return null;
            }

            count++;
            if (scanner.Comma() && scanner.Next == ')')
            {
                return null;
            }
        }

        scanner.Skip();
        return (name, count) switch
        {
            ("matrix", 6) => new Affine(new(a[0], a[1]), new(a[2], a[3]), new(a[4], a[5])),
            ("translate", 1) => Affine.Shift(a[0], 0),
            ("translate", 2) => Affine.Shift(a[0], a[1]),
            ("scale", 1) => Affine.Scale(a[0], a[0]),
            ("scale", 2) => Affine.Scale(a[0], a[1]),
            ("rotate", 1) => Turn(a[0]),
            ("rotate", 3) => Affine.Shift(a[1], a[2]).Of(Turn(a[0])).Of(Affine.Shift(-a[1], -a[2])),
            ("skewX", 1) => new Affine(new(1, 0), new(Tangent(a[0]), 1), default),
            ("skewY", 1) => new Affine(new(1, Tangent(a[0])), new(0, 1), default),
            _ => null,
        };
    }

    /// <summary>Angles in degrees, lengths in px.</summary>
    private static bool InPlainUnits(ref double value, ReadOnlySpan<char> unit)
    {
        double? factor = unit switch
        {
            "" or "deg" or "px" => 1,
            "rad" => 180 / Math.PI,
            "grad" => 0.9,
            "turn" => 360,
            "mm" or "cm" or "in" or "pt" or "pc" => new SvgLength(1, unit.ToString()).Of(0),
            _ => null,
        };
        value *= factor ?? 0;
        return factor is not null;
    }

    /// <summary>A turn from X to Y; exact at quarter turns.</summary>
    private static Affine Turn(double degrees)
    {
        (double sin, double cos) = (degrees % 360) switch
        {
            0 => (0, 1),
            90 or -270 => (1, 0),
            180 or -180 => (0, -1),
            270 or -90 => (-1, 0),
            double rest => Math.SinCos(rest * Math.PI / 180),
        };
        return new Affine(new(cos, sin), new(-sin, cos), default);
    }

    private static double Tangent(double degrees) => (degrees % 180) switch
    {
        0 => 0,
        45 or -135 => 1,
        -45 or 135 => -1,
        double rest => Math.Tan(rest * Math.PI / 180),
    };
}
