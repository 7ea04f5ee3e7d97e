namespace ToolpathForge.Geometry;

/// <summary>
/// Drops pieces that lie on others. A piece goes when each of its lines and arcs is drawn a second time between the same ends, in either direction; and when it lies wholly
/// on others, however those are divided, and one of its ends meets no other piece's end: it can close nothing. Shorter pieces go first.
/// <para>
/// Pieces that share a stretch otherwise are kept: it may be the common edge of two outlines, and each needs it. <see cref="ContourMeetings"/> tells of it.
/// </para>
/// </summary>
internal static class DoubledPieces
{
    /// <summary>Takes the doubled ones out of the list.</summary>
    internal static void Drop(List<UsablePiece> pieces, double within, List<Repair> repairs)
    {
        var index = new EdgeIndex([.. pieces.Select(p => (p.Vertices, p.IsClosed))], within);
        var gone = new bool[pieces.Count];
        var near = new List<int>();
        var spans = new List<(double From, double To)>();
        foreach (int i in Enumerable.Range(0, pieces.Count).OrderBy(i => pieces[i].Length).ThenByDescending(i => i))
        {
            bool same = true;
            bool covered = true;
            int other = -1;
            for (int e = index.FirstOf[i]; e < index.FirstOf[i + 1] && covered; e++)
            {
                index.Near(e, 0, near);
                spans.Clear();
                bool twin = false;
                foreach (int f in near)
                {
                    int owner = index.OwnerOf[f];
                    if (owner == i || gone[owner] || EdgeOverlap.Of(index.Edges[e], index.Edges[f], index.Touching) is not { } span)
                    {
                        continue;
                    }

                    spans.Add((span.From, span.To));
                    twin |= span.IsWhole;
                    other = Math.Max(other, owner);
                }

                same &= twin;
                covered = Covers(spans, index.Edges[e], index.Touching);
            }

            if (covered && other >= 0 && (same || (!pieces[i].IsClosed && HasFreeEnd(pieces, index, i, gone, near))))
            {
                gone[i] = true;
                repairs.Add(PieceIntake.Doubled(pieces[i], pieces[other].Source));
            }
        }

        int kept = 0;
        for (int i = 0; i < pieces.Count; i++)
        {
            if (!gone[i])
            {
                pieces[kept++] = pieces[i];
            }
        }

        pieces.RemoveRange(kept, pieces.Count - kept);
    }

    private static bool Covers(List<(double From, double To)> spans, in Edge e, double within)
    {
        spans.Sort();
        double reached = -e.EndPlace;
        foreach ((double from, double to) in spans)
        {
            if (from > reached + within)
            {
                return false;
            }

            reached = Math.Max(reached, to);
        }

        return reached >= e.EndPlace - within;
    }

    private static bool HasFreeEnd(List<UsablePiece> pieces, EdgeIndex index, int piece, bool[] gone, List<int> near)
    {
        ref Edge first = ref index.Edges[index.FirstOf[piece]];
        ref Edge last = ref index.Edges[index.FirstOf[piece + 1] - 1];
        return IsFree(pieces, index, piece, gone, near, new Point2(first.X0, first.Y0)) || IsFree(pieces, index, piece, gone, near, new Point2(last.X1, last.Y1));
    }

    private static bool IsFree(List<UsablePiece> pieces, EdgeIndex index, int piece, bool[] gone, List<int> near, Point2 p)
    {
        index.Near(p.X, p.Y, p.X, p.Y, 0, near);
        foreach (int f in near)
        {
            int owner = index.OwnerOf[f];
            ref Edge edge = ref index.Edges[f];
            if (owner != piece && !gone[owner] && !pieces[owner].IsClosed
                && ((f == index.FirstOf[owner] && p.DistanceTo(new Point2(edge.X0, edge.Y0)) <= index.Touching)
                    || (f == index.FirstOf[owner + 1] - 1 && p.DistanceTo(new Point2(edge.X1, edge.Y1)) <= index.Touching)))
            {
                return false;
            }
        }

        return true;
    }
}

/// <summary>The stretch that two edges share.</summary>
/// <param name="From">Its beginning as a place on the first edge (see <see cref="Edge"/>).</param>
/// <param name="To">Its end as a place on the first edge, larger than <paramref name="From"/>.</param>
/// <param name="IsWhole">Whether it is all of both.</param>
internal readonly record struct EdgeOverlap(double From, double To, bool IsWhole)
{
    /// <summary>
    /// The stretch, if there is one longer than four times the tolerance. Two lines or circles that come within a tolerance of each other at two ends and half way between do so
    /// all along, for what they deviate by in between has one maximum.
    /// </summary>
    internal static EdgeOverlap? Of(in Edge a, in Edge b, double within)
    {
        double square = within * within;
        double low = double.PositiveInfinity;
        double high = double.NegativeInfinity;
        int aOnB = 0;
        int bOnA = 0;
        Take(b, a.X0, a.Y0, -a.EndPlace, ref aOnB);
        Take(b, a.X1, a.Y1, a.EndPlace, ref aOnB);
        if (aOnB < 2)
        {
            Take(a, b.X0, b.Y0, a.PlaceOf(b.X0, b.Y0), ref bOnA);
            Take(a, b.X1, b.Y1, a.PlaceOf(b.X1, b.Y1), ref bOnA);
        }

        if (!(high - low > 4 * within))
        {
            return null;
        }

        low = Math.Max(low, -a.EndPlace);
        high = Math.Min(high, a.EndPlace);
        Point2 middle = a.At(a.Halfway(low, high));
        if (b.DistanceSquared(middle.X, middle.Y, out _) > square)
        {
            return null;
        }

        double ends = Math.Min(Ends(a, b.X0, b.Y0, b.X1, b.Y1), Ends(a, b.X1, b.Y1, b.X0, b.Y0));
        return new EdgeOverlap(low, high, ends <= within);

        void Take(in Edge on, double x, double y, double place, ref int count)
        {
            if (on.DistanceSquared(x, y, out _) <= square)
            {
                count++;
                low = Math.Min(low, place);
                high = Math.Max(high, place);
            }
        }

        static double Ends(in Edge e, double x0, double y0, double x1, double y1) =>
            Math.Max(new Point2(e.X0 - x0, e.Y0 - y0).Length, new Point2(e.X1 - x1, e.Y1 - y1).Length);
    }
}
