using ToolpathForge.Findings;
using ToolpathForge.Plugin.Contract;

namespace ToolpathForge.Service.Wire;

/// <summary>Numbers as they cross the wire.</summary>
internal static class WireNumber
{
    /// <summary>
    /// Six decimals: a nanometre, a hundredth of the finest increment that any dialect writes. It keeps 190.49999999999997 from showing how a double works.
    /// </summary>
    internal static double Rounded(double value) => Math.Round(value, 6, MidpointRounding.ToEven) + 0.0;

    /// <summary>The same; null for what has no number.</summary>
    internal static double? Known(double value) => double.IsFinite(value) ? Rounded(value) : null;

    internal static WireQuantity? Of(Quantity? quantity) =>
        quantity is { } q && double.IsFinite(q.Value) ? new WireQuantity { Value = Rounded(q.Value), Unit = UnitOf(q.Kind) } : null;

    private static string UnitOf(QuantityKind kind) => kind switch
    {
        QuantityKind.Length => "mm",
        QuantityKind.Angle => "deg",
        QuantityKind.Feed => "mm/min",
        QuantityKind.Speed => "rpm",
        QuantityKind.Area => "mm2",
        QuantityKind.Mass => "kg",
        QuantityKind.Force => "N",
        QuantityKind.Moment => "N.m",
        QuantityKind.Velocity => "m/s",
        _ => "1",
    };
}
