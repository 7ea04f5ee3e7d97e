using ToolpathForge.Exchange.Reading;
using ToolpathForge.Geometry;

namespace ToolpathForge.Exchange.Svg;

/// <summary>A length as a file writes it: a number and its unit.</summary>
/// <param name="Number">The number, finite.</param>
/// <param name="Unit">mm, cm, q, in, pt, pc; px for px and for a bare number; % for a share.</param>
internal readonly record struct SvgLength(double Number, string Unit)
{
    /// <summary>CSS ties its units to each other by this: 96 px are 1 in (CSS Values and Units, 6.2).</summary>
    internal const double PixelsAnInch = 96;

    /// <summary>One px by that, mm.</summary>
    internal const double Pixel = 25.4 / PixelsAnInch;

    /// <summary>Whether it has a size in the world.</summary>
    internal bool IsPhysical => Unit is not ("px" or "%");

    internal bool IsShare => Unit == "%";

    /// <summary>Millimetres in one of its unit; of a px what CSS says.</summary>
    internal double UnitMillimetres => Unit switch
    {
        "mm" => 1,
        "cm" => 10,
        "q" => 0.25,
        "in" => 25.4,
        "pt" => 25.4 / 72,
        "pc" => 25.4 / 6,
        _ => Pixel,
    };

    /// <summary>Units of the coordinates around it.</summary>
    /// <param name="whole">What a share is of.</param>
    internal double Of(double whole) => IsShare ? Number / 100 * whole : Unit == "px" ? Number : Number * UnitMillimetres / Pixel;

    /// <summary>The unit that a drawing with such a size is drawn in; null when it has none in the world.</summary>
    internal DrawingUnit? Stated => IsPhysical ? new DrawingUnit(Unit, UnitMillimetres) : null;

    /// <summary>Reads a length; null for what is none, and for units that depend on lettering or a screen.</summary>
    internal static SvgLength? Read(string text)
    {
        var scanner = new SvgScanner(text);
        scanner.Blanks();
        if (!scanner.Number(out double number))
        {
            return null;
        }

        string unit = scanner.Word().ToString().ToLowerInvariant();
        scanner.Blanks();
        bool known = unit is "" or "px" or "mm" or "cm" or "q" or "in" or "pt" or "pc" or "%";
        return known && scanner.IsAtEnd ? new SvgLength(number, unit is "" ? "px" : unit) : null;
    }
}

/// <summary>The size of the nearest view around an element, which shares of lengths are of, in the units within it.</summary>
internal readonly record struct SvgExtent(double Width, double Height)
{
    /// <summary>What shares of lengths that lie neither along X nor along Y are of (SVG 1.1, 7.10).</summary>
    internal double Diagonal => new Point2(Width, Height).Length / Math.Sqrt(2);
}
