using System.Collections.Immutable;
using ToolpathForge.Catalogue;
using ToolpathForge.Findings;
using ToolpathForge.Tables;

namespace ToolpathForge.Jobs;

/// <summary>Reads a board end: the board, what may be cut past its profile, and all the boards that get it.</summary>
internal static class BoardReader
{
    private const double FenceMargin = 3;

    /// <summary>
    /// The make; several when each measured width has a program of its own, with a letter behind the id in the order of their first boards;
    /// none when a finding says what is wrong.
    /// </summary>
    internal static IEnumerable<BoardEndMake> Read(TableValue table, Catalogues catalogues, Machine? machine, IDrawings drawings, TableContext context)
    {
        var fields = Fields.Read(table, JobKeys.BoardEnd, context, JobKeys.BoardStock, JobKeys.End, JobKeys.Cut, JobKeys.Pattern, JobKeys.Head);
        Fields? stock = fields.Has("stock") ? Fields.Read(fields.Inner("stock"), JobKeys.BoardStock, context, JobKeys.BoardEnd, JobKeys.PanelStock) : null;
        var end = Fields.Read(fields.Inner("end"), JobKeys.End, context, JobKeys.BoardEnd);
        ImmutableArray<Fields> measured =
            [.. fields.Inners("measured").Select(inner => Fields.Read(inner, JobKeys.Measured, context, JobKeys.BoardEnd, JobKeys.BoardStock))];
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

        MakeReader.Common? common = MakeReader.ReadCommon(table, fields, catalogues, drawings, context);
        if (common is not { } c || stock is not { IsSound: true } || !end.IsSound || !sound || machine is null || measured.Any(m => !m.IsSound))
        {
            return [];
        }

        double thickness = stock.AmountOrNull("thickness") ?? c.Board.Thickness;
        if (Batch(table, fields, stock, end, measured, c, thickness, context) is not { } batch)
        {
            return [];
        }

        // What is laid on the bed is as long as the finished board and what stands past its tips.
        double boardLength = batch.FinishedLength + PastTips(end, batch.BothEnds);
        var make = new BoardEndMake(
            fields.Text("id"),
            batch.Count,
            c.Board,
            c.DesignWidth,
            material!,
            batch.Boards.Max(b => b.Thickness),
            c.Shape,
            c.Bit,
            c.Cut,
            boardLength,
            Math.Min(boardLength, stock.AmountOrNull("on-bed") ?? machine.TravelX),
            stock.AmountOrNull("grain-slope") ?? 0,
            end.Flag("sawn-first") ? 0 : end.Amount("allowance"),
            end.AmountOrNull("fence-room") ?? (c.Bit.Diameter + FenceMargin),
            c.At)
        {
            Stand = end.Flag("stand"),
            Moisture = stock.AmountOrNull("moisture") ?? c.Board.Moisture,
            Openings = c.Openings,
            Marks = c.Marks,
            Clamps = c.Clamps,
            Batch = batch,
        };
        return end.Text("program") == "width" ? ByWidth(make) : [make];
    }

    private static double PastTips(Fields end, bool both) => end.Flag("sawn-first") ? 0 : end.Amount("allowance") * (both ? 2 : 1);

    private static BoardBatch? Batch(
        TableValue table,
        Fields fields,
        Fields stock,
        Fields end,
        ImmutableArray<Fields> measured,
        MakeReader.Common common,
        double thickness,
        TableContext context)
    {
        bool both = fields.Text("ends") == "both";
        double longest = stock.Amount("length") - PastTips(end, both);
        double finished = end.AmountOrNull("finished-length") ?? longest;
        if (finished > longest + 1e-9)
        {
            context.Add(Finding.Of(JobFindings.BoardTooShort, end.Where("finished-length"), Quantity.Length(finished), Quantity.Length(longest)));
            return null;
        }

        if (fields.Has("measured") && table.Find("count") is { } count)
        {
            context.Add(Finding.Of(JobFindings.CountBesideMeasured, count.NameAt));
            return null;
        }

        ImmutableArray<MeasuredBoards> boards = fields.Has("measured")
            ? Measured(measured, common, thickness, context)
            : [new MeasuredBoards("", fields.Whole("count"), common.DesignWidth, thickness, fields.Where("count"))];
        return new BoardBatch(
            boards,
            both,
            end.Whole("abreast"),
            end.AmountOrNull("gap"),
            finished,
            end.Text("waste") switch
            {
                "screwed" => Waste.Screwed,
                "clamped" => Waste.Clamped,
                "chips" => Waste.Chips,
                "sawn" => Waste.Sawn,
                _ => Waste.Loose,
            },
            end.Amount("saw-margin"),
            end.Flag("sawn-first"),
            stock.AmountOrNull("crown") ?? 0,
            end.Text("runs") == "waiting",
            stock.Amount("length"));
    }

    /// <summary>Boards as measured; a width that no board of its size has is told.</summary>
    internal static ImmutableArray<MeasuredBoards> Measured(
        ImmutableArray<Fields> measured, MakeReader.Common common, double thickness, TableContext context)
    {
        var boards = ImmutableArray.CreateBuilder<MeasuredBoards>(measured.Length);
        foreach (Fields read in measured)
        {
            MakeReader.CheckWidth(read.Amount("width"), read.Where("width"), common.Board, context);
            boards.Add(new MeasuredBoards(
                read.Has("name") ? read.Text("name") : "",
                (int)(read.AmountOrNull("count") ?? 1),
                read.Amount("width"),
                read.AmountOrNull("thickness") ?? thickness,
                read.Where("width")));
        }

        return boards.ToImmutable();
    }

    private static IEnumerable<BoardEndMake> ByWidth(BoardEndMake make)
    {
        IGrouping<double, MeasuredBoards>[] widths = [.. make.Batch.Boards.GroupBy(b => b.Width)];
        for (int i = 0; i < widths.Length; i++)
        {
            BoardBatch batch = make.Batch with { Boards = [.. widths[i]] };
            yield return make with
            {
                // a to z, then aa: a job has at most 200 lists of boards.
                Id = widths.Length == 1 ? make.Id : $"{make.Id}-{(i >= 26 ? (char)('a' + (i / 26) - 1) : "")}{(char)('a' + (i % 26))}",
                Family = make.Id,
                Count = batch.Count,
                DesignWidth = widths[i].Key,
                Thickness = batch.Boards.Max(b => b.Thickness),
                Batch = batch,
            };
        }
    }
}
