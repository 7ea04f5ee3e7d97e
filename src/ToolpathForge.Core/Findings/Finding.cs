using System.Collections.Immutable;

namespace ToolpathForge.Findings;

/// <summary>How much a finding weighs.</summary>
public enum Severity
{
    /// <summary>Worth knowing; nothing needs doing.</summary>
    Note,

    /// <summary>A problem may follow; the person decides.</summary>
    Warn,

    /// <summary>No program is handed over until it is put right.</summary>
    Stop,
}

/// <summary>What a number in a finding measures, so that it can be worded in the person's own unit.</summary>
public enum QuantityKind
{
    /// <summary>A length, mm.</summary>
    Length,

    /// <summary>An angle, degrees.</summary>
    Angle,

    /// <summary>A feed, mm/min.</summary>
    Feed,

    /// <summary>A spindle speed, revolutions per minute.</summary>
    Speed,

    /// <summary>A plain count or ratio.</summary>
    Number,

    /// <summary>An area, mm².</summary>
    Area,

    /// <summary>A mass, kg.</summary>
    Mass,

    /// <summary>A force, N.</summary>
    Force,

    /// <summary>A turning moment, N·m.</summary>
    Moment,

    /// <summary>How fast something moves that is not fed, such as the rim of a bit: m/s.</summary>
    Velocity,
}

/// <summary>A measured or allowed value in its base unit (see <see cref="QuantityKind"/>).</summary>
/// <param name="Value">The number.</param>
/// <param name="Kind">What it measures.</param>
public readonly record struct Quantity(double Value, QuantityKind Kind)
{
    /// <summary>A length.</summary>
    /// <param name="millimetres">mm.</param>
    public static Quantity Length(double millimetres) => new(millimetres, QuantityKind.Length);

    /// <summary>An angle.</summary>
    /// <param name="degrees">Degrees.</param>
    public static Quantity Angle(double degrees) => new(degrees, QuantityKind.Angle);

    /// <summary>A feed.</summary>
    /// <param name="millimetresPerMinute">mm/min.</param>
    public static Quantity Feed(double millimetresPerMinute) => new(millimetresPerMinute, QuantityKind.Feed);

    /// <summary>A spindle speed.</summary>
    /// <param name="perMinute">Revolutions per minute.</param>
    public static Quantity Speed(double perMinute) => new(perMinute, QuantityKind.Speed);

    /// <summary>A plain number.</summary>
    /// <param name="value">Count or ratio.</param>
    public static Quantity Number(double value) => new(value, QuantityKind.Number);
}

/// <summary>A named filling for the wording of a finding: a word or a quantity.</summary>
/// <param name="Name">The name that the kind's wording uses, in braces there.</param>
/// <param name="Text">A word, when it is one.</param>
/// <param name="Quantity">A quantity, when it is one.</param>
public readonly record struct Arg(string Name, string? Text, Quantity? Quantity)
{
    /// <summary>A word.</summary>
    /// <param name="name">Name in the wording.</param>
    /// <param name="text">What stands there.</param>
    public static Arg Of(string name, string text) => new(name, text, null);

    /// <summary>A quantity.</summary>
    /// <param name="name">Name in the wording.</param>
    /// <param name="quantity">What stands there, worded in the person's unit.</param>
    public static Arg Of(string name, Quantity quantity) => new(name, null, quantity);
}

/// <summary>
/// Where a finding lies: in a file (line and column from 1), in a make, at a point of a piece. Any of them may be absent.
/// </summary>
/// <param name="File">The file's name as the person gave it.</param>
/// <param name="Line">From 1; 0 when not known.</param>
/// <param name="Column">From 1; 0 when not known.</param>
/// <param name="Make">The id of the make it belongs to.</param>
/// <param name="Point">A point in the piece frame (X from the end inwards, Y from the reference edge), mm.</param>
public sealed record Place(string? File, int Line, int Column, string? Make, (double X, double Y)? Point)
{
    /// <summary>Nowhere in particular.</summary>
    public static Place None { get; } = new(null, 0, 0, null, null);

    /// <summary>A place in a file.</summary>
    /// <param name="file">The file's name as given.</param>
    /// <param name="line">From 1.</param>
    /// <param name="column">From 1.</param>
    public static Place InFile(string file, int line, int column) => new(file, line, column, null, null);

    /// <summary>The same place, with the make named.</summary>
    /// <param name="id">The make's id.</param>
    public Place OfMake(string id) => this with { Make = id };

    /// <summary>The same place, with a point of the piece.</summary>
    /// <param name="x">Along the board from its end, mm.</param>
    /// <param name="y">From the reference edge, mm.</param>
    public Place AtPoint(double x, double y) => this with { Point = (x, y) };
}

/// <summary>
/// A kind of finding: its code, its weight and its words. Declared once as a static field of the class that raises it; the reference of all
/// findings is generated from these fields. Wording may use {found}, {allowed} and the names of its <see cref="Arg"/>s.
/// </summary>
/// <param name="Code">Stable, lower case with hyphens.</param>
/// <param name="Severity">Its weight.</param>
/// <param name="Says">One sentence: what is so.</param>
/// <param name="Advice">One sentence: what to do about it.</param>
public sealed record FindingKind(string Code, Severity Severity, string Says, string Advice)
{
    /// <summary>
    /// Whether the input cannot be used at all (broken syntax, unknown key, wrong type, missing key or file): a caller ends with its code for
    /// unusable input instead of the one for a job that is understood but cannot be made.
    /// </summary>
    public bool Unusable { get; init; }
}

/// <summary>Something the person should know, as numbers and places. The words come from its <see cref="Kind"/>; one renderer puts them together.</summary>
/// <param name="Kind">What kind of thing.</param>
/// <param name="Place">Where.</param>
/// <param name="Found">What was found.</param>
/// <param name="Allowed">What is allowed.</param>
/// <param name="Args">Further fillings for the wording.</param>
public sealed record Finding(FindingKind Kind, Place Place, Quantity? Found, Quantity? Allowed, ImmutableArray<Arg> Args)
{
    /// <summary>A finding without numbers.</summary>
    /// <param name="kind">What kind of thing.</param>
    /// <param name="place">Where.</param>
    /// <param name="args">Fillings for the wording.</param>
    public static Finding Of(FindingKind kind, Place place, params ImmutableArray<Arg> args) => new(kind, place, null, null, args);

    /// <summary>A finding with the value found and the value allowed.</summary>
    /// <param name="kind">What kind of thing.</param>
    /// <param name="place">Where.</param>
    /// <param name="found">What was found.</param>
    /// <param name="allowed">What is allowed.</param>
    /// <param name="args">Fillings for the wording.</param>
    public static Finding Of(FindingKind kind, Place place, Quantity found, Quantity allowed, params ImmutableArray<Arg> args) =>
        new(kind, place, found, allowed, args);
}
