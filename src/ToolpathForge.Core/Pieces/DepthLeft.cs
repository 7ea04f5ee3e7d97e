using ToolpathForge.Drawings;
using ToolpathForge.Geometry;
using ToolpathForge.Shapes;

namespace ToolpathForge.Pieces;

/// <summary>How much of a board's depth a profile leaves.</summary>
public static class DepthLeft
{
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
