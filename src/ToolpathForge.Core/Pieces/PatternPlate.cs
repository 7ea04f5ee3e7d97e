using System.Collections.Immutable;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;
using ToolpathForge.Shapes;

namespace ToolpathForge.Pieces;

/// <summary>
/// The template plate for routing by hand. It lies on the board with the guide-block line on the reference edge and the working edge over the
/// profile; it reaches past the board on the far side of that line to carry the block, and past the profile edge so that the bearing meets the
/// pattern before the cutter meets wood. For a guide larger than the cutter the working edge lies inside the finished edge (<see cref="GuideParallel"/>).
/// </summary>
internal static class PatternPlate
{
    /// <summary>A belly has no line of the board's edge to part from, so that a wider board keeps its excess.</summary>
    internal static readonly FindingKind BellyWide = new(
        "plate-belly-wide",
        Severity.Warn,
        "The curve runs out along the edge of a board {allowed} wide; one of {found} keeps a step there.",
        "Make the pattern for the widest board (design-width), or rip the boards to one width first.");

    /// <summary>A curve that runs out along the end leaves no place for a stop there.</summary>
    internal static readonly FindingKind StopInWay = new(
        "plate-stop-in-way",
        Severity.Stop,
        "The curve runs out along the end of the board, where the stop would stand in the router's way.",
        "Leave the stop out: the working edge then goes on over the end.");

    // Boards that differ by less than this nobody tells apart by eye, mm.
    private const double SameWidth = 0.5;

    /// <summary>Builds the plate round a profile; null when a finding says why there is none.</summary>
    /// <param name="make">Its sizes.</param>
    /// <param name="profile">The profile for the board's design width.</param>
    /// <param name="tolerance">The job's, mm.</param>
    /// <param name="findings">Takes what is to be known.</param>
    internal static ProfilePiece? From(PatternMake make, Profile profile, double tolerance, ICollection<Finding> findings)
    {
        double inset = make.Hand?.PatternInset ?? 0;
        if (make.Fittings.Stop is { } stop && Outwards(profile) < Flat)
        {
            findings.Add(Finding.Of(StopInWay, stop.At.Table.OfMake(make.Id).AtPoint(profile.Nose.X, profile.Nose.Y)));
            return null;
        }

        ProfilePiece plate = Build(make, profile, inset);
        if (Entry(profile).Y < Flat && make.Widest > make.DesignWidth + SameWidth)
        {
            findings.Add(Finding.Of(BellyWide, make.At["measured"].OfMake(make.Id), Quantity.Length(make.Widest), Quantity.Length(make.DesignWidth)));
        }

        return inset > 0 ? GuideParallel.Shrink(plate, make.Hand!, tolerance, findings) : plate;
    }

    // Of a curve that leaves the board's edge at less than 30°, it is said to run along it.
    private static double Flat => Math.Sin(Math.PI / 6);

    private static Point2 Entry(Profile profile) => -profile.Exact.Curves[0].DirectionAt(0);

    // How squarely the curve crosses the line of the end, as a sine.
    private static double Outwards(Profile profile) => profile.Exact.Curves[^2].DirectionAt(1).Dot((profile.End - profile.Nose).Unit().Right);

    // The plate before it is made smaller all round by the inset, with margins that much larger, so that they come out as asked.
    private static ProfilePiece Build(PatternMake make, Profile profile, double inset)
    {
        double width = profile.Width;
        double seat = make.Seat + inset;
        double reach = make.Reach + inset;
        Point2 start = profile.Start;
        double back = start.X + make.Hold + inset;

        // The end cut goes on straight past the reference edge, so that the bearing leaves the board on a straight line.
        Point2 lean = (profile.End - profile.Nose) / (profile.Nose.Y - profile.End.Y);
        Point2 corner = profile.End + (lean * seat);

        var curves = ImmutableArray.CreateBuilder<Curve>();
        var roles = ImmutableArray.CreateBuilder<EdgeRole>();
        void Add(Curve curve, EdgeRole role)
        {
            curves.Add(curve);
            roles.Add(role);
        }

        Point2 entry = Entry(profile);
        bool entersAlongTheBoard = entry.Y < Flat;
        double rim;
        if (entersAlongTheBoard)
        {
            // A belly runs out tangent to the board's lower edge: the plate ends flush with that edge, and the bearing enters along it.
            rim = width;
            Add(new LineCurve(new Point2(start.X + reach, rim), start), EdgeRole.Curve);
        }
        else
        {
            rim = width + reach;
            Add(new LineCurve(start + (entry * (reach / entry.Y)), start), EdgeRole.Curve);
        }

        for (int i = 0; i < profile.Exact.Curves.Length - 1; i++)
        {
            Add(profile.Exact.Curves[i], profile.Roles[i]);
        }

        Point2 first = curves[0].Start;
        if (make.Fittings.Stop is { } stop)
        {
            // The bearing leaves the board straight on over the sawn end; the plate goes on as far as the stop below it is wide.
            Point2 straightOn = profile.Exact.Curves[^2].DirectionAt(1);
            Point2 tip = profile.Nose + (straightOn * ((stop.Width!.Value + inset) / Outwards(profile)));
            corner = tip + (lean * (tip.Y + seat));
            Add(new LineCurve(profile.Nose, tip), EdgeRole.Curve);
            Add(new LineCurve(tip, corner), EdgeRole.Free);
        }
        else
        {
            Add(new LineCurve(profile.Nose, corner), EdgeRole.EndCut);
        }

        Add(new LineCurve(corner, new Point2(back, -seat)), EdgeRole.Free);
        Add(new LineCurve(new Point2(back, -seat), new Point2(back, rim)), EdgeRole.Free);
        Add(new LineCurve(new Point2(back, rim), first), EdgeRole.Free);

        // On a line along the board an edge that leans moves by more than the inset.
        var block = new Point2(corner.X - (lean.X * seat) + (inset * new Point2(lean.X, 1).Length), 0);
        var lower = new Point2(start.X + (inset / entry.Y), width);
        var end = new Point2(back - inset, 0);
        ImmutableArray<GuideLine> guides =
        [
            new(block, end, "guide-block line"),
            .. make.Fittings.Stop is null ? (ReadOnlySpan<GuideLine>)[] : [new(profile.Nose, profile.End, "sawn end of the board")],
            .. entersAlongTheBoard ? (ReadOnlySpan<GuideLine>)[] : [new(lower, end with { Y = width }, "lower edge of the board")],
        ];
        return new ProfilePiece(make, profile, new Outline(curves.ToImmutable(), true), roles.ToImmutable(), make.Thickness, guides);
    }
}
