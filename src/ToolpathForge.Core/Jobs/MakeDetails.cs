using System.Collections.Immutable;
using System.Globalization;
using ToolpathForge.Catalogue;
using ToolpathForge.Geometry;
using ToolpathForge.Tables;

namespace ToolpathForge.Jobs;

/// <summary>Reads what a make may have besides its profile: openings, marks, places for tabs and lead.</summary>
internal static class MakeDetails
{
    /// <summary>The openings; null when a finding says what is wrong with one.</summary>
    /// <param name="fields">The make's table.</param>
    /// <param name="makeBit">What an opening is cut with unless it says otherwise.</param>
    /// <param name="catalogues">For the bits.</param>
    /// <param name="context">The file.</param>
    internal static ImmutableArray<Opening>? Openings(Fields fields, Bit? makeBit, Catalogues catalogues, TableContext context)
    {
        var openings = ImmutableArray.CreateBuilder<Opening>();
        bool sound = true;
        foreach (TableValue table in fields.Inners("opening"))
        {
            var read = Fields.Read(table, JobKeys.Opening, context, JobKeys.Pattern, JobKeys.Marks);
            Bit? bit = read.Has("bit") ? RowLookup.Find(read, "bit", "bits", catalogues.Bits, context) : makeBit;
            if (!read.IsSound || bit is null)
            {
                sound = false;
                continue;
            }

            var from = new Point2(read.Amount("x"), read.Amount("y"));
            var to = new Point2(read.AmountOrNull("to-x") ?? from.X, read.AmountOrNull("to-y") ?? from.Y);
            string name = read.Has("name") ? read.Text("name") : (openings.Count + 1).ToString(CultureInfo.InvariantCulture);
            openings.Add(new Opening(name, from, to, read.Amount("width"), bit, JobReader.PlacesOf(table)));
        }

        return sound ? openings.ToImmutable() : null;
    }

    /// <summary>The marks; null when there are none or a finding says what is wrong with them.</summary>
    internal static Marking? Marks(Fields fields, Catalogues catalogues, TableContext context, ref bool sound)
    {
        if (!fields.Has("marks"))
        {
            return null;
        }

        var read = Fields.Read(fields.Inner("marks"), JobKeys.Marks, context, JobKeys.Pattern, JobKeys.Opening);
        Bit? bit = RowLookup.Find(read, "bit", "bits", catalogues.Bits, context);
        if (!read.IsSound || bit is null)
        {
            sound = false;
            return null;
        }

        return new Marking(
            bit,
            read.Amount("depth"),
            read.Amount("height"),
            read.Flag("labels"),
            [.. read.Texts("text").Select(t => t.Text)],
            JobReader.PlacesOf(read.Table))
        {
            Dated = read.Flag("date"),
        };
    }

    /// <summary>Places on edges under a key; null when a finding says what is wrong with one.</summary>
    internal static ImmutableArray<PlaceOnEdge>? Places(Fields fields, string key, TableContext context, TableKeys? keys = null)
    {
        var places = ImmutableArray.CreateBuilder<PlaceOnEdge>();
        bool sound = true;
        foreach (TableValue table in fields.Inners(key))
        {
            var read = Fields.Read(table, keys ?? JobKeys.OnEdge, context, JobKeys.Cut);
            sound &= read.IsSound;
            if (read.IsSound)
            {
                places.Add(new PlaceOnEdge(new Point2(read.Amount("x"), read.Amount("y")), JobReader.PlacesOf(table)));
            }
        }

        return sound ? places.ToImmutable() : null;
    }

    /// <summary>The clamps; null when a finding says what is wrong with one.</summary>
    internal static ImmutableArray<ClampBox>? Clamps(Fields fields, TableContext context)
    {
        var clamps = ImmutableArray.CreateBuilder<ClampBox>();
        bool sound = true;
        foreach (TableValue table in fields.Inners("clamp"))
        {
            var read = Fields.Read(table, JobKeys.Clamp, context, JobKeys.BoardEnd, JobKeys.Pattern);
            sound &= read.IsSound;
            if (read.IsSound)
            {
                clamps.Add(new ClampBox(read.Amount("x"), read.Amount("y"), read.Amount("length"), read.Amount("width"), read.Amount("height"), table.At));
            }
        }

        return sound ? clamps.ToImmutable() : null;
    }
}
