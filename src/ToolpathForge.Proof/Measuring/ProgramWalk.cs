using System.Collections.Immutable;

namespace ToolpathForge.Proof;

/// <summary>
/// Walks a program from its first step to its last, with the bit and the spindle as they are at each, and checks what each motion does to bed and machine.
/// What the motions do to the pieces is measured afterwards, from the list of cuts that is left.
/// </summary>
internal sealed class ProgramWalk
{
    private readonly Target target;
    private readonly FaultBook faults;
    private readonly Bed bed;
    private readonly SpindleState spindle;
    private readonly ClearedDepth cleared;
    private readonly List<PathPart> parts = [];
    private readonly DescentExcess steepness = new();
    private readonly DescentExcess downwards = new();
    private SpacePoint position = new(double.NaN, double.NaN, double.NaN);

    private ProgramWalk(Target target, FaultBook faults, ImmutableArray<ProgramStep> steps)
    {
        this.target = target;
        this.faults = faults;
        bed = new Bed(target);
        spindle = new SpindleState(target, faults);
        cleared = new ClearedDepth(steps);
    }

    /// <summary>Feed motions in order.</summary>
    private List<CutMotion> Cuts { get; } = [];

    /// <summary>Walks a program.</summary>
    /// <returns>Its feed motions.</returns>
    internal static List<CutMotion> Run(GcodeProgram program, Target target, FaultBook faults)
    {
        var walk = new ProgramWalk(target, faults, program.Steps);
        for (int i = 0; i < program.Steps.Length; i++)
        {
            ProgramStep step = program.Steps[i];
            walk.spindle.Take(step);
            if (step is Motion motion)
            {
                walk.Take(motion, i);
            }
        }

        walk.CheckEnd(program);
        return walk.Cuts;
    }

    private void Take(Motion motion, int index)
    {
        position = motion.End;
        TravelCheck.Check(motion, target.Travel, target.Increment, faults);
        Motion? known = motion.Start.IsKnown ? motion : FirstMoves.Check(motion, target, faults);
        if (known is null)
        {
            return;
        }

        var cut = new CutMotion(index, known, spindle.Tool);
        if (!known.IsFeed)
        {
            double depth = known.IsVertical ? cleared.At(known.End.Plane, index, cut.Radius, target.Increment) : double.PositiveInfinity;
            bed.CheckRapid(cut, depth, faults);
            steepness.Reset();
            downwards.Reset();
            return;
        }

        Cuts.Add(cut);
        cleared.Add(cut);
        CheckFeed(known);
        bed.CheckFeed(cut, faults);
        if (bed.Cuts(cut))
        {
            spindle.CheckCut(cut);
            CheckWayDown(cut);
            CheckUncut(cut);
        }
    }

    /// <summary>
    /// No way through material at more than a pass's depth where no earlier cut has been: looked at every half radius along the way, so that at most that length escapes.
    /// </summary>
    private void CheckUncut(CutMotion cut)
    {
        if (cut.Tool is not { MaxUncutDepth: { } most } tool || cut.Motion.IsVertical)
        {
            return;
        }

        parts.Clear();
        cut.AddAtOrBelow(parts, double.PositiveInfinity);
        foreach (PathPart part in parts)
        {
            int looks = Math.Max(1, (int)Math.Ceiling(part.Length / (tool.Radius / 2)));
            for (int i = 0; i < looks; i++)
            {
                double share = (i + 0.5) / looks;
                PlanePoint at = part.PointAt(share);
                double tip = cut.HeightAt(part.From + ((part.To - part.From) * share));
                double enough = tip + most + target.Increment;
                if (bed.HighestTop <= enough || cleared.IsClearedTo(at, cut.Index, tool.Radius, enough))
                {
                    continue;
                }

                double top = Math.Min(bed.TopUnder(at, tool.Radius), cleared.At(at, cut.Index, 0, tool.Radius));
                if (top - tip > most + target.Increment)
                {
                    faults.Add(FaultCodes.UncutTooDeep, cut.Motion.Line, top - tip, most, new SpacePoint(at.X, at.Y, tip));
                    return;
                }
            }
        }
    }

    private void CheckFeed(Motion motion)
    {
        if (motion.Feed > target.MaxFeed * (1 + ProofAccuracy.FeedSlack))
        {
            faults.Add(FaultCodes.FeedTooHigh, motion.Line, motion.Feed, target.MaxFeed, motion.Start);
        }

        // What the plunge feed would go down in the time that the motion takes.
        double allowed = target.MaxPlungeFeed * (1 + ProofAccuracy.FeedSlack) * motion.Length / motion.Feed;
        if (downwards.Add(motion.Start.Z - motion.End.Z, allowed, ProofAccuracy.RoundedHeights * target.Increment))
        {
            faults.Add(FaultCodes.PlungeTooFast, motion.Line, motion.DownwardFeed, target.MaxPlungeFeed, motion.Start);
        }
    }

    /// <summary>How the bit goes down into material: straight, or along a slope. The slope is compared with what rounding of heights may add.</summary>
    private void CheckWayDown(CutMotion cut)
    {
        Motion motion = cut.Motion;
        double drop = motion.Start.Z - motion.End.Z;
        if (cut.Tool is not { } tool)
        {
            return;
        }

        if (motion.IsVertical && drop > target.Increment)
        {
            // A bit that does not cut at its centre may take a sliver with its rim.
            double near = Math.Max(target.Increment, cut.Radius * ProofAccuracy.RimOfPlunge);
            double top = Math.Min(bed.TopUnder(motion.End.Plane, cut.Radius), cleared.At(motion.End.Plane, cut.Index, cut.Radius, near));
            double depth = Math.Min(top, motion.Start.Z) - motion.End.Z;
            if (!tool.MayPlunge && depth > target.Increment)
            {
                faults.Add(FaultCodes.PlungeRefused, motion.Line, depth, 0, motion.End);
            }

            return;
        }

        double across = motion.PlaneLength;
        if (tool.MaxRampAngle < 90 && steepness.Add(drop, across * Math.Tan(tool.MaxRampAngle * Math.PI / 180), ProofAccuracy.RoundedHeights * target.Increment))
        {
            faults.Add(FaultCodes.RampTooSteep, motion.Line, Math.Atan2(drop, across) * 180 / Math.PI, tool.MaxRampAngle, motion.Start);
        }
    }

    private void CheckEnd(GcodeProgram program)
    {
        if (program.Steps is not [.., ProgramEnd])
        {
            faults.Add(FaultCodes.ProgramNotEnded, program.Lines);
        }

        if (position.Z < target.ClearHeight - target.Increment)
        {
            int line = program.Steps.Length > 0 ? program.Steps[^1].Line : 0;
            faults.Add(FaultCodes.EndsTooLow, line, position.Z, target.ClearHeight, position);
        }
    }
}
