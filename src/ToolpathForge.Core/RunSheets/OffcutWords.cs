using System.Collections.Immutable;
using ToolpathForge.Clampings;
using ToolpathForge.Cutting;
using ToolpathForge.Drawings;
using ToolpathForge.Geometry;
using ToolpathForge.Lettering;
using ToolpathForge.Measures;

namespace ToolpathForge.RunSheets;

/// <summary>What stays of a panel, in words and in the pictures.</summary>
internal static class OffcutWords
{
    /// <summary>The offcuts of a plan's blank, the largest first.</summary>
    internal static ImmutableArray<Box2> Of(CutPlan cut) => Offcuts.Of(cut.Clamping, cut.Settings.TrackRoom(cut.Clamping.Make.Bit));

    /// <summary>Its two sides, rounded down to what a rule shows.</summary>
    internal static string Size(Box2 offcut, LengthUnit unit) =>
        $"{LengthText.Write(ShopText.Down(offcut.Width, unit), unit)} by {LengthText.Write(ShopText.Down(offcut.Height, unit), unit)}";

    /// <summary>Share of the blank that becomes pieces, in whole percent.</summary>
    internal static string UsedShare(Clamping clamping)
    {
        double used = clamping.Pieces.Sum(p => HeldWaste.Taken(p.Piece, p.Placement).Area) / (clamping.Stock.Box.Width * clamping.Stock.Box.Height);
        return FormattableString.Invariant($"{Math.Floor(used * 100):0} %");
    }

    /// <summary>Their outlines, and what they are.</summary>
    internal static IEnumerable<DrawingElement> Drawn(CutPlan cut)
    {
        foreach (Box2 offcut in Of(cut))
        {
            yield return new Stroke(LineRole.Construction, Contour.Rectangle(offcut));
            yield return new Text("offcut", offcut.Center, TextAlign.Middle, 2.2);
        }
    }

    /// <summary>Their outlines with their sizes, as far as these have room.</summary>
    /// <param name="cut">The plan.</param>
    /// <param name="unit">The unit of the sizes.</param>
    /// <param name="scale">mm of paper for 1 mm of the blank.</param>
    internal static IEnumerable<DrawingElement> Drawn(CutPlan cut, LengthUnit unit, double scale)
    {
        const double Height = 2.2;
        foreach (Box2 offcut in Of(cut))
        {
            yield return new Stroke(LineRole.Construction, Contour.Rectangle(offcut));
            string size = Size(offcut, unit);
            double room = StrokeAlphabet.WidthOf(size, Height) + Height;
            bool upright = offcut.Width * scale < room;
            if (Math.Max(offcut.Width, offcut.Height) * scale >= room)
            {
                yield return new Text(size, offcut.Center, TextAlign.Middle, Height, upright ? Math.PI / 2 : 0);
            }
        }
    }
}
