namespace ToolpathForge.Proof;

/// <summary>Every small number that the proof compares against, with its reason.</summary>
public static class ProofAccuracy
{
    /// <summary>
    /// Widest gap between the ends of two edges of a loop, mm: rounding of coordinates after a few turns and shifts on a bed of metres is a thousandth of it,
    /// and it is a hundredth of the smallest tolerance that makes sense for wood.
    /// </summary>
    public const double LoopGap = 1e-6;

    /// <summary>Beyond this a number in a text is refused: a kilometre in mm, and more than any feed or speed.</summary>
    internal const double LargestNumber = 1e6;

    /// <summary>Largest difference of an arc's radii in a text in mm: NISTIR 6556 section 3.5.3.</summary>
    internal const double ArcMismatchMillimetres = 0.002;

    /// <summary>Largest difference of an arc's radii in a text in inches, in inches: NISTIR 6556 section 3.5.3.</summary>
    internal const double ArcMismatchInches = 0.0002;

    /// <summary>Rounding of decimals as doubles: what is written as exactly the limit still counts as the limit, mm.</summary>
    internal const double Rounding = 1e-9;

    /// <summary>
    /// The exact edges are enclosed by arcs and lines within this share of the tolerance, and the search for the worst place stops when it is known as well.
    /// Together with the rounding below it keeps every bound within a fiftieth of the tolerance.
    /// </summary>
    internal const double ShareOfTolerance = 1.0 / 200;

    /// <summary>Least enclosure of an edge, mm: below it arcs and their centres drown in rounding.</summary>
    internal const double LeastEnclosure = 1e-7;

    /// <summary>A code or a tool number this near to a whole number is it.</summary>
    internal const double WholeNumber = 1e-4;

    /// <summary>Rotation of a tangent against the chord, cosine: within a piece of edge that is enclosed by one arc it stays below 60 degrees, so that the arc's radii meet the edge once each.</summary>
    internal const double CosineOfWidestTangent = 0.5;

    /// <summary>A motion cuts an edge that it runs along within 60 degrees, cosine.</summary>
    internal const double CosineOfPassing = 0.5;

    /// <summary>Stretches of edge shorter than this are told as cut in the direction found at their middle, mm.</summary>
    internal const double ShortestStretch = 0.02;

    /// <summary>An edge is not enclosed by arcs of a larger radius than this but by lines, mm: a distance from a circle of a kilometre is still good to 1e-10 mm.</summary>
    internal const double LargestRadius = 1e6;

    /// <summary>Control points nearer than this are one, mm: a thousandth of the least enclosure, to which it is added.</summary>
    internal const double SamePoint = 1e-10;

    /// <summary>So often an edge is halved at most: a kilometre comes down to 1e-12 mm, so only what is beyond doubles gets there.</summary>
    internal const int DeepestHalving = 60;

    /// <summary>An arc that turns by less is its chord, radians: at a radius of a kilometre it rises 1e-13 mm.</summary>
    internal const double StraightSweep = 1e-9;

    /// <summary>
    /// So many increments a way down over short motions may be ahead of its slope or its feed: each of two heights is rounded by a half, and places in the plane by another at slopes
    /// below 45 degrees.
    /// </summary>
    internal const double RoundedHeights = 2;

    /// <summary>After so many divisions the search for the worst place takes the bound from the slope, which is just as true but less tight.</summary>
    internal const int MostDivisions = 1_000_000;

    /// <summary>Feeds and speeds are compared with this relative slack: the last decimal of an F word in inches a minute.</summary>
    internal const double FeedSlack = 1e-3;

    /// <summary>
    /// How far beside an earlier cut a bit may go straight down again, as a share of its radius: the crescent it then takes lies within the part of its end
    /// that cuts even where the centre does not (from memory: end teeth reach in to half the radius or further).
    /// </summary>
    internal const double RimOfPlunge = 0.2;
}
