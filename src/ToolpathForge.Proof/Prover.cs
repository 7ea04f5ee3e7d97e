using System.Collections.Immutable;

namespace ToolpathForge.Proof;

/// <summary>
/// The proof: reads a program's text as a machine would and measures what it does against what it was meant to do. It shares no code with whatever wrote the text.
/// A pure function: same text, same target, same report.
/// </summary>
public static class Prover
{
    /// <summary>Reads and measures a program.</summary>
    /// <param name="text">The text that will run, byte for byte. It may be anything: what cannot be read is a fault, not an exception.</param>
    /// <param name="target">What it should make.</param>
    /// <exception cref="ArgumentException">The target itself makes no sense; the message says where.</exception>
    public static ProofReport Prove(string text, Target target)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(target);
        if (TargetCheck.FindWrong(target) is { } wrong)
        {
            throw new ArgumentException(wrong, nameof(target));
        }

        GcodeProgram program = GcodeReader.Read(text, target.AcceptsIsoUnits);
        var faults = new FaultBook();
        if (program.Refusal is { } refusal)
        {
            faults.Add(refusal.Code, refusal.Line, refusal.Found, refusal.Allowed, subject: refusal.Words);
            return new ProofReport
            {
                IsRead = false,
                Faults = faults.ToFaults(),
                Pieces = [],
                EdgePasses = [],
                Motion = FigureCounter.Count(program),
            };
        }

        CheckModes(program, target, faults);
        var cuts = new CutSet(ProgramWalk.Run(target.Axes is { } axes ? TrueMotion.Of(program, axes) : program, target, faults));
        var pieces = ImmutableArray.CreateBuilder<PieceProof>(target.Pieces.Length);
        var passes = ImmutableArray.CreateBuilder<EdgePass>();
        for (int i = 0; i < target.Pieces.Length; i++)
        {
            var sweep = new PieceSweep(target.Pieces[i], target, cuts, faults);
            pieces.Add(sweep.Measure());
            passes.AddRange(new DirectionSearch(i, target.Pieces[i], target, cuts, sweep).Find());
        }

        return new ProofReport
        {
            IsRead = true,
            Faults = faults.ToFaults(),
            Pieces = pieces.MoveToImmutable(),
            EdgePasses = passes.ToImmutable(),
            Motion = FigureCounter.Count(program),
        };
    }

    private static void CheckModes(GcodeProgram program, Target target, FaultBook faults)
    {
        foreach ((StatedModes mode, int line) in program.Unstated)
        {
            if (target.MustState.HasFlag(mode))
            {
                faults.Add(
                    mode switch
                    {
                        StatedModes.Unit => FaultCodes.UnitNotStated,
                        StatedModes.Distance => FaultCodes.DistanceModeNotStated,
                        StatedModes.Plane => FaultCodes.PlaneNotStated,
                        _ => FaultCodes.FeedModeNotStated,
                    },
                    line);
            }
        }

        foreach (int line in program.DeletableLines)
        {
            faults.Add(FaultCodes.BlockDeleteUsed, line);
        }
    }
}
