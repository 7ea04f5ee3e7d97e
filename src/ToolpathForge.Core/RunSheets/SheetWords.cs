using System.Collections.Immutable;
using System.Globalization;
using ToolpathForge.Clampings;
using ToolpathForge.Cutting;
using ToolpathForge.Findings;
using ToolpathForge.Jobs;
using ToolpathForge.Measures;

namespace ToolpathForge.RunSheets;

/// <summary>Small phrases that the sheet uses more than once.</summary>
internal static class SheetWords
{
    /// <summary>The cautions on every sheet: common practice; the manual of the machine and the marking on the bit come first.</summary>
    internal static ImmutableArray<string> Cautions { get; } =
    [
        "Eye and ear protection on: routers run at about 100 dBA, of which NIOSH allows 15 minutes a day unprotected.",
        "Dust extraction running and a mask that fits: wood dust causes cancer (IARC group 1), and that of treated wood and cedar harms more than most. Burn no treated waste.",
        "Hands stay off the bed while the spindle turns. Loose sleeves, gloves and hair stay away from an exposed cutter.",
        "Unplug the spindle before a hand touches bit or collet; switched off is not enough.",
        "The gantry pinches with the spindle still, too: hands, tools and cables stay out of its way while a program runs or waits. At a pause it goes on the moment start is pressed.",
        "Look for staples, brads, screws and stones in the stock and under the track before you start.",
        "By hand, feed against the cutter's rotation; a climb cut pulls the router away. Wait until the cutter stands still before you lift it off the work.",
        "Run the program once above the work, Z0 raised by the figure of its set-up, watching the clamps; then set the true zero.",
        "Stay at the stop button for the whole run, the last pass most of all: that is when pieces come loose. The manual of the machine and the marking on the bit overrule this sheet.",
        "An axis that stalls, slips or strikes something no longer knows where it is. Stop; touch X0, Y0 and Z0 off again before anything else runs.",
        "Fire: a dull bit, a bit that rubs and one that turns on the spot make embers, and dust smolders for hours. Have an extinguisher at hand, empty dust into a metal bin outside, and look at bed and extraction once more half an hour after the last cut.",
        "Afterwards switch the spindle off, wait till it stands, and unplug it before you clear the bed.",
        "Afterwards seal the end grain, and brush preservative on every fresh cut of treated wood and of wood that stands in the weather.",
        "A curve cut into a beam, joist or rafter takes strength from it. Local code and a licensed designer decide what may be cut where it carries load.",
    ];

    /// <summary>A small length with the digits that matter to a proof: thousandths of a millimetre, ten-thousandths of an inch.</summary>
    internal static string Fine(double millimetres, LengthUnit unit) => unit == LengthUnit.Inch
        ? string.Create(CultureInfo.InvariantCulture, $"{new Length(millimetres).Inches:0.0000} in")
        : string.Create(CultureInfo.InvariantCulture, $"{millimetres:0.000} mm");

    /// <summary>A length that is only estimated, in two digits, as "about 0.012 in"; below a ten thousandth of an inch or a thousandth of a millimeter as less than that.</summary>
    /// <param name="millimetres">At least 0, mm.</param>
    /// <param name="unit">The unit it is told in.</param>
    internal static string Estimated(double millimetres, LengthUnit unit)
    {
        (double value, double least, string suffix) = unit == LengthUnit.Inch ? (new Length(millimetres).Inches, 1e-4, "in") : (millimetres, 1e-3, "mm");
        if (value < least)
        {
            return string.Create(CultureInfo.InvariantCulture, $"less than {least:0.####} {suffix}");
        }

        double unitOfSecondDigit = Math.Max(least, Math.Pow(10, Math.Floor(Math.Log10(value)) - 1));
        return string.Create(CultureInfo.InvariantCulture, $"about {Math.Round(value / unitOfSecondDigit) * unitOfSecondDigit:0.####} {suffix}");
    }

    /// <summary>A feed.</summary>
    internal static string Feed(double millimetresPerMinute, LengthUnit unit) => QuantityText.Write(Quantity.Feed(millimetresPerMinute), unit);

    /// <summary>The bits of a program in the order of their use.</summary>
    internal static string Bits(CutPlan cut) => string.Join("; then ", cut.Works.Select(w => w.Path.Bit.Name));

    /// <summary>What lies on the bed, make by make.</summary>
    internal static string Makes(Clamping clamping) => clamping.IsShared
        ? string.Join(", ", clamping.Makes.Select(make => clamping.CountOf(make) == 1 ? make.Id : string.Create(CultureInfo.InvariantCulture, $"{clamping.CountOf(make)} of {make.Id}")))
        : Made(clamping, clamping.Make);

    private static string Made(Clamping clamping, Make make) => make switch
    {
        TrialMake => "a trial piece",
        PatternMake pattern => clamping.CountOf(make) == 1
            ? $"a pattern for {pattern.Board.Id}"
            : string.Create(CultureInfo.InvariantCulture, $"{clamping.CountOf(make)} patterns for {pattern.Board.Id}"),
        OutlineMake drawn => clamping.CountOf(make) == 1
            ? $"an outline drawn in {drawn.Drawing}"
            : string.Create(CultureInfo.InvariantCulture, $"{clamping.CountOf(make)} by an outline drawn in {drawn.Drawing}"),
        BoardEndMake end => clamping.CountOf(make) == 1
            ? $"an end of a {end.Board.Id} board"
            : string.Create(CultureInfo.InvariantCulture, $"ends of {end.Board.Id} boards, {clamping.CountOf(make)} at a time"),
        _ => throw new InvalidOperationException($"No words for a {make.GetType().Name}."),
    };

    /// <summary>How often a program is started, and how often it waits.</summary>
    internal static string Starts(Clamping clamping) => Times(clamping.Starts)
        + (clamping.Waits ? string.Create(CultureInfo.InvariantCulture, $", waiting {Times(clamping.Times - 1)} for the next board") : "");

    internal static string Times(int times) => times switch
    {
        1 => "once",
        2 => "twice",
        _ => string.Create(CultureInfo.InvariantCulture, $"{times} times"),
    };

    internal static string Time(double seconds) => seconds < 90
        ? string.Create(CultureInfo.InvariantCulture, $"{Math.Ceiling(seconds / 5) * 5:0} s")
        : string.Create(CultureInfo.InvariantCulture, $"{Math.Ceiling(seconds / 30) / 2:0.#} min");
}
