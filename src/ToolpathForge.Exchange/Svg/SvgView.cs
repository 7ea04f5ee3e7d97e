using ToolpathForge.Exchange.Reading;

namespace ToolpathForge.Exchange.Svg;

/// <summary>A viewBox: the piece of an element's own coordinates that fills the place it is given.</summary>
internal readonly record struct SvgView(double X, double Y, double Width, double Height)
{
    /// <summary>Reads the value of a viewBox; null for what is none, or has no size.</summary>
    internal static SvgView? Read(string text)
    {
        var scanner = new SvgScanner(text);
        Span<double> four = stackalloc double[4];
        scanner.Blanks();
        for (int i = 0; i < 4; i++)
        {
            if (!scanner.Number(out four[i]))
            {
                return null;
            }

            if (i < 3)
            {
                scanner.Comma();
            }
        }

        scanner.Blanks();
        return scanner.IsAtEnd && four[2] > 0 && four[3] > 0 ? new SvgView(four[0], four[1], four[2], four[3]) : null;
    }

    /// <summary>The mapping from the view to a place of a size with its corner at zero (SVG 1.1, 7.8: preserveAspectRatio); null when the way to fit it cannot be read.</summary>
    /// <param name="width">Width of the place.</param>
    /// <param name="height">Height of the place.</param>
    /// <param name="fit">The value of preserveAspectRatio; null for the usual, whole and in the middle.</param>
    internal Affine? Fit(double width, double height, string? fit)
    {
        string[] words = (fit ?? "").Split((char[])[' ', '\t', '\n', '\r'], StringSplitOptions.RemoveEmptyEntries);
        int first = words is ["defer", ..] ? 1 : 0;
        string align = words.Length > first ? words[first] : "xMidYMid";
        double sx = width / Width, sy = height / Height;
        if (align == "none")
        {
            return new Affine(new(sx, 0), new(0, sy), new(-X * sx, -Y * sy));
        }

        string how = words.Length > first + 1 ? words[first + 1] : "meet";
        if (align.Length != 8 || words.Length > first + 2 || how is not ("meet" or "slice") || Share(align[..4], 'x') is not { } alongX || Share(align[4..], 'Y') is not { } alongY)
        {
            return null;
        }

        double s = how == "meet" ? Math.Min(sx, sy) : Math.Max(sx, sy);
        return new Affine(new(s, 0), new(0, s), new(((width - (Width * s)) * alongX) - (X * s), ((height - (Height * s)) * alongY) - (Y * s)));
    }

    private static double? Share(string word, char axis) =>
        word[0] != axis ? null : word[1..] switch { "Min" => 0, "Mid" => 0.5, "Max" => 1, _ => null };
}
