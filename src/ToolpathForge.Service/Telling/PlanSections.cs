using System.Collections.Immutable;
using System.Globalization;
using ToolpathForge.Cutting;
using ToolpathForge.Findings;
using ToolpathForge.Jobs;
using ToolpathForge.Measures;
using ToolpathForge.Pieces;
using ToolpathForge.Planning;
using ToolpathForge.Proof;
using ToolpathForge.Service.Wire;
using ToolpathForge.Shapes;

namespace ToolpathForge.Service.Telling;

/// <summary>A plan as text to read: what is made, with which programs, and what their proofs say.</summary>
internal static class PlanSections
{
    /// <summary>The sections of a plan.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="showPrograms">Whether its programs may be shown: not when something stops the job.</param>
    /// <param name="closing">The last word; null for none.</param>
    internal static ImmutableArray<Section> Of(Plan plan, bool showPrograms, string? closing)
    {
        Job job = plan.Job;
        var sections = ImmutableArray.CreateBuilder<Section>();
        sections.Add(Makes(job, plan));
        PlannedProgram[] programs = [.. plan.Programs, .. plan.FailedProofs];
        if (showPrograms && programs.Length > 0)
        {
            sections.Add(Programs(job, programs));
        }

        if (closing is not null)
        {
            sections.Add(Section.Of(closing));
        }

        return sections.ToImmutable();
    }

    private static Section Makes(Job job, Plan plan)
    {
        string Size(double millimetres) => LengthText.Write(millimetres, job.Unit);
        return new Section(
            [$"{job.Name}: on {job.Machine.Name}, tolerance {Size(job.Tolerance)}"],
            [new("make"), new("what"), new("count", true), new("board"), new("width", true), new("shape"), new("run", true), new("depth", true)],
            [
                .. job.Makes.Select(make =>
                {
                    Piece? of = plan.Pieces.FirstOrDefault(p => p.Make.Id == make.Id);
                    Profile? profile = (of as ProfilePiece)?.Profile;
                    var board = make as ProfileMake;
                    return (ImmutableArray<string>)
                    [
                        make.Id, JobWire.KindOf(make), Whole(make.Count), board?.Board.Id ?? "-", board is null ? "-" : Size(board.DesignWidth), board?.Shape.Shape.Id ?? "-",
                        profile is null ? "-" : Size(profile.Run), profile is null ? "-" : Size(profile.Depth),
                    ];
                }),
            ]);
    }

    private static Section Programs(Job job, PlannedProgram[] programs) => new(
        [],
        [
            new("program"), new("bit"), new("rpm", true), new("feed", true), new("passes", true), new("cut", true), new("runs", true), new("each", true), new("gouge", true),
            new("left over", true), new("proof"),
        ],
        [
            .. programs.Select(p =>
            {
                CutSettings settings = p.Cut.Settings;
                return (ImmutableArray<string>)
                [
                    p.FileName, string.Join(", ", p.Cut.Works.Select(w => w.Path.Bit.Id)), Whole(settings.Speed), QuantityText.Write(Quantity.Feed(settings.Feed), job.Unit),
                    Whole(settings.Steps.Length), Far(p.Proof.Motion.FeedLength, job.Unit), Whole(p.Cut.Clamping.Starts), Clock(p.Seconds), Small(p.Proof.WorstGouge, job.Unit),
                    Small(p.Proof.WorstLeftover, job.Unit), p.Proof.Passed ? "passed" : "FAILED",
                ];
            }),
        ]);

    /// <summary>A length of path: feet or metres, as nobody sets it on a rule.</summary>
    private static string Far(double millimetres, LengthUnit unit) => unit == LengthUnit.Inch
        ? string.Create(CultureInfo.InvariantCulture, $"{millimetres / 304.8:0.0} ft")
        : string.Create(CultureInfo.InvariantCulture, $"{millimetres / 1000:0.00} m");

    /// <summary>A measured error: always decimals, rounded up, so that it is never told smaller than it is.</summary>
    internal static string Small(double millimetres, LengthUnit unit)
    {
        if (!double.IsFinite(millimetres))
        {
            return "not cut";
        }

        double value = unit == LengthUnit.Inch ? millimetres / Length.MillimetresPerInch : millimetres;
        double up = (Math.Ceiling((value * 100000) - 1e-6) / 100000) + 0.0;
        return string.Create(CultureInfo.InvariantCulture, $"{up:0.00000} {(unit == LengthUnit.Inch ? "in" : "mm")}");
    }

    private static string Clock(double seconds)
    {
        var whole = (long)Math.Ceiling(seconds);
        return string.Create(CultureInfo.InvariantCulture, $"{whole / 60}:{whole % 60:00}");
    }

    private static string Whole(double number) => number.ToString("0", CultureInfo.InvariantCulture);
}
