using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using ToolpathForge.Cutting;
using ToolpathForge.Drawings;
using ToolpathForge.Geometry;

namespace ToolpathForge.Exchange.Toolpaths;

/// <summary>
/// Writes the ways of the bit's axis, seen from above, as SVG in mm at full size: a group a pass, named like the layers of the DXF, one path a move. What goes straight up
/// or down is left out.
/// </summary>
public static class ToolpathSvg
{
    private const double Margin = 5;

    /// <summary>Writes the passes.</summary>
    /// <param name="layers">Their layers.</param>
    public static string Write(ImmutableArray<PassLayer> layers)
    {
        Box2 box = layers.SelectMany(l => l.Parts).Aggregate(
            Box2.Empty, (all, p) => p.From.Flat == p.To.Flat ? all.Including(p.To.Flat) : all.Union(new Segment(p.From.Flat, p.To.Flat, p.Bulge).Box)).Grown(Margin);
        string N(double value) => (Math.Round(value, 6) + 0.0).ToString("0.######", CultureInfo.InvariantCulture);
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{N(box.Width)}mm\" height=\"{N(box.Height)}mm\" ")
            .Append(CultureInfo.InvariantCulture, $"viewBox=\"{N(box.MinX)} {N(-box.MaxY)} {N(box.Width)} {N(box.Height)}\" fill=\"none\" stroke-width=\"0.25\">\n");
        foreach (PassLayer layer in layers)
        {
            text.Append(CultureInfo.InvariantCulture, $"<g id=\"{layer.Name}\" stroke=\"{Colour(layer.Role)}\">\n");
            foreach (PathPart part in layer.Parts.Where(p => p.From.Flat != p.To.Flat))
            {
                // Y goes down in SVG, so that what turns left there is swept the negative way.
                string way = part.Bulge == 0
                    ? "L"
                    : string.Create(CultureInfo.InvariantCulture, $"A{N(Radius(part))} {N(Radius(part))} 0 0 {(part.Bulge > 0 ? 0 : 1)} ");
                text.Append(CultureInfo.InvariantCulture, $"<path d=\"M{N(part.From.X)} {N(-part.From.Y)}{way}{N(part.To.X)} {N(-part.To.Y)}\"/>\n");
            }

            text.Append("</g>\n");
        }

        return text.Append("</svg>\n").ToString();
    }

    private static double Radius(PathPart part) => new Segment(part.From.Flat, part.To.Flat, part.Bulge).Radius;

    private static string Colour(LineRole role) => role switch
    {
        LineRole.RapidPath => "#999999",
        LineRole.RampPath => "#c06000",
        LineRole.Engraving => "#2a7a2a",
        _ => "#1f5fa8",
    };
}
