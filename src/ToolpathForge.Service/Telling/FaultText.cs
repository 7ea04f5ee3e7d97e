using System.Globalization;
using ToolpathForge.Findings;
using ToolpathForge.Measures;
using ToolpathForge.Proof;

namespace ToolpathForge.Service.Telling;

/// <summary>A fault of a program in words.</summary>
internal static class FaultText
{
    /// <summary>
    /// What is so. The proof's own page says after a semicolon what the two numbers are; beside the numbers themselves that is left out.
    /// </summary>
    internal static string Says(Fault fault) => fault.Code.Meaning.Split(';')[0].TrimEnd('.') + ".";

    /// <summary>
    /// All in one line: <c>out/tail.nc:40: The tip goes lower than allowed. -0.0512 in, allowed -0.0118 in. (below-floor, on 106 lines)</c>.
    /// </summary>
    internal static string Line(Fault fault, string file, LengthUnit unit)
    {
        string line = fault.Line > 0 ? string.Create(CultureInfo.InvariantCulture, $":{fault.Line}") : "";
        string subject = fault.Subject is { Length: > 0 } about ? $" {about}:" : "";
        string found = Told(fault.Found, fault.Code.Unit, unit);
        string allowed = Told(fault.Allowed, fault.Code.Unit, unit);
        string numbers = (found.Length > 0, allowed.Length > 0) switch
        {
            (true, true) => $" {found}, allowed {allowed}.",
            (true, false) => $" {found}.",
            (false, true) => $" Allowed {allowed}.",
            _ => "",
        };
        string times = fault.Count > 1 ? string.Create(CultureInfo.InvariantCulture, $", on {fault.Count} lines") : "";
        return $"{file}{line}:{subject} {Says(fault)}{numbers} ({fault.Code.Name}{times})";
    }

    private static string Told(double? value, FaultUnit unit, LengthUnit worded) => value is not { } v ? "" : unit switch
    {
        FaultUnit.Length => PlanSections.Small(v, worded),
        FaultUnit.Feed => QuantityText.Write(Quantity.Feed(v), worded),
        FaultUnit.Speed => QuantityText.Write(Quantity.Speed(v), worded),
        FaultUnit.Angle => QuantityText.Write(Quantity.Angle(v), worded),
        FaultUnit.Time => string.Create(CultureInfo.InvariantCulture, $"{v:0.##} s"),
        _ => v.ToString("0", CultureInfo.InvariantCulture),
    };
}
