using System.Collections.Immutable;
using ToolpathForge.Drawings;
using ToolpathForge.Exchange.Dxf;
using ToolpathForge.Exchange.Pdf;
using ToolpathForge.Jobs;
using ToolpathForge.MarkingOut;
using ToolpathForge.Pieces;
using ToolpathForge.Planning;
using ToolpathForge.RunSheets;

namespace ToolpathForge.Service.Output;

/// <summary>The files that the drawings of a job become: every drawing as SVG and DXF in mm at full size, and as PDF for the papers that printers take.</summary>
internal static class DrawFiles
{
    internal const string ByHand = "by-hand.html";

    /// <summary>The files.</summary>
    /// <param name="plan">What can be drawn; at least one piece.</param>
    /// <param name="family">Whether boards are to be shown side by side as well.</param>
    /// <param name="step">What ordinates are to stand apart, mm; null for a usual step.</param>
    internal static ImmutableArray<OutputFile> Of(DrawPlan plan, bool family, double? step)
    {
        Job job = plan.Job;
        ImmutableArray<ProfilePiece> profiles = [.. plan.Pieces.OfType<ProfilePiece>()];
        return
        [
            .. profiles.IsEmpty ? [] : (ImmutableArray<OutputFile>)[OutputFile.Text(ByHand, MarkingOutPage.Write(plan, step))],
            .. plan.Pieces.Where(p => p.Make.Sheet is not null).SelectMany(p => FullSize($"{(p.Make is OutlineMake ? "outlines" : "patterns")}/{p.Make.Id}", PieceDrawing.Of(p, job.Unit), job)),
            .. plan.Pieces.OfType<ProfilePiece>().SelectMany(p => p.Strips.SelectMany(s => FullSize($"patterns/{OutputFiles.NameOf(p, s)}", StripDrawing.Of(p.Make.Id, s, job.Unit), job))),
            .. plan.Pieces.OfType<ProfilePiece>().SelectMany(p => FullSize($"profiles/{p.Make.Id}", PaperPattern.Of(p, HandLayout.Of(p.Profile, job.Unit, step), job.Unit), job)),
            .. profiles.IsEmpty ? [] : PrintPaper.All.Select(paper => new OutputFile($"check-{paper.Id}.pdf", PdfWriter.Write($"{job.Name}: to check with a rule", CheckPage.Of(job.Name, profiles, job.Unit, paper)))),
            .. family && !profiles.IsEmpty ? Families(plan).SelectMany(f => Family(f.Name, f.Pieces, job)) : [],
        ];
    }

    /// <summary>The families of a job; all its boards as one where it has none.</summary>
    internal static ImmutableArray<(string Name, ImmutableArray<ProfilePiece> Pieces)> Families(DrawPlan plan)
    {
        ImmutableArray<(string, ImmutableArray<ProfilePiece>)> families =
            [.. plan.Pieces.OfType<ProfilePiece>().GroupBy(p => p.Make.Family, StringComparer.Ordinal).Where(g => g.Key is not null).Select(g => (g.Key!, g.ToImmutableArray()))];
        return families.IsEmpty ? [("all", [.. plan.Pieces.OfType<ProfilePiece>()])] : families;
    }

    private static IEnumerable<OutputFile> FullSize(string name, Drawing drawing, Job job)
    {
        yield return OutputFile.Text($"{name}.svg", SvgWriter.Write(drawing, 1));
        yield return OutputFile.Text($"{name}.dxf", DxfWriter.Write(drawing));
        foreach (PrintPaper paper in PrintPaper.All)
        {
            yield return new OutputFile($"{name}-{paper.Id}.pdf", PdfWriter.Write($"{drawing.Title}, full size on {paper.Name}", TiledPages.Of(drawing, job.Name, paper)));
        }
    }

    private static IEnumerable<OutputFile> Family(string name, ImmutableArray<ProfilePiece> pieces, Job job)
    {
        Drawing Drawn(double scale, int inRow)
        {
            Drawing drawing = FamilyDrawing.Of(name, pieces, job.Unit, scale, inRow);
            return pieces[0].Make.Family is null ? drawing with { Title = $"All boards of {job.Name}" } : drawing;
        }

        yield return OutputFile.Text($"family/{name}.svg", SvgWriter.Write(Drawn(FamilyDrawing.Scale, pieces.Length), FamilyDrawing.Scale));
        foreach (PrintPaper paper in PrintPaper.All)
        {
            // As large as goes on one sheet; of rows of different length the longest, so that as many as can stand side by side.
            (double scale, int inRow) = Enumerable.Range(1, pieces.Length).Reverse()
                .Select(count => (Scale: TiledPages.OneSheetScale(s => Drawn(s, count), paper), Count: count))
                .Where(t => t.Scale is not null).OrderByDescending(t => t.Scale).Select(t => (t.Scale!.Value, t.Count))
                .DefaultIfEmpty((FamilyDrawing.Scale, pieces.Length)).First();
            Drawing drawing = Drawn(scale, inRow);
            yield return new OutputFile($"family/{name}-{paper.Id}.pdf", PdfWriter.Write(drawing.Title, TiledPages.Of(drawing, job.Name, paper, scale)));
        }
    }
}
