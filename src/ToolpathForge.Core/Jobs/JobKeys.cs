using System.Collections.Immutable;
using ToolpathForge.Shapes;
using ToolpathForge.Tables;

namespace ToolpathForge.Jobs;

/// <summary>The keys of a job file. The reader is driven by these, and so is the reference page in <c>samples/README.md</c>.</summary>
internal static class JobKeys
{
    internal const int MostMakes = 500;

    internal static TableKeys PanelStock { get; } = new("the stock of a pattern or outline",
    [
        Key.Row("panel", "panels", "The panel that it is cut from; its material comes with it."),
        Key.Length("thickness", "Thickness of the panel as measured on the sheet in hand; the nominal one is never taken.", 1, 60)
            .OrElse(JobFindings.ThicknessMissing),
        Key.Length("flatness", "How far the clamped sheet is from flat over the plate, as measured with a straightedge; a skin is left where no tab fits.", 0, 5)
            .ElseFrom("not measured: no skin is left unless the job asks for one"),
    ]);

    internal static TableKeys BoardStock { get; } = new("the stock of a board end",
    [
        Key.Row("material", "materials", "The timber."),
        Key.Length("thickness", "Thickness of the board as measured.", 3, 200).ElseFrom("the dressed thickness of the board"),
        Key.Length("length", "Length of the board.", 50, 10000),
        Key.Length("on-bed", "How much of its length lies on the bed, from the tip.", 50, 10000)
            .ElseFrom("its whole length, at most the machine's travel along X"),
        Key.Length("crown", "How far the reference edge bows between the board's ends, measured with a line; a crowned board lies askew at the fence.", 0, 100)
            .ElseFrom("not measured"),
        Key.Number("moisture", "%", "Moisture of the board by a meter, water to dry wood by mass: how heavy it is follows. Green boards and fresh treated ones hold about 100.", 0, 250)
            .ElseFrom("as the size of lumber is sold: 19, the most of what is sold as dry, or 100 where it is sold green"),
        Key.Angle("grain-slope", "Slope of the grain on the face that lies up, as 1:8 or an angle: positive where the fibers run towards the profile edge, going in from the tip.", -30, 30)
            .ElseFrom("straight grain"),
    ]);

    internal static TableKeys Plate { get; } = new("plate",
    [
        Key.Length("hold", "How far the plate goes on along the board past the curve.", 10, 1000).Else("4 in", "100 mm"),
        Key.Length("seat", "How far it reaches past the reference edge, to carry the guide block.", 5, 300).Else("1 1/2 in", "40 mm"),
        Key.Length("reach", "How far it reaches past the profile edge: at least 1/16 in past the widest board that is measured.", 1.5, 100).Else("1/2 in", "12 mm"),
        Key.Choice("turned", "How plates may be turned on the blank where more than one is made: they are then nested by their outline if the blank holds more so.", "no", "half", "quarter")
            .Else("no"),
        Key.Length("base", "How wide the router's base is: the plate then goes half of that past the ends of the curve, so that the router does not tip.", 40, 400)
            .ElseFrom("not looked at"),
        .. PlateKeys.All,
    ]);

