namespace ToolpathForge.Proof;

/// <summary>Which bit is in the spindle and how the spindle turns, followed step by step.</summary>
internal sealed class SpindleState
{
    private readonly Target target;
    private readonly FaultBook faults;
    private int place;
    private bool hasFed;
    private double dwelt;

    internal SpindleState(Target target, FaultBook faults)
    {
        this.target = target;
        this.faults = faults;
        Tool = target.ToolChange == ToolChangeStyle.ByCommand ? null : target.Tools[0];
    }

    /// <summary>The bit; null if there is none or it is not known.</summary>
    internal TargetTool? Tool { get; private set; }

    internal bool IsRunning { get; private set; }

    internal double Speed { get; private set; }

    internal void Take(ProgramStep step)
    {
        switch (step)
        {
            case ToolChange change:
                Tool = Find(change.Tool, change.Line);
                IsRunning = false;
                break;
            case SpindleChange spindle:
                if (spindle.IsRunning && !IsRunning)
                {
                    dwelt = 0;
                }

                IsRunning = spindle.IsRunning;
                Speed = spindle.Speed;
                break;
            case Dwell dwell:
                dwelt += dwell.Seconds;
                break;
            case Pause { IsOptional: false } pause when target.ToolChange == ToolChangeStyle.ByPause:
                ChangeByHand(pause);
                break;
            case Motion motion:
                hasFed |= motion.IsFeed;
                break;
            case ProgramEnd end when IsRunning && target.ProgramRunsSpindle:
                faults.Add(FaultCodes.SpindleLeftRunning, end.Line);
                break;
        }
    }

    /// <summary>What has to hold while the bit is in material.</summary>
    internal void CheckCut(CutMotion cut)
    {
        Motion motion = cut.Motion;
        if (Tool is null)
        {
            faults.Add(FaultCodes.ToolUnknown, motion.Line, at: motion.Start);
        }

        double speed = Speed;
        if (target.ProgramRunsSpindle)
        {
            if (!IsRunning)
            {
                faults.Add(FaultCodes.SpindleOff, motion.Line, at: motion.Start);
            }
            else if (dwelt < target.DwellAfterStart)
            {
                faults.Add(FaultCodes.SpindleNotAtSpeed, motion.Line, dwelt, target.DwellAfterStart, motion.Start);
            }

            CheckSpeed(motion);
        }
        else
        {
            speed = target.SpeedByHand ?? 0;
        }

        if (Tool is { } tool && speed > 0)
        {
            CheckChip(motion, tool, motion.Feed / (speed * tool.Flutes));
        }
    }

    private void CheckSpeed(Motion motion)
    {
        double least = Math.Max(target.MinSpeed, Tool?.MinSpeed ?? 0);
        double most = Math.Min(target.MaxSpeed, Tool?.MaxSpeed ?? double.PositiveInfinity);
        if (Speed > most * (1 + ProofAccuracy.FeedSlack))
        {
            faults.Add(FaultCodes.SpeedTooHigh, motion.Line, Speed, most);
        }
        else if (Speed <= 0 || Speed < least * (1 - ProofAccuracy.FeedSlack))
        {
            faults.Add(FaultCodes.SpeedTooLow, motion.Line, Speed, least);
        }
    }

    private void CheckChip(Motion motion, TargetTool tool, double chip)
    {
        string subject = Number(tool.Number);
        if (tool.MaxChipLoad is { } most && chip > most * (1 + ProofAccuracy.FeedSlack))
        {
            faults.Add(FaultCodes.ChipLoadTooHigh, motion.Line, chip, most, motion.Start, subject);
        }
        else if (tool.MinChipLoad is { } least && motion.Start.Z == motion.End.Z && chip < least * (1 - ProofAccuracy.FeedSlack))
        {
            faults.Add(FaultCodes.ChipLoadTooLow, motion.Line, chip, least, motion.Start, subject);
        }
    }

    private static string Number(int number) => number.ToString(System.Globalization.CultureInfo.InvariantCulture);

    private void ChangeByHand(Pause pause)
    {
        // Without T words the first pauses, before anything has been fed, are for the person to get ready.
        if (pause.SelectedTool is null && !hasFed)
        {
            return;
        }

        if (IsRunning && target.ProgramRunsSpindle)
        {
            faults.Add(FaultCodes.SpindleRunsAtChange, pause.Line);
        }

        if (pause.SelectedTool is { } number)
        {
            Tool = Find(number, pause.Line);
            return;
        }

        place++;
        Tool = place < target.Tools.Length ? target.Tools[place] : null;
        if (Tool is null)
        {
            faults.Add(FaultCodes.ToolUnknown, pause.Line, place + 1, target.Tools.Length);
        }
    }

    private TargetTool? Find(int number, int line)
    {
        TargetTool? tool = target.Tools.FirstOrDefault(t => t.Number == number);
        if (tool is null)
        {
            faults.Add(FaultCodes.ToolUnknown, line, number, null, null, Number(number));
        }

        return tool;
    }
}
