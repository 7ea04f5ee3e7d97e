using System.Collections.Immutable;
using System.Globalization;
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
        string against = $"{file}, measured against {string.Join(", ", meant.Cut.Clamping.Makes.Select(m => m.Id))} of {job.Name}";
        sections.Add(Section.Of(proof.Passed ? $"{against}: passed." : $"{against}: FAILED. Do not run it."));
        if (!proof.Faults.IsEmpty)
        {
            sections.Add(Section.Of([.. proof.Faults.Select(f => FaultText.Line(f, file, job.Unit))]));
        }

        if (!proof.Pieces.IsEmpty)
        {
            sections.Add(new Section(
                [$"Gouge and left over may be at most {PlanSections.Small(job.Tolerance, job.Unit)}; neither is larger than told here."],
                [new("piece"), new("from", true), new("to", true), new("gouge", true), new("on line", true), new("left over", true), new("near line", true)],
                [
                    .. proof.Pieces.SelectMany(p => p.Slabs, (p, s) => (ImmutableArray<string>)
                    [
                        p.Name, Height(s.Bottom, job.Unit), Height(s.Top, job.Unit), PlanSections.Small(s.Gouge, job.Unit), Line(s.GougeAt),
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

    private static string Height(double millimetres, LengthUnit unit) => unit == LengthUnit.Inch
        ? string.Create(CultureInfo.InvariantCulture, $"{millimetres / Length.MillimetresPerInch + 0.0:0.0000} in")
        : string.Create(CultureInfo.InvariantCulture, $"{millimetres + 0.0:0.000} mm");

    private static string Line(ProofPlace? place) => place is { Line: > 0 and var line } ? Whole(line) : "-";

    private static string Whole(double number) => number.ToString("0", CultureInfo.InvariantCulture);
}
