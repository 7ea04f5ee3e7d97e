using System.Collections.Immutable;
using ToolpathForge.Measures;

namespace ToolpathForge.Checks.Hand;

/// <summary>
/// The cautions that go with every cut of a hand router: common practice, in the order of the work. The router's manual and the marking on the bit come first.
/// </summary>
public static class HandCautions
{
    /// <summary>The cautions, a sentence or two each.</summary>
    /// <param name="comesOut">How far the bit comes out below the board, mm; 0 where no pass comes through.</param>
    /// <param name="unit">The unit of the person.</param>
    public static ImmutableArray<string> Of(double comesOut, LengthUnit unit) =>
    [
        "Eyes, ears and lungs covered; no gloves, loose sleeves, hair or cord where the cutter can catch them.",
        "Unplug the router, or take its battery out, before a hand touches bit or collet. Nut tight; then turn the bit once by hand: it must touch nothing.",
        "Fix the work so that both hands stay on the router: clamps or brads, no helper's hand. No brad, screw or clamp stands where cutter, bearing or base will pass; go round once with the router switched off and unplugged.",
        .. comesOut > 0
            ? (ImmutableArray<string>)
            [
                $"The bit comes out {ShopText.AtLeast(comesOut, unit)} below the board, at most: let the edge stand out over the bench with nothing under it, neither hand, knee, cord nor clamp. What comes off falls: keep your feet from under it, and let nobody hold it.",
            ]
            : [],
        "Start it clear of the wood and let it come up to speed. Stand to the side, so that a kick goes past you, and keep pressing the base down flat; an overhanging corner tips.",
        "Stop feeding when it chatters, burns or pulls: switch off, wait till it stands, then look. A dull bit burns and kicks.",
        "At the end switch off with the cutter in the open and hold on until it stands still; only then lift it off or set it down. It runs on for seconds.",
        "Fire: burned edges and hot dust smolder in the bag. Empty it outside before you go, and look at the bench once more later.",
    ];
}