    internal static TableKeys End { get; } = new("end",
    [
        Key.Length("allowance", "How far the raw end stands past the finished tip.", 0.5, 100).Else("1/8 in", "3 mm"),
        Key.Length("fence-room", "How far past the reference edge the bit may cut into a sacrificial, metal-free fence.", 0, 100)
            .ElseFrom("the bit's diameter and 3 mm"),
        Key.Flag("stand", "Whether a stand at bed height carries what hangs over the bed.").Else("false"),
        Key.Choice("waste", "What holds the wood that comes off: loose, nothing; screwed or clamped to the spoilboard; chips, it is cut to chips; sawn, it is sawn off beforehand.",
            "loose", "screwed", "clamped", "chips", "sawn").Else("loose"),
        Key.Length("saw-margin", "What sawing beforehand leaves outside the finished line, for the bit to take off.", 1, 25).Else("1/8 in", "3 mm"),
        Key.Flag("sawn-first", "Whether the end cuts are sawn to their line first; the bit then only goes over them, and the sheet lists the saw cuts.").Else("false"),
        Key.Length("finished-length", "Length of the finished board: from tip to tip with both ends, else from the tip to the other end.", 50, 10000)
            .ElseFrom("the board's length less what stands past each tip"),
        Key.Whole("abreast", "How many boards lie side by side on the bed, each with a stop of its own.", 1, 12).Else("1"),
        Key.Length("gap", "Room between boards that lie side by side.", 1, 200).ElseFrom("the bit's diameter and 4 mm, or what leaving the end cut takes"),
        Key.Choice("program", "What one program serves for: stack, every board of the make; width, the boards of one measured width.", "stack", "width").Else("stack"),
        Key.Choice("runs", "Each run of a batch is started by hand, or one program waits between them for the next board.", "started", "waiting").Else("started"),
    ]);

    /// <summary>Boards that measure alike.</summary>
    internal static TableKeys Measured { get; } = new("boards as measured",
    [
        Key.Text("name", "Your word for them, as chalked on the wood.", 20).ElseFrom("none"),
        Key.Whole("count", "How many.", 1, 500).Else("1"),
        Key.Length("width", "Width as measured at the end that is cut.", 10, 1000),
        Key.Length("thickness", "Thickness as measured.", 3, 200).ElseFrom("as the stock says"),
    ]);

    /// <summary>Boards that a pattern is for.</summary>
    internal static TableKeys MeasuredForPattern { get; } = new("boards that a pattern is for",
    [
        Key.Text("name", "Your word for them, as chalked on the wood.", 20).ElseFrom("none"),
        Key.Length("width", "Width as measured at the end that is cut.", 10, 1000),
        Key.Length("thickness", "Thickness as measured.", 3, 200).ElseFrom("the dressed thickness of the board"),
    ]);

    /// <summary>A clamp on the bed.</summary>
    internal static TableKeys Clamp { get; } = new("a clamp",
    [
        Key.Length("x", "Its side nearest to minus X, seen from the work zero.", -5000, 5000),
        Key.Length("y", "Its side nearest to minus Y, seen from the work zero.", -5000, 5000),
        Key.Length("length", "Its length along X.", 1, 2000),
        Key.Length("width", "Its width along Y.", 1, 2000),
        Key.Length("height", "Its height above the spoilboard.", 1, 300),
    ]);

    /// <summary>How boards are bought.</summary>
    internal static TableKeys Buying { get; } = new("buying",
    [
        Key.Texts("lengths", "Lengths of board that the yard sells, each as text with or without a unit.", 1, 12),
        Key.Length("kerf", "What one saw cut takes.", 0, 10).Else("1/8 in", "3 mm"),
        Key.Length("trim", "What is sawn off either end of a bought length.", 0, 200).Else("1/2 in", "12 mm"),
    ]);

