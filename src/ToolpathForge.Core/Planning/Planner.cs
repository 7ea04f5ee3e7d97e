using System.Collections.Immutable;
using ToolpathForge.Catalogue;
using ToolpathForge.Checks;
using ToolpathForge.Checks.Settings;
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
        ImmutableArray<Piece> pieces = [.. job.Makes.Select(make => PieceOf(job, make, findings)).OfType<Piece>()];

        // Pieces may have got holes that the job did not name one by one: what follows looks at them as they are.
        Job fitted = job with { Makes = [.. job.Makes.Select(make => pieces.FirstOrDefault(p => p.Make.Id == make.Id)?.Make ?? make)] };
        return Plan(fitted, pieces, findings, post, stage, cancel);
    }

    /// <summary>Plans the trial piece for a make of a job, proven like any other.</summary>
    /// <param name="job">The job; what an earlier trial has shown is set aside.</param>
    /// <param name="make">The make whose bit, stock and speeds are taken.</param>
    /// <param name="stage">Told the name of each stage as it begins; may be null.</param>
    /// <param name="cancel">Asked between pieces of work.</param>
    public static Plan Trial(Job job, Make make, Action<string>? stage = null, CancellationToken cancel = default)
    {
        Bit bit = job.TrialBit is { } before && before.Id == make.Bit.Id ? before : make.Bit;
        Piece piece = TrialPiece.For(make, bit, job.Unit);
        return Plan(job with { Axes = AxisErrors.None, Makes = [piece.Make] }, [piece], [], new DialectPostProcessor(job.Dialect), stage, cancel);
    }

    private static Plan Plan(Job job, ImmutableArray<Piece> pieces, List<Finding> findings, IPostProcessor post, Action<string>? stage, CancellationToken cancel)
    {
        var budget = new ErrorBudget(job.Tolerance);
        var cuts = new List<CutPlan>();
        Func<string> names = PanelNames(job);
        foreach (ImmutableArray<Piece> group in PanelGroups.Of(job, pieces))
        {
            cancel.ThrowIfCancellationRequested();
            stage?.Invoke("toolpaths");
            cuts.AddRange(ClampingPlanner.Cut(job, group, names, budget, findings));
        }

        if (findings.Exists(f => f.Kind.Severity == Severity.Stop))
        {
            return new Plan(job, [.. findings], pieces, [], []);
        }

        var programs = new List<PlannedProgram>();
        foreach ((string name, CutPlan cut) in cuts.SelectMany(c => Split(c, post.Dialect.ChangeOn(job.Machine))))
        {
            cancel.ThrowIfCancellationRequested();
            stage?.Invoke("programs");
            string text = post.Write(new ProgramInput(name, ProgramNotes.For(job, name, cut), [.. cut.Works.Select(w => AxisCorrection.Apply(w.Path, job.Axes, budget.Axes))], budget.Chords)
            {
                Waits = ProgramNotes.Waits(cut.Clamping),
                ChangesBits = post.Dialect.ChangeOn(job.Machine) == BitChange.Command,
                SwitchedByHand = post.Dialect.IsSwitchedByHand(job.Machine),
            });
            stage?.Invoke("proof");
            Target target = ProofTarget.For(job, cut, post.Dialect);
            ProofReport proof = Prover.Prove(text, target);
            double seconds = cut.Works.Sum(w => MotionTime.Seconds(w.Path, job.Machine.Acceleration, job.Machine.MaxFeed));
            seconds *= cut.Clamping.Waits ? cut.Clamping.Times : 1;
            programs.Add(new PlannedProgram(name, name + post.Dialect.FileEnding, text, cut, target, proof, seconds));
        }

        ImmutableArray<PlannedProgram> failed = [.. programs.Where(p => !p.Proof.Passed)];
        findings.AddRange(failed.Select(Unproven));
        return new Plan(job, [.. findings], pieces, failed.IsEmpty ? [.. programs] : [], failed);
    }

    // Shared panels are numbered through the job, past any make of such a name.
    private static Func<string> PanelNames(Job job)
    {
        int number = 0;
        return () =>
        {
            string name;
            do
            {
                number++;
                name = FormattableString.Invariant($"panel-{number}");
            }
            while (job.Makes.Any(m => string.Equals(m.Id, name, StringComparison.OrdinalIgnoreCase)));

            return name;
        };
    }

    // One program for a clamping; where the dialect changes no bits and there are several, one for each bit, in the order of their use.
    private static IEnumerable<(string Name, CutPlan Cut)> Split(CutPlan cut, BitChange change) =>
        change != BitChange.SeparatePrograms || cut.Works.Length == 1
            ? [(cut.Clamping.Name, cut)]
            : Enumerable.Range(0, cut.Works.Length).Select(i => (FormattableString.Invariant($"{cut.Clamping.Name}-{i + 1}"), cut.Only(i)));

    internal static Piece? PieceOf(Job job, Make make, List<Finding> findings)
    {
        switch (make)
        {
            case ProfileMake profiled:
                return PieceOf(job, profiled, findings);
            case OutlineMake drawn:
                return new PlainPiece(HoldingWaste.Of(job, drawn), drawn.Edge, drawn.Thickness);
            default:
                throw new InvalidOperationException($"No piece is built from a {make.GetType().Name}.");
        }
    }

    private static ProfilePiece? PieceOf(Job job, ProfileMake make, List<Finding> findings)
    {
        var raised = new List<Finding>();
        Profile? profile = make.Shape.Shape.Scale(make.Shape, make.DesignWidth, raised);
        findings.AddRange(raised.Select(f => f with { Place = f.Place.OfMake(make.Id) }));
        findings.AddRange(profile is null ? [] : JobHand.Find(make, profile).Concat(CarryingDepth.Find(make, profile)).Concat(TimberRules.Find(make, profile)).Concat(SizeAgainstBoard.Find(make, profile)));
        return profile is null
            ? null
            : make switch
            {
                PatternMake pattern => PatternPlate.From(pattern, profile, job.Tolerance, findings) is { } plate ? PatternMarks.Add(job, LeftHand.Of(PlateFitting.Add(plate, job.Unit, findings)), findings) : null,
                BoardEndMake end => BoardEnd.From(end, profile),
                _ => throw new InvalidOperationException($"No piece is built from a {make.GetType().Name}."),
            };
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
