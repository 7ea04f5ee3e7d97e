using ToolpathForge.Clampings;
using ToolpathForge.Findings;
using ToolpathForge.Jobs;

namespace ToolpathForge.Checks;

/// <summary>Whether the boards of a make go together: their widths and thicknesses with one program, their places on the bed, their crown.</summary>
internal static class BoardStack
{
    /// <summary>Boards lie too near to one another for the bit to pass between them.</summary>
    internal static readonly FindingKind GapNarrow = new(
        "gap-between-boards",
        Severity.Stop,
        "Boards that lie side by side are {found} apart; the bit and 2 mm on either side of it ask for {allowed}.",
        "Widen the gap, or leave it to the program.");

    /// <summary>Boards of different thickness with Z zero on their upper faces.</summary>
    internal static readonly FindingKind ThicknessVaries = new(
        "thickness-varies",
        Severity.Stop,
        "The boards differ by {found} in thickness; with zero on the upper face, through cuts would end {found} deeper under the thinnest, more than the {allowed} that they go into the spoilboard.",
        "Set zero = \"bed\", or make the thin ones apart.");

    /// <summary>Narrower than the shape was drawn for.</summary>
    internal static readonly FindingKind HangsOver = new(
        "profile-hangs-over",
        Severity.Note,
        "{boards} measure {width}, {found} less than the shape is drawn for: with the reference edge at the fence the curve ends that much short of its lower end, at their lower edge.",
        "Nothing to do where the eye does not meet two of them side by side; else program = \"width\" scales the shape to each width.");

    /// <summary>Wider than the shape was drawn for.</summary>
    internal static readonly FindingKind LeavesLedge = new(
        "ledge-stays",
        Severity.Note,
        "{boards} measure {width}, {found} more than the shape is drawn for: a ledge that high stays along their lower edge where the curve begins.",
        "Plane it off, or let program = \"width\" scale the shape to each width.");

    /// <summary>A bowed board does not lie along the fence.</summary>
    internal static readonly FindingKind Crowned = new(
        "crown-tilts-end",
        Severity.Warn,
        "A crown of {crown} over the length turns the end by so much that the profile is off by {found} across the board's width; {allowed} is the tolerance.",
        "Sort out the crooked boards, or joint the reference edge straight; what matters is that the reference edge touches the fence near the end.");

    /// <summary>A program that waits between boards cannot change bits as well.</summary>
    internal static readonly FindingKind WaitsWithBits = new(
        "waiting-with-several-bits",
        Severity.Stop,
        "The program is to wait between boards, but this make needs {found} bits, which would have to be changed at each board; {allowed} will do.",
        "Leave runs out, so that each bit has its programs, or use one bit for everything.");

    /// <summary>What is told of one board after the other would be the same sentence.</summary>
    private const double Felt = 0.1;

    internal static IEnumerable<Finding> Find(CheckInput input)
    {
        if (input.Make is not BoardEndMake make)
        {
            yield break;
        }

        BoardBatch batch = make.Batch;
        double least = BoardLayout.LeastGap(make);
        if (input.Clamping.Gap > 0 && input.Clamping.Gap < least - 1e-9)
        {
            yield return Finding.Of(GapNarrow, input.At("end.gap"), Quantity.Length(input.Clamping.Gap), Quantity.Length(least));
        }

        int bits = make.Openings.Select(o => o.Bit).Append(make.Bit).Distinct().Count();
        if (input.Clamping.Waits && bits > 1)
        {
            yield return Finding.Of(WaitsWithBits, input.At("end.runs"), Quantity.Number(bits), Quantity.Number(1));
        }

        double differs = batch.Boards.Max(b => b.Thickness) - batch.Boards.Min(b => b.Thickness);
        if (input.Job.Zero == ZeroHeight.Top && differs > input.Settings.Overcut)
        {
            yield return Finding.Of(ThicknessVaries, input.Job.At["zero"], Quantity.Length(differs), Quantity.Length(input.Settings.Overcut));
        }

        foreach (MeasuredBoards boards in batch.Boards)
        {
            double more = boards.Width - make.DesignWidth;
            if (Math.Abs(more) > Felt)
            {
                yield return Finding.Of(
                    more < 0 ? HangsOver : LeavesLedge,
                    boards.At.OfMake(make.Id),
                    Quantity.Length(Math.Abs(more)),
                    Quantity.Length(0),
                    Arg.Of("boards", boards.Name.Length > 0 ? $"Boards '{boards.Name}'" : "Some boards"),
                    Arg.Of("width", Quantity.Length(boards.Width)));
            }
        }

        // The reference edge as an arc of sagitta s over the length L meets its chord at its ends under 4 s / L; across the width that turns the end by so much.
        double off = 4 * batch.Crown / make.BoardLength * make.DesignWidth;
        if (off > input.Job.Tolerance)
        {
            yield return Finding.Of(
                Crowned, input.At("stock.crown"), Quantity.Length(off), Quantity.Length(input.Job.Tolerance), Arg.Of("crown", Quantity.Length(batch.Crown)));
        }
    }
}
