using System.Runtime.CompilerServices;

namespace ToolpathForge.Geometry;

/// <summary>
/// Where two edges meet. Lines cross by Cramer's rule. Otherwise the circles' equations, each multiplied by the other's curvature, are subtracted: what is left is
/// linear, the line through both crossings (the line itself when one of the two is a line), which is then met with the more curved of the two. With the equations
/// of <see cref="Edge"/> this has no special case for a nearly straight arc.
/// </summary>
internal static class EdgeMeeting
{
    /// <summary>Crossings at a sine below this are <see cref="MeetingKind.SlightCross"/>: rounding of 1e-13 mm then moves them 1e-10 mm along the edges.</summary>
    private const double SlightSine = 1e-3;

    /// <summary>Crossings at a sine below this are <see cref="MeetingKind.ShallowCross"/>: a tenth of the tolerance across is ten thousand along.</summary>
    private const double ShallowSine = 1e-5;

    /// <summary>Finds the points two edges share. Ends count as shared within the tolerance; pieces that coincide give the ends of what they share.</summary>
    internal static void Find(in Edge a, in Edge b, double tolerance, ref Meetings found)
    {
        found.Count = 0;
        if (a.Kappa == 0 && b.Kappa == 0)
        {
            Lines(a, b, tolerance, ref found);
        }
        else if (Math.Abs(a.Kappa) > Math.Abs(b.Kappa))
        {
            Circles(b, a, true, tolerance, ref found);
        }
        else
        {
            Circles(a, b, false, tolerance, ref found);
        }
    }

    private static MeetingKind KindAt(double sine) =>
        sine >= SlightSine ? MeetingKind.Cross : sine >= ShallowSine ? MeetingKind.SlightCross : MeetingKind.ShallowCross;

    private static void Lines(in Edge a, in Edge b, double tolerance, ref Meetings found)
    {
        double wx = ((b.X0 + b.X1) - (a.X0 + a.X1)) / 2;
        double wy = ((b.Y0 + b.Y1) - (a.Y0 + a.Y1)) / 2;
        double sine = (a.Ux * b.Uy) - (a.Uy * b.Ux);
        double onA = (wx * b.Uy) - (wy * b.Ux);
        double onB = (wx * a.Uy) - (wy * a.Ux);
        double size = Math.Abs(sine);
        if (Math.Abs(onA) > (a.Half * size) + tolerance || Math.Abs(onB) > (b.Half * size) + tolerance)
        {
            return;
        }

        if (Math.Abs(onA) < (a.Half * size) - tolerance && Math.Abs(onB) < (b.Half * size) - tolerance)
        {
            double place = onA / sine;
            found.Add(place, onB / sine, ((a.X0 + a.X1) / 2) + (place * a.Ux), ((a.Y0 + a.Y1) / 2) + (place * a.Uy), 0, 0, KindAt(size), sine < 0);
            return;
        }

        Ends(a, b, tolerance, ref found);
        if (Math.Abs(onA) < a.Half * size && Math.Abs(onB) < b.Half * size)
        {
            double place = onA / sine;
            var crossing = new Meeting
            {
                PlaceA = place,
                PlaceB = onB / sine,
                X = ((a.X0 + a.X1) / 2) + (place * a.Ux),
                Y = ((a.Y0 + a.Y1) / 2) + (place * a.Uy),
                Kind = MeetingKind.ShallowCross,
                EntersLeft = sine < 0,
            };
            AddBesideEnds(crossing, tolerance * (2 + (2 / size)), ref found);
        }
    }