    internal static TableKeys Cut { get; } = new("cut",
    [
        Key.Speed("speed", "Spindle speed.", 1000, 60000).ElseFrom("from bit, material and machine"),
        Key.Feed("feed", "Feed in the plane.", 20, 30000).ElseFrom("from the chip load that bit, material and machine allow"),
        Key.Feed("plunge", "Feed downwards.", 10, 10000).ElseFrom("from the feed, at most the machine's"),
        Key.Length("pass-depth", "Largest depth of one pass.", 0.1, 100).ElseFrom("from bit, material and machine"),
        Key.Length("allowance", "What roughing leaves on the finished edge.", 0, 10).ElseFrom("0.5 mm"),
        Key.Length("overcut", "How far below the stock the last pass goes, into the spoilboard.", 0, 5).ElseFrom("0.3 mm for a panel, 0.4 mm for a board"),
        Key.Choice("direction", "Which way round the finish goes; by-grain decides edge by edge.", "by-grain", "conventional", "climb")
            .ElseFrom("by-grain"),
        Key.Whole("tabs", "How many tabs hold the piece.", 3, 60).ElseFrom("by the length of the outline, three at least"),
        Key.Length("tab-length", "Length of a tab.", 1, 100).ElseFrom("8 mm"),
        Key.Length("tab-height", "Height of a tab above the underside of the stock.", 0.2, 30).ElseFrom("about a third of the thickness, 1 to 3 mm"),
        Key.Length("tab-spacing", "Largest distance between tabs along the outline.", 30, 2000).ElseFrom("250 mm"),
        Key.Choice("tab-form", "Ramped: the bit climbs and sinks on slopes. Square: straight up and down, for a bit that plunges.", "ramped", "square")
            .ElseFrom("ramped; square where ramps have no room and the bit plunges"),
        Key.Choice("slot", "How a slot as narrow as the bit is made easier: slow, a lower feed; wide, a second track beside the first.", "by-depth", "slow", "wide")
            .ElseFrom("by-depth: as it is up to one diameter deep, slow up to three, wide beyond"),
        Key.Length("skin", "Thickness left under the whole cut instead of tabs, for panels; cut it with a knife.", 0.2, 5)
            .ElseFrom("none; where no tab fits, twice the flatness and a little, if that is stated"),
    ]);

    /// <summary>A hole or slot.</summary>
    internal static TableKeys Opening { get; } = new("a hole or slot",
    [
        Key.Text("name", "Your word for it.", 30).ElseFrom("its number"),
        Key.Length("x", "Along the board from its finished tip to the middle of a hole, or to one end of a slot's center line.", -500, 10000),
        Key.Length("y", "Across the board from its reference edge; negative on the seat of a pattern.", -500, 1000),
        Key.Length("to-x", "The other end of a slot's center line.", -500, 10000).ElseFrom("x: a round hole"),
        Key.Length("to-y", "The other end of a slot's center line.", -500, 1000).ElseFrom("y: a round hole"),
        Key.Length("width", "Diameter of a hole, width of a slot, finished.", 0.5, 300),
        Key.Row("bit", "bits", "What it is cut with.").ElseFrom("the bit of the make"),
    ]);

    /// <summary>What is engraved.</summary>
    internal static TableKeys Marks { get; } = new("marks",
    [
        Key.Row("bit", "bits", "What engraves: a pointed bit, or a straight one no thicker than a sixth of the letters' height."),
        Key.Length("depth", "Depth of the strokes.", 0.05, 3).Else("1/64 in", "0.4 mm"),
        Key.Length("height", "Height of a capital.", 3, 60).Else("1/4 in", "6 mm"),
        Key.Flag("labels", "Whether job, size, hand, face up, arrows and the guide-block line are engraved.").Else("true"),
        Key.Texts("text", "Lines of your own, after the labels.", 0, 10).ElseFrom("none"),
        Key.Flag("date", "Whether a line is left to write the date on: the same job makes the same pattern on any day.").Else("false"),
    ]);

    /// <summary>A place near an edge.</summary>
    internal static TableKeys OnEdge { get; } = new("a place",
    [
        Key.Length("x", "Along the board from its finished tip.", -500, 10000),
        Key.Length("y", "Across the board from its reference edge.", -500, 1000),
    ]);

    /// <summary>Where the board bears.</summary>
    internal static Key BearsAt { get; } = Key.Length(
        "bears-at", "Along the board from its finished tip to the nearer side of what it bears on, so that you are told the depth left there.", 0, 10000)
        .ElseFrom("not looked at");

    /// <summary>What the maker of engineered timber allows.</summary>
    internal static Key MakerAllows { get; } = Key.Text(
        "maker-allows", "For engineered timber: what its maker or a licensed designer allows to be cut, and where that is written. It is printed on the sheet.", 200)
        .ElseFrom("nothing: engineered timber is refused");

