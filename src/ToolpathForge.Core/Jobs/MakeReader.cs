using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using ToolpathForge.Catalogue;
using ToolpathForge.Findings;
using ToolpathForge.Measures;
using ToolpathForge.Shapes;
using ToolpathForge.Tables;

namespace ToolpathForge.Jobs;

/// <summary>Reads the <c>[[make]]</c> blocks of a job.</summary>
internal static partial class MakeReader
{
    // A person's digit may slip; a board that dries or swells does not leave this share of its width (FPL Wood Handbook: about 3 % from green to dry).
    private const double UnlikelyWidth = 0.06;

    private const double FenceMargin = 3;

    /// <summary>The makes that are sound; every fault of the others has been reported.</summary>
    internal static ImmutableArray<Make> ReadAll(ImmutableArray<TableValue> tables, Catalogues catalogues, Machine? machine, TableContext context)
    {
        var makes = ImmutableArray.CreateBuilder<Make>();
        var lines = new Dictionary<string, int>(StringComparer.OrdinalIgnoreCase);
        foreach ((TableValue table, string? family) in tables.SelectMany(t => FamilyReader.Spread(t, context)))
        {
            string? id = table.Find("id")?.Value is TextValue text ? text.Text : null;
            var raised = new List<Finding>();
            TableContext inMake = (id is { Length: > 0 and <= 40 } ? context with { Make = TextPiece.Short(id) } : context) with { Findings = raised };
            bool idSound = id is null || IdIsSound(id, table.Find("id")!.Value.At, lines, inMake);
            Make? make = (table.Find("kind")?.Value as TextValue)?.Text switch
            {
                "pattern" => ReadPattern(table, catalogues, inMake),
                "board-end" => ReadBoardEnd(table, catalogues, machine, inMake),
                _ => ReadUnknown(table, inMake),
            };
            make = make is null ? null : HandReader.Add(make, table, catalogues, inMake);
            if (make is not null && idSound)
            {
                makes.Add(make with { Family = family });
            }

            // What is wrong with the whole family is told once, with its first board.
            foreach (Finding finding in raised.Where(f => family is null || !context.Findings.Any(t => t.Kind == f.Kind && SamePlace(t.Place, f.Place))))
            {
                context.Findings.Add(finding);
            }
        }

        return makes.ToImmutable();
    }

    private static bool SamePlace(Place a, Place b) => a.File == b.File && a.Line == b.Line && a.Column == b.Column;

    private static bool IdIsSound(string id, Place at, Dictionary<string, int> lines, TableContext context)
    {
        if (!IdForm().IsMatch(id))
        {
            context.Add(Finding.Of(JobFindings.IdUnusable, at, Arg.Of("text", TextPiece.Short(id))));
            return false;
        }

        if (lines.TryAdd(id, at.Line))
        {
            return true;
        }

        context.Add(Finding.Of(
            JobFindings.IdTwice, at, Arg.Of("text", id), Arg.Of("line", lines[id].ToString(CultureInfo.InvariantCulture))));
        return false;
    }

    // The kind is missing or mistyped: what can be said without it is said.
    private static Make? ReadUnknown(TableValue table, TableContext context)
    {
        Fields.Read(table, new TableKeys(JobKeys.AnyMake.Name, [.. JobKeys.AnyMake.Keys.Where(k => k.Name == "kind" || table.Find(k.Name) is not null)]), context);
        return null;
    }

    private static PatternMake? ReadPattern(TableValue table, Catalogues catalogues, TableContext context)
    {
        var fields = Fields.Read(table, JobKeys.Pattern, context, JobKeys.PanelStock, JobKeys.Plate, JobKeys.Cut, JobKeys.BoardEnd, JobKeys.Head);
        bool stockWritten = fields.Has("stock");
        Fields? stock = stockWritten ? Fields.Read(fields.Inner("stock"), JobKeys.PanelStock, context, JobKeys.Pattern, JobKeys.BoardStock) : null;
        var plate = Fields.Read(fields.Inner("plate"), JobKeys.Plate, context, JobKeys.Pattern);
        Panel? panel = stock is null ? null : RowLookup.Find(stock, "panel", "panels", catalogues.Panels, context);
        if (panel is not null && stock!.AmountOrNull("thickness") is { } thickness && (thickness < panel.Thinnest || thickness > panel.Thickest))
        {
            context.Add(Finding.Of(
                JobFindings.ThicknessUnlikely,
                stock.Where("thickness"),
                Quantity.Length(thickness),
                Quantity.Length(thickness < panel.Thinnest ? panel.Thinnest : panel.Thickest),
                Arg.Of("name", panel.Name),
                Arg.Of("least", Quantity.Length(panel.Thinnest)),
                Arg.Of("most", Quantity.Length(panel.Thickest))));
        }

        Common? common = ReadCommon(table, fields, catalogues, context);
        if (common is not { } c || stock is not { IsSound: true } || !plate.IsSound || panel is null)
        {
            return null;
        }

        return new PatternMake(
            fields.Text("id"),
            fields.Whole("count"),
            c.Board,
            c.DesignWidth,
            panel,
            catalogues.Materials.Find(panel.Material)!,
            stock.Amount("thickness"),
            c.Shape,
            c.Bit,
            c.Cut,
            plate.Amount("hold"),
            plate.Amount("seat"),
            plate.Amount("reach"),
            c.At)
        {
            Flatness = stock.AmountOrNull("flatness"),
            Openings = c.Openings,
            Marks = c.Marks,
        };
    }

