using System.Globalization;
using ToolpathForge.Plugin.Contract;

namespace ToolpathForge.Plugin.Conformance;

/// <summary>Tells whether two entities are the same but for rounding, and for what a host may write differently: an angle by whole turns, and an arc or line by its direction.</summary>
internal static class EntityComparison
{
    // What a host keeps as text with eight digits or so is still the same; a nanometre at a metre.
    private const double Tolerance = 1e-6;

    /// <summary>What differs first; null when nothing does.</summary>
    internal static string? Difference(IReadOnlyList<WireEntity>? found, IReadOnlyList<WireEntity> wanted)
    {
        if (found is null)
        {
            return "null instead of a list";
        }

        if (found.Count != wanted.Count)
        {
            return string.Format(CultureInfo.InvariantCulture, "{0} entities instead of {1}", found.Count, wanted.Count);
        }

        // Hosts need not keep their order.
        var left = new List<WireEntity>(found);
        foreach (WireEntity entity in wanted)
        {
            int match = left.FindIndex(e => e is not null && Same(e, entity) && string.Equals(e.Layer, entity.Layer, StringComparison.Ordinal));
            if (match < 0)
            {
                return left.Exists(e => e is not null && Same(e, entity))
                    ? "the " + entity.Kind + " on layer '" + entity.Layer + "' has another layer"
                    : "the " + entity.Kind + " on layer '" + entity.Layer + "' isn't there as it was given";
            }

            left.RemoveAt(match);
        }

        return null;
    }

    private static bool Same(WireEntity a, WireEntity b) => a.Kind == b.Kind && a.Kind switch
    {
        "line" => (Near(a.From, b.From) && Near(a.To, b.To)) || (Near(a.From, b.To) && Near(a.To, b.From)),
        "circle" => Near(a.Centre, b.Centre) && Near(a.Radius, b.Radius),
        "arc" => Near(a.Centre, b.Centre) && Near(a.Radius, b.Radius) && SameTurn(a, b),
        "ellipse" => Near(a.Centre, b.Centre) && Near(a.Major, b.Major) && Near(a.Ratio, b.Ratio) && SameTurn(a, b),
        "polyline" => Near(a.Points, b.Points) && (a.Closed ?? false) == (b.Closed ?? false) && Near(Bulges(a), Bulges(b)),
        "spline" => a.Degree == b.Degree && Near(a.Points, b.Points) && Near(a.Knots, b.Knots) && Near(Weights(a), Weights(b)),
        _ => false,
    };

    private static bool SameTurn(WireEntity a, WireEntity b)
    {
        (double aFrom, double aSweep) = Turn(a);
        (double bFrom, double bSweep) = Turn(b);
        double turns = (aFrom - bFrom) / 360;
        return Near(aSweep, bSweep) && (aSweep > 360 - Tolerance || Math.Abs(turns - Math.Round(turns)) < Tolerance);
    }

    // Counter-clockwise, whichever way it was written.
    private static (double From, double Sweep) Turn(WireEntity e)
    {
        double start = e.Start ?? 0;
        double sweep = e.Sweep ?? 360;
        return sweep < 0 ? (start + sweep, -sweep) : (start, sweep);
    }

    private static double[] Bulges(WireEntity e)
    {
        double[] all = e.Bulges ?? new double[e.Points!.Length];
        return e.Closed == true || all.Length == 0 ? all : [.. all.Take(all.Length - 1)];
    }

    private static double[] Weights(WireEntity e) => e.Weights ?? [.. e.Points!.Select(_ => 1.0)];

    private static bool Near(double? a, double? b) => a is { } x && b is { } y && Math.Abs(x - y) <= Tolerance * Math.Max(1, Math.Abs(y));

    private static bool Near(double[]? a, double[]? b) => a is not null && b is not null && a.Length == b.Length && a.Zip(b, (x, y) => Near(x, y)).All(near => near);

    private static bool Near(double[][]? a, double[][]? b) => a is not null && b is not null && a.Length == b.Length && a.Zip(b, (x, y) => Near(x, y)).All(near => near);
}
