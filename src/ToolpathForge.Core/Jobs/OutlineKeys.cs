using System.Collections.Immutable;
using ToolpathForge.Tables;

namespace ToolpathForge.Jobs;

/// <summary>The keys of a make that is cut by the outline of a drawing, and those by which a job names a drawing.</summary>
internal static class OutlineKeys
{
    /// <summary>What a job says of a drawing that it names.</summary>
    internal static ImmutableArray<Key> Drawing { get; } =
    [
        Key.Text("drawing", "The drawing: a file in the job's folder or below it, or @name for one that a CAD host sends with the job.", 200),
        Key.Text("layer", "The one layer to look at.", 250).ElseFrom("all that are seen"),
        Key.Choice("unit", "The unit it is drawn in, where it does not say so or says it wrong.", "mm", "cm", "dm", "m", "in", "ft", "yd")
            .ElseFrom("as the drawing says; where it says nothing, the job stops and asks"),
        Key.Length("gap", "Ends no farther apart than this are joined.", 0, 10).ElseFrom("0.01 mm"),
    ];

    /// <summary>A place of the drawing.</summary>
    internal static TableKeys OnEdge { get; } = new("a place",
    [
        Key.Length("x", "Along X of the drawing.", -100_000, 100_000),
        Key.Length("y", "Along Y of the drawing.", -100_000, 100_000),
    ]);

    /// <summary>An outline, with what all makes have in common.</summary>
    /// <param name="id">What a make is called.</param>
    /// <param name="kind">What is made.</param>
    /// <param name="stock">The panel.</param>
    /// <param name="cut">How it is cut.</param>
    /// <param name="clamp">A clamp.</param>
    internal static TableKeys Outline(Key id, Key kind, TableKeys stock, TableKeys cut, TableKeys clamp) => new("an outline",
    [
        id,
        kind,
        Key.Whole("count", "How many of each outline in the drawing.", 1, 500).Else("1"),
        .. Drawing,
        Key.Number("scale", "times", "How many times as large as drawn.", 0.001, 1000).Else("1"),
        Key.Flag("mirrored", "Whether it is cut as seen from behind, left and right changed over.").Else("false"),
        Key.Angle("turn", "By how much it is turned counter-clockwise on the blank, after mirroring.", -360, 360).Else("0 deg"),
        Key.Choice("turned", "How copies of one outline may be turned on the blank; several outlines share blanks as the panels table says.", "no", "half", "quarter").Else("no"),
        Key.Table("stock", "What it is cut from.", stock),
        Key.Row("bit", "bits", "The bit."),
        Key.Row("hole-bit", "bits", "The bit for everything within an outline.").ElseFrom("the bit of the make"),
        Key.Choice("openings", "What becomes of the wood in large openings: chips, or a piece of waste that tabs hold whole, so that smaller pieces of a shared blank may lie in it.", "chips", "held").Else("chips"),
        Key.Table("cut", "How it is to be cut, where you know better than the catalogue.", cut).ElseFrom("from bit, material and machine"),
        Key.Tables("clamp", "Clamps and other metal on the bed, one block for each: the bit goes over them, and never within 3 mm of them.", clamp, 1, 40).ElseFrom("none in the way"),
        Key.Table("lead", "Where the finish of an outline is to begin, in the drawing.", OnEdge).ElseFrom("where it marks least"),
        Key.Tables("tab", "Where tabs are to stand, in the drawing, one block for each; their number is then as many.", OnEdge, 1, 60).ElseFrom("spread over the straight edges"),
    ]);
}
