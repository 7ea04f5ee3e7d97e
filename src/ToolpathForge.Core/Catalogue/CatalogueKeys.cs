using ToolpathForge.Tables;

namespace ToolpathForge.Catalogue;

/// <summary>The keys of a catalogue file: <c>shared/*.toml</c>, <c>postprocessors/*.toml</c> and the files a job names are all of this form.</summary>
internal static class CatalogueKeys
{
    private static readonly Key Id = Key.Text("id", "The word a job uses; a row of the user's with the id of another replaces it.", 40);
    private static readonly Key Name = Key.Text("name", "What a person calls it.");

    private static readonly Key Basis = Key.Choice(
        "basis",
        "How well founded the row is: published, common practice, a judgment, from memory, or the user's own.",
        "published",
        "practice",
        "judgment",
        "memory",
        "user");

    private static readonly Key Origin = Key.Text("source", "Where the row comes from, in words.", 300);

    internal static TableKeys Lumber { get; } = new("a [[lumber]] row",
    [
        Id,
        Name,
        Key.Length("thickness", "Dressed thickness.", 5, 500),
        Key.Length("width", "Dressed width.", 10, 1000),
        Key.Flag("engineered", "Whether it is engineered timber: laminated veneer or strands, glued or cross-laminated timber, an I-joist, part of a truss. A job for it must say what its maker allows.").Else("false"),
        Key.Number("moisture", "%", "Moisture at which it is sold: water to dry wood by mass. Weights of boards are worked out with it where a job does not say.", 0, 250).Else("19"),
        Basis,
        Origin,
    ]);

    internal static TableKeys Panel { get; } = new("a [[panel]] row",
    [
        Id,
        Name,
        Key.Row("material", "materials", "Its material."),
        Key.Length("nominal", "Nominal thickness, by which it is sold.", 1, 100),
        Key.Length("thinnest", "Thinnest that is to be expected; a job with less is warned.", 1, 100),
        Key.Length("thickest", "Thickest that is to be expected; a job with more is warned.", 1, 100),
        Basis,
        Origin,
    ]);

    internal static TableKeys Bit { get; } = new("a [[bit]] row",
    [
        Id,
        Name,
        Key.Choice("kind", "How the flutes are ground.", BitKinds.Words),
        Key.Choice("substance", "What it is made of.", "carbide", "steel"),
        Key.Length("diameter", "Cutting diameter.", 0.5, 100),
        Key.Length("flute-length", "Usable length of the cutting edges.", 1, 200),
        Key.Whole("flutes", "Number of cutting edges.", 1, 8),
        Key.Length("shank", "Diameter of the shank.", 2, 26),
        Key.Length("overall-length", "Tip to the end of the shank.", 10, 300),
        Key.Speed("max-speed", "Highest speed marked on it.", 1000, 60000),
        Key.Flag("can-plunge", "Whether it cuts at its center and may go straight down."),
        Key.Angle("ramp-angle", "Steepest ramp, from horizontal; 0 for a bit that cannot go down into solid stock at all.", 0, 90),
        Key.Length("up-cut-length", "Length of the up-cut part; compression bits only.", 0.5, 100).ElseFrom("no such part"),
        Key.Length("bearing-diameter", "Outside diameter of its bearing.", 3, 100).ElseFrom("no bearing"),
        Key.Length("bearing-height", "Length of the bearing along the shank.", 1, 30).ElseFrom("no bearing"),
        Key.Length("bearing-gap", "Between the bearing and the cutting edges.", 0, 10).ElseFrom("none"),
        Key.Angle("tip-angle", "Between opposite edges; V and chamfer bits only.", 10, 170).ElseFrom("no such angle"),
        Key.Length("edge-radius", "Of the rounding that it leaves; round-over bits only.", 0.5, 50).ElseFrom("no rounding"),
        Basis,
        Origin,
    ]);

    internal static TableKeys Chip { get; } = new("a chip band",
    [
        Key.Length("diameter", "Cutting diameter that the band is for.", 0.5, 100),
        Key.Length("least", "Least chip load, at a depth of one diameter; less rubs.", 0.001, 5),
        Key.Length("most", "Greatest chip load.", 0.001, 5),
    ]);

    internal static TableKeys Material { get; } = new("a [[material]] row",
    [
        Id,
        Name,
        Key.Choice("kind", "Timber with grain (softwood, hardwood) or a panel without.", "softwood", "hardwood", "panel"),
        Key.Number("density", "kg/m³", "Density: of timber at 12 % moisture, of panels as delivered.", 50, 1500),
        Key.Number("pass-depth", "× diameter", "Largest depth of one pass as a share of the bit's diameter.", 0.05, 3),
        Key.Angle("ramp-angle", "Steepest ramp, from horizontal.", 0.5, 45),
        Key.Number("cutting-force", "N/mm²", "Specific cutting force.", 1, 500),
        Key.Tables("chips", "What chip load a bit may take, by diameter, ascending; production machines.", Chip, 1, 12),
        Basis,
        Origin,
    ]);

