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

    /// <summary>The makes that are sound; every fault of the others has been reported.</summary>
    internal static ImmutableArray<Make> ReadAll(ImmutableArray<TableValue> tables, Catalogues catalogues, Machine? machine, IDrawings drawings, TableContext context)
    {
        var makes = ImmutableArray.CreateBuilder<Make>();
        var lines = new Dictionary<string, int>(StringComparer.OrdinalIgnoreCase);
        foreach ((TableValue table, string? family) in tables.SelectMany(t => FamilyReader.Spread(t, context)))
        {
            string? id = table.Find("id")?.Value is TextValue text ? text.Text : null;
            var raised = new List<Finding>();
            TableContext inMake = (id is { Length: > 0 and <= 40 } ? context with { Make = TextPiece.Short(id) } : context) with { Findings = raised };
            bool idSound = id is null || IdIsSound(id, table.Find("id")!.Value.At, lines, inMake);
            ImmutableArray<Make> read = (table.Find("kind")?.Value as TextValue)?.Text switch
            {
                "pattern" => WithHand(ReadPattern(table, catalogues, drawings, inMake) is { } pattern ? [pattern] : []),
                "board-end" => WithHand([.. BoardReader.Read(table, catalogues, machine, drawings, inMake)]),
                "outline" => [.. OutlineReader.Read(table, catalogues, drawings, inMake)],
                _ => ReadUnknown(table, inMake),
            };
            ImmutableArray<Make> WithHand(ImmutableArray<ProfileMake> makes) => [.. HandReader.Add(makes, table, catalogues, inMake)];
            foreach (Make make in idSound ? read : [])
            {
                if (make.Id == id || IdIsSound(make.Id, table.Find("id")!.Value.At, lines, inMake))
                {
                    makes.Add(make is ProfileMake of ? of with { Family = family ?? of.Family } : make);
                }
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
    private static ImmutableArray<Make> ReadUnknown(TableValue table, TableContext context)
    {
        Fields.Read(table, new TableKeys(JobKeys.AnyMake.Name, [.. JobKeys.AnyMake.Keys.Where(k => k.Name == "kind" || table.Find(k.Name) is not null)]), context);
        return [];
    }

    private static PatternMake? ReadPattern(TableValue table, Catalogues catalogues, IDrawings drawings, TableContext context)
    {
        var fields = Fields.Read(table, JobKeys.Pattern, context, JobKeys.PanelStock, JobKeys.Plate, JobKeys.Cut, JobKeys.BoardEnd, JobKeys.Head);
        bool stockWritten = fields.Has("stock");
        Fields? stock = stockWritten ? Fields.Read(fields.Inner("stock"), JobKeys.PanelStock, context, JobKeys.Pattern, JobKeys.BoardStock) : null;
        var plate = Fields.Read(fields.Inner("plate"), JobKeys.Plate, context, JobKeys.Pattern);
        Panel? panel = stock is null ? null : RowLookup.Find(stock, "panel", "panels", catalogues.Panels, context);
        CheckThickness(stock, panel, context);
        Common? common = ReadCommon(table, fields, catalogues, drawings, context);
        ImmutableArray<Fields> boards = [.. fields.Inners("measured").Select(inner => Fields.Read(inner, JobKeys.MeasuredForPattern, context, JobKeys.Measured, JobKeys.Pattern))];
        if (common is not { } c || stock is not { IsSound: true } || !plate.IsSound || panel is null || boards.Any(b => !b.IsSound))
        {
            return null;
        }

        if (FittingsReader.Read(plate, c.Bit, catalogues, context) is not { } fittings)
        {
            return null;
        }

        ImmutableArray<MeasuredBoards> measured = BoardReader.Measured(boards, c, c.Board.Thickness, context);
        (double hold, double seat, double reach) = PlateReader.Margins(plate, c.DesignWidth, measured.Select(b => b.Width).Append(c.DesignWidth).Max(), context);
        return new PatternMake(
            fields.Text("id"),
            fields.Whole("count"),
            c.Board,
            c.DesignWidth,
            catalogues.Materials.Find(panel.Material)!,
            stock.Amount("thickness"),
            c.Shape,
            c.Bit,
            c.Cut,
            hold,
            seat,
            reach,
            c.At)
        {
            Measured = measured,
            Fittings = fittings,
            Sheet = new PanelSheet(panel)
            {
                Flatness = stock.AmountOrNull("flatness"),
                Turned = PanelReader.Turn(plate.Text("turned")),
            },
            Openings = c.Openings,
            Marks = c.Marks,
            Clamps = c.Clamps,
        };
    }

    /// <summary>Warns of a thickness that no sheet of its panel has.</summary>
    internal static void CheckThickness(Fields? stock, Panel? panel, TableContext context)
    {
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
    }

    /// <summary>What every kind of make has; null when a finding says what is wrong with it.</summary>
    internal static Common? ReadCommon(TableValue table, Fields fields, Catalogues catalogues, IDrawings drawings, TableContext context)
    {
        Lumber? board = RowLookup.Find(fields, "board", "lumber", catalogues.Lumber, context);
        Bit? bit = RowLookup.Find(fields, "bit", "bits", catalogues.Bits, context);
        double? width = fields.AmountOrNull("design-width") ?? board?.Width;
        if (board is not null)
        {
            CheckWidth(width!.Value, fields.Where("design-width"), board, context);
        }

        ShapeSpec? shape = fields.Has("shape") ? ShapeReader.Read(fields.Inner("shape"), width, drawings, context) : null;
        var cut = Fields.Read(fields.Inner("cut"), JobKeys.Cut, context, JobKeys.Pattern, JobKeys.BoardEnd);
        bool sound = fields.IsSound && cut.IsSound;
        ImmutableArray<Opening>? openings = MakeDetails.Openings(fields, bit, catalogues, context);
        Marking? marks = MakeDetails.Marks(fields, catalogues, context, ref sound);
        ImmutableArray<PlaceOnEdge>? tabs = MakeDetails.Places(fields, "tab", context);
        ImmutableArray<PlaceOnEdge>? lead = MakeDetails.Places(fields, "lead", context);
        ImmutableArray<ClampBox>? clamps = MakeDetails.Clamps(fields, context);
        return sound && board is not null && bit is not null && shape is not null && width is not null
            && openings is not null && tabs is not null && lead is not null && clamps is not null
            ? new Common(
                board, width.Value, shape, bit, ReadCut(cut, tabs.Value, lead.Value.FirstOrDefault()), openings.Value, marks, clamps.Value, JobReader.PlacesOf(table))
            : null;
    }

    /// <summary>Warns of a width that no board of its size has.</summary>
    internal static void CheckWidth(double width, Place at, Lumber board, TableContext context)
    {
        if (Math.Abs(width - board.Width) > board.Width * UnlikelyWidth)
        {
            context.Add(Finding.Of(
                JobFindings.WidthUnlikely, at, Quantity.Length(width), Quantity.Length(board.Width), Arg.Of("name", board.Name)));
        }
    }

    /// <summary>How a make is to be cut.</summary>
    internal static CutChoices ReadCut(Fields cut, ImmutableArray<PlaceOnEdge> tabs, PlaceOnEdge? lead) => new(
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
        TabForm = !cut.Has("tab-form") ? null : cut.Text("tab-form") == "square" ? TabForm.Square : TabForm.Ramped,
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
    internal readonly record struct Common(
        Lumber Board,
        double DesignWidth,
        ShapeSpec Shape,
        Bit Bit,
        CutChoices Cut,
        ImmutableArray<Opening> Openings,
        Marking? Marks,
        ImmutableArray<ClampBox> Clamps,
        Places At);

    [GeneratedRegex(@"^[A-Za-z0-9]([A-Za-z0-9-]{0,38}[A-Za-z0-9])?\z", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex IdForm();
}
