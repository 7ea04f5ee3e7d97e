using ToolpathForge.Plugin.Contract;

namespace ToolpathForge.Plugin;

/// <summary>Crosses between a host's unit and the millimetres of the contract.</summary>
public static class HostUnit
{
    private const double Inch = 25.4;

    /// <summary>Millimetres in one of a unit; null for a word that names none.</summary>
    /// <param name="unit">See <see cref="ICadHost.Unit"/>. An inch is 25.4 mm exactly (international yard and pound agreement, 1959).</param>
    public static double? Millimetres(string unit) => unit switch
    {
        "mm" => 1,
        "cm" => 10,
        "dm" => 100,
        "m" => 1000,
        "in" => Inch,
        "ft" => 12 * Inch,
        "yd" => 36 * Inch,
        _ => null,
    };

    /// <summary>An entity, scaled about the origin and then moved. Angles, bulges, knots, weights and ratios stay as they are.</summary>
    /// <param name="entity">The entity, which is left as it is.</param>
    /// <param name="factor">How many times as large, more than 0.</param>
    /// <param name="dx">How far to the right, after scaling.</param>
    /// <param name="dy">How far up, after scaling.</param>
    public static WireEntity Scaled(WireEntity entity, double factor, double dx = 0, double dy = 0)
    {
        double[]? Point(double[]? p) => p is { Length: 2 } ? new[] { (p[0] * factor) + dx, (p[1] * factor) + dy } : p;
        return new WireEntity
        {
            Kind = entity.Kind,
            Layer = entity.Layer,
            From = Point(entity.From),
            To = Point(entity.To),
            Centre = Point(entity.Centre),
            Radius = entity.Radius * factor,
            Major = entity.Major is { Length: 2 } m ? new[] { m[0] * factor, m[1] * factor } : entity.Major,
            Ratio = entity.Ratio,
            Start = entity.Start,
            Sweep = entity.Sweep,
            Points = entity.Points?.Select(p => Point(p)!).ToArray(),
            Bulges = entity.Bulges,
            Closed = entity.Closed,
            Degree = entity.Degree,
            Knots = entity.Knots,
            Weights = entity.Weights,
        };
    }
}
