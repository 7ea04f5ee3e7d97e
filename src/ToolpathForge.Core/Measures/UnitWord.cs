namespace ToolpathForge.Measures;

/// <summary>The words by which a file states its unit.</summary>
internal static class UnitWord
{
    /// <summary>The unit of a word; null for any other word.</summary>
    internal static LengthUnit? Find(string word) => word switch
    {
        "mm" => LengthUnit.Millimetre,
        "in" => LengthUnit.Inch,
        _ => null,
    };
}
