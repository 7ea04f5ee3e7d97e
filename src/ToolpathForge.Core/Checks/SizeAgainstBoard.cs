using ToolpathForge.Findings;
using ToolpathForge.Jobs;
using ToolpathForge.Measures;
using ToolpathForge.Shapes;

namespace ToolpathForge.Checks;

/// <summary>Sizes of a profile that would suit its board if they were in the other unit: 7.5 mm where 7 1/2 in was meant.</summary>
internal static class SizeAgainstBoard
{
    internal static readonly FindingKind OtherUnit = new(
        "size-other-unit",
        Severity.Note,
        "{name} comes to {found} on a board {width} wide; in the other unit it would be {allowed}.",
        "If that was meant, write the unit behind the number. If the size is right as it is, nothing needs doing.");

    // Shares of the board's width (judgement): a curve is hardly ever so small or so large, and in the other unit it would be of a usual size.
    private const double Tiny = 0.06;
    private const double Huge = 5;
    private const double LeastUsual = 0.2;
    private const double MostUsual = 2.5;

    /// <summary>What is to be said about run and depth of a profile.</summary>
    /// <param name="make">The make.</param>
    /// <param name="profile">Its profile.</param>
    internal static IEnumerable<Finding> Find(ProfileMake make, Profile profile)
    {
        foreach ((string name, double size) in new[] { ("run", profile.Run), ("depth", profile.Depth) })
        {
            if (InOtherUnit(size, make.DesignWidth) is { } other)
            {
                yield return Finding.Of(
                    OtherUnit, make.At["shape." + name].OfMake(make.Id), Quantity.Length(size), Quantity.Length(other),
                    Arg.Of("name", name), Arg.Of("width", Quantity.Length(make.DesignWidth)));
            }
        }
    }

    private static double? InOtherUnit(double size, double width)
    {
        double other = size < Tiny * width ? size * Length.MillimetresPerInch : size > Huge * width ? size / Length.MillimetresPerInch : 0;
        return other >= LeastUsual * width && other <= MostUsual * width ? other : null;
    }
}
