using System.Collections.Immutable;
using ToolpathForge.Catalogue;
using ToolpathForge.Checks.Settings;
using ToolpathForge.Cutting;
using ToolpathForge.Jobs;
using ToolpathForge.Pieces;
using ToolpathForge.Planning;

namespace ToolpathForge.Service.Telling;

/// <summary>The settings of a job's programs as tables: each setting, what it is, what it may be, and the verdict.</summary>
internal static class JobSettingsTables
{
    /// <summary>
    /// A table for every make and every bit that cuts through it, those alike in all together; where nothing could be planned, with the numbers that it
    /// would be cut with.
    /// </summary>
    internal static IEnumerable<Section> Of(Plan plan) => plan.Job.Makes
        .SelectMany(make => Answers(plan, make).Select(answer => (make.Id, Answer: answer)))
        .SelectMany(a => SettingsTables.Of(a.Answer, plan.Job.Unit).Select(section => (a.Id, section)))
        .GroupBy(a => string.Join('\n', a.section.Lines.Concat(a.section.Rows.SelectMany(r => r))), StringComparer.Ordinal)
        .Select(alike => Headed(alike.First().section, string.Join(", ", alike.Select(a => a.Id).Distinct(StringComparer.Ordinal))));

    private static Section Headed(Section section, string makes) =>
        section with { Lines = [section.Lines.IsEmpty ? $"{makes}:" : $"{makes}: {section.Lines[0]}", .. section.Lines.Skip(1)] };

    /// <summary>What there is to say about the settings of a make: those of every bit, and those of a hand router.</summary>
    internal static IEnumerable<SettingsAnswer> Answers(Plan plan, Make make)
    {
        foreach ((Bit bit, CutSettings settings) in Bits(plan, make))
        {
            yield return JobSettings.Of(plan.Job, make, bit, settings);
        }

        if (plan.Pieces.FirstOrDefault(p => p.Make.Id == make.Id) is ProfilePiece piece && JobHand.Of(piece.Make, piece.Profile) is { } hand)
        {
            yield return hand;
        }
    }

    private static ImmutableArray<(Bit Bit, CutSettings Settings)> Bits(Plan plan, Make make)
    {
        ImmutableArray<(Bit, CutSettings)> planned =
        [
            .. plan.Programs.Concat(plan.FailedProofs).Where(p => p.Cut.Clamping.Makes.Any(m => m.Id == make.Id)).SelectMany(p => p.Cut.Works)
                .Where(w => w.Outline || w.Openings.Length > 0).Select(w => (w.Path.Bit, w.Settings)),
        ];
        return planned.IsEmpty ? JobSettings.Unplanned(plan.Job, make) : planned;
    }
}
