using System.Collections.Immutable;
using ToolpathForge.Catalogue;
using ToolpathForge.Findings;
using ToolpathForge.Tables;

namespace ToolpathForge.Jobs;

/// <summary>Reads what is done by hand to a make.</summary>
internal static class HandReader
{
    /// <summary>The machine would cut through what is to be left for the hand.</summary>
    internal static readonly FindingKind NothingLeft = new(
        "hand-nothing-left",
        Severity.Stop,
        "The machine is to cut {found} deep, but the board is only {allowed} thick: nothing is left to finish by hand.",
        "Lower machined, or leave the hand table out.");

    /// <summary>The makes of one table with where they bear, what their maker allows and their hand work, if it has any; none when a finding says what is wrong with it.</summary>
    internal static ImmutableArray<ProfileMake> Add(ImmutableArray<ProfileMake> makes, TableValue table, Catalogues catalogues, TableContext context) =>
        !makes.IsEmpty && Add(makes[0], table, catalogues, context) is { } first
            ? [first, .. makes.Skip(1).Select(m => m with { BearsAt = first.BearsAt, MakerAllows = first.MakerAllows, Hand = first.Hand is { } hand && m is BoardEndMake ? hand with { Board = m.Thickness } : first.Hand })]
            : [];

    private static ProfileMake? Add(ProfileMake make, TableValue table, Catalogues catalogues, TableContext context)
    {
        // The key itself was read with the table, and is sound, or there would be no make.
        if (table.Find(JobKeys.BearsAt.Name) is { } bears && FieldReader.Read(bears, JobKeys.BearsAt, context) is { } at)
        {
            make = make with { BearsAt = at.Amount };
        }

        if (table.Find(JobKeys.MakerAllows.Name) is { Value: TextValue { Text: var allows } })
        {
            make = make with { MakerAllows = allows };
        }

        if (table.Find("hand")?.Value is not TableValue inner)
        {
            return make;
        }

        bool plate = make is PatternMake;
        var read = Fields.Read(inner, plate ? HandKeys.Pattern : HandKeys.BoardEnd, context, plate ? HandKeys.BoardEnd : HandKeys.Pattern, JobKeys.Cut);
        Bit? bit = RowLookup.Find(read, "bit", "bits", catalogues.Bits, context);
        if (!read.IsSound || bit is null)
        {
            return null;
        }

        double board = plate ? read.AmountOrNull("board") ?? ThickestOf(make) : make.Thickness;
        if (read.AmountOrNull("machined") is { } machined && machined >= board)
        {
            context.Add(Finding.Of(NothingLeft, read.Where("machined"), Quantity.Length(machined), Quantity.Length(board)));
            return null;
        }

        return make with
        {
            Hand = new HandWork(bit, board, JobReader.PlacesOf(inner))
            {
                Machined = read.AmountOrNull("machined"),
                Bite = read.AmountOrNull("bite"),
                Bushing = read.AmountOrNull("bushing"),
                BushingLength = read.AmountOrNull("bushing-length"),
                ColletHeight = read.AmountOrNull("collet-height") ?? 0,
                MayHang = plate && read.Flag("may-hang"),
            },
        };
    }

    private static double ThickestOf(ProfileMake make) =>
        make is PatternMake { Measured: { IsEmpty: false } boards } ? boards.Max(b => b.Thickness) : make.Board.Thickness;
}
