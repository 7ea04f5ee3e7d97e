using System.Collections.Immutable;
using System.Globalization;
using ToolpathForge.Catalogue;
using ToolpathForge.Findings;
using ToolpathForge.Measures;
using ToolpathForge.Shapes;

namespace ToolpathForge.Service.Telling;

/// <summary>Catalogues as tables to read, each row with where it comes from.</summary>
internal static class CatalogueTables
{
    internal static Section Of(ImmutableArray<Lumber> rows, LengthUnit unit) => new(
        [],
        [new("size"), new("thick", true), new("wide", true), new("source")],
        [.. rows.Select(r => (ImmutableArray<string>)[r.Id, Length(r.Thickness, unit), Length(r.Width, unit), Told(r.Source)])]);

    internal static Section Of(ImmutableArray<Panel> rows, LengthUnit unit) => new(
        [],
        [new("panel"), new("name"), new("material"), new("nominal", true), new("thinnest", true), new("thickest", true), new("source")],
        [
            .. rows.Select(r => (ImmutableArray<string>)
                [r.Id, r.Name, r.Material, Length(r.Nominal, unit), Length(r.Thinnest, unit), Length(r.Thickest, unit), Told(r.Source)]),
        ]);

    internal static Section Of(ImmutableArray<Bit> rows, LengthUnit unit) => new(
        [],
        [new("bit"), new("name"), new("diameter", true), new("flutes", true), new("flute length", true), new("shank", true), new("most rpm", true), new("plunges"), new("source")],
        [
            .. rows.Select(r => (ImmutableArray<string>)
            [
                r.Id, r.Name, Length(r.Diameter, unit), Whole(r.Flutes), Length(r.FluteLength, unit), Length(r.Shank, unit), Whole(r.MaxSpeed),
                r.CanPlunge ? "yes" : "no", Told(r.Source),
            ]),
        ]);

    internal static Section Of(ImmutableArray<Material> rows) => new(
        [],
        [new("material"), new("name"), new("pass depth", true), new("steepest ramp", true), new("source")],
        [
            .. rows.Select(r => (ImmutableArray<string>)
                [r.Id, r.Name, $"{Number(r.PassDepth)} x diameter", QuantityText.Write(Quantity.Angle(r.RampAngle), LengthUnit.Millimetre), Told(r.Source)]),
        ]);

    internal static Section Of(ImmutableArray<Machine> rows, LengthUnit unit) => new(
        [],
        [new("machine"), new("name"), new("travel X", true), new("Y", true), new("Z", true), new("rpm", true), new("most feed", true), new("most plunge", true), new("source")],
        [
            .. rows.Select(r => (ImmutableArray<string>)
            [
                r.Id, r.Name, Length(r.TravelX, unit), Length(r.TravelY, unit), Length(r.TravelZ, unit), $"{Whole(r.MinSpeed)}-{Whole(r.MaxSpeed)}",
                QuantityText.Write(Quantity.Feed(r.MaxFeed), unit), QuantityText.Write(Quantity.Feed(r.MaxPlunge), unit), Told(r.Source),
            ]),
        ]);

    internal static Section Of(ImmutableArray<Dialect> rows) => new(
        [],
        [new("dialect"), new("what it does"), new("unit"), new("decimals", true), new("file"), new("source")],
        [
            .. rows.Select(r => (ImmutableArray<string>)
                [r.Id, r.Name, r.Unit == LengthUnit.Inch ? "in" : "mm", Whole(r.Decimals), r.FileEnding, Told(r.Source)]),
        ]);

    internal static Section Of(ImmutableArray<Shape> shapes) => new(
        [.. shapes.Select(s => $"{s.Id}: {s.Says}")],
        [new("shape"), new("key"), new("may be left out"), new("what it asks")],
        [
            .. shapes.SelectMany(s => s.Questions, (s, q) => (ImmutableArray<string>)
                [s.Id, q.Key, q.Default is null ? "no" : $"yes: {q.Default}", q.Kind == AnswerKind.Choice ? $"{q.Asks} ({string.Join(", ", q.Choices)})" : q.Asks]),
        ]);

    private static string Told(Source source) => source.Kind switch
    {
        SourceKind.Published => $"published: {source.Text}",
        SourceKind.Practice => $"common practice: {source.Text}",
        SourceKind.Memory => $"from memory: {source.Text}",
        _ => $"yours: {source.Text}",
    };

    /// <summary>
    /// A size as its maker states it: a fraction of an inch where it is one, thousandths of an inch where it comes out in those, millimetres otherwise.
    /// A fraction with a remainder would be of no use to anybody here.
    /// </summary>
    private static string Length(double millimetres, LengthUnit unit)
    {
        double thousandths = millimetres / Measures.Length.MillimetresPerInch * 1000;
        return unit == LengthUnit.Millimetre || Math.Abs(InchFraction.Nearest(millimetres, LengthText.UsualDenominator).Remainder) < 0.0005
            ? LengthText.Write(millimetres, unit)
            : Math.Abs(thousandths - Math.Round(thousandths)) < 1e-6
            ? string.Create(CultureInfo.InvariantCulture, $"{thousandths / 1000:0.0##} in")
            : LengthText.Write(millimetres, LengthUnit.Millimetre);
    }

    private static string Whole(double number) => number.ToString("0", CultureInfo.InvariantCulture);

    private static string Number(double number) => number.ToString("0.###", CultureInfo.InvariantCulture);
}
