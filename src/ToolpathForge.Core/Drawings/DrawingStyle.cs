using System.Collections.Immutable;

namespace ToolpathForge.Drawings;

/// <summary>What a line of a drawing means. The meaning chooses the pen (<see cref="DrawingStyle"/>) and the layer, never the caller.</summary>
public enum LineRole
{
    /// <summary>The edge that the cut must leave: the reason for the drawing.</summary>
    FinishedEdge,

    /// <summary>Any other edge of the piece that is seen.</summary>
    Edge,

    /// <summary>An edge that lies below something.</summary>
    HiddenEdge,

    /// <summary>Helping lines: the whole ellipse, tangents, rays.</summary>
    Construction,

    /// <summary>Axes of symmetry, centres.</summary>
    Axis,

    /// <summary>The stock as it comes, board or panel, where it will be cut away: a chain line, as is usual for outlines before working.</summary>
    Board,

    /// <summary>Where to saw: outside the finished edge by what the bit or the plane takes off.</summary>
    SawLine,

    /// <summary>The machine's bed and its travel.</summary>
    Bed,

    /// <summary>Clamps, fences and stops.</summary>
    Clamp,

    /// <summary>Where the bit must not go.</summary>
    KeepOut,

    /// <summary>Where a tab holds the piece.</summary>
    Tab,

    /// <summary>The bit's centre while it cuts.</summary>
    CutPath,

    /// <summary>The bit's centre while it goes down into the work.</summary>
    RampPath,

    /// <summary>The bit's centre while it travels above the work.</summary>
    RapidPath,

    /// <summary>What is engraved into a face.</summary>
    Engraving,

    /// <summary>Dimension lines, leaders, their arrowheads and text.</summary>
    Dimension,

    /// <summary>The direction of the wood's fibres.</summary>
    Grain,

    /// <summary>Titles and notes; zero-point and scale bar.</summary>
    Lettering,

    /// <summary>Frame and title strip of a sheet.</summary>
    Frame,
}

/// <summary>What a tinted area is.</summary>
public enum Tone
{
    /// <summary>Solid wood: a board or a piece of it.</summary>
    Wood,

    /// <summary>Hardboard, plywood and other panels.</summary>
    Panel,

    /// <summary>What is cut away.</summary>
    Waste,

    /// <summary>The machine's bed.</summary>
    Bed,

    /// <summary>Clamps, fences and stops.</summary>
    Clamp,

    /// <summary>Blank paper, to part a note from what lies below it.</summary>
    Paper,
}

/// <summary>A colour of ink or tint.</summary>
/// <param name="Red">0 to 255.</param>
/// <param name="Green">0 to 255.</param>
/// <param name="Blue">0 to 255.</param>
public readonly record struct Ink(byte Red, byte Green, byte Blue)
{
    /// <summary>As #rrggbb.</summary>
    public string Hex => FormattableString.Invariant($"#{Red:x2}{Green:x2}{Blue:x2}");
}

/// <summary>How a line is drawn.</summary>
/// <param name="Width">mm of paper.</param>
/// <param name="Ink">Its colour.</param>
/// <param name="Dashes">Lengths of dash, gap, dash, gap …, mm of paper; empty for a full line.</param>
public sealed record Pen(double Width, Ink Ink, ImmutableArray<double> Dashes);

/// <summary>
/// The one drawing style: graphite lines in three weights on white paper, wood in one warm tint, the cutting path in one blue, all else muted.
/// Weights and dashes alone tell the lines apart, so a black and white print loses nothing.
/// </summary>
public static class DrawingStyle
{
    /// <summary>Height of ordinary lettering and dimension text, mm of paper.</summary>
    public const double TextHeight = 2.8;

    /// <summary>Height of titles, mm of paper.</summary>
    public const double TitleHeight = 4.5;

    /// <summary>Length of a dimension's arrowhead, mm of paper; a third as wide.</summary>
    public const double ArrowLength = 2.6;

    /// <summary>Distance of the first dimension line from the body, mm of paper.</summary>
    public const double FirstRow = 9;

    /// <summary>Distance of further dimension lines from each other, mm of paper.</summary>
    public const double RowStep = 8;

    /// <summary>How far an extension line stays clear of the point it belongs to, mm of paper.</summary>
    internal const double ExtensionGap = 1;

