using System.Collections.Immutable;
using ToolpathForge.Checks;
using ToolpathForge.Checks.Settings;
using ToolpathForge.Clampings;
using ToolpathForge.Cutting;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;
using ToolpathForge.Measures;
using ToolpathForge.Pieces;
using ToolpathForge.Shapes;

namespace ToolpathForge.Planning;

/// <summary>Lays one piece on the bed, settles the numbers of every bit, checks them, and plans the cutting.</summary>
internal static class ClampingPlanner
{
    /// <summary>The plan of the piece's clamping; null when a finding says why there is none.</summary>
    internal static CutPlan? Cut(Job job, Piece piece, ErrorBudget budget, List<Finding> findings)
    {
        double perimeter = piece.Exact.Curves.Zip(piece.Roles).Where(e => e.Second != EdgeRole.Existing).Sum(e => e.First.Length);
        CutSettings settings = CutSettings.For(piece.Make, job.Machine, perimeter, piece.Make.LeftBelow);
        Clamping clamping = Lay(job, piece, settings);
        if (SkinInstead.Of(clamping, settings) is { } skin)
        {
            findings.Add(skin.Note);
            settings = CutSettings.For(piece.Make, job.Machine, perimeter, skin.Thickness);
        }

        ImmutableArray<PlacedContour> fits = [.. clamping.Pieces.Select(p => PlacedContour.Fit(p, budget.Fit))];
        ImmutableArray<BitTask> tasks = BitTask.For(piece.Make, job.Machine, settings);
        var input = new CheckInput(job, clamping, piece.Make.Bit, settings, fits);
        Finding[] before =
        [
            .. BitReach.Find(input), .. JobSettings.Find(input), .. PassDepth.Find(input), .. FeedsAndSpeeds.Find(input), .. StockAndBed.Find(input),
            .. TightCurve.Find(input, budget.Total - budget.Fit - budget.Rounding), .. DeepSlots.Find(input), .. SkinThickness.Find(input),
            .. BoardTabs.Find(input), .. BoardStack.Find(input), .. OpeningFit.Find(input), .. MarkTool.Find(input), .. tasks.Where(t => !t.Outline).SelectMany(t => OfOtherBit(input, t)),
        ];
        findings.AddRange(before);

        // A bit that cannot go down or round would only raise the same trouble again in other words.
        if (before.Any(f => f.Kind == PassDepth.CannotEnter || f.Kind == TightCurve.TooTight || f.Kind == OpeningFit.TooNarrow))
        {
            return null;
        }

        CutPlan? cut = Cutter.Plan(job, clamping, tasks, fits, findings);
        if (cut is null)
        {
            return null;
        }

        findings.AddRange(MachineTravel.Find(input, cut));
        findings.AddRange(ClampsInWay.Find(input, cut));
        return piece.Make is BoardEndMake { Batch.Waste: Waste.Screwed } && cut.Settings.Skin <= 0 && !before.Any(f => f.Kind.Severity == Severity.Stop) ? Screwed(input, cut, findings) : cut;
    }

    // Screws go where the bit does not: they are placed when its ways are known.
    private static CutPlan Screwed(CheckInput input, CutPlan cut, List<Finding> findings)
    {
        Clamping clamping = cut.Clamping;
        var screws = ImmutableArray.CreateBuilder<Point2>();
        foreach (PlacedContour fit in input.Pieces)
        {
            ImmutableArray<Point2> found = WasteScrews.Find(fit, cut.Works.Select(w => w.Path), clamping.Stock.Top, cut.Works.Max(w => w.Path.Bit.Radius), ShopText.Step(input.Job.Unit));
            screws.AddRange(found);
            if (found.IsEmpty && StockAndBed.WasteMass(input) > StockAndBed.LooseMass)
            {
                findings.Add(Finding.Of(StockAndBed.NoRoomForScrew, input.At("end.waste")));
            }
        }

        return cut with
        {
            Clamping = clamping with
            {
                Screws = screws.ToImmutable(),
                KeepOuts = [.. clamping.KeepOuts, .. screws.Select((at, i) => Obstacles.Screw(at, i + 1, WasteScrews.Head, clamping.Stock.Top))],
            },
        };
    }

    private static Clamping Lay(Job job, Piece piece, CutSettings settings) => piece.Make switch
    {
        { Sheet: not null } make => PanelLayout.Lay(job, make, piece, settings.TrackRoom(make.Bit)),
        BoardEndMake end => BoardLayout.Lay(job, end, piece, settings.TrackRoom(end.Bit)),
        _ => throw new InvalidOperationException($"Nothing lays a {piece.Make.GetType().Name} on the bed."),
    };

    // A bit for openings or marks is checked like that of the outline, with its own numbers and its own place in the file.
    private static IEnumerable<Finding> OfOtherBit(CheckInput input, BitTask task)
    {
        CheckInput own = input with
        {
            Bit = task.Bit,
            Settings = task.Settings,
            Keys = task.Openings.Length > 0 ? task.Openings[0].At : input.Make.Marks!.At,
        };

        // What only engraves need not reach through the stock, nor leave a square wall.
        return task.Openings.Length > 0
            ? [.. BitReach.Find(own), .. JobSettings.FindOfBit(own), .. FeedsAndSpeeds.Find(own)]
            : [.. JobSettings.FindEngraving(own), .. FeedsAndSpeeds.Find(own)];
    }
}