    // p is the straighter, q the more curved; swapped tells that q is the caller's first edge.
    private static void Circles(in Edge p, in Edge q, bool swapped, double tolerance, ref Meetings found)
    {
        // Everything about the middle of q's chord. np, nq: right normals of the chords.
        double wx = ((p.X0 + p.X1) - (q.X0 + q.X1)) / 2;
        double wy = ((p.Y0 + p.Y1) - (q.Y0 + q.Y1)) / 2;
        double ratio = p.Kappa / q.Kappa;
        double gx = (p.CosHalf * p.Uy) - (ratio * q.CosHalf * q.Uy) - (p.Kappa * wx);
        double gy = -(p.CosHalf * p.Ux) + (ratio * q.CosHalf * q.Ux) - (p.Kappa * wy);
        double g0 = (p.Kappa / 2 * ((wx * wx) + (wy * wy) - (p.Half * p.Half) + (q.Half * q.Half)))
            - (p.CosHalf * ((wx * p.Uy) - (wy * p.Ux)));
        double gg = (gx * gx) + (gy * gy);
        double length = Math.Sqrt(gg);

        // Concentric circles have no radical line; they can only share ends.
        if (length > 1e-12)
        {
            double inverse = 1 / length;
            double ex = -gy * inverse;
            double ey = gx * inverse;
            double foot = -g0 * inverse;
            double footX = foot * ey;
            double footY = -foot * ex;
            double a = q.Kappa / 2;
            double b = q.CosHalf * ((ex * q.Uy) - (ey * q.Ux));
            double c = (a * ((footX * footX) + (footY * footY) - (q.Half * q.Half))) + (q.CosHalf * ((footX * q.Uy) - (footY * q.Ux)));
            double square = (b * b) - (4 * a * c);
            if (square > 0)
            {
                double root = Math.Sqrt(square);
                double sum = b >= 0 ? -(b + root) / 2 : -(b - root) / 2;
                double s1 = sum / a;
                double s2 = sum == 0 ? s1 : c / sum;
                double apart = Math.Abs(s1 - s2);
                bool near = false;
                Root(p, q, swapped, tolerance, wx, wy, footX + (s1 * ex), footY + (s1 * ey), apart, ref near, ref found);
                Root(p, q, swapped, tolerance, wx, wy, footX + (s2 * ex), footY + (s2 * ey), apart, ref near, ref found);
                if (!near)
                {
                    return;
                }

                WithEnds(p, q, swapped, tolerance, ref found);
                return;
            }

            // Apart by more than the tolerance: nothing. The distance to the circle at its nearest is c + what b takes away; small only near tangency.
            if (-square > 8 * Math.Abs(a) * tolerance)
            {
                return;
            }
        }

        WithEnds(p, q, swapped, tolerance, ref found);
    }

    private static void Root(
        in Edge p, in Edge q, bool swapped, double tolerance, double wx, double wy, double x, double y, double apart, ref bool near, ref Meetings found)
    {
        // Coarse first: most crossings of the full circles lie off the edges.
        double coarse = tolerance * 1e6;
        double uq = (x * q.Ux) + (y * q.Uy);
        double vq = (x * q.Uy) - (y * q.Ux);
        if (Math.Abs(uq) > q.Half + coarse || vq * Math.CopySign(1, q.Bulge) < -coarse)
        {
            return;
        }

        double px = x - wx;
        double py = y - wy;
        double up = (px * p.Ux) + (py * p.Uy);
        double vp = (px * p.Uy) - (py * p.Ux);
        if (Math.Abs(up) > p.Half + coarse || (p.Kappa != 0 && vp * Math.CopySign(1, p.Bulge) < -coarse))
        {
            return;
        }

        // Directions of travel at the point, from the turn ψ: cos ψ = cos H + κv, sin ψ = κu.
        double cq = q.CosHalf + (q.Kappa * vq);
        double sq = q.Kappa * uq;
        double cp = p.CosHalf + (p.Kappa * vp);
        double sp = p.Kappa * up;
        double qx = (q.Ux * cq) - (q.Uy * sq);
        double qy = (q.Uy * cq) + (q.Ux * sq);
        double dx = (p.Ux * cp) - (p.Uy * sp);
        double dy = (p.Uy * cp) + (p.Ux * sp);
        double sine = (dx * qy) - (dy * qx);
        double size = Math.Abs(sine);
        if (apart * size < 4 * tolerance)
        {
            // A lens thinner than the tolerance: they touch, and only their ends matter.
            near = true;
            return;
        }

        double margin = tolerance / Math.Max(size, 1e-6);
        int inQ = Reach(q, uq, vq, margin);
        int inP = Reach(p, up, vp, margin);
        if (inQ == 0 || inP == 0)
        {
            return;
        }

        bool plain = inQ == 2 && inP == 2;
        near |= !plain;
        if (!plain && (Reach(q, uq, vq, 0) == 0 || Reach(p, up, vp, 0) == 0))
        {
            return;
        }

        double placeP = 2 * up / (1 + p.CosHalf + (p.Kappa * vp));
        double placeQ = 2 * uq / (1 + q.CosHalf + (q.Kappa * vq));
        double atX = x + ((q.X0 + q.X1) / 2);
        double atY = y + ((q.Y0 + q.Y1) / 2);
        MeetingKind kind = plain ? KindAt(size) : MeetingKind.ShallowCross;
        found.Add(swapped ? placeQ : placeP, swapped ? placeP : placeQ, atX, atY, 0, 0, kind, swapped ? sine > 0 : sine < 0);
    }

