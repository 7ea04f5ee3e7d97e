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

/// <summary>Lays pieces on the bed, settles the numbers of every bit, checks them, and plans the cutting.</summary>
internal static class ClampingPlanner
{
    /// <summary>The plans of the clampings that make some pieces; where one is missing, a finding says why.</summary>
    /// <param name="job">The job.</param>
    /// <param name="pieces">One a make: a single one, or several that share panels.</param>
    /// <param name="name">The name of the next shared panel.</param>
    /// <param name="budget">Shares of the tolerance.</param>
    /// <param name="findings">Takes what is wrong.</param>
    internal static IEnumerable<CutPlan> Cut(Job job, ImmutableArray<Piece> pieces, Func<string> name, ErrorBudget budget, List<Finding> findings)
    {
        Piece first = pieces[0];
        var settings = CutSettings.For(first.Make, job.Machine, first.CutLength, first.Make.LeftBelow);
        ImmutableArray<Clamping> clampings = pieces.Length == 1
            ? [Lay(job, first, settings)]
            : SharedPanels.Lay(job, pieces, settings.TrackRoom(first.Make.Bit), name);
        var looked = new HashSet<string>(StringComparer.Ordinal);
        foreach (Clamping clamping in clampings)
        {
            if (Cut(job, clamping, looked, budget, findings) is { } cut)
            {
                yield return cut;
            }
        }
    }

    private static CutPlan? Cut(Job job, Clamping clamping, HashSet<string> looked, ErrorBudget budget, List<Finding> findings)
    {
        Piece first = clamping.Pieces[0].Piece;
        double left = first.Make.LeftBelow;
        if (SkinInstead.Of(job, clamping) is { } skin)
        {
            findings.Add(skin.Note);
            left = skin.Thickness;
        }

        CutSettings settings = CutSettings.For(first.Make, job.Machine, first.CutLength, left);
        ImmutableArray<PlacedContour> fits = [.. clamping.Pieces.Select(p => PlacedContour.Fit(p, budget.Fit))];
        ImmutableArray<BitTask> tasks = BitTask.For(clamping.Makes, job.Machine, settings);
        CheckInput InputOf(Make make)
        {
            PlacedContour[] own = [.. fits.Where(f => f.Placed.Piece.Make.Id == make.Id)];
            return new CheckInput(job, clamping, make, make.Bit, CutSettings.For(make, job.Machine, own[0].Placed.Piece.CutLength, left), [.. own]);
        }

        // A make that lies on several panels is looked at once.
        Finding[] before = [.. clamping.Makes.Where(m => looked.Add(m.Id)).SelectMany(m => Before(InputOf(m), tasks, budget))];
        findings.AddRange(before);

        // A bit that cannot go down or round would only raise the same trouble again in other words.
        if (before.Any(f => f.Kind == PassDepth.CannotEnter || f.Kind == TightCurve.TooTight || f.Kind == TightCurve.OutlineTooTight || f.Kind == OpeningFit.TooNarrow || DrawnHoles.IsHopeless(f.Kind)))
        {
            return null;
        }

        CutPlan? cut = Cutter.Plan(job, clamping, tasks, fits, findings);
        if (cut is null)
        {
            return null;
        }

        CheckInput input = InputOf(clamping.Make);
        findings.AddRange(MachineTravel.Find(input, cut));
        findings.AddRange(ClampsInWay.Find(input, cut));
        return clamping.Make is BoardEndMake { Batch.Waste: Waste.Screwed } && cut.Settings.Skin <= 0 && !before.Any(f => f.Kind.Severity == Severity.Stop) ? Screwed(input, cut, findings) : cut;
    }

    private static IEnumerable<Finding> Before(CheckInput input, ImmutableArray<BitTask> tasks, ErrorBudget budget) =>
    [
        .. BitReach.Find(input), .. JobSettings.Find(input), .. PassDepth.Find(input), .. FeedsAndSpeeds.Find(input), .. StockAndBed.Find(input),
        .. TightCurve.Find(input, budget.Total - budget.Fit - budget.Rounding), .. DeepSlots.Find(input), .. SkinThickness.Find(input),
        .. BoardTabs.Find(input), .. BoardStack.Find(input), .. UnseenStop.Find(input), .. OpeningFit.Find(input, budget.Total - budget.Fit - budget.Rounding), .. MarkTool.Find(input), .. WasteHeld.Find(input),
        .. tasks.Where(t => !t.Outline && Concerns(t, input.Make)).SelectMany(t => OfOtherBit(input, t)),
    ];

    private static bool Concerns(BitTask task, Make make) => (task.Marks && make.Marks is not null) || make.Openings.Any(o => o.Bit == task.Bit);

    // Screws go where the bit does not: they are placed when its ways are known.
    private static CutPlan Screwed(CheckInput input, CutPlan cut, List<Finding> findings)
    {
        Clamping clamping = cut.Clamping;
        var screws = ImmutableArray.CreateBuilder<Point2>();
        foreach (PlacedContour fit in input.Pieces)
        {
            ImmutableArray<Point2> found = WasteScrews.Find(fit, cut.Works.Select(w => w.Path), clamping.Stock.Top, cut.Works.Max(w => w.Path.Bit.Radius), ShopText.Step(input.Job.Unit));
            double mass = StockAndBed.WasteMass(input);
            bool sliver = mass <= StockAndBed.LooseMass;
            screws.AddRange(found);
            if (found.Length < 2 && !sliver)
            {
                findings.Add(Finding.Of(StockAndBed.NoRoomForScrew, input.At("end.waste")));
            }
            else if (found.IsEmpty)
            {
                findings.Add(Finding.Of(StockAndBed.ScrapUnscrewed, input.At("end.waste"), new Quantity(mass, QuantityKind.Mass), new Quantity(StockAndBed.LooseMass, QuantityKind.Mass)));
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
            Keys = input.Make.Openings.FirstOrDefault(o => o.Bit == task.Bit)?.At ?? input.Make.Marks!.At,
        };

        // What only engraves need not reach through the stock, nor leave a square wall.
        return task.Openings.Length > 0
            ? [.. BitReach.Find(own), .. JobSettings.FindOfBit(own), .. FeedsAndSpeeds.Find(own)]
            : [.. JobSettings.FindEngraving(own), .. FeedsAndSpeeds.Find(own)];
    }
}
