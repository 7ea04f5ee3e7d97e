using System.Collections.Immutable;

namespace ToolpathForge.Geometry;

/// <summary>The account of an offset's loops: which split, merged and vanished, and where.</summary>
internal static class OffsetAccount
{
    internal static ImmutableArray<LoopEvent> Of(ReadOnlySpan<Contour> contours, ReadOnlySpan<OffsetLoop> loops)
    {
        if (contours.Length == 1 && loops.Length == 1)
        {
            return [];
        }

        // The loops that each contour has a part in, and the first loop that mixes contours.
        var parts = new List<int>[contours.Length];
        var events = ImmutableArray.CreateBuilder<LoopEvent>();
        for (int k = 0; k < loops.Length; k++)
        {
            ImmutableArray<SegmentOrigin> origins = loops[k].Origins;
            int before = -1;
            foreach (SegmentOrigin origin in origins)
            {
                if (origin.Contour == before)
                {
                    continue;
                }

                before = origin.Contour;
                List<int> of = parts[before] ??= [];
                if (of.Count == 0 || of[^1] != k)
                {
                    of.Add(k);
                }
            }
        }

        for (int c = 0; c < contours.Length; c++)
        {
            if (parts[c] is null)
            {
                events.Add(new LoopEvent(LoopFate.Vanished, [c], [], contours[c].Box.Center));
            }
            else if (parts[c].Count > 1)
            {
                events.Add(new LoopEvent(LoopFate.Split, [c], [.. parts[c]], Neck(loops, parts[c], c)));
            }
        }

        for (int k = 0; k < loops.Length; k++)
        {
            AddMerger(events, loops[k], k);
        }

        return events.DrainToImmutable();
    }

    private static void AddMerger(ImmutableArray<LoopEvent>.Builder events, OffsetLoop loop, int index)
    {
        ImmutableArray<SegmentOrigin> origins = loop.Origins;
        int change = 0;
        while (change < origins.Length && origins[change].Contour == origins[0].Contour)
        {
            change++;
        }

        if (change < origins.Length)
        {
            var contours = new SortedSet<int>();
            foreach (SegmentOrigin origin in origins)
            {
                contours.Add(origin.Contour);
            }

            events.Add(new LoopEvent(LoopFate.Merged, [.. contours], [index], loop.Contour.Vertices[change].Point));
        }
    }

    // Where the first loop jumps over the part of the contour that the second loop belongs to.
    private static Point2 Neck(ReadOnlySpan<OffsetLoop> loops, List<int> parts, int contour)
    {
        OffsetLoop first = loops[parts[0]];
        int other = -1;
        foreach (SegmentOrigin origin in loops[parts[1]].Origins)
        {
            if (origin.Contour == contour)
            {
                other = origin.Segment;
                break;
            }
        }

        ImmutableArray<SegmentOrigin> origins = first.Origins;
        for (int i = 0; i < origins.Length; i++)
        {
            SegmentOrigin before = origins[i > 0 ? i - 1 : origins.Length - 1];
            SegmentOrigin after = origins[i];
            if (before.Contour != contour || after.Contour != contour)
            {
                continue;
            }

            bool within = before.Segment < after.Segment
                ? other > before.Segment && other < after.Segment
                : before.Segment > after.Segment && (other > before.Segment || other < after.Segment);
            if (within)
            {
                return first.Contour.Vertices[i].Point;
            }
        }

        return first.Contour.Start;
    }
}