    private static BoardEndMake? ReadBoardEnd(TableValue table, Catalogues catalogues, Machine? machine, TableContext context)
    {
        var fields = Fields.Read(table, JobKeys.BoardEnd, context, JobKeys.BoardStock, JobKeys.End, JobKeys.Cut, JobKeys.Pattern, JobKeys.Head);
        Fields? stock = fields.Has("stock") ? Fields.Read(fields.Inner("stock"), JobKeys.BoardStock, context, JobKeys.BoardEnd, JobKeys.PanelStock) : null;
        var end = Fields.Read(fields.Inner("end"), JobKeys.End, context, JobKeys.BoardEnd);
        Material? material = stock is null ? null : RowLookup.Find(stock, "material", "materials", catalogues.Materials, context);
        bool sound = material is not null;
        if (material is { HasGrain: false })
        {
            context.Add(Finding.Of(JobFindings.NotTimber, stock!.Where("material"), Arg.Of("material", material.Id)));
            sound = false;
        }

        if (stock?.AmountOrNull("on-bed") is { } onBed && stock.AmountOrNull("length") is { } length && onBed > length)
        {
            context.Add(Finding.Of(JobFindings.BeyondBoard, stock.Where("on-bed"), Quantity.Length(onBed), Quantity.Length(length)));
            sound = false;
        }

        Common? common = ReadCommon(table, fields, catalogues, context);
        if (common is not { } c || stock is not { IsSound: true } || !end.IsSound || !sound || machine is null)
        {
            return null;
        }

        return new BoardEndMake(
            fields.Text("id"),
            fields.Whole("count"),
            c.Board,
            c.DesignWidth,
            material!,
            stock.AmountOrNull("thickness") ?? c.Board.Thickness,
            c.Shape,
            c.Bit,
            c.Cut,
            stock.Amount("length"),
            stock.AmountOrNull("on-bed") ?? Math.Min(stock.Amount("length"), machine.TravelX),
            stock.AmountOrNull("grain-slope") ?? 0,
            end.Amount("allowance"),
            end.AmountOrNull("fence-room") ?? (c.Bit.Diameter + FenceMargin),
            c.At)
        {
            Stand = end.Flag("stand"),
            Openings = c.Openings,
            Marks = c.Marks,
        };
    }

    private static Common? ReadCommon(TableValue table, Fields fields, Catalogues catalogues, TableContext context)
    {
        Lumber? board = RowLookup.Find(fields, "board", "lumber", catalogues.Lumber, context);
        Bit? bit = RowLookup.Find(fields, "bit", "bits", catalogues.Bits, context);
        double? width = fields.AmountOrNull("design-width") ?? board?.Width;
        if (board is not null && Math.Abs(width!.Value - board.Width) > board.Width * UnlikelyWidth)
        {
            context.Add(Finding.Of(
                JobFindings.WidthUnlikely,
                fields.Where("design-width"),
                Quantity.Length(width.Value),
                Quantity.Length(board.Width),
                Arg.Of("name", board.Name)));
        }

        ShapeSpec? shape = fields.Has("shape") ? ShapeReader.Read(fields.Inner("shape"), width, context) : null;
        var cut = Fields.Read(fields.Inner("cut"), JobKeys.Cut, context, JobKeys.Pattern, JobKeys.BoardEnd);
        bool sound = fields.IsSound && cut.IsSound;
        ImmutableArray<Opening>? openings = MakeDetails.Openings(fields, bit, catalogues, context);
        Marking? marks = MakeDetails.Marks(fields, catalogues, context, ref sound);
        ImmutableArray<PlaceOnEdge>? tabs = MakeDetails.Places(fields, "tab", context);
        ImmutableArray<PlaceOnEdge>? lead = MakeDetails.Places(fields, "lead", context);
        return sound && board is not null && bit is not null && shape is not null && width is not null
            && openings is not null && tabs is not null && lead is not null
            ? new Common(board, width.Value, shape, bit, ReadCut(cut, tabs.Value, lead.Value.FirstOrDefault()), openings.Value, marks, JobReader.PlacesOf(table))
            : null;
    }

    private static CutChoices ReadCut(Fields cut, ImmutableArray<PlaceOnEdge> tabs, PlaceOnEdge? lead) => new(
        cut.AmountOrNull("speed"),
        cut.AmountOrNull("feed"),
        cut.AmountOrNull("plunge"),
        cut.AmountOrNull("pass-depth"),
        cut.AmountOrNull("allowance"),
        cut.AmountOrNull("overcut"),
        !cut.Has("direction") ? null : cut.Text("direction") switch
        {
            "climb" => DirectionChoice.Climb,
            "conventional" => DirectionChoice.Conventional,
            _ => DirectionChoice.ByGrain,
        },
        (int?)cut.AmountOrNull("tabs"),
        cut.AmountOrNull("tab-length"),
        cut.AmountOrNull("tab-height"))
    {
        TabSpacing = cut.AmountOrNull("tab-spacing"),
        TabForm = cut.Has("tab-form") && cut.Text("tab-form") == "square" ? TabForm.Square : TabForm.Ramped,
        TabPlaces = tabs,
        Lead = lead,
        Slot = !cut.Has("slot") ? SlotChoice.ByDepth : cut.Text("slot") switch
        {
            "slow" => SlotChoice.Slow,
            "wide" => SlotChoice.Wide,
            _ => SlotChoice.ByDepth,
        },
        Skin = cut.AmountOrNull("skin"),
    };

    /// <summary>What every kind of make has.</summary>
    private readonly record struct Common(
        Lumber Board, double DesignWidth, ShapeSpec Shape, Bit Bit, CutChoices Cut, ImmutableArray<Opening> Openings, Marking? Marks, Places At);

    [GeneratedRegex(@"^[A-Za-z0-9]([A-Za-z0-9-]{0,38}[A-Za-z0-9])?\z", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex IdForm();
}
