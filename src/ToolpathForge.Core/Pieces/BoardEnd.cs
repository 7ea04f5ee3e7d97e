using System.Collections.Immutable;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;
using ToolpathForge.Shapes;

namespace ToolpathForge.Pieces;

/// <summary>The end of a board, from its tip as far as it lies on the bed. Only the profile is cut; the long edges are the board's own.</summary>
internal static class BoardEnd
{
    /// <summary>Builds the piece from a profile.</summary>
    /// <param name="make">Its sizes.</param>
    /// <param name="profile">The profile for the board's design width.</param>
    internal static ProfilePiece From(BoardEndMake make, Profile profile)
    {
        double back = Math.Max(make.OnBed, profile.Start.X + 1);
        var far = new Point2(back, 0);
        var near = new Point2(back, profile.Width);
        ImmutableArray<Curve> curves =
        [
            .. profile.Exact.Curves,
            new LineCurve(profile.End, far),
            new LineCurve(far, near),
            new LineCurve(near, profile.Start),
        ];
        return new ProfilePiece(
            make,
            profile,
            new Outline(curves, true),
            [.. profile.Roles, EdgeRole.Existing, EdgeRole.Existing, EdgeRole.Existing],
            make.Thickness,
            []);
    }
}
