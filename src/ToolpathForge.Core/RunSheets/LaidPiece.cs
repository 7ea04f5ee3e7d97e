using System.Collections.Immutable;
using ToolpathForge.Clampings;
using ToolpathForge.Drawings;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;
using ToolpathForge.Lettering;
using ToolpathForge.Pieces;
using ToolpathForge.Shapes;

namespace ToolpathForge.RunSheets;

/// <summary>A piece where it lies on the bed: its edges, its openings and its name.</summary>
internal static class LaidPiece
{
    /// <summary>Draws one.</summary>
    /// <param name="elements">Takes what is drawn.</param>
    /// <param name="placed">The piece.</param>
    /// <param name="named">Height of its name, mm of paper; null where its marks say it.</param>
    internal static void Add(ImmutableArray<DrawingElement>.Builder elements, Placed placed, double? named = null)
    {
        for (int i = 0; i < placed.Exact.Curves.Length; i++)
        {
            EdgeRole role = placed.Piece.Roles[i];
            if (role != EdgeRole.Existing)
            {
                LineRole line = role is EdgeRole.Curve or EdgeRole.EndCut ? LineRole.FinishedEdge : LineRole.Edge;
                elements.Add(new ExactStroke(line, new Outline([placed.Exact.Curves[i]], false)));
            }
        }

        foreach (Opening opening in placed.Piece.Openings)
        {
            elements.Add(new ExactStroke(LineRole.FinishedEdge, OpeningOutline.Exact(opening, placed.Placement)));
        }

        foreach (GuideLine guide in placed.Piece.Marks.IsEmpty ? placed.Piece.Guides : [])
        {
            elements.Add(new Stroke(LineRole.Axis, Contour.Polyline(placed.Placement.Apply(guide.From), placed.Placement.Apply(guide.To))));
        }

        if (!placed.Piece.Marks.IsEmpty && named is null)
        {
            // A marked plate says itself what it is.
            return;
        }

        // A board has most room halfway along what lies on the bed.
        Point2 middle = placed.Piece is ProfilePiece { Make: BoardEndMake board, Profile: { } profile }
            ? placed.Placement.Apply(new Point2(board.OnBed / 2, profile.Width / 2))
            : Roomiest([placed.Exact, .. placed.Piece.Openings.Select(o => OpeningOutline.Exact(o, placed.Placement))]);
        elements.Add(new Text(FormattableString.Invariant($"{placed.Piece.Make.Id} {placed.OfMake}"), middle, TextAlign.Middle, named ?? 3.2));
    }

    // The point of a grid that lies furthest inside, with those beside it: a name is wide and low.
    private static Point2 Roomiest(ImmutableArray<Outline> edges)
    {
        const int Fine = 24;
        Contour[] contours = [.. edges.Select(e => ArcFit.Quick(e, 0.1).Contour)];
        Region region = Region.Of(contours);
        Box2 box = region.Box;
        var aside = new Point2(box.Width / 6, 0);
        Point2 best = box.Center;
        double most = double.NegativeInfinity;
        for (int i = 1; i < Fine; i++)
        {
            for (int k = 1; k < Fine; k++)
            {
                var at = new Point2(box.MinX + (box.Width * i / Fine), box.MinY + (box.Height * k / Fine));
                double room = new[] { at - aside, at, at + aside }.Min(p => region.Contains(p) ? contours.Min(c => c.Distance(p)) : -1);
                if (room > most + 1e-9)
                {
                    (best, most) = (at, room);
                }
            }
        }

        return best;
    }
}
