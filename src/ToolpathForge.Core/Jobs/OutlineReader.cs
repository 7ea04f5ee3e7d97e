using System.Collections.Immutable;
using System.Globalization;
using ToolpathForge.Catalogue;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;
using ToolpathForge.Measures;
using ToolpathForge.Tables;

namespace ToolpathForge.Jobs;

/// <summary>Reads a make that is cut by the outlines of a drawing: each closed outline with its holes is a piece.</summary>
internal static class OutlineReader
{
    private const int MostOutlines = 200;

    /// <summary>
    /// One make for each outline of the drawing, in its order: from left to right by their leftmost points. A single one has the block's id, several have a number behind it. None when a finding says what is wrong.
    /// </summary>
    internal static IEnumerable<OutlineMake> Read(TableValue table, Catalogues catalogues, IDrawings drawings, TableContext context)
    {
        var fields = Fields.Read(table, JobKeys.Outline, context, JobKeys.PanelStock, JobKeys.Cut, JobKeys.Pattern, JobKeys.BoardEnd, JobKeys.Head);
        Fields? stock = fields.Has("stock") ? Fields.Read(fields.Inner("stock"), JobKeys.PanelStock, context, JobKeys.Outline, JobKeys.BoardStock) : null;
        var cut = Fields.Read(fields.Inner("cut"), JobKeys.Cut, context, JobKeys.Outline);
        Panel? panel = stock is null ? null : RowLookup.Find(stock, "panel", "panels", catalogues.Panels, context);
        MakeReader.CheckThickness(stock, panel, context);
        Bit? bit = RowLookup.Find(fields, "bit", "bits", catalogues.Bits, context);
        Bit? holeBit = fields.Has("hole-bit") ? RowLookup.Find(fields, "hole-bit", "bits", catalogues.Bits, context) : bit;
        ImmutableArray<PlaceOnEdge>? tabs = MakeDetails.Places(fields, "tab", context, OutlineKeys.OnEdge);
        ImmutableArray<PlaceOnEdge>? lead = MakeDetails.Places(fields, "lead", context, OutlineKeys.OnEdge);
        ImmutableArray<ClampBox>? clamps = MakeDetails.Clamps(fields, context);
        DrawingContents? drawing = NamedDrawing.Read(fields, "drawing", drawings, context, inMillimetres: true);
        if (drawing is null || !OutlinesAreThere(drawing, fields, context))
        {
            return [];
        }

        if (!fields.IsSound || !cut.IsSound || stock is not { IsSound: true } || panel is null || bit is null || holeBit is null || tabs is null || lead is null || clamps is null)
        {
            return [];
        }

        // Half a turn more, which laying on the machine takes back.
        Placement laid = new Placement(Math.PI, default, false)
            .After(new Placement(fields.Amount("turn") * Math.PI / 180, default, fields.Flag("mirrored")));
        double scale = fields.Amount("scale");
        Places at = JobReader.PlacesOf(table);
        Region[] regions = [.. drawing.Regions.Select(r => Region.Of([.. r.Loops.Select(l => ContourCurves.Scaled(l, scale).Placed(laid))]))];
        ImmutableArray<PlaceOnEdge> Own(ImmutableArray<PlaceOnEdge> places, Region of) =>
            [.. places.Select(p => p with { Point = laid.Apply(p.Point * scale) }).Where(p => regions.MinBy(r => r.Loops[0].Distance(p.Point)) == of)];
        var openingAt = new Places(fields.Where("drawing"), fields.Has("hole-bit") ? ImmutableDictionary<string, Place>.Empty.Add("bit", fields.Where("hole-bit")) : at.Keys);
        return regions.Select((region, i) => new OutlineMake(
            regions.Length == 1 ? fields.Text("id") : string.Create(CultureInfo.InvariantCulture, $"{fields.Text("id")}-{i + 1}"),
            fields.Whole("count"),
            fields.Text("drawing"),
            catalogues.Materials.Find(panel.Material)!,
            stock.Amount("thickness"),
            ContourCurves.Of(region.Loops[0]),
            bit,
            MakeReader.ReadCut(cut, Own(tabs.Value, region), Own(lead.Value, region).FirstOrDefault()),
            at)
        {
            Block = fields.Text("id"),
            Laid = laid,
            Scale = scale,
            HoldsWaste = fields.Text("openings") == "held",
            Openings = [.. region.Loops.Skip(1).Select((hole, k) => DrawnOpening.Of(hole, (k + 1).ToString(CultureInfo.InvariantCulture), holeBit, openingAt))],
            Clamps = clamps.Value,
            Sheet = new PanelSheet(panel)
            {
                Flatness = stock.AmountOrNull("flatness"),
                Turned = PanelReader.Turn(fields.Text("turned")),
            },
        });
    }

    private static bool OutlinesAreThere(DrawingContents drawing, Fields fields, TableContext context)
    {
        Place at = fields.Where("drawing");
        var file = Arg.Of("file", TextPiece.Short(fields.Text("drawing")));
        var open = Quantity.Number(drawing.Open.Length);
        if (drawing.Regions.IsEmpty)
        {
            context.Add(new Finding(DrawingFindings.NothingClosed, at, open, null, [file]));
            return false;
        }

        if (drawing.Regions.Length > MostOutlines)
        {
            context.Add(Finding.Of(DrawingFindings.TooManyOutlines, at, Quantity.Number(drawing.Regions.Length), Quantity.Number(MostOutlines), file));
            return false;
        }

        if (!drawing.Open.IsEmpty)
        {
            context.Add(new Finding(DrawingFindings.OpenLeft, at, open, null, [file]));
        }

        return true;
    }
}
