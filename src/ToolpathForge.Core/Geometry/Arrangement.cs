namespace ToolpathForge.Geometry;

/// <summary>A directed piece of a boundary and where it comes from.</summary>
internal readonly record struct Piece(Segment Segment, SegmentOrigin Origin);

/// <summary>Splits directed pieces where they meet, keeps those a test approves, and joins what is kept into loops.</summary>
internal static class Arrangement
{
    internal const double Tolerance = 1e-9;

    /// <summary>Splits, selects, stitches. Returns null when the pieces kept do not close.</summary>
    internal static List<List<Piece>>? Build(List<Piece> pieces, Func<Piece, bool> keep)
    {
        var kept = new List<Piece>();
        foreach (Piece piece in Split(pieces))
        {
            if (keep(piece))
            {
                kept.Add(piece);
            }
        }

        DropCoincident(kept);
        return Stitch(kept);
    }

    private static List<Piece> Split(List<Piece> pieces)
    {
        var result = new List<Piece>();
        var cuts = new List<double>[pieces.Count];
        var found = new List<Point2>();
        for (int i = 0; i < pieces.Count; i++)
        {
            cuts[i] = [];
        }

        for (int i = 0; i < pieces.Count; i++)
        {
            Box2 box = pieces[i].Segment.Box.Grown(Tolerance);
            for (int j = i + 1; j < pieces.Count; j++)
            {
                if (box.Meets(pieces[j].Segment.Box))
                {
                    SegmentCrossing.Find(pieces[i].Segment, pieces[j].Segment, Tolerance, found);
                    foreach (Point2 p in found)
                    {
                        cuts[i].Add(ShareOf(pieces[i].Segment, p));
                        cuts[j].Add(ShareOf(pieces[j].Segment, p));
                    }
                }
            }
        }

        for (int i = 0; i < pieces.Count; i++)
        {
            cuts[i].Sort();
            Segment s = pieces[i].Segment;
            double apart = 4 * Tolerance / Math.Max(s.Length, Tolerance);
            double from = 0;
            foreach (double cut in cuts[i])
            {
                if (cut - from > apart && 1 - cut > apart)
                {
                    result.Add(pieces[i] with { Segment = s.Part(from, cut) });
                    from = cut;
                }
            }

            result.Add(pieces[i] with { Segment = s.Part(from, 1) });
        }

        return result;
    }

    private static double ShareOf(Segment s, Point2 p)
    {
        if (s.IsLine)
        {
            Point2 chord = s.End - s.Start;
            return (p - s.Start).Dot(chord) / chord.LengthSquared;
        }

        Point2 c = s.Center;
        Point2 a = s.Start - c;
        Point2 b = p - c;
        return Math.Atan2(a.Cross(b), a.Dot(b)) / s.Sweep;
    }

    private static void DropCoincident(List<Piece> kept)
    {
        for (int i = 0; i < kept.Count; i++)
        {
            for (int j = i + 1; j < kept.Count; j++)
            {
                Segment a = kept[i].Segment;
                Segment b = kept[j].Segment;
                if (a.PointAt(0.5).DistanceTo(b.PointAt(0.5)) > 8 * Tolerance)
                {
                    continue;
                }

                if (Near(a.Start, b.Start) && Near(a.End, b.End))
                {
                    kept.RemoveAt(j--);
                }
                else if (Near(a.Start, b.End) && Near(a.End, b.Start))
                {
                    kept.RemoveAt(j);
                    kept.RemoveAt(i--);
                    break;
                }
            }
        }

        static bool Near(Point2 a, Point2 b) => a.DistanceTo(b) <= 8 * Tolerance;
    }

    private static List<List<Piece>>? Stitch(List<Piece> kept)
    {
        var loops = new List<List<Piece>>();
        var used = new bool[kept.Count];
        for (int first = 0; first < kept.Count; first++)
        {
            if (used[first])
            {
                continue;
            }

            var loop = new List<Piece>();
            int at = first;
            while (!used[at])
            {
                used[at] = true;
                Piece piece = kept[at];
                if (loop.Count > 0)
                {
                    // Neighbours share one point to the last digit.
                    piece = piece with { Segment = piece.Segment with { Start = loop[^1].Segment.End } };
                }

                loop.Add(piece);
                int next = Next(kept, used, first, piece.Segment);
                if (next < 0)
                {
                    return null;
                }

                at = next;
            }

            loop[0] = loop[0] with { Segment = loop[0].Segment with { Start = loop[^1].Segment.End } };
            loops.Add(loop);
        }

        return loops;
    }

    private static int Next(List<Piece> kept, bool[] used, int first, Segment from)
    {
        int best = -1;
        double bestTurn = double.NegativeInfinity;
        for (int k = 0; k < kept.Count; k++)
        {
            if ((used[k] && k != first) || kept[k].Segment.Start.DistanceTo(from.End) > 1e-7)
            {
                continue;
            }

            // Sharpest left turn: loops that touch at a point stay apart.
            Point2 d = kept[k].Segment.StartDirection;
            double turn = Math.Atan2(from.EndDirection.Cross(d), from.EndDirection.Dot(d));
            if (turn > bestTurn)
            {
                (best, bestTurn) = (k, turn);
            }
        }

        return best;
    }
}
