using System.Collections.Immutable;
using System.Globalization;
using ToolpathForge.Catalogue;
using ToolpathForge.Checks;
using ToolpathForge.Findings;
using ToolpathForge.Measures;
using ToolpathForge.Shapes;

namespace ToolpathForge.Service.Telling;

/// <summary>Catalogues as tables to read. Where a row comes from is told once below the table, under the number in its last column.</summary>
internal static class CatalogueTables
{
    internal static ImmutableArray<Section> Of(ImmutableArray<Lumber> rows, LengthUnit unit) => WithSources(
        Units(unit),
        rows.Select(r => r.Source),
        [new("size"), new("thick", true), new("wide", true), new("")],
        rows.Select(r => (ImmutableArray<string>)[r.Id, Length(r.Thickness, unit), Length(r.Width, unit), r.Engineered ? "engineered: as its maker allows" : r.Moisture > WoodDensity.SoldAsDry ? $"sold at {Whole(r.Moisture)} % moisture" : ""]));

    internal static ImmutableArray<Section> Of(ImmutableArray<Panel> rows, LengthUnit unit) => WithSources(
        Units(unit),
        rows.Select(r => r.Source),
        [new("panel"), new("material"), new("nominal", true), new("thinnest", true), new("thickest", true)],
        rows.Select(r => (ImmutableArray<string>)
            [r.Id, r.Material, Length(r.Nominal, unit), Length(r.Thinnest, unit), Length(r.Thickest, unit)]));

    internal static ImmutableArray<Section> Of(ImmutableArray<Bit> rows, LengthUnit unit) => WithSources(
        Units(unit),
        rows.Select(r => r.Source),
        [new("bit"), new("kind"), new("diameter", true), new("flutes", true), new("shank", true), new("plunges")],
        rows.Select(r => (ImmutableArray<string>)
        [
            r.Id, BitKinds.WordOf(r.Kind), Length(r.Diameter, unit), $"{Whole(r.Flutes)} x {Length(r.FluteLength, unit)}", Length(r.Shank, unit),
            r.CanPlunge ? "yes" : "no",
        ]));

    internal static ImmutableArray<Section> Of(ImmutableArray<Material> rows) => WithSources(
        "Density of timber at 12 % moisture; heavier when wetter. Panels as delivered.",
        rows.Select(r => r.Source),
        [new("material"), new("name"), new("kg/m³", true), new("pass depth, diameters", true), new("steepest ramp", true)],
        rows.Select(r => (ImmutableArray<string>)
            [r.Id, r.Name, Whole(r.Density), Number(r.PassDepth), QuantityText.Write(Quantity.Angle(r.RampAngle), LengthUnit.Millimetre)]));

    internal static ImmutableArray<Section> Of(ImmutableArray<Machine> rows, LengthUnit unit) => WithSources(
        Units(unit),
        rows.Select(r => r.Source),
        [new("machine"), new("travel X, Y, Z"), new("rpm"), new("most feed", true), new("frame, N/mm", true), new("kg", true)],
        rows.Select(r => (ImmutableArray<string>)
        [
            r.Id, Travel(r, unit), $"{Whole(r.MinSpeed)}-{Whole(r.MaxSpeed)}",
            QuantityText.Write(Quantity.Feed(r.MaxFeed), unit), Whole(r.Stiffness), Whole(r.Mass),
        ]));

    internal static ImmutableArray<Section> Of(ImmutableArray<Dialect> rows) => WithSources(
        null,
        rows.Select(r => r.Source),
        [new("dialect"), new("what it does"), new("unit"), new("decimals", true), new("file")],
        rows.Select(r => (ImmutableArray<string>)[r.Id, r.Name, r.Unit == LengthUnit.Inch ? "in" : "mm", Whole(r.Decimals), r.FileEnding]));

