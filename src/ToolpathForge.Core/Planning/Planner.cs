using System.Collections.Immutable;
using ToolpathForge.Checks;
using ToolpathForge.Clampings;
using ToolpathForge.Cutting;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;
using ToolpathForge.Pieces;
using ToolpathForge.Posting;
using ToolpathForge.Proof;
using ToolpathForge.Shapes;

namespace ToolpathForge.Planning;

/// <summary>The whole walk from a job to proven programs. Pure: it reads no file, no clock and no setting, and writes nothing.</summary>
public static class Planner
{
    /// <summary>A program did not pass its proof.</summary>
    public static readonly FindingKind NotProven = new(
        "program-not-proven",
        Severity.Stop,
        "Read back, the program {program} failed its proof: {fault}.",
        "Nothing was handed over. This is a fault of ToolpathForge, not of the job: please report it with the job file.");

    /// <summary>Plans a job with the post-processor of its own dialect.</summary>
    /// <param name="job">The job.</param>
    /// <param name="stage">Told the name of each stage as it begins; may be null.</param>
    /// <param name="cancel">Asked between pieces of work.</param>
    public static Plan Plan(Job job, Action<string>? stage = null, CancellationToken cancel = default) =>
        Plan(job, new DialectPostProcessor(job.Dialect), stage, cancel);

    /// <summary>Plans a job with a post-processor of the caller's own.</summary>
    /// <param name="job">The job.</param>
    /// <param name="post">Writes the programs; what it writes is proven like any other.</param>
    /// <param name="stage">Told the name of each stage as it begins; may be null.</param>
    /// <param name="cancel">Asked between pieces of work.</param>
    public static Plan Plan(Job job, IPostProcessor post, Action<string>? stage = null, CancellationToken cancel = default)
    {
        var budget = new ErrorBudget(job.Tolerance);
        var findings = new List<Finding>();
        findings.AddRange(Decimals.Find(job, new Grid(post.Dialect).LargestRounding, budget.Rounding));

        stage?.Invoke("shapes");
        ImmutableArray<Piece> pieces = [.. job.Makes.Select(make => PieceOf(make, findings)).OfType<Piece>()];

        var cuts = new List<(CutPlan Cut, ImmutableArray<PlacedContour> Fits)>();
        foreach (Piece piece in pieces)
        {
            cancel.ThrowIfCancellationRequested();
            stage?.Invoke("toolpaths");
            if (Cut(job, piece, budget, findings) is { } cut)
            {
                cuts.Add(cut);
            }
        }

        if (findings.Exists(f => f.Kind.Severity == Severity.Stop))
        {
            return new Plan(job, [.. findings], pieces, [], []);
        }

        var programs = new List<PlannedProgram>();
        foreach ((CutPlan cut, _) in cuts)
        {
            cancel.ThrowIfCancellationRequested();
            stage?.Invoke("programs");
            string text = post.Write(new ProgramInput(cut.Clamping.Name, ProgramNotes.For(job, cut), [cut.Path], budget.Chords));
            stage?.Invoke("proof");
            Target target = ProofTarget.For(job, cut, post.Dialect);
            ProofReport proof = Prover.Prove(text, target);
            double seconds = MotionTime.Seconds(cut.Path, job.Machine.Acceleration, job.Machine.MaxFeed);
            programs.Add(new PlannedProgram(
                cut.Clamping.Name, cut.Clamping.Name + post.Dialect.FileEnding, text, cut, target, proof, seconds));
        }

        ImmutableArray<PlannedProgram> failed = [.. programs.Where(p => !p.Proof.Passed)];
        findings.AddRange(failed.Select(Unproven));
        return new Plan(job, [.. findings], pieces, failed.IsEmpty ? [.. programs] : [], failed);
    }

    private static Piece? PieceOf(Make make, List<Finding> findings)
    {
        var raised = new List<Finding>();
        Profile? profile = make.Shape.Shape.Scale(make.Shape, make.DesignWidth, raised);
        findings.AddRange(raised.Select(f => f with { Place = f.Place.OfMake(make.Id) }));
        return profile is null
            ? null
            : make switch
            {
                PatternMake pattern => PatternPlate.From(pattern, profile),
                BoardEndMake end => BoardEnd.From(end, profile),
                _ => throw new InvalidOperationException($"No piece is built from a {make.GetType().Name}."),
            };
    }

    private static (CutPlan Cut, ImmutableArray<PlacedContour> Fits)? Cut(Job job, Piece piece, ErrorBudget budget, List<Finding> findings)
    {
        double perimeter = piece.Exact.Curves.Zip(piece.Roles).Where(e => e.Second != EdgeRole.Existing).Sum(e => e.First.Start.DistanceTo(e.First.End));
        CutSettings settings = CutSettings.For(piece.Make, job.Machine, perimeter);
        double track = (2 * piece.Make.Bit.Radius) + settings.Allowance + 2;
        Clamping clamping = piece.Make switch
        {
            PatternMake pattern => PanelLayout.Lay(job, pattern, piece, track),
            BoardEndMake end => BoardLayout.Lay(job, end, piece, track),
            _ => throw new InvalidOperationException(),
        };
        ImmutableArray<PlacedContour> fits = [.. clamping.Pieces.Select(p => PlacedContour.Fit(p, budget.Fit))];
        var input = new CheckInput(job, clamping, settings, fits);

        Finding[] before =
        [
            .. BitReach.Find(input), .. PassDepth.Find(input), .. FeedsAndSpeeds.Find(input), .. StockAndBed.Find(input),
            .. TightCurve.Find(input, budget.Total - budget.Fit - budget.Rounding),
        ];
        findings.AddRange(before);

        // A bit that cannot go down or round would only raise the same trouble again in other words.
        if (before.Any(f => f.Kind == PassDepth.CannotEnter || f.Kind == TightCurve.TooTight))
        {
            return null;
        }

        CutPlan? cut = Cutter.Plan(job, clamping, settings, fits, findings);
        if (cut is null)
        {
            return null;
        }

        findings.AddRange(MachineTravel.Find(input, cut.Path));
        return (cut, fits);
    }

    private static Finding Unproven(PlannedProgram program)
    {
        Fault fault = program.Proof.Faults[0];
        return Finding.Of(
            NotProven,
            Place.InFile(program.FileName, fault.Line, 0).OfMake(program.Name),
            Arg.Of("program", program.FileName),
            Arg.Of("fault", fault.Code.Meaning));
    }
}
