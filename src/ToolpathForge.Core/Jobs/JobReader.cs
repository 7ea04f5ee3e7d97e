using System.Collections.Immutable;
using ToolpathForge.Catalogue;
using ToolpathForge.Findings;
using ToolpathForge.Measures;
using ToolpathForge.Tables;

namespace ToolpathForge.Jobs;

/// <summary>
/// Reads a job file: text in, a resolved job and every finding out. Pure: it opens no file itself. Nothing is guessed; what the file leaves open
/// is taken from the defaults that <c>samples/README.md</c> lists.
/// </summary>
public static class JobReader
{
    /// <summary>Reads a job.</summary>
    /// <param name="text">The job file's text.</param>
    /// <param name="fileName">Its name without folders, for findings.</param>
    /// <param name="readFile">Hands back the text of a catalogue file that the job names, as it names it; null when it cannot be read.</param>
    /// <param name="drawings">Hands over the drawings that the job names; null for none.</param>
    public static JobReading Read(string text, string fileName, Func<string, string?> readFile, IDrawings? drawings = null)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(fileName);
        ArgumentNullException.ThrowIfNull(readFile);
        var findings = new List<Finding>();
        TableValue? root = TomlText.Read(text, fileName, findings);
        if (root is null)
        {
            return new JobReading(null, [.. findings]);
        }

        int syntax = findings.Count;
        Job? job = OtherForm(root) is { } other ? Refuse(other, findings) : ReadHead(root, fileName, readFile, drawings ?? NoDrawings.Instance, findings);
        if (syntax > 0)
        {
            findings = [.. findings[..syntax], .. findings[syntax..].Where(f => IsTrustworthy(f, findings[..syntax]))];
        }

        ImmutableArray<Finding> sorted = [.. findings.Order(FindingOrder.Instance)];
        return new JobReading(sorted.Any(f => f.Kind.Unusable) ? null : job, sorted);
    }

    // A job of a later form would only draw findings about keys that are right there.
    private static NumberValue? OtherForm(TableValue root) =>
        root.Find("format")?.Value is NumberValue { IsWhole: true } form && form.Amount != 1 ? form : null;

    private static Job? Refuse(NumberValue form, List<Finding> findings)
    {
        findings.Add(Finding.Of(
            JobFindings.FormatUnknown, form.At, Quantity.Number(form.Amount), Quantity.Number(1), Arg.Of("text", TextPiece.Short(form.Written))));
        return null;
    }

    // Beside faults of the text, only what lies before the first of them can be believed, and no key can be called missing.
    private static bool IsTrustworthy(Finding finding, List<Finding> faults) =>
        finding.Kind != TableFindings.MissingKey
        && finding.Kind != JobFindings.ThicknessMissing
        && (finding.Place.File != faults[0].Place.File || finding.Place.Line < faults.Min(f => f.Place.Line));

    private static Job? ReadHead(TableValue root, string fileName, Func<string, string?> readFile, IDrawings drawings, List<Finding> findings)
    {
        LengthUnit? unit = root.Find("unit")?.Value is TextValue word ? UnitWord.Find(word.Text) : null;
        var context = new TableContext(unit, findings, UnitWasTold: true);
        var head = Fields.Read(root, JobKeys.Head, context, JobKeys.AnyMake, JobKeys.PanelStock, JobKeys.BoardStock, JobKeys.Cut);
        Catalogues catalogues = ReadCatalogues(head, readFile, context);
        Machine? machine = RowLookup.Find(head, "machine", "machines", catalogues.Machines, context);
        Dialect? dialect = RowLookup.Find(head, "dialect", "dialects", catalogues.Dialects, context);
        BuyingTerms? buying = BuyingReader.Read(head, context);
        PanelSharing? panels = PanelReader.Read(head, context);
        (catalogues, AxisErrors? axes, Bit? before) = TrialReader.Read(head.Has("trial") ? head.Inner("trial") : null, catalogues, context);
        ImmutableArray<Make> makes = MakeReader.ReadAll(head.Inners("make"), catalogues, machine, drawings, context);
        if (!head.IsSound || machine is null || dialect is null || buying is null || panels is null || makes.IsEmpty || unit is null || axes is null)
        {
            return null;
        }

        return new Job(
            fileName,
            head.Text("name"),
            unit.Value,
            head.Amount("tolerance"),
            machine,
            dialect,
            head.Text("zero") == "top" ? ZeroHeight.Top : ZeroHeight.Bed,
            head.Amount("clearance"),
            head.Amount("spoilboard"),
            makes,
            PlacesOf(root))
        {
            Buying = buying,
            Panels = panels,
            Axes = axes,
            TrialBit = before,
        };
    }

    /// <summary>Where each value below a table stands, by dotted key; lists of tables are left to their own.</summary>
    internal static Places PlacesOf(TableValue table)
    {
        var keys = ImmutableDictionary.CreateBuilder<string, Place>(StringComparer.Ordinal);
        Collect(table, "", keys);
        return new Places(table.At, keys.ToImmutable());
    }

    private static void Collect(TableValue table, string prefix, ImmutableDictionary<string, Place>.Builder keys)
    {
        foreach (TableEntry entry in table.Entries)
        {
            keys[prefix + entry.Name] = entry.Value.At;
            if (entry.Value is TableValue inner)
            {
                Collect(inner, $"{prefix}{entry.Name}.", keys);
            }
        }
    }

    private static Catalogues ReadCatalogues(Fields head, Func<string, string?> readFile, TableContext context)
    {
        Catalogues catalogues = Catalogues.Shipped;
        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (TextValue name in head.Texts("catalogues"))
        {
            if (!seen.Add(name.Text))
            {
                context.Add(Finding.Of(JobFindings.CatalogueTwice, name.At, Arg.Of("file", TextPiece.Short(name.Text))));
            }
            else if (readFile(name.Text) is { } text)
            {
                catalogues = catalogues.With(text, name.Text, context.Findings);
            }
            else
            {
                context.Add(Finding.Of(JobFindings.CatalogueMissing, name.At, Arg.Of("file", TextPiece.Short(name.Text))));
            }
        }

        return catalogues;
    }
}

/// <summary>Findings in the order of the file; equal places by code, so that the order is total.</summary>
internal sealed class FindingOrder : IComparer<Finding>
{
    internal static FindingOrder Instance { get; } = new();

    public int Compare(Finding? x, Finding? y)
    {
        if (x is null || y is null)
        {
            return (x is null ? 0 : 1) - (y is null ? 0 : 1);
        }

        int order = string.CompareOrdinal(x.Place.File ?? "", y.Place.File ?? "");
        order = order != 0 ? order : x.Place.Line.CompareTo(y.Place.Line);
        order = order != 0 ? order : x.Place.Column.CompareTo(y.Place.Column);
        return order != 0 ? order : string.CompareOrdinal(x.Kind.Code, y.Kind.Code);
    }
}
