using System.Globalization;
using ToolpathForge.Exchange.Reading;
using ToolpathForge.Findings;

namespace ToolpathForge.Exchange.Svg;

/// <summary>Where the outermost coordinates of a drawing lie, X to the right and Y up from the lower left corner of its picture, and what one of them measures.</summary>
/// <param name="Map">From its coordinates to mm; to units of its own when it has no size in the world.</param>
/// <param name="Unit">The unit of its coordinates, as it states it or as the caller says; null when neither does.</param>
/// <param name="Around">What shares of lengths are of.</param>
internal sealed record SvgFrame(Affine Map, DrawingUnit? Unit, SvgExtent Around)
{
    /// <summary>Two units nearer to each other than this, as a share, are one: files write sizes with six digits and more.</summary>
    private const double SameUnit = 1e-9;

    /// <summary>Whether lengths with a unit of their own come out at just that size.</summary>
    internal bool IsInPixels => Unit is { } unit && Same(unit.Millimetres, SvgLength.Pixel);

    /// <summary>Reads the size and the view of the outermost element.</summary>
    internal static SvgFrame Of(SvgNode root, ReadingBook book, DrawingUnit? given)
    {
        SvgView? view = null;
        bool lost = false;
        if (root["viewBox"] is { } text)
        {
            view = SvgView.Read(text);
            if (view is null)
            {
                // Without it nobody knows what the size of the picture is the size of.
                lost = true;
                Unusable(root, "viewBox", book);
            }
        }

        SvgLength? w = Size(root, "width", book), h = Size(root, "height", book);
        bool physical = !lost && (w is { IsPhysical: true } || h is { IsPhysical: true });

        // In mm when any size is in the world, else in units of the drawing.
        double of = physical ? SvgLength.Pixel : 1;
        double? width = Plain(w, of), height = Plain(h, of);
        Affine map = Affine.Scale(of, of);
        if (view is { } v)
        {
            double placeWide = width ?? (height * v.Width / v.Height) ?? v.Width, placeHigh = height ?? (width * v.Height / v.Width) ?? v.Height;
            Affine? fitted = v.Fit(placeWide, placeHigh, root["preserveAspectRatio"]);
            if (fitted is null)
            {
                Unusable(root, "preserveAspectRatio", book);
            }

            map = fitted ?? v.Fit(placeWide, placeHigh, null)!.Value;
            height = placeHigh;
        }

        double one = map.X.X;
        DrawingUnit? stated = physical ? Named(one, w is { IsPhysical: true } ? w.Value : h!.Value) : null;
        if (given is not null && stated is not null && !Same(given.Millimetres, stated.Millimetres))
        {
            book.Tell(Finding.Of(ReadingFindings.UnitOverruled, book.At(0), Arg.Of("text", stated.Name), Arg.Of("key", given.Name)));
        }

        if (given is not null || stated is null)
        {
            double size = given?.Millimetres ?? 1;
            map = new Affine(new(size, 0), new(0, size * (map.Y.Y / one)), map.Zero / one * size);
            height = height / one * size;
        }

        var around = view is { } seen
            ? new SvgExtent(seen.Width, seen.Height)
            : new SvgExtent(Plain(w, SvgLength.Pixel) / SvgLength.Pixel ?? double.NaN, Plain(h, SvgLength.Pixel) / SvgLength.Pixel ?? double.NaN);
        return new SvgFrame(new Affine(new(1, 0), new(0, -1), new(0, height ?? 0)).Of(map), given ?? stated, around);
    }

    private static SvgLength? Size(SvgNode root, string name, ReadingBook book)
    {
        string? text = root.Property(name);
        if (text is null || text.AsSpan().Trim() is "auto")
        {
            return null;
        }

        if (SvgLength.Read(text) is { Number: > 0 } length)
        {
            return length;
        }

        Unusable(root, name, book);
        return null;
    }

    /// <summary>A size in units of so many mm; a share of the screen is none.</summary>
    private static double? Plain(SvgLength? length, double pixel) => length is not { IsShare: false } l ? null
        : l.IsPhysical && pixel != 1 ? l.Number * l.UnitMillimetres
        : l.Of(0) * pixel;

    /// <summary>The unit of a size in mm: a known one, or so many of the one that the file is written in.</summary>
    private static DrawingUnit Named(double millimetres, SvgLength written)
    {
        foreach (string name in (ReadOnlySpan<string>)["mm", "cm", "in", "px", "pt"])
        {
            double known = new SvgLength(1, name).UnitMillimetres;
            if (Same(known, millimetres))
            {
                return new DrawingUnit(name, millimetres);
            }
        }

        double count = millimetres / written.UnitMillimetres;
        return new DrawingUnit(string.Create(CultureInfo.InvariantCulture, $"{count:G6} {written.Unit}"), millimetres);
    }

    private static bool Same(double a, double b) => Math.Abs(a - b) <= SameUnit * b;

    private static void Unusable(SvgNode root, string key, ReadingBook book) =>
        book.Repair(RepairFindings.ValueUnusable, root.Line, Arg.Of("what", root.Shown), Arg.Of("key", key), Arg.Of("text", $"'{SvgNode.Told(root.Property(key) ?? "")}'"));
}
