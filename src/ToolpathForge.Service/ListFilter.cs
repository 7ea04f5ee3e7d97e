using System.Collections.Immutable;
using ToolpathForge.Catalogue;
using ToolpathForge.Findings;
using ToolpathForge.Measures;

namespace ToolpathForge.Service;

/// <summary>Which rows of a list are wanted, as the person wrote it. What is null does not choose.</summary>
/// <param name="Kind">Kind of bit or material.</param>
/// <param name="Diameter">Cutting diameter of a bit.</param>
/// <param name="Thickness">Thickness of lumber, or the measured thickness of a panel.</param>
/// <param name="Width">Width of lumber.</param>
public sealed record ListFilter(string? Kind, string? Diameter, string? Thickness, string? Width)
{
    /// <summary>The whole list.</summary>
    public static ListFilter None { get; } = new(null, null, null, null);

    /// <summary>The options that a list can be filtered by, without their dashes.</summary>
    /// <param name="list">One of <see cref="ListCatalogue.Kinds"/>.</param>
    public static ImmutableArray<string> OptionsOf(string list) => list switch
    {
        "bits" => ["kind", "diameter"],
        "materials" => ["kind"],
        "lumber" => ["thickness", "width"],
        "panels" => ["thickness"],
        _ => [],
    };

    /// <summary>The words that a kind may be; empty for a list without kinds.</summary>
    /// <param name="list">One of <see cref="ListCatalogue.Kinds"/>.</param>
    public static ImmutableArray<string> KindsOf(string list) => list switch
    {
        "bits" => BitKinds.Words,
        "materials" => ["softwood", "hardwood", "panel"],
        _ => [],
    };

    /// <summary>The options that are set, without their dashes, with their values.</summary>
    public IEnumerable<(string Option, string Value)> Set =>
        from option in ((string Name, string? Value)[])[("kind", Kind), ("diameter", Diameter), ("thickness", Thickness), ("width", Width)]
        where option.Value is not null
        select (option.Name, option.Value);

    internal RowFilter? Read(LengthUnit unit, ICollection<Finding> findings)
    {
        int before = findings.Count;
        var filter = new RowFilter(Kind, Size("diameter", Diameter), Size("thickness", Thickness), Size("width", Width));
        return findings.Count == before ? filter : null;

        double? Size(string option, string? text)
        {
            if (text is null)
            {
                return null;
            }

            Reading<Length> reading = MeasureText.ReadLength(text, unit);
            if (reading.IsRead)
            {
                return reading.Value.Millimetres;
            }

            findings.Add(reading.ToFinding(Place.None, "--" + option, text));
            return null;
        }
    }
}

/// <summary>A filter with its sizes read, mm.</summary>
internal sealed record RowFilter(string? Kind, double? Diameter, double? Thickness, double? Width)
{
    // Sizes that a caliper cannot tell apart are the same size.
    private const double Alike = 0.02;

    internal bool Takes(Bit row) => (Kind is null || BitKinds.WordOf(row.Kind) == Kind) && Is(row.Diameter, Diameter);

    internal bool Takes(Material row) => Kind is null || Kind == row.Kind switch
    {
        MaterialKind.Softwood => "softwood",
        MaterialKind.Hardwood => "hardwood",
        _ => "panel",
    };

    internal bool Takes(Lumber row) => Is(row.Thickness, Thickness) && Is(row.Width, Width);

    // A panel is asked for by what it is sold as, or by what has been measured.
    internal bool Takes(Panel row) =>
        Is(row.Nominal, Thickness) || (Thickness >= row.Thinnest - Alike && Thickness <= row.Thickest + Alike);

    private static bool Is(double size, double? wanted) => wanted is not { } w || Math.Abs(size - w) <= Alike;
}