    /// <summary>How far an extension line runs beyond the dimension line, mm of paper.</summary>
    internal const double ExtensionBeyond = 1.8;

    /// <summary>Free space between a dimension line and its text, mm of paper.</summary>
    internal const double TextClearance = 1.0;

    private const double Heavy = 0.6;
    private const double Medium = 0.35;
    private const double Fine = 0.18;

    private static readonly Ink s_graphite = new(0x2a, 0x2d, 0x31);
    private static readonly Ink s_pencil = new(0x6d, 0x72, 0x78);
    private static readonly Ink s_faint = new(0x98, 0x9d, 0xa3);
    private static readonly Ink s_blue = new(0x0b, 0x58, 0x94);
    private static readonly Ink s_fibre = new(0xd4, 0xb8, 0x8e);

    /// <summary>The pen of a line.</summary>
    /// <param name="role">What the line means.</param>
    public static Pen PenOf(LineRole role) => role switch
    {
        LineRole.FinishedEdge => new(Heavy, s_graphite, []),
        LineRole.Edge => new(Medium, s_graphite, []),
        LineRole.HiddenEdge => new(0.25, s_graphite, [2.4, 1.1]),
        LineRole.Construction => new(0.13, s_pencil, []),
        LineRole.Axis => new(Fine, s_pencil, [7, 1.2, 0.9, 1.2]),
        LineRole.Board => new(0.25, s_graphite, [9, 1.2, 0.8, 1.2, 0.8, 1.2]),
        LineRole.SawLine => new(0.25, s_graphite, [4, 1.5]),
        LineRole.Bed => new(Medium, s_faint, []),
        LineRole.Clamp => new(0.25, s_graphite, []),
        LineRole.KeepOut => new(Fine, s_graphite, [3.2, 0.9, 0.6, 0.9]),
        LineRole.Tab => new(1.0, s_blue, []),
        LineRole.CutPath => new(Medium, s_blue, []),
        LineRole.RampPath => new(Medium, s_blue, [1.5, 0.8]),
        LineRole.RapidPath => new(Fine, s_pencil, [0.9, 0.9]),
        LineRole.Engraving => new(0.25, s_blue, []),
        LineRole.Dimension => new(Fine, s_graphite, []),
        LineRole.Grain => new(0.13, s_fibre, []),
        LineRole.Lettering => new(0.25, s_graphite, []),
        LineRole.Frame => new(0.5, s_graphite, []),
        _ => throw new ArgumentOutOfRangeException(nameof(role), role, "No such line."),
    };

    /// <summary>The tint of an area.</summary>
    /// <param name="tone">What the area is.</param>
    public static Ink TintOf(Tone tone) => tone switch
    {
        Tone.Wood => new(0xf4, 0xe7, 0xd1),
        Tone.Panel => new(0xf1, 0xec, 0xe4),
        Tone.Waste => new(0xf7, 0xf7, 0xf6),
        Tone.Bed => new(0xf4, 0xf5, 0xf6),
        Tone.Clamp => new(0xd9, 0xdc, 0xdf),
        Tone.Paper => new(0xff, 0xff, 0xff),
        _ => throw new ArgumentOutOfRangeException(nameof(tone), tone, "No such tint."),
    };

    /// <summary>The word for a line in class names and layers: its meaning in small letters with hyphens, as in "finished-edge".</summary>
    /// <param name="role">What the line means.</param>
    public static string NameOf(LineRole role) => role switch
    {
        LineRole.FinishedEdge => "finished-edge",
        LineRole.Edge => "edge",
        LineRole.HiddenEdge => "hidden-edge",
        LineRole.Construction => "construction",
        LineRole.Axis => "axis",
        LineRole.Board => "board",
        LineRole.SawLine => "saw-line",
        LineRole.Bed => "bed",
        LineRole.Clamp => "clamp",
        LineRole.KeepOut => "keep-out",
        LineRole.Tab => "tab",
        LineRole.CutPath => "cut-path",
        LineRole.RampPath => "ramp-path",
        LineRole.RapidPath => "rapid-path",
        LineRole.Engraving => "engraving",
        LineRole.Dimension => "dimension",
        LineRole.Grain => "grain",
        LineRole.Lettering => "lettering",
        LineRole.Frame => "frame",
        _ => throw new ArgumentOutOfRangeException(nameof(role), role, "No such line."),
    };
}
