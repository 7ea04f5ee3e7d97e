using System.Collections.Immutable;
using ToolpathForge.Measures;
using ToolpathForge.Tables;

namespace ToolpathForge.Jobs;

/// <summary>Reads how boards are bought.</summary>
internal static class BuyingReader
{
    private static readonly Key s_length = Key.Length("lengths", "A length of board that the yard sells.", 300, 15000);

    /// <summary>The terms; null when a finding says what is wrong with them.</summary>
    internal static BuyingTerms? Read(Fields head, TableContext context)
    {
        if (!head.Has("buying"))
        {
            return new BuyingTerms([], 0, 0);
        }

        var read = Fields.Read(head.Inner("buying"), JobKeys.Buying, context, JobKeys.Head);
        double?[] lengths = [.. read.Texts("lengths").Select(t => FieldReader.Read(new TableEntry(s_length.Name, t.At, t), s_length, context)?.Amount)];
        return read.IsSound && lengths.All(l => l is not null)
            ? new BuyingTerms([.. lengths.Select(l => l!.Value).Distinct().Order()], read.Amount("kerf"), read.Amount("trim"))
            : null;
    }
}