    // 0 off the edge, 1 within the margin of an end, 2 plainly between the ends. The point lies on the edge's circle.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static int Reach(in Edge e, double u, double v, double margin)
    {
        double over = Math.Abs(u) - e.Half;
        if (e.Kappa == 0)
        {
            return over > margin ? 0 : over > -margin ? 1 : 2;
        }

        double side = v * Math.CopySign(1, e.Bulge);
        return over > margin || side < -margin ? 0 : over > -margin && side < margin ? 1 : 2;
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static void WithEnds(in Edge p, in Edge q, bool swapped, double tolerance, ref Meetings found)
    {
        // At most two; the workspace is not copied as a whole, for that would be cleared with every call.
        int crossings = found.Count;
        Meeting first = found[0];
        Meeting second = found[1];
        found.Count = 0;
        if (swapped)
        {
            Ends(q, p, tolerance, ref found);
        }
        else
        {
            Ends(p, q, tolerance, ref found);
        }

        for (int i = 0; i < crossings; i++)
        {
            Meeting m = i == 0 ? first : second;
            Point2 d = p.DirectionAt(swapped ? m.PlaceB : m.PlaceA);
            double sine = Math.Abs(d.Cross(q.DirectionAt(swapped ? m.PlaceA : m.PlaceB)));
            AddBesideEnds(m, tolerance * (2 + (2 / Math.Max(sine, 1e-6))), ref found);
        }
    }

    // A crossing within reach of an end that lies on the other edge is that end.
    private static void AddBesideEnds(in Meeting crossing, double reach, ref Meetings found)
    {
        for (int i = 0; i < found.Count; i++)
        {
            if (found[i].Kind == MeetingKind.Touch && Math.Abs(found[i].X - crossing.X) < reach && Math.Abs(found[i].Y - crossing.Y) < reach)
            {
                return;
            }
        }

        found.Add(crossing);
    }

    private static void Ends(in Edge a, in Edge b, double tolerance, ref Meetings found)
    {
        double square = tolerance * tolerance;
        int onB0 = On(b, a.X0, a.Y0);
        int onB1 = On(b, a.X1, a.Y1);
        if (onB0 != 2)
        {
            found.Add(-a.EndPlace, PlaceAt(b, onB0, a.X0, a.Y0), a.X0, a.Y0, -1, onB0, MeetingKind.Touch, false);
        }

        if (onB1 != 2)
        {
            found.Add(a.EndPlace, PlaceAt(b, onB1, a.X1, a.Y1), a.X1, a.Y1, 1, onB1, MeetingKind.Touch, false);
        }

        // An end of b at an end of a has been told already.
        int onA0 = onB0 == -1 || onB1 == -1 ? 2 : On(a, b.X0, b.Y0);
        int onA1 = onB0 == 1 || onB1 == 1 ? 2 : On(a, b.X1, b.Y1);
        if (onA0 != 2)
        {
            found.Add(PlaceAt(a, onA0, b.X0, b.Y0), -b.EndPlace, b.X0, b.Y0, onA0, -1, MeetingKind.Touch, false);
        }

        if (onA1 != 2)
        {
            found.Add(PlaceAt(a, onA1, b.X1, b.Y1), b.EndPlace, b.X1, b.Y1, onA1, 1, MeetingKind.Touch, false);
        }

        // -1 at the start, 1 at the end, 0 between, 2 not on the edge.
        int On(in Edge e, double x, double y)
        {
            if (e.DistanceSquared(x, y, out int end) > square)
            {
                return 2;
            }

            // Near an end is at the end, even where the foot falls beside it.
            double d0 = ((x - e.X0) * (x - e.X0)) + ((y - e.Y0) * (y - e.Y0));
            double d1 = ((x - e.X1) * (x - e.X1)) + ((y - e.Y1) * (y - e.Y1));
            return d0 <= 4 * square && d0 <= d1 ? -1 : d1 <= 4 * square ? 1 : end;
        }

        static double PlaceAt(in Edge e, int end, double x, double y) => end == 0 ? e.PlaceOf(x, y) : end * e.EndPlace;
    }
}
