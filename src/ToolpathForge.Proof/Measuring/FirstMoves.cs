namespace ToolpathForge.Proof;

/// <summary>
/// The first rapids of a program, while it has not said yet where all axes are. They start with the tip anywhere in X and Y at the start height or above,
/// so they are judged as if over stock wherever X or Y is unknown.
/// </summary>
internal static class FirstMoves
{
    /// <summary>Checks a rapid whose start is not wholly known.</summary>
    /// <returns>The rapid with its lowest possible Z filled in, if X and Y are known; otherwise null, and it has been judged here.</returns>
    internal static Motion? Check(Motion motion, Target target, FaultBook faults)
    {
        double startZ = double.IsNaN(motion.Start.Z) ? target.StartsAtOrAbove : motion.Start.Z;
        double endZ = double.IsNaN(motion.End.Z) ? startZ : motion.End.Z;

        // A straight way that starts higher is higher all along: the lowest start is the worst.
        if (motion.Start.IsPlaneKnown)
        {
            return motion with { Start = motion.Start with { Z = startZ }, End = motion.End with { Z = endZ } };
        }

        bool isVertical = Same(motion.Start.X, motion.End.X) && Same(motion.Start.Y, motion.End.Y);
        double lowest = isVertical ? endZ : Math.Min(startZ, endZ);
        if (lowest < target.ClearHeight - target.Increment)
        {
            faults.Add(FaultCodes.RapidTooLow, motion.Line, lowest, target.ClearHeight);
        }

        return null;
    }

    private static bool Same(double a, double b) => a.Equals(b);
}

/// <summary>Whether motions stay within the machine's travel.</summary>
internal static class TravelCheck
{
    internal static void Check(Motion motion, TargetTravel? travel, double slack, FaultBook faults)
    {
        if (travel is null)
        {
            return;
        }

        (SpacePoint min, SpacePoint max) = MotionBox.Of(motion);
        Axis("X", min.X, max.X, travel.Min.X, travel.Max.X);
        Axis("Y", min.Y, max.Y, travel.Min.Y, travel.Max.Y);
        Axis("Z", min.Z, max.Z, travel.Min.Z, travel.Max.Z);

        // Comparisons with an axis that is not known yet are false: nothing can be said about it.
        void Axis(string name, double low, double high, double least, double most)
        {
            if (low < least - slack)
            {
                faults.Add(FaultCodes.OutsideTravel, motion.Line, low, least, motion.End, name);
            }

            if (high > most + slack)
            {
                faults.Add(FaultCodes.OutsideTravel, motion.Line, high, most, motion.End, name);
            }
        }
    }
}

/// <summary>Extent of one motion.</summary>
internal static class MotionBox
{
    internal static (SpacePoint Min, SpacePoint Max) Of(Motion motion)
    {
        SpacePoint a = motion.Start, b = motion.End;
        double minX = Least(a.X, b.X), maxX = -Least(-a.X, -b.X), minY = Least(a.Y, b.Y), maxY = -Least(-a.Y, -b.Y);
        if (motion.Kind == MotionKind.Arc)
        {
            var parts = new List<PathPart>();
            new CutMotion(0, motion, null).AddAtOrBelow(parts, double.PositiveInfinity);
            foreach (PathPart part in parts)
            {
                Box box = part.Box;
                (minX, minY, maxX, maxY) = (Math.Min(minX, box.MinX), Math.Min(minY, box.MinY), Math.Max(maxX, box.MaxX), Math.Max(maxY, box.MaxY));
            }
        }

        return (new(minX, minY, Least(a.Z, b.Z)), new(maxX, maxY, -Least(-a.Z, -b.Z)));
    }

    /// <summary>The lesser of two, or the one that is known.</summary>
    private static double Least(double a, double b) => double.IsNaN(a) ? b : double.IsNaN(b) ? a : Math.Min(a, b);
}
