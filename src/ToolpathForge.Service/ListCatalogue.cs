using System.Collections.Immutable;
using ToolpathForge.Catalogue;
using ToolpathForge.Checks;
using ToolpathForge.Findings;
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
    public static ImmutableArray<string> Kinds { get; } = ["lumber", "panels", "bits", "materials", "machines", "dialects", "shapes", "figures"];

    /// <summary>Lists one catalogue.</summary>
    /// <param name="kind">One of <see cref="Kinds"/>.</param>
    /// <param name="job">A job whose own catalogue files are to be shown too; null for what ships with the program.</param>
    /// <param name="unit"><c>in</c> or <c>mm</c>; null for the job's, or inches.</param>
    /// <param name="filter">Which rows; only the options that this list has (<see cref="ListFilter.OptionsOf"/>) choose.</param>
    /// <param name="cancel">Asked between files.</param>
    public static Report Run(string kind, string? job, string? unit, ListFilter filter, CancellationToken cancel)
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
        List<Finding> findings = [.. loaded.Findings];
        RowFilter? wanted = filter.Read(worded, findings);
        int exit = Teller.ExitCode(findings);
        CatalogueReply reply = new() { ExitCode = exit, Findings = teller.Wire(findings) };
        if (wanted is null)
        {
            return new Report(exit, teller.Remarks(findings), [], () => WireJson.Text(reply));
        }

        ImmutableArray<Section> sections = Fill(reply, kind, rows, wanted, worded);
        return new Report(exit, teller.Remarks(findings), sections, () => WireJson.Text(reply));
    }

    /// <summary>One catalogue as it ships.</summary>
    /// <param name="kind">One of <see cref="Kinds"/>.</param>
    internal static CatalogueReply Of(string kind)
    {
        var reply = new CatalogueReply();
        Fill(reply, kind, Catalogues.Shipped, ListFilter.None.Read(LengthUnit.Inch, [])!, LengthUnit.Inch);
        return reply;
    }

    private static ImmutableArray<Section> Fill(CatalogueReply reply, string kind, Catalogues rows, RowFilter wanted, LengthUnit worded)
    {
        ImmutableArray<Section> sections;
        switch (kind)
        {
            case "lumber":
                ImmutableArray<Lumber> lumber = [.. rows.Lumber.All.Where(wanted.Takes)];
                reply.Lumber = [.. lumber.Select(CatalogueWire.Of)];
                sections = CatalogueTables.Of(lumber, worded);
                break;
            case "panels":
                ImmutableArray<Panel> panels = [.. rows.Panels.All.Where(wanted.Takes)];
                reply.Panels = [.. panels.Select(CatalogueWire.Of)];
                sections = CatalogueTables.Of(panels, worded);
                break;
            case "bits":
                ImmutableArray<Bit> bits = [.. rows.Bits.All.Where(wanted.Takes)];
                reply.Bits = [.. bits.Select(CatalogueWire.Of)];
                sections = CatalogueTables.Of(bits, worded);
                break;
            case "materials":
                ImmutableArray<Material> materials = [.. rows.Materials.All.Where(wanted.Takes)];
                reply.Materials = [.. materials.Select(CatalogueWire.Of)];
                sections = CatalogueTables.Of(materials);
                break;
            case "machines":
                reply.Machines = [.. rows.Machines.All.Select(CatalogueWire.Of)];
                sections = CatalogueTables.Of(rows.Machines.All, worded);
                break;
            case "dialects":
                reply.Dialects = [.. rows.Dialects.All.Select(CatalogueWire.Of)];
                sections = CatalogueTables.Of(rows.Dialects.All);
                break;
            case "shapes":
                reply.Shapes = [.. ShapeList.All.Select(CatalogueWire.Of)];
                sections = CatalogueTables.Of(ShapeList.All);
                break;
            case "figures":
                reply.Figures = [.. Figures.All.Select(CatalogueWire.Of)];
                sections = CatalogueTables.Of(Figures.All, worded);
                break;
            default:
                throw new ArgumentException($"There is no list of '{kind}'.", nameof(kind));
        }

        return sections;
    }
}