    internal static TableKeys Machine { get; } = new("a [[machine]] row",
    [
        Id,
        Name,
        Key.Length("travel-x", "Travel along X.", 50, 5000),
        Key.Length("travel-y", "Travel along Y.", 50, 5000),
        Key.Length("travel-z", "Travel along Z.", 10, 1000),
        Key.Speed("min-speed", "Slowest spindle speed.", 1000, 60000),
        Key.Speed("max-speed", "Fastest spindle speed.", 1000, 60000),
        Key.Feed("max-feed", "Fastest feed in the plane.", 100, 60000),
        Key.Feed("max-plunge", "Fastest feed downwards.", 20, 30000),
        Key.Number("acceleration", "mm/s²", "Acceleration in the plane.", 10, 20000),
        Key.Number("pass-depth", "× diameter", "Largest depth of one pass that the frame stands, as a share of the bit's diameter.", 0.05, 3),
        Key.Number("chip-share", "share", "Share of a production machine's chip load that the frame stands.", 0.05, 1),
        Key.Number("stiffness", "N/mm", "Side stiffness of the frame at the bit.", 1, 10000),
        Key.Number("mass", "kg", "Mass, for tipping by an overhanging board.", 1, 5000),
        Key.Length("half-footprint", "From the middle to the edge it would tip over.", 20, 3000),
        Key.Length("opening", "Height under the gantry, from the bed: nothing thicker passes.", 10, 1000).ElseFrom("the travel along Z"),
        Key.Length("collet", "Thickest shank that its collet takes.", 2, 26).ElseFrom("any shank"),
        Key.Flag("homing", "Whether it finds its own limits."),
        Key.Flag("moving-bed", "Whether the bed moves; such a machine takes no overhanging board."),
        Key.Flag("switched-by-hand", "Whether the spindle is switched and set by hand."),
        Key.Flag("changes-bits", "Whether it changes bits by itself at a command; otherwise programs pause for every bit.").Else("false"),
        Key.Whole("dial-marks", "Highest number on the speed dial of a spindle set by hand; 1 is its slowest speed, and the marks between are even.", 2, 12)
            .ElseFrom("the sheet tells the speed alone"),
        Basis,
        Origin,
    ]);

    internal static TableKeys Dialect { get; } = new("a [[dialect]] row",
    [
        Id,
        Name,
        Key.Choice("unit", "Unit of every length in the program.", "mm", "in"),
        Key.Whole("decimals", "Decimals of straight moves.", 2, 6),
        Key.Whole("arc-decimals", "Decimals on lines that hold an arc; not fewer than decimals.", 2, 6),
        Key.Whole("feed-decimals", "Decimals of feeds.", 0, 3),
        Key.Choice("arcs", "How arcs are written: by center (I, J), by radius (R, at most a quarter turn a line), or not at all.", "centre", "radius", "lines"),
        Key.Choice("comments", "How comments are written.", "brackets", "semicolon", "none"),
        Key.Whole("line-number-step", "Step of line numbers; 0 for none.", 0, 100),
        Key.Flag("modal", "Whether words that have not changed are left out."),
        Key.Texts("header", "First lines; they set the unit (G20 or G21), G17, G90, G94 and one work offset (G54 to G59), and move nothing. After every stop these modes are stated again.", 1, 40),
        Key.Texts("footer", "Last lines; they stop the spindle (M5, where the program runs it), end with M2 or M30 and move nothing.", 1, 40),
        Key.Choice(
            "bit-change", "What happens where another bit is needed: a command (a pause on machines that do not change bits by themselves), a pause, or a program for each bit.", "command", "pause", "separate-programs"),
        Key.Texts("bit-change-lines", "Lines written at a bit change: M5 where the program runs the spindle, then M6 for a command or M0 for a pause, on a line after it.", 0, 40),
        Key.Texts("pause-lines", "Lines that make the program wait for the person, between boards and where a bit is changed by hand: M5 where the program runs the spindle, then M0 on a line after it.", 1, 40),
        Key.Texts("spindle-lines", "Lines that start the spindle; an empty list when it is switched by hand.", 0, 40),
        Key.Number("spindle-dwell", "s", "Seconds to wait for the spindle to come up to speed; 0 for none.", 0, 60),
        Key.Number("spindle-stop-dwell", "s", "Seconds from M5 until the bit stands still, waited before hands come near and at the end; time yours and add a little. 0 for a spindle that brakes at once.", 0, 120)
            .ElseFrom("10 s; 0 where the spindle is switched by hand"),
        Key.Text("dwell-word", "The line that waits, with {seconds} in it.", 60).ElseFrom("none; needed when a dwell is more than 0"),
        Key.Whole("longest-line", "Longest line, in characters.", 40, 256),
        Key.Choice("line-ending", "The characters that end a line.", "lf", "crlf"),
        Key.Text("file-ending", "The program file's ending, with its dot.", 10),
        Basis,
        Origin,
    ]);

    internal static TableKeys File { get; } = new("a catalogue file",
    [
        Key.Whole("format", "Version of this form.", 1, 1),
        Key.Choice("unit", "Unit of bare lengths and feeds in the file.", "in", "mm"),
        Key.Tables("lumber", "Dressed sizes of lumber.", Lumber, 0, 1000).ElseFrom("none"),
        Key.Tables("panel", "Panels.", Panel, 0, 1000).ElseFrom("none"),
        Key.Tables("bit", "Bits.", Bit, 0, 1000).ElseFrom("none"),
        Key.Tables("material", "Materials.", Material, 0, 1000).ElseFrom("none"),
        Key.Tables("machine", "Machines.", Machine, 0, 1000).ElseFrom("none"),
        Key.Tables("dialect", "Dialects of G-code.", Dialect, 0, 1000).ElseFrom("none"),
    ]);
}
