using ToolpathForge.Catalogue;
using ToolpathForge.Measures;
using ToolpathForge.Tables;

namespace ToolpathForge.Jobs;

/// <summary>Reads what a plate has besides its edge.</summary>
internal static class FittingsReader
{
    /// <summary>The fittings; null when a finding says what is wrong with one.</summary>
    /// <param name="plate">The plate's table, sound.</param>
    /// <param name="makeBit">What holes are bored with unless their table says otherwise.</param>
    /// <param name="catalogues">For the bits.</param>
    /// <param name="context">The file.</param>
    internal static PlateFittings? Read(Fields plate, Bit makeBit, Catalogues catalogues, TableContext context)
    {
        bool sound = true;
        (Fields Read, Bit? Bit, Places At)? Table(string key, TableKeys keys)
        {
            if (!plate.Has(key))
            {
                return null;
            }

            TableValue table = plate.Inner(key);
            var read = Fields.Read(table, keys, context, JobKeys.Plate, JobKeys.Marks);
            Bit? bit = read.Has("bit") ? RowLookup.Find(read, "bit", "bits", catalogues.Bits, context) : null;
            sound &= read.IsSound && (bit is not null || !read.Has("bit"));
            return read.IsSound ? (read, bit, JobReader.PlacesOf(table)) : null;
        }

        StripChoices? Strip(string key, TableKeys keys) => Table(key, keys) is { } t
            ? new StripChoices(
                t.Read.AmountOrNull("width"),
                t.Read.Amount("thickness"),
                t.Read.Amount("set-back"),
                (int?)t.Read.AmountOrNull("screws"),
                t.Read.AmountOrNull("hole") ?? Math.Max((t.Bit ?? makeBit).Diameter, context.Unit == LengthUnit.Millimetre ? 5 : 25.4 * 3 / 16),
                t.Read.Amount("pilot"),
                t.Bit ?? makeBit,
                t.At)
            : null;

        StripChoices? block = Strip("block", PlateKeys.Block);
        StripChoices? stop = Strip("stop", PlateKeys.Stop);
        BradChoices? brads = Table("brads", PlateKeys.Brads) is { } b
            ? new BradChoices(b.Read.Whole("count"), b.Read.Amount("off"), b.Bit, b.Bit is null ? 0 : b.Read.AmountOrNull("hole") ?? b.Bit.Diameter, b.At)
            : null;
        HangChoice? hang = Table("hang", PlateKeys.Hang) is { } h ? new HangChoice(h.Read.Amount("width"), h.Bit ?? makeBit, h.At) : null;
        return sound ? new PlateFittings(block, stop, brads, hang, plate.Text("hands") switch { "both" => PlateHands.Both, "left" => PlateHands.Left, _ => PlateHands.Right }) : null;
    }
}
