using ToolpathForge.Findings;

namespace ToolpathForge.Checks.Settings;

/// <summary>What can be wrong with settings at the machine that no other check speaks of.</summary>
internal static class SettingFindings
{
    internal static readonly FindingKind ShankInCut = new(
        "shank-in-cut",
        Severity.Stop,
        "Above its edges the bit is {found} thick; in a cut deeper than the edges it must be thinner than {allowed}, or it rubs and burns.",
        "Choose a bit with longer edges, or one whose shank is thinner than its cut.");

    internal static readonly FindingKind EdgesShort = new(
        "edges-shorter-than-cut",
        Severity.Warn,
        "The edges are {found} long and the cut {allowed} deep; the shank is thin enough to follow, but no pass may be deeper than the edges.",
        "Take it in passes, and look for a step in the wall where they meet.");

    internal static readonly FindingKind ColletSmall = new(
        "shank-too-thick",
        Severity.Stop,
        "The shank is {found} thick; the collet of {machine} takes {allowed} at most.",
        "Choose a bit with a thinner shank, or another collet and state it in a row of your own.");

    internal static readonly FindingKind GripShort = new(
        "grip-too-short",
        Severity.Stop,
        "The collet would hold {found} of the shank; it must hold {allowed} or more.",
        "Push the bit further in, 1.5 mm off the collet's bottom; if it then no longer reaches, choose a longer bit.");

    internal static readonly FindingKind StickOutShort = new(
        "stick-out-too-short",
        Severity.Stop,
        "The bit sticks out {found}; the cut is {allowed} deep, and the collet would go into the stock.",
        "Choose a longer bit, or cut part of the depth here and finish by hand along that edge.");

    internal static readonly FindingKind FlutesInCollet = new(
        "flutes-in-collet",
        Severity.Stop,
        "The bit would stick out {found}; its flutes and their run-out take {allowed}, so the collet would close on flutes.",
        "Let it stick out farther, with enough shank in the collet, or take a bit with shorter flutes: a collet that holds flutes lets go, and breaks the bit.");

    internal static readonly FindingKind StickOutLong = new(
        "stick-out-long",
        Severity.Warn,
        "The bit would stick out {found}; more than {allowed} leaves no room under the gantry to travel over the work, or to raise it for a run above.",
        "Push it farther into the collet, or use thinner stock or a thinner spoilboard.");

    internal static readonly FindingKind NutLow = new(
        "nut-too-low",
        Severity.Stop,
        "At the deepest pass the collet nut would be {found} above the stock; {allowed} must stay free.",
        "Let the bit stick out further as far as its grip allows, or cut less deep.");

    internal static readonly FindingKind OpeningLow = new(
        "opening-too-low",
        Severity.Stop,
        "Stock and spoilboard are {found} high; under the gantry of {machine} there is room for {allowed}.",
        "Use thinner stock or a thinner spoilboard, or finish by hand along an edge cut part way.");

    internal static readonly FindingKind RaisedLow = new(
        "raised-too-high",
        Severity.Stop,
        "Raised over the stock, the bit takes {found} between bed and collet; {machine} has room for {allowed}.",
        "Lower the clearance, or use thinner stock or a thinner spoilboard.");

    internal static readonly FindingKind TooFastForSize = new(
        "speed-too-high-for-size",
        Severity.Stop,
        "{found} is too fast for a bit of this diameter and length; {allowed} is the most in common practice.",
        "Turn slower. Where the marking on the bit allows less, the marking wins.");

    internal static readonly FindingKind FinishPushed = new(
        "finish-pushed-aside",
        Severity.Warn,
        "A finishing pass pushes with {found}; more than {allowed} moves bit and frame by over a third of what roughing leaves.",
        "A lower feed, a thicker or a shorter bit help, or a machine that cuts part way and a hand router that finishes; steps of {step} would be shallow enough.");

    internal static readonly FindingKind OnlyRamps = new(
        "bit-only-ramps",
        Severity.Note,
        "{bit} does not cut at its center: it may go down along a ramp of {allowed}, not straight.",
        "Start from the edge of the stock, or let it down along the cut.");

    internal static readonly FindingKind Tips = new(
        "board-tips-machine",
        Severity.Stop,
        "The overhanging board turns about the edge of the bed with {found}; {machine} stands against {own} of its own, and half of that, {allowed}, is allowed.",
        "Carry the board on a stand at bed height, or lay more of it on the bed.");

    internal static readonly FindingKind MovingBed = new(
        "moving-bed-overhang",
        Severity.Stop,
        "The bed of {machine} moves, and {found} of the board would hang over it.",
        "Use a machine whose bed stands still, or cut a pattern and follow it by hand.");
}
