namespace ToolpathForge.Geometry;

/// <summary>
/// Every small number that geometry compares against, in one place and with its reason.
/// Double precision carries about 16 digits; at the 1 m of a bed that is 1e-13 mm, at the 1e6 mm bound of accepted input 1e-10 mm.
/// </summary>
public static class Accuracy
{
    /// <summary>
    /// An arc that rises less than this above its chord is a line, mm: a thousandth of the finest increment that any dialect writes (1e-4 mm),
    /// and where centre and radius stop being meaningful in double precision (r = c²/8s: 1.25e9 mm for a 100 mm chord).
    /// </summary>
    public const double StraightSagitta = 1e-7;

    /// <summary>Two points nearer than this are one, mm: a tenth of <see cref="StraightSagitta"/>, a hundred times the rounding of coordinates at 1e6 mm.</summary>
    public const double SamePoint = 1e-8;

    /// <summary>
    /// The check of an offset grants this to every distance, mm: a line may stand for an arc that rises by <see cref="StraightSagitta"/>, and what failed at first
    /// is tried again up to 64e-9 beside the distance.
    /// </summary>
    public const double OffsetCheck = 2e-7;

    /// <summary>Coordinates beyond this are refused at the doors, mm: a kilometre, where a double still resolves 1e-10 mm.</summary>
    public const double LargestCoordinate = 1e6;

    /// <summary>Directions that differ by less than this are the same, radians: 1e-9 moves the far end of a metre by 1e-6 mm.</summary>
    public const double SameDirection = 1e-9;

    /// <summary>
    /// Where two edges are split, points nearer than this are one, mm: a tenth of <see cref="SamePoint"/>, or for a large shape sixteen units in the last place of its
    /// coordinates, which is what the rounding of a crossing comes to.
    /// </summary>
    /// <param name="largest">The largest coordinate of the shape about its own origin, mm.</param>
    internal static double MergeWithin(double largest) => Math.Max(1e-9, largest * 16 * 2.2e-16);
}
