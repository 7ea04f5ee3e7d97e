using ToolpathForge.Tables;

namespace ToolpathForge.Checks.Settings;

/// <summary>The options of a check without a job, as a command line writes them.</summary>
internal static class SettingsKeys
{
    private static readonly Key Bit = Key.Row("--bit", "bits", "The bit, an id of list bits; its words may stand in any order.");

    internal static TableKeys Machine { get; } = new("this check",
    [
        Bit,
        Key.Length("--depth", "From the stock's upper face to the lowest point of the bit.", 0.1, 500),
        Key.Row("--material", "materials", "What is cut, an id of list materials."),
        Key.Row("--machine", "machines", "On what, an id of list machines.").ElseFrom("desktop-400, or the machine of the job"),
        Key.Speed("--rpm", "Spindle speed.", 100, 60000).ElseFrom("a usual one"),
        Key.Feed("--feed", "Feed in the plane.", 1, 60000).ElseFrom("from speed and chip load"),
        Key.Feed("--plunge", "Feed downwards.", 1, 60000).ElseFrom("by the feed"),
        Key.Length("--pass-depth", "Depth of one pass.", 0.05, 200).ElseFrom("even passes within what is usual"),
        Key.Length("--stick-out", "How far the bit sticks out of the collet.", 1, 300).ElseFrom("as far as its grip allows"),
        Key.Length("--overcut", "How much of the depth is below the stock.", 0, 10).ElseFrom("none"),
        Key.Length("--spoilboard", "Thickness of the spoilboard below.", 1, 200).ElseFrom("not looked at"),
        Key.Length("--length", "Length of a board that hangs over the bed.", 10, 20000).ElseFrom("not looked at"),
        Key.Length("--width", "Its width.", 10, 1000).ElseFrom("not looked at"),
        Key.Length("--on-bed", "How much of its length lies on the bed.", 0, 20000).ElseFrom("not looked at"),
        Key.Number("--moisture", "%", "Moisture of that board: water to dry wood by mass; green or fresh treated ones hold about 100.", 0, 250).Else("19"),
        Key.Flag("--stand", "Whether a stand carries what hangs out.").Else("false"),
    ]);

    internal static TableKeys Hand { get; } = new("this check",
    [
        Bit,
        Key.Length("--board", "Thickness of the board.", 1, 300),
        Key.Length("--pattern", "Thickness of the pattern.", 0.5, 100).ElseFrom("none: the bearing runs on an edge"),
        Key.Length("--machined", "How deep an edge is cut already, from the upper face.", 0.5, 300).ElseFrom("none"),
        Key.Length("--depth", "The depth that you mean to set: the cutter's end below the router's base.", 0.5, 400).ElseFrom("what may be set is told"),
        Key.Length("--bushing", "Outside diameter of a guide bushing, used instead of a bearing.", 5, 100).ElseFrom("none"),
        Key.Length("--bushing-length", "How far the bushing stands out below the base.", 0.5, 50).ElseFrom("not looked at"),
        Key.Length("--inside-radius", "Smallest inside radius to follow.", 0.1, 10000).ElseFrom("not looked at"),
        Key.Length("--bite", "What the saw leaves outside the line.", 0, 100).ElseFrom("told what it may be"),
        Key.Length("--collet-height", "How far the collet stays above the base when the router is pushed down.", -50, 100).ElseFrom("0: flush with it"),
        Key.Flag("--may-hang", "Whether a bearing at the tip may hang out below its pattern.").Else("false"),
        Key.Choice("--end", "Where the end of the board lies, the profile edge towards you.", "right", "left").ElseFrom("nothing said about the grain"),
        Key.Angle("--lean", "How far the edge draws away from the board's length towards the tip.", -90, 90).Else("30 deg"),
        Key.Angle("--grain-slope", "Slope of the fibers against the board's length, added to the lean.", -45, 45).Else("0 deg"),
        Key.Speed("--rpm", "The speed that the router runs at.", 100, 60000).ElseFrom("told what it may be"),
        Key.Text(SettingsReader.Drawing, "Also write the section to scale to this file, as SVG.", 1000).ElseFrom("nothing is written"),
    ]);
}
