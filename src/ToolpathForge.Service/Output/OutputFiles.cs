using System.Collections.Immutable;
using ToolpathForge.Cutting;
using ToolpathForge.Drawings;
using ToolpathForge.Exchange.Dxf;
using ToolpathForge.Exchange.Toolpaths;
using ToolpathForge.Measures;
using ToolpathForge.Pieces;
using ToolpathForge.Planning;
using ToolpathForge.Plugin.Contract;
using ToolpathForge.RunSheets;
using ToolpathForge.Service.Wire;

namespace ToolpathForge.Service.Output;

/// <summary>The files that a plan becomes.</summary>
internal static class OutputFiles
{
    internal const string RunSheet = "run-sheet.html";

    internal const string Proof = "proof.json";

    internal static ImmutableArray<OutputFile> Of(Plan plan, string job)
    {
        WireProgram[] programs = [.. plan.Programs.Select(p => ProgramWire.Of(p, plan.Job))];
        return
        [
            .. plan.Programs.Select(p => OutputFile.Text(p.FileName, p.Text)),
            OutputFile.Text(RunSheet, RunSheetPage.Write(plan)),
            .. plan.Pieces.SelectMany(p => Drawings(p, plan.Job.Unit)),
            .. plan.Pieces.OfType<ProfilePiece>().GroupBy(p => p.Make.Family, StringComparer.Ordinal).Where(g => g.Key is not null).Select(g => Family(g.Key!, [.. g], plan.Job.Unit)),
            .. plan.Programs.Where(p => p.Cut.Clamping.IsShared).DistinctBy(p => p.Cut.Clamping.Name, StringComparer.Ordinal).SelectMany(p => Blank(p.Cut, plan.Job.Unit)),
            .. plan.Programs.SelectMany(Toolpaths),
            OutputFile.Text(Proof, WireJson.Text(new ProofFile { Job = JobWire.Of(plan.Job, Path.GetFileName(job)), Programs = programs })),
        ];
    }

    private static OutputFile Family(string family, ProfilePiece[] pieces, LengthUnit unit) =>
        OutputFile.Text($"drawings/{family}.family.svg", SvgWriter.Write(FamilyDrawing.Of(family, pieces, unit), FamilyDrawing.Scale));

    // Named after the clamping, which is never named like a make.
    private static IEnumerable<OutputFile> Blank(CutPlan cut, LengthUnit unit)
    {
        Drawing drawing = NestDrawing.Of(cut, unit);
        yield return OutputFile.Text($"drawings/{cut.Clamping.Name}.svg", SvgWriter.Write(drawing, 1));
        yield return OutputFile.Text($"drawings/{cut.Clamping.Name}.dxf", DxfWriter.Write(drawing));
    }

    // The plan's own arcs, before the dialect and the errors of the axes.
    private static IEnumerable<OutputFile> Toolpaths(PlannedProgram program)
    {
        ImmutableArray<PassLayer> layers = PassLayer.Of(program.Cut);
        yield return OutputFile.Text($"toolpaths/{program.Name}.dxf", ToolpathDxf.Write(layers));
        yield return OutputFile.Text($"toolpaths/{program.Name}.svg", ToolpathSvg.Write(layers));
    }

    private static IEnumerable<OutputFile> Drawings(Piece piece, LengthUnit unit)
    {
        Drawing drawing = PieceDrawing.Of(piece, unit);
        yield return OutputFile.Text($"drawings/{piece.Make.Id}.svg", SvgWriter.Write(drawing, 1));
        yield return OutputFile.Text($"drawings/{piece.Make.Id}.dxf", DxfWriter.Write(drawing));

        foreach (PlateStrip strip in (piece as ProfilePiece)?.Strips ?? [])
        {
            Drawing flat = StripDrawing.Of(piece.Make.Id, strip, unit);
            string name = $"drawings/{NameOf((ProfilePiece)piece, strip)}";
            yield return OutputFile.Text(name + ".svg", SvgWriter.Write(flat, 1));
            yield return OutputFile.Text(name + ".dxf", DxfWriter.Write(flat));
        }
    }

    // No make's id has a dot.
    internal static string NameOf(ProfilePiece piece, PlateStrip strip) => $"{piece.Make.Id}.{strip.Name.Replace(' ', '-')}";
}
