using System.Collections.Immutable;
using ToolpathForge.Catalogue;
using ToolpathForge.Cutting;
using ToolpathForge.Findings;
using ToolpathForge.Jobs;

namespace ToolpathForge.Checks.Settings;

/// <summary>Asks of a job's own figures what a check without a job asks of options, so that both answer alike.</summary>
public static class JobSettings
{
    /// <summary>What keeps a bit from its depth, the weightiest first: told once, not in four ways.</summary>
    private static readonly ImmutableArray<FindingKind> s_reach =
        [SettingFindings.StickOutShort, SettingFindings.NutLow, SettingFindings.ShankInCut, BitReach.TooShort, SettingFindings.FlutesInCollet];

    /// <summary>What no other check of a job speaks of, with the key that it is told at.</summary>
    private static readonly ImmutableArray<(FindingKind Kind, string Key)> s_others =
    [
        (SettingFindings.ColletSmall, "bit"), (SettingFindings.GripShort, "bit"), (SettingFindings.FinishPushed, "bit"),
        (FinishChip.TooThin, "cut.allowance"), (SettingFindings.StickOutLong, "bit"),
        (SettingFindings.TooFastForSize, "cut.speed"), (SettingFindings.OpeningLow, "stock.thickness"), (SettingFindings.RaisedLow, "stock.thickness"),
        (SettingFindings.Tips, "stock.on-bed"), (SettingFindings.MovingBed, "stock.on-bed"),
    ];

    /// <summary>What the settings of one bit of a clamping are, and what they may be.</summary>
    /// <param name="job">Gives machine, clearance and spoilboard.</param>
    /// <param name="make">What is cut.</param>
    /// <param name="bit">With what.</param>
    /// <param name="settings">The numbers it cuts with.</param>
    public static SettingsAnswer Of(Job job, Make make, Bit bit, CutSettings settings)
    {
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(make);
        ArgumentNullException.ThrowIfNull(settings);
        double depth = settings.Steps[^1];
        var question = new MachineQuestion(bit, make.Material, job.Machine, depth)
        {
            Overcut = settings.Overcut,
            Thickness = make.Thickness,
            Spoilboard = job.Spoilboard,
            Clearance = job.Clearance,
            Speed = settings.Speed,
            Feed = settings.Feed,
            Plunge = settings.Plunge,
            PassDepth = depth / settings.Steps.Length,
            Allowance = settings.Allowance,
            FinishStep = settings.FinishSteps[^1] / settings.FinishSteps.Length,
            WholeWall = true,
            Overhang = make is BoardEndMake end ? new Overhang(end.BoardLength, Math.Max(end.DesignWidth, end.Batch.Widest) * Math.Min(end.Batch.Abreast, end.Batch.Count), Math.Min(end.OnBed, end.BoardLength), end.Stand) { Moisture = end.Moisture } : null,
        };
        return MachineSettings.Of(question);
    }

    /// <summary>The bits that cut through a make and the numbers they would cut with, before anything is planned; bits that only engrave are left out.</summary>
    /// <param name="job">Gives the machine.</param>
    /// <param name="make">What is cut.</param>
    public static ImmutableArray<(Bit Bit, CutSettings Settings)> Unplanned(Job job, Make make)
    {
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(make);

        // The perimeter decides the number of tabs alone, which no setting here depends on.
        CutSettings outline = CutSettings.For(make, job.Machine, 0, make.LeftBelow);
        return [.. BitTask.For([make], job.Machine, outline).Where(t => t.Outline || t.Openings.Length > 0).Select(t => (t.Bit, t.Settings))];
    }

    /// <summary>What is wrong with the bit that cuts an outline or openings.</summary>
    internal static IEnumerable<Finding> Find(CheckInput input)
    {
        ImmutableArray<Finding> found = Of(input.Job, input.Make, input.Bit, input.Settings).Findings;
        Finding? reach = s_reach.Select(k => found.FirstOrDefault(f => f.Kind == k)).FirstOrDefault(f => f is not null);

        // Of a bit that has the wrong form altogether it does not matter how deep it reaches.
        if (reach is not null && input.Bit.CutsSquareWall)
        {
            // A shank as thick as its cut rubs because the edges are short, which is easier to understand.
            bool plain = reach.Kind == SettingFindings.ShankInCut && input.Bit.Shank <= input.Bit.Diameter + 1e-9;
            Finding told = plain ? found.First(f => f.Kind == BitReach.TooShort) : reach;
            yield return told with { Place = input.At("bit") };
        }

        foreach ((FindingKind kind, string key) in s_others)
        {
            foreach (Finding finding in found.Where(f => f.Kind == kind))
            {
                yield return finding with { Place = input.At(key) };
            }
        }
    }

    /// <summary>What is wrong with another bit of the same clamping: what concerns stock and machine alone is told with the first.</summary>
    internal static IEnumerable<Finding> FindOfBit(CheckInput input) => Find(input).Where(f =>
        f.Kind != SettingFindings.OpeningLow && f.Kind != SettingFindings.RaisedLow && f.Kind != SettingFindings.Tips && f.Kind != SettingFindings.MovingBed);

    /// <summary>What is wrong with a bit that only engraves: how it is held and how fast its rim runs.</summary>
    internal static IEnumerable<Finding> FindEngraving(CheckInput input) =>
        Find(input).Where(f => f.Kind == SettingFindings.ColletSmall || f.Kind == SettingFindings.GripShort || f.Kind == SettingFindings.TooFastForSize);
}
