using System.Collections.Immutable;
using System.Globalization;
using ToolpathForge.Findings;
using ToolpathForge.Jobs;
using ToolpathForge.Measures;
using ToolpathForge.Planning;
using ToolpathForge.Proof;

namespace ToolpathForge.Service.Telling;

/// <summary>A proof as text to read: the verdict, the faults with their lines, and the figures.</summary>
internal static class ProofSections
{
    internal static ImmutableArray<Section> Of(string file, PlannedProgram meant, ProofReport proof, Job job)
    {
        var sections = ImmutableArray.CreateBuilder<Section>();
        string against = $"{file}, measured against {meant.Cut.Clamping.Make.Id} of {job.Name}";
        sections.Add(Section.Of(proof.Passed ? $"{against}: passed." : $"{against}: FAILED. Do not run it."));
        if (!proof.Faults.IsEmpty)
        {
            sections.Add(new Section(
                [],
                [new("line", true), new("fault"), new("about"), new("found", true), new("allowed", true), new("times", true), new("what it means")],
                [
                    .. proof.Faults.Select(f => (ImmutableArray<string>)
                    [
                        f.Line > 0 ? Whole(f.Line) : "-", f.Code.Name, f.Subject ?? "", Told(f.Found, f.Code.Unit, job.Unit), Told(f.Allowed, f.Code.Unit, job.Unit),
                        Whole(f.Count), f.Code.Meaning,
                    ]),
                ]));
        }

        if (!proof.Pieces.IsEmpty)
        {
            sections.Add(new Section(
                [$"Gouge and left over may be at most {PlanSections.Small(job.Tolerance, job.Unit)}; neither is larger than told here."],
                [new("piece"), new("from", true), new("to", true), new("gouge", true), new("on line", true), new("left over", true), new("near line", true)],
                [
                    .. proof.Pieces.SelectMany(p => p.Slabs, (p, s) => (ImmutableArray<string>)
                    [
                        p.Name, LengthText.Write(s.Bottom, job.Unit), LengthText.Write(s.Top, job.Unit), PlanSections.Small(s.Gouge, job.Unit), Line(s.GougeAt),
                        PlanSections.Small(s.Leftover, job.Unit), Line(s.LeftoverAt),
                    ]),
                ]));
            MotionFigures motion = proof.Motion;
            sections.Add(Section.Of(string.Create(
                CultureInfo.InvariantCulture,
                $"{motion.Lines} lines: {motion.StraightFeeds} straight cuts, {motion.Arcs} arcs, {motion.Rapids} rapids; {motion.FeedLength / 1000:0.00} m at feed.")));
        }

        return sections.ToImmutable();
    }

    private static string Told(double? value, FaultUnit unit, LengthUnit worded) => value is not { } v ? "" : unit switch
    {
        FaultUnit.Length => PlanSections.Small(v, worded),
        FaultUnit.Feed => QuantityText.Write(Quantity.Feed(v), worded),
        FaultUnit.Speed => QuantityText.Write(Quantity.Speed(v), worded),
        FaultUnit.Angle => QuantityText.Write(Quantity.Angle(v), worded),
        FaultUnit.Time => string.Create(CultureInfo.InvariantCulture, $"{v:0.##} s"),
        _ => Whole(v),
    };

    private static string Line(ProofPlace? place) => place is { Line: > 0 and var line } ? Whole(line) : "-";

    private static string Whole(double number) => number.ToString("0", CultureInfo.InvariantCulture);
}