    /// <summary>What a make is called.</summary>
    internal static Key Id { get; } = Key.Text("id", "Your word for it: letters, digits and hyphens, unique in the job; files are named after it.", 40);

    /// <summary>What is made.</summary>
    internal static Key Kind { get; } = Key.Choice(
        "kind",
        "What is made: a template plate from a panel, the profile cut straight into the end of a board, or a piece of panel cut by the outline of a drawing.",
        "pattern", "board-end", "outline");

    private static ImmutableArray<Key> CommonBefore { get; } =
    [
        Id,
        Kind,
        Key.Whole("count", "How many.", 1, 500).Else("1"),
        Key.Row("board", "lumber", "The size of lumber that the shape is drawn for."),
        FamilyReader.Family,
        Key.Length("design-width", "Width that the shape is scaled to, if it is a measured one.", 10, 1000).ElseFrom("the dressed width of the board"),
        BearsAt,
        MakerAllows,
    ];

    private static ImmutableArray<Key> CommonAfter { get; } =
    [
        Key.Row("bit", "bits", "The bit."),
        Key.Table("shape", "The shape: its kind, and an answer to each question of that kind.", new TableKeys("shape", [])),
        Key.Table("cut", "How it is to be cut, where you know better than the catalogue.", Cut).ElseFrom("from bit, material and machine"),
        Key.Tables("opening", "Holes and slots through the piece, one block for each.", Opening, 1, 100).ElseFrom("none"),
        Key.Tables("clamp", "Clamps and other metal on the bed, one block for each: the bit goes over them, and never within 3 mm of them.", Clamp, 1, 40).ElseFrom("none in the way"),
    ];

    internal static TableKeys Pattern { get; } = new("a pattern",
    [
        .. CommonBefore,
        Key.Table("stock", "What it is cut from.", PanelStock),
        .. CommonAfter,
        Key.Table("plate", "How far the plate reaches past the profile.", Plate).ElseFrom("the defaults of its keys"),
        Key.Table("marks", "What is engraved into the upper face.", Marks).ElseFrom("nothing is engraved"),
        Key.Table("hand", "The hand router that will follow the pattern: its depths are worked out and drawn.", HandKeys.Pattern).ElseFrom("not looked at"),
        Key.Tables("measured", "The boards that it is for, as measured, one block for each kind: the plate is never short of the widest.", MeasuredForPattern, 1, 200)
            .ElseFrom("all of the design width"),
        Key.Table("lead", "Where the finish of a plate is to begin.", OnEdge).ElseFrom("where it marks least"),
        Key.Tables("tab", "Where tabs are to stand, one block for each; their number is then as many.", OnEdge, 1, 60).ElseFrom("spread over the straight free edges"),
    ]);

    internal static TableKeys BoardEnd { get; } = new("a board end",
    [
        .. CommonBefore,
        Key.Table("stock", "The board.", BoardStock),
        .. CommonAfter,
        Key.Table("end", "What may be cut beyond the profile.", End).ElseFrom("the defaults of its keys"),
        Key.Table("hand", "The machine starts and a hand router finishes: for a board too thick for the machine's bit.", HandKeys.BoardEnd).ElseFrom("the machine cuts right through"),
        Key.Choice("ends", "Whether one end of each board gets the profile, or both.", "one", "both").Else("one"),
        Key.Tables("measured", "Boards as measured, one block for each kind, instead of count.", Measured, 1, 200).ElseFrom("as many as count says, all of the design width"),
    ]);

    internal static TableKeys Outline { get; } = OutlineKeys.Outline(Id, Kind, PanelStock, Cut, Clamp);

