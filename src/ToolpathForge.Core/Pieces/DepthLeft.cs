using ToolpathForge.Drawings;
using ToolpathForge.Geometry;
using ToolpathForge.Shapes;

namespace ToolpathForge.Pieces;

/// <summary>How much of a board's depth a profile leaves.</summary>
public static class DepthLeft
{
    // How closely the curve is followed when its extent is looked for, and how far beside a corner both sides of a step are measured, mm.
    private const double Closely = 0.01;
    private const double Beside = 1e-6;

    // Places looked at between two corners: enough for a scallop in one curve, fewer each where a line has many curves.
    private const int FewestPlaces = 4;
    private const int MostPlaces = 400;

    /// <summary>Where the profile ends along the board: beyond this nothing is taken off, mm from the finished tip.</summary>
    /// <param name="profile">The profile.</param>
    public static double CutUpTo(Profile profile)
    {
        ArgumentNullException.ThrowIfNull(profile);
        return ArcFit.Fit(profile.Exact, Closely).Contour.Box.MaxX;
    }

    /// <summary>
    /// The least depth that is left anywhere between the end cut and a place along the board, and where that is. The end cut itself is left out: a leaning one
    /// runs out to nothing on any board.
    /// </summary>
    /// <param name="profile">The profile.</param>
    /// <param name="upTo">Along the board from its finished tip, mm; what is nearer than the end cut reaches stands for the place itself.</param>
    /// <returns>What is left, mm, and how far from the finished tip, mm.</returns>
    public static (double Depth, double At) Least(Profile profile, double upTo)
    {
        ArgumentNullException.ThrowIfNull(profile);
        double from = Math.Max(profile.Nose.X, profile.End.X) + Beside;
        double to = Math.Min(upTo, CutUpTo(profile) + 1);
        if (to <= from)
        {
            return (At(profile, upTo), upTo);
        }

        // Corners are measured on both sides: at a step the depth jumps.
        double[] corners = [.. profile.Exact.Curves.SelectMany(c => (double[])[c.Start.X - Beside, c.Start.X + Beside]).Append(from).Append(to).Where(x => x >= from && x <= to).Distinct().Order()];
        int places = Math.Max(FewestPlaces, MostPlaces / Math.Max(1, corners.Length));
        double[] looked = [.. corners.Zip(corners.Skip(1)).SelectMany(pair => Enumerable.Range(0, places).Select(i => pair.First + ((pair.Second - pair.First) * i / places))).Append(to)];
        (double Depth, double At)[] found = [.. looked.Select(x => (At(profile, x), x))];
        int best = 0;
        for (int i = 1; i < found.Length; i++)
        {
            best = found[i].Depth < found[best].Depth - 1e-9 ? i : best;
        }

        // Between its neighbours the curve is smooth: thirds narrow it down.
        (double low, double high) = (found[Math.Max(0, best - 1)].At, found[Math.Min(found.Length - 1, best + 1)].At);
        for (int i = 0; i < 40; i++)
        {
            (double a, double b) = (low + ((high - low) / 3), high - ((high - low) / 3));
            (low, high) = At(profile, a) <= At(profile, b) ? (low, b) : (a, high);
        }

        double refined = At(profile, (low + high) / 2);
        return refined < found[best].Depth - 1e-9 ? (refined, (low + high) / 2) : found[best];
    }

    /// <summary>What is left across the board at a place along it, mm: all that lies within the profile there, from the reference edge to the profile edge.</summary>
    /// <param name="profile">The profile.</param>
    /// <param name="x">Along the board from its finished tip, mm.</param>
    public static double At(Profile profile, double x)
    {
        ArgumentNullException.ThrowIfNull(profile);
        double far = Math.Max(profile.Start.X, profile.End.X) + 1;
        if (x >= far)
        {
            return profile.Width;
        }

        var back = new Point2(far, 0);
        var corner = new Point2(far, profile.Width);
        var end = new Outline([.. profile.Exact.Curves, new LineCurve(profile.End, back), new LineCurve(back, corner), new LineCurve(corner, profile.Start)], true);

        // A line along +Y has the axis to its left at -X.
        return AreaLines.Inside([end], new Point2(0, 1), -x).Sum(s => s.To - s.From);
    }
}
