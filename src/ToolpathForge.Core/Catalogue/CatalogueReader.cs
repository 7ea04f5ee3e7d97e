using System.Collections.Immutable;
using ToolpathForge.Findings;
using ToolpathForge.Measures;
using ToolpathForge.Tables;

namespace ToolpathForge.Catalogue;

/// <summary>Reads catalogue files into rows.</summary>
internal static class CatalogueReader
{
    /// <summary>The catalogues given, with the rows of a file on top.</summary>
    internal static Catalogues Read(Catalogues before, string text, string file, ICollection<Finding> findings)
    {
        if (TomlText.Read(text, file, findings) is not { } root)
        {
            return before;
        }

        LengthUnit? unit = root.Find("unit")?.Value is TextValue word ? UnitWord.Find(word.Text) : null;
        var context = new TableContext(unit, findings, UnitWasTold: true);
        Fields fields = Fields.Read(root, CatalogueKeys.File, context);
        Catalogues rows = before with
        {
            Lumber = before.Lumber.With(ReadRows(fields, "lumber", CatalogueKeys.Lumber, context, ReadLumber)),
            Bits = before.Bits.With(ReadRows(fields, "bit", CatalogueKeys.Bit, context, BitReader.Read)),
            Materials = before.Materials.With(ReadRows(fields, "material", CatalogueKeys.Material, context, ReadMaterial)),
            Machines = before.Machines.With(ReadRows(fields, "machine", CatalogueKeys.Machine, context, ReadMachine)),
            Dialects = before.Dialects.With(ReadRows(fields, "dialect", CatalogueKeys.Dialect, context, DialectReader.Read)),
        };
        return rows with { Panels = before.Panels.With(ReadRows(fields, "panel", CatalogueKeys.Panel, context, (row, c) => ReadPanel(row, c, rows.Materials))) };
    }

    /// <summary>Reports when a row's first number is larger than its second.</summary>
    internal static bool InOrder(Fields row, string first, string second, QuantityKind kind, TableContext context)
    {
        if (row.Amount(first) <= row.Amount(second))
        {
            return true;
        }

        context.Add(Finding.Of(
            CatalogueFindings.OutOfOrder,
            row.Where(first),
            new Quantity(row.Amount(first), kind),
            new Quantity(row.Amount(second), kind),
            Arg.Of("id", row.Has("id") ? row.Text("id") : "the band"),
            Arg.Of("first", first),
            Arg.Of("second", second)));
        return false;
    }

    internal static Source SourceOf(Fields row) => new(
        row.Text("basis") switch
        {
            "published" => SourceKind.Published,
            "practice" => SourceKind.Practice,
            "judgment" => SourceKind.Judgment,
            "memory" => SourceKind.Memory,
            _ => SourceKind.User,
        },
        row.Text("source"));

    private static List<T> ReadRows<T>(Fields file, string key, TableKeys keys, TableContext context, Func<Fields, TableContext, T?> read)
        where T : class
    {
        var rows = new List<T>();
        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (TableValue table in file.Inners(key))
        {
            var fields = Fields.Read(table, keys, context);
            if (fields.Has("id") && !seen.Add(fields.Text("id")))
            {
                context.Add(Finding.Of(CatalogueFindings.IdTwice, fields.Where("id"), Arg.Of("id", fields.Text("id"))));
            }
            else if (fields.IsSound && read(fields, context) is { } row)
            {
                rows.Add(row);
            }
        }

        return rows;
    }

    private static Lumber ReadLumber(Fields row, TableContext context) =>
        new(row.Text("id"), row.Text("name"), row.Amount("thickness"), row.Amount("width"), SourceOf(row)) { Engineered = row.Flag("engineered"), Moisture = row.Amount("moisture") };

    private static Panel? ReadPanel(Fields row, TableContext context, Rows<Material> materials)
    {
        if (!InOrder(row, "thinnest", "thickest", QuantityKind.Length, context))
        {
            return null;
        }

        if (materials.Find(row.Text("material")) is null)
        {
            context.Add(Finding.Of(
                CatalogueFindings.UnknownMaterial,
                row.Where("material"),
                Arg.Of("id", row.Text("id")),
                Arg.Of("material", row.Text("material")),
                Arg.Of("words", string.Join(", ", materials.Ids))));
            return null;
        }

        return new Panel(
            row.Text("id"),
            row.Text("name"),
            row.Text("material"),
            row.Amount("nominal"),
            row.Amount("thinnest"),
            row.Amount("thickest"),
            SourceOf(row));
    }

    private static Material? ReadMaterial(Fields row, TableContext context)
    {
        var chips = ImmutableArray.CreateBuilder<ChipBand>();
        foreach (TableValue table in row.Inners("chips"))
        {
            var band = Fields.Read(table, CatalogueKeys.Chip, context);
            if (!band.IsSound || !InOrder(band, "least", "most", QuantityKind.Length, context))
            {
                return null;
            }

            if (chips.Count > 0 && band.Amount("diameter") <= chips[^1].Diameter)
            {
                context.Add(Finding.Of(
                    CatalogueFindings.OutOfOrder,
                    band.Where("diameter"),
                    Quantity.Length(chips[^1].Diameter),
                    Quantity.Length(band.Amount("diameter")),
                    Arg.Of("id", row.Text("id")),
                    Arg.Of("first", "the diameter of one chip band"),
                    Arg.Of("second", "that of the next")));
                return null;
            }

            chips.Add(new ChipBand(band.Amount("diameter"), band.Amount("least"), band.Amount("most")));
        }

        return new Material(
            row.Text("id"),
            row.Text("name"),
            row.Text("kind") switch
            {
                "softwood" => MaterialKind.Softwood,
                "hardwood" => MaterialKind.Hardwood,
                _ => MaterialKind.Panel,
            },
            row.Amount("density"),
            row.Amount("pass-depth"),
            row.Amount("ramp-angle"),
            row.Amount("cutting-force"),
            chips.ToImmutable(),
            SourceOf(row));
    }

    private static Machine? ReadMachine(Fields row, TableContext context) =>
        InOrder(row, "min-speed", "max-speed", QuantityKind.Speed, context)
            ? new Machine(
                row.Text("id"),
                row.Text("name"),
                row.Amount("travel-x"),
                row.Amount("travel-y"),
                row.Amount("travel-z"),
                row.Amount("min-speed"),
                row.Amount("max-speed"),
                row.Amount("max-feed"),
                row.Amount("max-plunge"),
                row.Amount("acceleration"),
                row.Amount("pass-depth"),
                row.Amount("chip-share"),
                row.Amount("stiffness"),
                row.Amount("mass"),
                row.Amount("half-footprint"),
                row.Flag("homing"),
                row.Flag("moving-bed"),
                row.Flag("switched-by-hand"),
                SourceOf(row))
            {
                Opening = row.AmountOrNull("opening") ?? row.Amount("travel-z"),
                ChangesBits = row.Flag("changes-bits"),
                DialMarks = (int?)row.AmountOrNull("dial-marks"),
                Collet = row.AmountOrNull("collet") ?? double.PositiveInfinity,
            }
            : null;
}