    /// <summary>Read when the kind is not known: everything that any kind takes.</summary>
    internal static TableKeys AnyMake { get; } = new("a make",
    [
        .. Pattern.Keys, .. BoardEnd.Keys.Where(k => Pattern.Find(k.Name) is null),
        .. Outline.Keys.Where(k => Pattern.Find(k.Name) is null && BoardEnd.Find(k.Name) is null),
    ]);

    internal static TableKeys Head { get; } = new("the head of the job",
    [
        Key.Whole("format", "Version of the job file's form.", 1, 1),
        Key.Text("name", "What you call the job; it stands on the run sheet and in the programs."),
        Key.Choice("unit", "Unit of every bare number in this file, and of what you are told.", "in", "mm"),
        Key.Length("tolerance", "Largest departure of the finished edge from the exact curve: fit, chords and rounding together.", 0.002, 1).Else("0.1 mm"),
        Key.Row("machine", "machines", "The machine."),
        Key.Row("dialect", "dialects", "The dialect of G-code that its programs are written in."),
        Key.Choice("zero", "Where Z is zero: bed, the top of the spoilboard, or top, the upper face of the stock.", "bed", "top").Else("bed"),
        Key.Length("clearance", "How far above the stock the bit travels between cuts.", 1, 100).Else("5 mm"),
        Key.Length("spoilboard", "Thickness of the spoilboard under the stock.", 3, 100).Else("18 mm"),
        Key.Texts("catalogues", "Your own catalogue files, beside the job; their rows go before the shipped ones.", 0, 20).ElseFrom("none"),
        Key.Table("buying", "How boards are bought; with it the sheet lists what to buy.", Buying).ElseFrom("no buying list"),
        Key.Table("panels", "How pieces are laid on panels.", PanelReader.Keys).ElseFrom("every make on blanks of its own"),
        Key.Table("trial", "What a trial piece has shown of bit and axes: programs make up for it.", TrialReader.Keys).ElseFrom("bit and axes are taken to be right"),
        Key.Tables("make", "What to make, one block for each.", AnyMake, 1, MostMakes),
    ]);

    /// <summary>The keys of a shape table: its kind, and the questions of that kind.</summary>
    internal static TableKeys ShapeTable(Shape? shape) => new(
        shape is null ? "shape" : $"shape '{shape.Id}'",
        [
            Key.Choice("kind", "Which shape.", [.. ShapeList.All.Select(s => s.Id)]),
            .. shape is null ? [] : shape.Questions.Select(KeyOf),
        ]);

    /// <summary>The keys of a part of a shape.</summary>
    internal static TableKeys PartTable(ShapePart? part, ImmutableArray<ShapePart> kinds) => new(
        part is null ? "part" : $"part '{part.Id}'",
        [
            Key.Choice("kind", "Which of these.", [.. kinds.Select(p => p.Id)]),
            .. part is null ? [] : part.Questions.Select(KeyOf),
        ]);

    private static Key KeyOf(Question question)
    {
        Key key = question.Kind switch
        {
            AnswerKind.Size => Key.Size(question.Key, question.Asks, question.Least, question.Most),
            AnswerKind.Angle => Key.Angle(question.Key, question.Asks, question.Least, question.Most),
            AnswerKind.Number => Key.Number(question.Key, question.Unit, question.Asks, question.Least, question.Most),
            AnswerKind.Length => Key.Length(question.Key, question.Asks, question.Least, question.Most),
            AnswerKind.Flag => Key.Flag(question.Key, question.Asks),
            AnswerKind.Text or AnswerKind.Drawing => Key.Text(question.Key, question.Asks, (int)question.Most),
            AnswerKind.Parts => Key.Tables(question.Key, question.Asks, PartTable(null, question.PartKinds), (int)question.Least, (int)question.Most),
            _ => Key.Choice(question.Key, question.Asks, question.Choices),
        };
        return question switch
        {
            { Default: { } written } => key.Else(written),
            { WithoutIt: { } says } => key.ElseFrom(says),
            _ => key,
        };
    }
}
