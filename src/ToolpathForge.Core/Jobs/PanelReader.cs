using ToolpathForge.Tables;

namespace ToolpathForge.Jobs;

/// <summary>Reads how pieces are laid on panels.</summary>
internal static class PanelReader
{
    /// <summary>The keys of the table.</summary>
    internal static TableKeys Keys { get; } = new("panels",
    [
        Key.Flag("together", "Whether makes that come from the same panel and are cut alike share blanks, nested by their outline.").Else("false"),
        Key.Choice("turned", "How pieces may be turned on shared blanks.", "no", "half", "quarter").Else("quarter"),
        Key.Length("gap", "Wood left standing between the tracks of two pieces.", 0, 200).Else("6 mm"),
        Key.Length("length", "Length of a shared blank along X.", 50, 5000).ElseFrom("as long as is needed, at most what the machine reaches"),
        Key.Length("width", "Width of a shared blank along Y.", 50, 5000).ElseFrom("as wide as is needed, at most what the machine reaches"),
    ]);

    /// <summary>The word for a turn that the job uses.</summary>
    internal static PlateTurn Turn(string word) => word switch
    {
        "half" => PlateTurn.Half,
        "quarter" => PlateTurn.Quarter,
        _ => PlateTurn.None,
    };

    /// <summary>What the table says; null when a finding says what is wrong with it.</summary>
    internal static PanelSharing? Read(Fields head, TableContext context)
    {
        if (!head.Has("panels"))
        {
            return PanelSharing.None;
        }

        var read = Fields.Read(head.Inner("panels"), Keys, context, JobKeys.Head);
        return read.IsSound
            ? new PanelSharing(read.Flag("together"), Turn(read.Text("turned")), read.Amount("gap"), read.AmountOrNull("length"), read.AmountOrNull("width"))
            : null;
    }
}
