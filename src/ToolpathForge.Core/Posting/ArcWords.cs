namespace ToolpathForge.Posting;

/// <summary>
/// The words that describe an arc between two points already on the grid. The centre is chosen after the ends are rounded, on the bisector of
/// the written chord, so that start and end radius agree as closely as whole increments allow.
/// </summary>
internal static class ArcWords
{
    /// <summary>
    /// The centre relative to the start, in increments. Of the four whole points round the true centre the one is taken whose two radii differ
    /// least; NISTIR 6556 (3.5.3) refuses an arc whose radii differ by more than 0.002 mm or 0.0002 in.
    /// </summary>
    internal static (long I, long J) Centre(GridPoint start, GridPoint end, double bulge)
    {
        double dx = end.X - start.X;
        double dy = end.Y - start.Y;
        double h = (1 - (bulge * bulge)) / (4 * bulge);
        double i = (dx / 2) - (dy * h);
        double j = (dy / 2) + (dx * h);
        long bestI = 0;
        long bestJ = 0;
        double least = double.PositiveInfinity;
        foreach (double tryI in (ReadOnlySpan<double>)[Math.Floor(i), Math.Ceiling(i)])
        {
            foreach (double tryJ in (ReadOnlySpan<double>)[Math.Floor(j), Math.Ceiling(j)])
            {
                double difference = Math.Abs(double.Hypot(tryI, tryJ) - double.Hypot(dx - tryI, dy - tryJ));
                if (difference < least)
                {
                    (least, bestI, bestJ) = (difference, (long)tryI, (long)tryJ);
                }
            }
        }

        return (bestI, bestJ);
    }

    /// <summary>The radius in increments, r = c(1 + b²)/(4|b|), never less than half the chord.</summary>
    internal static long Radius(GridPoint start, GridPoint end, double bulge)
    {
        double chord = double.Hypot(end.X - start.X, end.Y - start.Y);
        double radius = chord * (1 + (bulge * bulge)) / (4 * Math.Abs(bulge));
        return (long)Math.Max(Math.Ceiling(chord / 2), Math.Round(radius, MidpointRounding.AwayFromZero));
    }

    /// <summary>Height of the arc above the written chord, in increments.</summary>
    internal static double Sagitta(GridPoint start, GridPoint end, double bulge) =>
        double.Hypot(end.X - start.X, end.Y - start.Y) * Math.Abs(bulge) / 2;
}
