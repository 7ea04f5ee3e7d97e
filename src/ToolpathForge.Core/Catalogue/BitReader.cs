using System.Collections.Immutable;
using ToolpathForge.Findings;
using ToolpathForge.Tables;

namespace ToolpathForge.Catalogue;

/// <summary>Reads a row of a bit, and refuses parts that a bit of its kind does not have.</summary>
internal static class BitReader
{
    // Kinds that must have a part, and kinds that may. Round-over and chamfer bits are sold with a bearing and without.
    private static readonly ImmutableArray<(string Key, ImmutableArray<BitKind> Must, ImmutableArray<BitKind> May)> s_parts =
    [
        ("bearing-diameter", [BitKind.TopBearing, BitKind.TipBearing], [BitKind.RoundOver, BitKind.Chamfer]),
        ("bearing-height", [BitKind.TopBearing, BitKind.TipBearing], [BitKind.RoundOver, BitKind.Chamfer]),
        ("bearing-gap", [], [BitKind.TopBearing, BitKind.TipBearing, BitKind.RoundOver, BitKind.Chamfer]),
        ("tip-angle", [BitKind.V, BitKind.Chamfer], []),
        ("edge-radius", [BitKind.RoundOver], []),
    ];

    /// <summary>The bit; null when a finding says why it cannot be one.</summary>
    internal static Bit? Read(Fields row, TableContext context)
    {
        BitKind kind = BitKinds.KindOf(row.Text("kind"));
        if (row.Has("up-cut-length") != (kind == BitKind.Compression))
        {
            context.Add(Finding.Of(
                CatalogueFindings.UpCutPart, row.Where("kind"), Arg.Of("id", row.Text("id")), Arg.Of("kind", row.Text("kind"))));
            return null;
        }

        if (!HasItsParts(row, kind, context)
            || !CatalogueReader.InOrder(row, "flute-length", "overall-length", QuantityKind.Length, context)
            || (row.Has("up-cut-length") && !CatalogueReader.InOrder(row, "up-cut-length", "flute-length", QuantityKind.Length, context)))
        {
            return null;
        }

        return new Bit(
            row.Text("id"),
            row.Text("name"),
            kind,
            row.Text("substance") == "carbide" ? BitSubstance.Carbide : BitSubstance.Steel,
            row.Amount("diameter"),
            row.Amount("flute-length"),
            row.Whole("flutes"),
            row.Amount("shank"),
            row.Amount("overall-length"),
            row.Amount("max-speed"),
            row.Flag("can-plunge"),
            row.Amount("ramp-angle"),
            row.AmountOrNull("up-cut-length") ?? 0,
            CatalogueReader.SourceOf(row))
        {
            Bearing = row.AmountOrNull("bearing-diameter") is { } diameter
                ? new Bearing(diameter, row.Amount("bearing-height"), row.AmountOrNull("bearing-gap") ?? 0)
                : null,
            TipAngle = row.AmountOrNull("tip-angle") ?? 0,
            EdgeRadius = row.AmountOrNull("edge-radius") ?? 0,
        };
    }

    private static bool HasItsParts(Fields row, BitKind kind, TableContext context)
    {
        bool sound = true;
        foreach ((string key, ImmutableArray<BitKind> must, ImmutableArray<BitKind> may) in s_parts)
        {
            // A bearing has a diameter and a height, or it is none.
            bool half = key == "bearing-height" && row.Has(key) != row.Has("bearing-diameter");
            if (half || (must.Contains(kind) ? !row.Has(key) : row.Has(key) && !may.Contains(kind)))
            {
                sound = false;
                context.Add(Finding.Of(
                    CatalogueFindings.BitPart,
                    row.Where(row.Has(key) ? key : "kind"),
                    Arg.Of("id", row.Text("id")),
                    Arg.Of("kind", row.Text("kind")),
                    Arg.Of("key", half ? "a bearing with both diameter and height" : key),
                    Arg.Of("words", string.Join(", ", must.Concat(may).Select(BitKinds.WordOf)))));
            }
        }

        return sound;
    }
}
