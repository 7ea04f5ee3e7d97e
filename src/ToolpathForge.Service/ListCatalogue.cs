using System.Collections.Immutable;
using ToolpathForge.Catalogue;
using ToolpathForge.Measures;
using ToolpathForge.Plugin.Contract;
using ToolpathForge.Service.Files;
using ToolpathForge.Service.Telling;
using ToolpathForge.Service.Wire;
using ToolpathForge.Shapes;

namespace ToolpathForge.Service;

/// <summary>Shows what a job may name.</summary>
public static class ListCatalogue
{
    /// <summary>What can be listed.</summary>
    public static ImmutableArray<string> Kinds { get; } = ["lumber", "panels", "bits", "materials", "machines", "dialects", "shapes"];

    /// <summary>Lists one catalogue.</summary>
    /// <param name="kind">One of <see cref="Kinds"/>.</param>
    /// <param name="job">A job whose own catalogue files are to be shown too; null for what ships with the program.</param>
    /// <param name="unit"><c>in</c> or <c>mm</c>; null for the job's, or inches.</param>
    /// <param name="cancel">Asked between files.</param>
    public static Report Run(string kind, string? job, string? unit, CancellationToken cancel)
    {
        Loaded loaded = job is null ? new Loaded(null, [], []) : JobFile.Load(job, cancel);
        LengthUnit worded = unit switch
        {
            "mm" => LengthUnit.Millimetre,
            "in" => LengthUnit.Inch,
            _ => loaded.Job?.Unit ?? LengthUnit.Inch,
        };
        var teller = new Teller(worded);
        Catalogues rows = loaded.Catalogues;
        int exit = Teller.ExitCode(loaded.Findings);
        CatalogueReply reply = new() { ExitCode = exit, Findings = teller.Wire(loaded.Findings) };
        Section section;
        switch (kind)
        {
            case "lumber":
                reply.Lumber = [.. rows.Lumber.All.Select(CatalogueWire.Of)];
                section = CatalogueTables.Of(rows.Lumber.All, worded);
                break;
            case "panels":
                reply.Panels = [.. rows.Panels.All.Select(CatalogueWire.Of)];
                section = CatalogueTables.Of(rows.Panels.All, worded);
                break;
            case "bits":
                reply.Bits = [.. rows.Bits.All.Select(CatalogueWire.Of)];
                section = CatalogueTables.Of(rows.Bits.All, worded);
                break;
            case "materials":
                reply.Materials = [.. rows.Materials.All.Select(CatalogueWire.Of)];
                section = CatalogueTables.Of(rows.Materials.All);
                break;
            case "machines":
                reply.Machines = [.. rows.Machines.All.Select(CatalogueWire.Of)];
                section = CatalogueTables.Of(rows.Machines.All, worded);
                break;
            case "dialects":
                reply.Dialects = [.. rows.Dialects.All.Select(CatalogueWire.Of)];
                section = CatalogueTables.Of(rows.Dialects.All);
                break;
            case "shapes":
                reply.Shapes = [.. ShapeList.All.Select(CatalogueWire.Of)];
                section = CatalogueTables.Of(ShapeList.All);
                break;
            default:
                throw new ArgumentException($"There is no list of '{kind}'.", nameof(kind));
        }

        return new Report(exit, teller.Remarks(loaded.Findings), [section], () => WireJson.Text(reply));
    }
}