    internal static ImmutableArray<Section> Of(ImmutableArray<Shape> shapes) =>
    [
        new Section([], [new("shape"), new("what it is")], [.. shapes.Select(s => (ImmutableArray<string>)[s.Id, s.Says])]),
        new Section(
            [],
            [new("shape"), new("key"), new("may be left out"), new("what it asks")],
            [
                .. shapes.SelectMany(s => s.Questions, (s, q) => (ImmutableArray<string>)
                    [s.Id, q.Key, (q.Default ?? q.WithoutIt) is { } without ? $"yes: {without}" : "no", q.Kind == AnswerKind.Choice ? $"{q.Asks} ({string.Join(", ", q.Choices)})" : q.Asks]),
            ]),
    ];

    internal static ImmutableArray<Section> Of(ImmutableArray<Figure> figures, LengthUnit unit) =>
    [
        new Section(
            ["Figures of the program's own. Check what is from memory or a judgment against", "what you know; for most of them a job has a key."],
            [new("figure"), new("how much", true), new("basis"), new("why")],
            [.. figures.Select(f => (ImmutableArray<string>)[f.Says, $"{QuantityText.Write(f.Value, unit)} {f.Unit}".TrimEnd(), Basis(f.Source.Kind), f.Source.Text])]),
    ];

    // Machines are sold by whole millimetres everywhere.
    private static string Travel(Machine row, LengthUnit unit) =>
        $"{Whole(row.TravelX)} x {Whole(row.TravelY)} x {Whole(row.TravelZ)}{(unit == LengthUnit.Inch ? " mm" : "")}";

    private static string Units(LengthUnit unit) => unit == LengthUnit.Inch ? "Lengths in inches, unless they say mm." : "Lengths in millimeters.";

    private static ImmutableArray<Section> WithSources(string? units, IEnumerable<Source> sources, ImmutableArray<Column> columns, IEnumerable<ImmutableArray<string>> rows)
    {
        ImmutableArray<string> told = [.. sources.Select(Told)];
        ImmutableArray<string> each = [.. told.Distinct(StringComparer.Ordinal)];
        return told.IsEmpty
            ? [Section.Of("Nothing in this list is such.")]
            :
            [
                new Section(units is null ? [] : [units], columns.Add(new("from", true)), [.. rows.Select((r, i) => r.Add(Whole(each.IndexOf(told[i]) + 1)))]),
                new Section([], [new("from", true), new("where the rows come from")], [.. each.Select((s, i) => (ImmutableArray<string>)[Whole(i + 1), s])]),
            ];
    }

    private static string Told(Source source) => $"{Basis(source.Kind)}: {source.Text}";

    private static string Basis(SourceKind kind) => kind switch
    {
        SourceKind.Published => "published",
        SourceKind.Practice => "common practice",
        SourceKind.Judgment => "judgment",
        SourceKind.Memory => "from memory",
        _ => "yours",
    };

    /// <summary>
    /// A size as its maker states it: a fraction of an inch where it is one, thousandths of an inch where it comes out in those, millimetres otherwise.
    /// A fraction with a remainder would be of no use to anybody here.
    /// </summary>
    private static string Length(double millimetres, LengthUnit unit)
    {
        double thousandths = millimetres / Measures.Length.MillimetresPerInch * 1000;
        string text = unit == LengthUnit.Millimetre || Math.Abs(InchFraction.Nearest(millimetres, LengthText.UsualDenominator).Remainder) < 0.0005
            ? LengthText.Write(millimetres, unit)
            : Math.Abs(thousandths - Math.Round(thousandths)) < 1e-6
            ? string.Create(CultureInfo.InvariantCulture, $"{thousandths / 1000:0.0##} in")
            : LengthText.Write(millimetres, LengthUnit.Millimetre);

        // The line above the table has told the unit.
        string suffix = unit == LengthUnit.Inch ? " in" : " mm";
        return text.EndsWith(suffix, StringComparison.Ordinal) ? text[..^suffix.Length] : text;
    }

    private static string Whole(double number) => number.ToString("0", CultureInfo.InvariantCulture);

    private static string Number(double number) => number.ToString("0.###", CultureInfo.InvariantCulture);
}
