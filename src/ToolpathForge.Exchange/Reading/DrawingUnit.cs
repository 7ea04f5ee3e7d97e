namespace ToolpathForge.Exchange.Reading;

/// <summary>The unit that a drawing is drawn in.</summary>
/// <param name="Name">Its short name: mm, in, cm.</param>
/// <param name="Millimetres">Millimetres in one of it, more than 0.</param>
public sealed record DrawingUnit(string Name, double Millimetres)
{
    private const double Inch = 25.4;

    /// <summary>A survey foot is 1200/3937 m by definition (Mendenhall order, 1893).</summary>
    private const double SurveyFoot = 1200.0 / 3937 * 1000;

    /// <summary>Whether who draws in it thinks in inches: in, ft, yd, or so many of in ("0.01 in").</summary>
    public bool IsInches => Name is "in" or "ft" or "yd" || Name.EndsWith(" in", StringComparison.Ordinal);

    /// <summary>Millimetres.</summary>
    public static DrawingUnit Millimetre { get; } = new("mm", 1);

    /// <summary>Inches of exactly 25.4 mm.</summary>
    public static DrawingUnit InchUnit { get; } = new("in", Inch);

    /// <summary>The unit of a word that a person writes: mm, cm, dm, m, in, ft, yd; null for any other.</summary>
    /// <param name="word">The word, in small letters.</param>
    public static DrawingUnit? Find(string word) => word switch
    {
        "mm" => Millimetre,
        "cm" => new DrawingUnit("cm", 10),
        "dm" => new DrawingUnit("dm", 100),
        "m" => new DrawingUnit("m", 1000),
        "in" => InchUnit,
        "ft" => new DrawingUnit("ft", 12 * Inch),
        "yd" => new DrawingUnit("yd", 36 * Inch),
        _ => null,
    };

    /// <summary>
    /// The unit of a code of the header variable $INSUNITS (DXF reference, HEADER section); null for 0, which means that none is stated, and for codes that nothing stands for.
    /// </summary>
    /// <param name="code">1 to 24.</param>
    internal static DrawingUnit? OfInsertUnits(int code) => code switch
    {
        1 => InchUnit,
        2 => new DrawingUnit("ft", 12 * Inch),
        3 => new DrawingUnit("mi", 63360 * Inch),
        4 => Millimetre,
        5 => new DrawingUnit("cm", 10),
        6 => new DrawingUnit("m", 1000),
        7 => new DrawingUnit("km", 1e6),
        8 => new DrawingUnit("microinch", Inch * 1e-6),
        9 => new DrawingUnit("mil", Inch * 1e-3),
        10 => new DrawingUnit("yd", 36 * Inch),
        11 => new DrawingUnit("angstrom", 1e-7),
        12 => new DrawingUnit("nm", 1e-6),
        13 => new DrawingUnit("micron", 1e-3),
        14 => new DrawingUnit("dm", 100),
        15 => new DrawingUnit("dam", 1e4),
        16 => new DrawingUnit("hm", 1e5),
        17 => new DrawingUnit("Gm", 1e12),
        18 => new DrawingUnit("au", 1.495978707e14),
        19 => new DrawingUnit("light year", 9.4607304725808e18),
        20 => new DrawingUnit("parsec", 3.0856775814913673e19),
        21 => new DrawingUnit("survey foot", SurveyFoot),
        22 => new DrawingUnit("survey inch", SurveyFoot / 12),
        23 => new DrawingUnit("survey yard", SurveyFoot * 3),
        24 => new DrawingUnit("survey mile", SurveyFoot * 5280),
        _ => null,
    };
}
