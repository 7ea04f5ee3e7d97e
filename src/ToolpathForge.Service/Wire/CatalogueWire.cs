using ToolpathForge.Catalogue;
using ToolpathForge.Checks;
using ToolpathForge.Findings;
using ToolpathForge.Measures;
using ToolpathForge.Plugin.Contract;
using ToolpathForge.Shapes;
using static ToolpathForge.Service.Wire.WireNumber;

namespace ToolpathForge.Service.Wire;

/// <summary>Rows of the catalogues in the contract's form.</summary>
internal static class CatalogueWire
{
    internal static WireSource Of(Source source) => new()
    {
        Kind = source.Kind switch
        {
            SourceKind.Published => "published",
            SourceKind.Practice => "practice",
            SourceKind.Judgment => "judgment",
            SourceKind.Memory => "memory",
            _ => "user",
        },
        Text = source.Text,
    };

    internal static WireFigure Of(Figure figure) => new()
    {
        Id = figure.Id,
        Says = figure.Says,
        Value = Rounded(figure.Value.Value),
        Unit = figure.Value.Kind switch
        {
            QuantityKind.Length => "mm",
            QuantityKind.Angle => "deg",
            QuantityKind.Speed => "rpm",
            _ => figure.Unit,
        },
        Source = Of(figure.Source),
    };

    internal static WireLumber Of(Lumber row) => new()
    {
        Id = row.Id,
        Name = row.Name,
        Thickness = Rounded(row.Thickness),
        Width = Rounded(row.Width),
        Engineered = row.Engineered,
        Source = Of(row.Source),
    };

    internal static WirePanel Of(Panel row) => new()
    {
        Id = row.Id,
        Name = row.Name,
        Material = row.Material,
        Nominal = Rounded(row.Nominal),
        Thinnest = Rounded(row.Thinnest),
        Thickest = Rounded(row.Thickest),
        Source = Of(row.Source),
    };

    internal static WireBit Of(Bit row) => new()
    {
        Id = row.Id,
        Name = row.Name,
        Kind = BitKinds.WordOf(row.Kind),
        Substance = row.Substance == BitSubstance.Carbide ? "carbide" : "steel",
        Diameter = Rounded(row.Diameter),
        FluteLength = Rounded(row.FluteLength),
        Flutes = row.Flutes,
        Shank = Rounded(row.Shank),
        OverallLength = Rounded(row.OverallLength),
        MaxSpeed = Rounded(row.MaxSpeed),
        CanPlunge = row.CanPlunge,
        Source = Of(row.Source),
        UpCutLength = Part(row.UpCutLength),
        BearingDiameter = row.Bearing is { } ring ? Rounded(ring.Diameter) : null,
        BearingHeight = row.Bearing is { } high ? Rounded(high.Height) : null,
        BearingGap = row.Bearing is { } apart ? Rounded(apart.Gap) : null,
        TipAngle = Part(row.TipAngle),
        EdgeRadius = Part(row.EdgeRadius),
    };

    internal static WireMaterial Of(Material row) => new()
    {
        Id = row.Id,
        Name = row.Name,
        Kind = row.Kind switch
        {
            MaterialKind.Softwood => "softwood",
            MaterialKind.Hardwood => "hardwood",
            _ => "panel",
        },
        Density = Rounded(row.Density),
        PassDepth = Rounded(row.PassDepth),
        RampAngle = Rounded(row.RampAngle),
        Chips = [.. row.Chips.Select(c => new WireChipBand { Diameter = Rounded(c.Diameter), Least = Rounded(c.Least), Most = Rounded(c.Most) })],
        Source = Of(row.Source),
    };

    internal static WireMachine Of(Machine row) => new()
    {
        Id = row.Id,
        Name = row.Name,
        TravelX = Rounded(row.TravelX),
        TravelY = Rounded(row.TravelY),
        TravelZ = Rounded(row.TravelZ),
        MinSpeed = Rounded(row.MinSpeed),
        MaxSpeed = Rounded(row.MaxSpeed),
        MaxFeed = Rounded(row.MaxFeed),
        MaxPlunge = Rounded(row.MaxPlunge),
        Source = Of(row.Source),
        Opening = Rounded(row.Opening),
        Collet = Known(row.Collet),
        Stiffness = Rounded(row.Stiffness),
        Mass = Rounded(row.Mass),
        HalfFootprint = Rounded(row.HalfFootprint),
        Homing = row.Homing,
        MovingBed = row.MovingBed,
        ChangesBits = row.ChangesBits,
    };

    internal static WireDialect Of(Dialect row) => new()
    {
        Id = row.Id,
        Name = row.Name,
        Unit = row.Unit == LengthUnit.Inch ? "in" : "mm",
        Decimals = row.Decimals,
        Arcs = row.Arcs switch
        {
            ArcForm.Centre => "centre",
            ArcForm.Radius => "radius",
            _ => "lines",
        },
        BitChange = row.BitChange switch
        {
            Catalogue.BitChange.Command => "command",
            Catalogue.BitChange.Pause => "pause",
            _ => "separate-programs",
        },
        FileEnding = row.FileEnding,
        Source = Of(row.Source),
    };

    internal static WireShape Of(Shape shape) => new()
    {
        Id = shape.Id,
        Says = shape.Says,
        Questions = [.. shape.Questions.Select(Of)],
    };

    // What a bit of this kind does not have is absent, not 0.
    private static double? Part(double value) => value > 0 ? Rounded(value) : null;

    private static bool HasNoRange(Question question) => question.Kind is AnswerKind.Choice or AnswerKind.Drawing or AnswerKind.Text or AnswerKind.Flag;

    private static WireQuestion Of(Question question) => new()
    {
        Key = question.Key,
        Kind = question.Kind switch
        {
            AnswerKind.Size => "size",
            AnswerKind.Angle => "angle",
            AnswerKind.Number => "number",
            AnswerKind.Parts => "parts",
            AnswerKind.Drawing => "drawing",
            AnswerKind.Text => "text",
            AnswerKind.Length => "length",
            AnswerKind.Flag => "flag",
            _ => "choice",
        },
        Asks = question.Asks,
        Default = question.Default,
        Least = HasNoRange(question) ? null : Rounded(question.Least),
        Most = HasNoRange(question) ? null : Rounded(question.Most),
        Choices = question.Kind == AnswerKind.Choice ? [.. question.Choices] : null,
    };
}
