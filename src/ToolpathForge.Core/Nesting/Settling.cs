using System.Collections.Immutable;
using ToolpathForge.Geometry;

namespace ToolpathForge.Nesting;

/// <summary>
/// Lets laid pieces settle: each is pushed down, then left, as far as it goes, from the lowest on, until none moves any more. Pieces keep their
/// turn. Every push ends at an exact contact and is measured afterwards; one that came too near is taken back.
/// </summary>
internal static class Settling
{
    /// <summary>Pushes shorter than this are not worth another round, mm; well below the 0.1 mm that is promised.</summary>
    private const double Little = 0.02;

    /// <summary>Pieces stop this short of a contact, mm, so that what runs along an edge is never on the wrong side of it.</summary>
    private const double Short = 2e-6;

    /// <summary>Rounds after which it ends in any case; a piece that still moves then goes back and forth in a groove by less than a row each time.</summary>
    private const int MostRounds = 400;

    /// <summary>The pieces of one panel, settled.</summary>
    /// <param name="laid">The pieces and where the corners of their boxes lie.</param>
    /// <param name="room">Where pieces may lie.</param>
    /// <param name="gap">Least distance between pieces, mm.</param>
    /// <param name="obstacles">What they keep out of, gap and all.</param>
    internal static ImmutableArray<NestedPiece> Settle(
        IReadOnlyList<(NestVariant Piece, Point2 Corner)> laid, Box2 room, double gap, Region[] obstacles)
    {
        Item[] items = [.. laid.Select(l => new Item(l.Piece, l.Corner))];
        for (int round = 0; round < MostRounds; round++)
        {
            double most = 0;
            foreach (Item item in items.OrderBy(i => i.Corner.Y).ThenBy(i => i.Corner.X).ThenBy(i => Array.IndexOf(items, i)).ToArray())
            {
                most = Math.Max(most, Push(item, new Point2(0, -1), item.Corner.Y - room.MinY, items, gap, obstacles));
                most = Math.Max(most, Push(item, new Point2(-1, 0), item.Corner.X - room.MinX, items, gap, obstacles));
            }

            if (most < Little)
            {
                break;
            }
        }

        return
        [
            .. items.OrderBy(i => i.Corner.Y).ThenBy(i => i.Corner.X)
                .Select(i => new NestedPiece(i.Piece.Part, i.Piece.At(i.Corner), i.Shape)),
        ];
    }

    private static double Push(Item item, Point2 way, double toRim, Item[] items, double gap, Region[] obstacles)
    {
        double most = Math.Max(0, toRim);
        if (most < Short)
        {
            return 0;
        }

        foreach (Region obstacle in obstacles)
        {
            most = FirstContact.Distance(item.Shape, obstacle, way, most);
        }

        foreach (Item other in items)
        {
            if (other != item)
            {
                most = FirstContact.Distance(item.Shape, other.Grown, way, most);
            }
        }

        most = most < toRim ? most - Short : most;
        for (; most > Little / 4; most /= 2)
        {
            Point2 before = item.Corner;
            item.MoveTo(before + (way * most));
            if (Array.TrueForAll(items, other => other == item || Spacing.IsKept(item.Shape, other.Shape, gap))
                && Array.TrueForAll(obstacles, o => Spacing.IsKept(item.Shape, o, 0)))
            {
                return most;
            }

            item.MoveTo(before);
        }

        return 0;
    }

    private sealed class Item
    {
        internal Item(NestVariant piece, Point2 corner)
        {
            Piece = piece;
            Shape = Grown = Region.Empty;
            MoveTo(corner);
        }

        internal NestVariant Piece { get; }

        internal Point2 Corner { get; private set; }

        internal Region Shape { get; private set; }

        internal Region Grown { get; private set; }

        internal void MoveTo(Point2 corner)
        {
            Corner = corner;
            var shift = Placement.At(corner.X, corner.Y);
            Shape = Piece.Shape.Placed(shift);
            Grown = Piece.Grown.Placed(shift);
        }
    }
}
