namespace ToolpathForge.Proof;

/// <summary>Adds up the plain measures of a program's motion.</summary>
internal static class FigureCounter
{
    internal static MotionFigures Count(GcodeProgram program)
    {
        int lines = 0, arcs = 0, rapids = 0;
        double feedLength = 0, rapidLength = 0, plungeLength = 0, seconds = 0, maxFeed = 0, maxPlunge = 0;
        var min = new SpacePoint(double.NaN, double.NaN, double.NaN);
        SpacePoint max = min;
        foreach (ProgramStep step in program.Steps)
        {
            if (step is Dwell dwell)
            {
                seconds += dwell.Seconds;
            }

            if (step is not Motion motion)
            {
                continue;
            }

            (SpacePoint low, SpacePoint high) = MotionBox.Of(motion);
            min = new(Least(min.X, low.X), Least(min.Y, low.Y), Least(min.Z, low.Z));
            max = new(-Least(-max.X, -high.X), -Least(-max.Y, -high.Y), -Least(-max.Z, -high.Z));
            if (!motion.IsFeed)
            {
                rapids++;
                rapidLength += motion.Start.IsKnown ? motion.Length : 0;
                continue;
            }

            _ = motion.Kind == MotionKind.Arc ? arcs++ : lines++;
            feedLength += motion.Length;
            seconds += motion.Length / motion.Feed * 60;
            plungeLength += motion.IsVertical && motion.End.Z < motion.Start.Z ? motion.Length : 0;
            maxFeed = Math.Max(maxFeed, motion.Feed);
            maxPlunge = Math.Max(maxPlunge, motion.DownwardFeed);
        }

        return new MotionFigures
        {
            Lines = program.Lines,
            StraightFeeds = lines,
            Arcs = arcs,
            Rapids = rapids,
            FeedLength = feedLength,
            RapidLength = rapidLength,
            PlungeLength = plungeLength,
            FeedSeconds = seconds,
            Min = min,
            Max = max,
            MaxFeed = maxFeed,
            MaxPlungeFeed = maxPlunge,
        };
    }

    /// <summary>The lesser of two, or the one that is known.</summary>
    private static double Least(double a, double b) => double.IsNaN(a) ? b : double.IsNaN(b) ? a : Math.Min(a, b);
}
