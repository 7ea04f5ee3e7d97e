using System.Collections.Immutable;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;
using ToolpathForge.Shapes;

namespace ToolpathForge.Pieces;

/// <summary>Finds places for brads: over the board, off the finished edge, clear of holes and rims, and as far from each other as they can be.</summary>
internal static class PlateBrads
{
    /// <summary>There is no room for so many.</summary>
    internal static readonly FindingKind NoRoom = new(
        "plate-brads-no-room",
        Severity.Stop,
        "There is room for {found} brads {apart} apart and {off} off the finished edge; {allowed} are wanted.",
        "Ask for fewer, let them nearer to the edge, or give the plate more hold.");

    // Of the grid of places that are looked at, mm.
    private const double Step = 2;

    // Brads split the rim of board and plate, and each other's wood, nearer than this, mm (common practice).
    private const double Rim = 10;
    private const double Apart = 25;

    /// <summary>The places, piece frame, in the order in which they were found: those furthest apart first.</summary>
    /// <param name="plate">The plate.</param>
    /// <param name="choices">How many, and how far off the edge.</param>
    /// <param name="openings">Holes to stay clear of.</param>
    /// <param name="findings">Takes what is wrong.</param>
    internal static ImmutableArray<Point2> Place(ProfilePiece plate, BradChoices choices, ImmutableArray<Opening> openings, ICollection<Finding> findings)
    {
        Contour edge = ArcFit.Fit(plate.Exact, 0.01).Contour;
        Profile profile = plate.Profile;

        // The end cut is finished too, except where it is sawn first and nothing runs on it.
        var finished = new Outline(((PatternMake)plate.Make).Fittings.Stop is null ? profile.Exact.Curves : [.. profile.Exact.Curves.SkipLast(1)], false);
        Contour working = ArcFit.Fit(finished, 0.01).Contour;
        double back = edge.Box.MaxX;
        LineCurve[] rest =
        [
            new(profile.End, new Point2(back, 0)),
            new(new Point2(back, 0), new Point2(back, profile.Width)),
            new(new Point2(back, profile.Width), profile.Start),
        ];
        Contour board = ArcFit.Fit(new Outline([.. profile.Exact.Curves, .. rest], true), 0.01).Contour;
        var places = new List<Point2>();
        for (double y = Rim; y <= profile.Width - Rim; y += Step)
        {
            for (double x = Math.Ceiling(edge.Box.MinX / Step) * Step; x <= back - Rim; x += Step)
            {
                var at = new Point2(x, y);
                if (board.Contains(at) && board.Distance(at) >= Rim && edge.Contains(at) && edge.Distance(at) >= Rim && working.Distance(at) >= choices.Off && openings.All(o => Clears(o, at)))
                {
                    places.Add(at);
                }
            }
        }

        ImmutableArray<Point2> chosen = Spread(places, choices.Count);
        if (chosen.Length < choices.Count)
        {
            findings.Add(Finding.Of(
                NoRoom,
                choices.At.Table.OfMake(plate.Make.Id),
                Quantity.Number(chosen.Length),
                Quantity.Number(choices.Count),
                Arg.Of("apart", Quantity.Length(Apart)),
                Arg.Of("off", Quantity.Length(choices.Off))));
        }

        return chosen;
    }

    private static bool Clears(Opening opening, Point2 at) => new Segment(opening.From, opening.To).Distance(at) >= Rim + (opening.Width / 2);

    // Each next one as far as can be from all before it, the first as far as can be from the middle of all.
    private static ImmutableArray<Point2> Spread(List<Point2> places, int count)
    {
        if (places.Count == 0)
        {
            return [];
        }

        Point2 middle = places.Aggregate(Point2.Origin, (sum, p) => sum + p) / places.Count;
        double[] away = [.. places.Select(p => p.DistanceTo(middle))];
        var chosen = ImmutableArray.CreateBuilder<Point2>();
        while (chosen.Count < count)
        {
            int best = 0;
            for (int i = 1; i < away.Length; i++)
            {
                best = away[i] > away[best] + 1e-9 ? i : best;
            }

            if (chosen.Count > 0 && away[best] < Apart)
            {
                break;
            }

            Point2 at = places[best];
            for (int i = 0; i < away.Length; i++)
            {
                double distance = places[i].DistanceTo(at);
                away[i] = chosen.Count == 0 ? distance : Math.Min(away[i], distance);
            }

            chosen.Add(at);
        }

        return chosen.ToImmutable();
    }
}
