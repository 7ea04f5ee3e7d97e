using System.Collections.Immutable;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;
using ToolpathForge.Shapes;

namespace ToolpathForge.Cutting;

/// <summary>
/// How the finish comes onto a plate and leaves it: on arcs that touch the track, from and to the roughed slot, on a straight free edge between
/// tabs and corners. The arc of radius ρ that gains the allowance a turns through θ with ρ(1 - cos θ) = a.
/// </summary>
/// <param name="Enter">Where the bit goes down, in the roughed slot.</param>
/// <param name="Touch">Where it meets the finished track.</param>
/// <param name="Along">Direction of travel there.</param>
/// <param name="Outwards">Unit direction away from the piece.</param>
/// <param name="Radius">ρ, mm.</param>
/// <param name="Turn">θ, radians.</param>
internal sealed record PlateLead(Point2 Enter, Point2 Touch, Point2 Along, Point2 Outwards, double Radius, double Turn)
{
    /// <summary>No stretch of straight free edge is long enough.</summary>
    internal static readonly FindingKind NoRoom = new(
        "lead-no-room",
        Severity.Stop,
        "The longest straight free edge between tabs and corners is {found}; coming onto the finished edge without a mark takes {allowed}.",
        "Use fewer or shorter tabs, a smaller bit, or a longer plate.");

    // The same clearance past the joint as the finish goes on past its beginning, and a little.
    private const double Spare = 4;

    /// <summary>The lead-in arc.</summary>
    internal Segment In => new(Enter, Touch, Bulge);

    private double Bulge => Math.Tan(Turn / 4) * (Along.Cross(Outwards) > 0 ? 1 : -1);

    /// <summary>The lead-out arc from where the finish ends.</summary>
    internal Segment OutFrom(Point2 point) => new(point, point + Along * (Radius * Math.Sin(Turn)) + Outwards * (Radius * (1 - Math.Cos(Turn))), Bulge);

    /// <summary>The middle of the longest stretch that is clear; null with a finding when none is long enough.</summary>
    internal static PlateLead? Choose(
        PlacedContour placed, PathRuler finish, ImmutableArray<Tab> tabs, CutSettings s, ICollection<Finding> findings)
    {
        double diameter = placed.Placed.Piece.Make.Bit.Diameter;
        double turn = Math.Acos(1 - Math.Min(1, s.Allowance / diameter));
        double needed = (2 * diameter * Math.Sin(turn)) + Spare;
        double longest = 0;
        Point2 best = default;
        Point2 outwards = default;
        for (int i = 0; i < placed.Placed.Exact.Curves.Length; i++)
        {
            if (placed.Placed.Piece.Roles[i] != EdgeRole.Free || placed.Placed.Exact.Curves[i] is not LineCurve line)
            {
                continue;
            }

            Point2 along = (line.To - line.From).Unit();
            foreach ((double from, double to) in Clear(line, along, tabs, diameter))
            {
                if (to - from > longest + 1e-9)
                {
                    longest = to - from;
                    best = line.From + (along * ((from + to) / 2));

                    // The piece lies on the left of its outline.
                    outwards = along.Right;
                }
            }
        }

        if (longest < needed)
        {
            Place where = placed.Placed.Piece.Make.At["bit"].OfMake(placed.Placed.Piece.Make.Id);
            findings.Add(Finding.Of(NoRoom, where, Quantity.Length(longest), Quantity.Length(needed)));
            return null;
        }

        double at = finish.Nearest(best);
        Point2 direction = finish.DirectionAt(at);
        Point2 touch = finish.PointAt(at) - (direction * (Spare / 2));
        Point2 enter = touch - (direction * (diameter * Math.Sin(turn))) + (outwards * s.Allowance);
        return new PlateLead(enter, touch, direction, outwards, diameter, turn);
    }

    // Stretches of an edge clear of its corners by a diameter and of every tab's reach, as distances from its start.
    private static IEnumerable<(double From, double To)> Clear(LineCurve line, Point2 along, ImmutableArray<Tab> tabs, double diameter)
    {
        double length = line.From.DistanceTo(line.To);
        double from = diameter;
        foreach ((double tabFrom, double tabTo) in tabs
            .Where(t => Math.Abs(along.Cross(t.Center - line.From)) < 1e-6)
            .Select(t => (Middle: along.Dot(t.Center - line.From), t.Reach))
            .Select(t => (t.Middle - t.Reach, t.Middle + t.Reach))
            .Order())
        {
            yield return (from, Math.Min(tabFrom, length - diameter));
            from = Math.Max(from, tabTo);
        }

        yield return (from, length - diameter);
    }
}
