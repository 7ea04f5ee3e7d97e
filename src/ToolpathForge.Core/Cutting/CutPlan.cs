using System.Collections.Immutable;
using ToolpathForge.Catalogue;
using ToolpathForge.Clampings;
using ToolpathForge.Findings;
using ToolpathForge.Jobs;

namespace ToolpathForge.Cutting;

/// <summary>How one clamping is cut.</summary>
/// <param name="Clamping">What lies on the bed.</param>
/// <param name="Settings">The numbers.</param>
/// <param name="Path">What the bit does.</param>
/// <param name="Tabs">What is left standing, by piece number.</param>
public sealed record CutPlan(Clamping Clamping, CutSettings Settings, Toolpath Path, ImmutableArray<(int Piece, Tab Tab)> Tabs);

/// <summary>Plans the cutting of a clamping.</summary>
internal static class Cutter
{
    /// <summary>The plan, or null when a finding says why not.</summary>
    /// <param name="job">Says tolerance and clearance.</param>
    /// <param name="clamping">What lies on the bed.</param>
    /// <param name="settings">The numbers.</param>
    /// <param name="fits">The pieces of the clamping, fitted.</param>
    /// <param name="findings">Takes what is wrong.</param>
    internal static CutPlan? Plan(
        Job job, Clamping clamping, CutSettings settings, ImmutableArray<PlacedContour> fits, ICollection<Finding> findings)
    {
        Bit bit = clamping.Make.Bit;
        var moves = new MoveList(clamping.Stock.Top + job.Clearance);
        var runs = new List<Run>();
        var tabs = ImmutableArray.CreateBuilder<(int Piece, Tab Tab)>();
        foreach (PlacedContour fit in fits)
        {
            bool done;
            if (fit.Placed.Piece.IsCutAllRound)
            {
                ImmutableArray<Tab>? held = TabPlacing.Place(fit.Placed, settings, clamping.Stock.Bottom, findings);
                tabs.AddRange((held ?? []).Select(t => (fit.Placed.Number, t)));
                done = held is { } placed && PlateCut.Add(moves, runs, fit, settings, clamping.Stock, placed, findings);
            }
            else
            {
                done = EndCut.Add(moves, runs, fit, settings, clamping.Stock, findings);
            }

            if (!done)
            {
                return null;
            }
        }

        return new CutPlan(clamping, settings, new Toolpath(bit, settings.Speed, moves.ToMoves(), [.. runs]), tabs.ToImmutable());
    }
}
