namespace ToolpathForge.Proof;

/// <summary>The farthest that something lies from what should cover it.</summary>
/// <param name="Value">Proven upper bound, mm; infinite if nothing covers.</param>
/// <param name="At">Where it is (nearly) reached.</param>
/// <param name="Cover">Index of the covering part nearest to that place; -1 if there is none.</param>
internal readonly record struct Farthest(double Value, PlanePoint At, int Cover);

/// <summary>
/// Largest distance from any point of some parts to the nearest of some covering parts, with their offsets, by branch and bound. The lower bound of a stretch is the distance at its
/// middle; the upper one the exact farthest distance to whatever is nearest there, or, since a distance changes no faster than its point moves, the middle's plus half the length.
/// Stretches are divided where they leave the front of what is nearest, so that most are settled at once.
/// </summary>
internal static class CoverSearch
{
    /// <summary>Finds the farthest place.</summary>
    /// <param name="parts">What is to be covered.</param>
    /// <param name="cover">What covers.</param>
    /// <param name="above">What is at most this is of no interest.</param>
    /// <param name="accuracy">The result is at most this above the truth, or above <paramref name="above"/>.</param>
    internal static Farthest Find(IEnumerable<PathPart> parts, PartTree cover, double above, double accuracy)
    {
        double least = above;
        var worst = new Farthest(above, default, -1);
        bool hasPlace = false;
        int hint = -1;
        int divisions = 0;
        var open = new Stack<PathPart>();
        foreach (PathPart whole in parts)
        {
            open.Push(whole);
            while (open.TryPop(out PathPart part))
            {
                PlanePoint middle = part.PointAt(0.5);
                hint = cover.NearestTo(middle, hint, out double there);
                if (hint < 0)
                {
                    return new Farthest(double.PositiveInfinity, middle, -1);
                }

                there += part.Error;
                if (there > least || !hasPlace)
                {
                    least = Math.Max(least, there);
                    worst = worst with { At = middle, Cover = hint };
                    hasPlace = true;
                }

                double half = part.Length / 2;
                double bound = Bound(part, cover, hint, there, accuracy);
                if (bound <= least + accuracy || half <= accuracy || divisions >= ProofAccuracy.MostDivisions)
                {
                    worst = worst with { Value = Math.Max(worst.Value, bound) };
                    continue;
                }

                divisions++;
                double share = FarthestDistances.LeavesFrontAt(part, cover.Parts[hint]);
                double margin = accuracy / (4 * half);
                if (!(share > margin && share < 1 - margin))
                {
                    share = 0.5;
                }

                open.Push(part.Between(share, 1));
                open.Push(part.Between(0, share));
            }
        }

        return worst;
    }

    /// <summary>Upper bound of the distance plus offset from any point of a part to the cover, given the covering part that is nearest to its middle.</summary>
    /// <param name="part">The part.</param>
    /// <param name="cover">What covers.</param>
    /// <param name="nearest">Index of the covering part nearest to its middle.</param>
    /// <param name="there">The middle's value, with the part's error.</param>
    /// <param name="accuracy">An eighth of it is forgiven where the part sticks out of the front, and is added.</param>
    internal static double Bound(in PathPart part, PartTree cover, int nearest, double there, double accuracy)
    {
        ref readonly PathPart other = ref cover.Parts[nearest];
        double add = cover.Offset(nearest) + part.Error;
        double bound = Math.Min(there + (part.Length / 2), FarthestDistances.InFrontOf(part, other, accuracy / 8) + add);
        Distances.Between(part.PointAt(0.5), other, out PlanePoint on);
        if (on == other.Start || on == other.End)
        {
            bound = Math.Min(bound, FarthestDistances.FromPoint(part, on) + add);
        }

        return bound;
    }
}
