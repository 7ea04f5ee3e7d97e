namespace ToolpathForge.Catalogue;

/// <summary>How well founded a row of a catalogue is.</summary>
public enum SourceKind
{
    /// <summary>A published standard, handbook or study, named in the text.</summary>
    Published,

    /// <summary>Common practice of the trade, without one source.</summary>
    Practice,

    /// <summary>A judgment of ours, where nobody says or sources differ.</summary>
    Judgment,

    /// <summary>Written from memory: check it, override it.</summary>
    Memory,

    /// <summary>Measured or stated by the user.</summary>
    User,
}

/// <summary>Where a row of a catalogue comes from.</summary>
/// <param name="Kind">How well founded it is.</param>
/// <param name="Text">The source in words.</param>
public sealed record Source(SourceKind Kind, string Text);
