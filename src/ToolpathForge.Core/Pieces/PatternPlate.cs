using System.Collections.Immutable;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;
using ToolpathForge.Shapes;

namespace ToolpathForge.Pieces;

/// <summary>
/// The template plate for routing by hand. It lies on the board with the guide-block line on the reference edge and the working edge over the
/// profile; it reaches past the board on the far side of that line to carry the block, and past the profile edge so that the bearing meets the
/// pattern before the cutter meets wood.
/// </summary>
internal static class PatternPlate
{
    /// <summary>Builds the plate round a profile.</summary>
    /// <param name="make">Its sizes.</param>
    /// <param name="profile">The profile for the board's design width.</param>
    internal static ProfilePiece From(PatternMake make, Profile profile)
    {
        double width = profile.Width;
        Point2 start = profile.Start;
        double back = start.X + make.Hold;

        // The end cut goes on straight past the reference edge, so that the bearing leaves the board on a straight line.
        Point2 lean = (profile.End - profile.Nose) / (profile.Nose.Y - profile.End.Y);
        Point2 corner = profile.End + (lean * make.Seat);

        var curves = ImmutableArray.CreateBuilder<Curve>();
        var roles = ImmutableArray.CreateBuilder<EdgeRole>();
        void Add(Curve curve, EdgeRole role)
        {
            curves.Add(curve);
            roles.Add(role);
        }

        Point2 entry = -profile.Exact.Curves[0].DirectionAt(0);
        bool entersAlongTheBoard = entry.Y < Math.Sin(Math.PI / 6);
        double rim;
        if (entersAlongTheBoard)
        {
            // A belly runs out tangent to the board's lower edge: the plate ends flush with that edge, and the bearing enters along it.
            rim = width;
            Add(new LineCurve(new Point2(start.X + make.Reach, rim), start), EdgeRole.Curve);
        }
        else
        {
            rim = width + make.Reach;
            Add(new LineCurve(start + (entry * (make.Reach / entry.Y)), start), EdgeRole.Curve);
        }

        for (int i = 0; i < profile.Exact.Curves.Length - 1; i++)
        {
            Add(profile.Exact.Curves[i], profile.Roles[i]);
        }

        Point2 first = curves[0].Start;
        Add(new LineCurve(profile.Nose, corner), EdgeRole.EndCut);
        Add(new LineCurve(corner, new Point2(back, -make.Seat)), EdgeRole.Free);
        Add(new LineCurve(new Point2(back, -make.Seat), new Point2(back, rim)), EdgeRole.Free);
        Add(new LineCurve(new Point2(back, rim), first), EdgeRole.Free);

        ImmutableArray<GuideLine> guides =
        [
            new(profile.End, new Point2(back, 0), "guide-block line"),
            .. entersAlongTheBoard ? (ReadOnlySpan<GuideLine>)[] : [new(start, new Point2(back, width), "lower edge of the board")],
        ];
        return new ProfilePiece(make, profile, new Outline(curves.ToImmutable(), true), roles.ToImmutable(), make.Thickness, guides);
    }
}
