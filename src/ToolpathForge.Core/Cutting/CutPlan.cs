using System.Collections.Immutable;
using ToolpathForge.Clampings;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;
using ToolpathForge.Pieces;

namespace ToolpathForge.Cutting;

/// <summary>What one bit does in one clamping, and with which numbers.</summary>
/// <param name="Path">Its moves.</param>
/// <param name="Settings">The numbers.</param>
/// <param name="Marks">Whether it engraves the marks.</param>
/// <param name="Openings">The openings it cuts.</param>
/// <param name="Outline">Whether it cuts the outline.</param>
public sealed record BitWork(Toolpath Path, CutSettings Settings, bool Marks, ImmutableArray<Opening> Openings, bool Outline);

/// <summary>How one clamping is cut.</summary>
/// <param name="Clamping">What lies on the bed.</param>
/// <param name="Works">One a bit, in order; the last cuts the outline.</param>
/// <param name="Tabs">What is left standing, by piece number.</param>
public sealed record CutPlan(Clamping Clamping, ImmutableArray<BitWork> Works, ImmutableArray<(int Piece, Tab Tab)> Tabs)
{
    /// <summary>The numbers of the outline.</summary>
    public CutSettings Settings => Works[^1].Settings;

    /// <summary>What the bit of the outline does.</summary>
    public Toolpath Path => Works[^1].Path;

    /// <summary>Which program on this clamping it is, from 1; more than 1 where every bit has a program of its own.</summary>
    public int Part { get; init; } = 1;

    /// <summary>How many programs are run on this clamping, one after the other.</summary>
    public int Parts { get; init; } = 1;

    /// <summary>The plan with only some of its works, for a dialect that gives every bit a program of its own.</summary>
    /// <param name="work">Index into <see cref="Works"/>.</param>
    internal CutPlan Only(int work)
    {
        BitWork only = work == Works.Length - 1 ? Works[work] : Works[work] with { Path = Parking.Parked(Works[work].Path, Clamping) };
        return new(Clamping, [only], only.Outline ? Tabs : []) { Part = work + 1, Parts = Works.Length };
    }
}

/// <summary>Plans the cutting of a clamping: marks first, while everything lies still; then openings; then openings whose waste is held and outlines, each piece's release last.</summary>
internal static class Cutter
{
    /// <summary>The plan, or null when a finding says why not.</summary>
    /// <param name="job">Says tolerance and clearance.</param>
    /// <param name="clamping">What lies on the bed.</param>
    /// <param name="bits">The bits and their numbers, in order; the last cuts the outline.</param>
    /// <param name="fits">The pieces of the clamping, fitted.</param>
    /// <param name="findings">Takes what is wrong.</param>
    internal static CutPlan? Plan(
        Job job, Clamping clamping, ImmutableArray<BitTask> bits, ImmutableArray<PlacedContour> fits, ICollection<Finding> findings)
    {
        var works = ImmutableArray.CreateBuilder<BitWork>();
        var tabs = ImmutableArray.CreateBuilder<(int Piece, Tab Tab)>();
        double stop = Parking.Height(job, clamping, bits);
        foreach (BitTask task in bits)
        {
            var moves = new MoveList(clamping.Stock.Top + clamping.Rise(job)) { Plunge = task.Settings.Plunge };
            var runs = new List<Run>();
            if (task.Marks)
            {
                Engraving.Add(moves, runs, clamping, task.Settings);
            }

            bool climb = FinishRuns.OneWay(0, clamping.Make.Cut.Direction ?? DirectionChoice.ByGrain).Climb;
            foreach (Placed placed in clamping.Pieces)
            {
                foreach (Opening opening in placed.Piece.Openings.Where(o => o.Bit == task.Bit && !o.Held))
                {
                    OpeningCut.Add(moves, runs, opening, placed.Placement, placed.Name, task.Settings, StockOf(clamping, placed), climb);
                }
            }

            if (task.Outline)
            {
                ImmutableArray<HeldWaste> held = HeldWaste.On(clamping);
                var done = new HashSet<int>();
                if (!fits.All(fit => Piece(fit)))
                {
                    return null;
                }

                // What lies in an opening is cut before the opening's waste comes loose, and that before the piece round it does.
                bool Piece(PlacedContour fit) => !done.Add(fit.Placed.Number)
                    || (held.Where(h => h.Of.Number == fit.Placed.Number).All(waste =>
                            waste.Within.All(inner => Piece(fits.Single(f => f.Placed.Number == inner.Number)))
                            && Waste(moves, runs, waste, HeldOpening.Settings(fit.Placed.Piece.Make, waste.Opening, job.Machine, task.Settings.Skin), clamping, tabs, findings))
                        && Outline(moves, runs, fit, Own(job, clamping, fit.Placed.Piece, task.Settings), clamping, tabs, findings));
            }

            // A stop follows: for the next bit, for the next board, or the end.
            moves.RaiseTo(stop);
            var path = new Toolpath(task.Bit, task.Settings.Speed, moves.ToMoves(), [.. runs]);
            works.Add(new BitWork(task == bits[^1] ? Parking.Parked(path, clamping) : path, task.Settings, task.Marks, task.Openings, task.Outline));
        }

        return new CutPlan(clamping, works.ToImmutable(), tabs.ToImmutable());
    }

    // Makes that share a panel differ in their tabs.
    private static CutSettings Own(Job job, Clamping clamping, Piece piece, CutSettings settings) => piece.Make.Id == clamping.Make.Id
        ? settings
        : CutSettings.For(piece.Make, job.Machine, piece.CutLength, settings.Skin);

    // Boards lie in blocks of their own; a panel is one.
    private static StockOnBed StockOf(Clamping clamping, Placed placed) => clamping.Stock with { Box = placed.Block };

    private static bool Outline(
        MoveList moves,
        List<Run> runs,
        PlacedContour fit,
        CutSettings settings,
        Clamping clamping,
        ImmutableArray<(int Piece, Tab Tab)>.Builder tabs,
        ICollection<Finding> findings)
    {
        if (!fit.Placed.Piece.IsCutAllRound)
        {
            return EndCut.Add(moves, runs, fit, settings, clamping, findings);
        }

        ImmutableArray<Tab>? held = settings.Skin > 0 ? [] : TabPlacing.Place(fit.Placed, settings, clamping.Stock.Bottom, findings);
        tabs.AddRange((held ?? []).Select(t => (fit.Placed.Number, t)));
        return held is { } placed && PlateCut.Add(moves, runs, fit, fit.Placed.Name, settings, clamping.Stock, placed, findings);
    }

    private static bool Waste(
        MoveList moves,
        List<Run> runs,
        HeldWaste waste,
        CutSettings settings,
        Clamping clamping,
        ImmutableArray<(int Piece, Tab Tab)>.Builder tabs,
        ICollection<Finding> findings)
    {
        ImmutableArray<Tab> held = HeldOpening.TabsOf(waste.Of.Piece.Make, waste.Opening, waste.Of.Placement, settings, clamping.Stock.Bottom)
            ?? throw new InvalidOperationException("An opening whose waste is held has no room for its tabs.");
        tabs.AddRange(held.Select(t => (waste.Of.Number, t)));
        return HeldOpening.Add(moves, runs, waste.Opening, waste.Of, settings, clamping.Stock, held, findings);
    }
}
