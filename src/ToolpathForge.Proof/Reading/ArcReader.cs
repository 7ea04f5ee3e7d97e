namespace ToolpathForge.Proof;

/// <summary>An arc's geometry from its two ends and what the line says: NISTIR 6556 section 3.5.3.</summary>
internal static class ArcReader
{
    /// <summary>Arc by its centre, given from its start. An end that is the start is a full circle.</summary>
    /// <param name="motion">Line, ends and feed; takes the arc.</param>
    /// <param name="offset">Centre as seen from the start, mm.</param>
    /// <param name="isClockwise">G2.</param>
    /// <param name="allowedMismatch">Largest difference of the radii, mm.</param>
    /// <param name="words">What a refusal quotes.</param>
    /// <param name="refusal">What is wrong.</param>
    internal static Motion? ByCenter(Motion motion, PlanePoint offset, bool isClockwise, double allowedMismatch, string words, out Refusal? refusal)
    {
        PlanePoint start = motion.Start.Plane;
        PlanePoint center = start.Plus(offset);
        PlanePoint end = motion.End.Plane;
        double first = offset.Length;
        double last = end.DistanceTo(center);
        refusal = null;
        if (first <= ProofAccuracy.Rounding || last <= ProofAccuracy.Rounding)
        {
            refusal = new Refusal(FaultCodes.ArcRadiusZero, motion.Line, words);
        }
        else if (Math.Abs(first - last) > allowedMismatch + ProofAccuracy.Rounding)
        {
            refusal = new Refusal(FaultCodes.ArcRadiusMismatch, motion.Line, words, Math.Abs(first - last), allowedMismatch);
        }

        return refusal is not null ? null : motion with
        {
            Center = center,
            Radius = (first + last) / 2,
            RadiusError = Math.Abs(first - last) / 2,
            Sweep = SweepBetween(start.Minus(center), end.Minus(center), start == end, isClockwise),
        };
    }

    /// <summary>Arc by its radius: positive for at most half a turn, negative for more.</summary>
    /// <param name="motion">Line, ends and feed; takes the arc.</param>
    /// <param name="radius">mm, signed.</param>
    /// <param name="isClockwise">G2.</param>
    /// <param name="allowedMismatch">How far the radius may fall short of half the chord, mm.</param>
    /// <param name="words">What a refusal quotes.</param>
    /// <param name="refusal">What is wrong.</param>
    internal static Motion? ByRadius(Motion motion, double radius, bool isClockwise, double allowedMismatch, string words, out Refusal? refusal)
    {
        PlanePoint start = motion.Start.Plane;
        PlanePoint end = motion.End.Plane;
        PlanePoint chord = end.Minus(start);
        double half = chord.Length / 2;
        double size = Math.Abs(radius);
        refusal = null;
        if (half <= ProofAccuracy.Rounding)
        {
            refusal = new Refusal(FaultCodes.ArcEndIsStart, motion.Line, words);
        }
        else if (size <= ProofAccuracy.Rounding)
        {
            refusal = new Refusal(FaultCodes.ArcRadiusZero, motion.Line, words);
        }
        else if (half - size > allowedMismatch + ProofAccuracy.Rounding)
        {
            refusal = new Refusal(FaultCodes.ArcRadiusTooSmall, motion.Line, words, size, half);
        }

        if (refusal is not null)
        {
            return null;
        }

        // A radius that falls short by less than the limit means half a turn about the chord's middle.
        double height = size > half ? Math.Sqrt((size - half) * (size + half)) : 0;
        bool isCenterLeft = isClockwise == radius < 0;
        PlanePoint center = start.Plus(chord.Times(0.5)).Plus(chord.Left.Unit().Times(isCenterLeft ? height : -height));
        return motion with
        {
            Center = center,
            Radius = Math.Max(size, half),
            Sweep = SweepBetween(start.Minus(center), end.Minus(center), isFullTurn: false, isClockwise),
        };
    }

    private static double SweepBetween(PlanePoint from, PlanePoint to, bool isFullTurn, bool isClockwise)
    {
        double angle = isFullTurn ? 0 : from.AngleTo(to);
        if (isClockwise)
        {
            return angle >= 0 ? angle - Math.Tau : angle;
        }

        return angle <= 0 ? angle + Math.Tau : angle;
    }
}
