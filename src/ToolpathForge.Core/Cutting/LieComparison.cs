using System.Collections.Immutable;
using ToolpathForge.Clampings;
using ToolpathForge.Geometry;

namespace ToolpathForge.Cutting;

/// <summary>What one way of laying a board means for the edge that is cut.</summary>
/// <param name="Lie">How the board lies.</param>
/// <param name="OtherEnd">Whether the other end of the board is at the bed.</param>
/// <param name="ReferenceAtFence">Whether the reference edge still lies at the fence, so that fence and program serve as they are.</param>
/// <param name="OtherFaceUp">Whether the other face comes up.</param>
/// <param name="With">Length of edge cut with the grain, mm.</param>
/// <param name="Against">Length of edge against the grain, mm.</param>
/// <param name="Proposed">Whether it is the better of the two ways for its end.</param>
public sealed record LieReading(Lie Lie, bool OtherEnd, bool ReferenceAtFence, bool OtherFaceUp, double With, double Against, bool Proposed);

/// <summary>
/// Compares the four ways a board may lie, for a design that is the same at both ends. The feed never changes the class of an edge; only the
/// way the board lies does. Rolled over, the outline and its grain are mirrored together; turned flat, the outline of the other end is mirrored
/// and the grain stays; end over end, both are mirrored twice but the slope of the grain is seen from the other face.
/// </summary>
public static class LieComparison
{
    /// <summary>The four ways, in the order of <see cref="Lie"/>.</summary>
    /// <param name="profile">As laid on the bed, board on its left.</param>
    /// <param name="fibre">Direction of the length of the board on the bed, radians.</param>
    /// <param name="slope">Slope of the fibres from it as laid, radians counter-clockwise.</param>
    public static ImmutableArray<LieReading> Of(Contour profile, double fibre, double slope)
    {
        // Mirrored across the board's length, then walked so that the board is on the left again.
        Contour mirrored = profile.Placed(new Placement(2 * fibre, default, false).After(Flip)).Reversed();
        (double With, double Against) asLaid = Lengths(profile, fibre + slope);
        (double With, double Against) turned = Lengths(mirrored, fibre + slope);
        (double With, double Against) rolled = Lengths(mirrored, fibre - slope);
        (double With, double Against) endOver = Lengths(profile, fibre - slope);

        // Of two ways that leave as much against the grain, the one that keeps the reference edge at the fence.
        bool laidIsBest = asLaid.Against <= rolled.Against + 1e-6;
        bool overIsBest = endOver.Against <= turned.Against + 1e-6;
        return
        [
            new(Lie.AsLaid, false, true, false, asLaid.With, asLaid.Against, laidIsBest),
            new(Lie.TurnedFlat, true, false, false, turned.With, turned.Against, !overIsBest),
            new(Lie.RolledOver, false, false, true, rolled.With, rolled.Against, !laidIsBest),
            new(Lie.EndOverEnd, true, true, true, endOver.With, endOver.Against, overIsBest),
        ];
    }

    // Mirrors in the X axis: x stays, y is negated, as a half turn after x is negated.
    private static Placement Flip { get; } = new(Math.PI, default, true);

    private static (double With, double Against) Lengths(Contour profile, double fibre)
    {
        ImmutableArray<GrainStretch> stretches = Grain.Along(profile, fibre);
        return (stretches.Where(s => s.Class == GrainClass.With).Sum(s => s.Length), stretches.Where(s => s.Class == GrainClass.Against).Sum(s => s.Length));
    }
}
