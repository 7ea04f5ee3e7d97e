using ToolpathForge.Geometry;

namespace ToolpathForge.Exchange.Reading;

/// <summary>
/// Which arc stands for which exact curve. Making outlines turns pieces round and moves their ends a little, but cuts none: so an arc of an outline is found by its middle, and
/// the whole of its curve is part of that outline.
/// </summary>
internal sealed class FittedArcs
{
    /// <summary>An arc's middle moves no farther than its ends do, mm.</summary>
    private const double Moved = CleaningOptions.UsualGap;

    private readonly Dictionary<(long X, long Y), List<(Point2 Middle, bool ToLeft, int Curve)>> _arcs = [];
    private readonly List<Curve> _curves = [];
    private readonly Dictionary<(int Curve, Side Side), CurveBend?> _bends = [];

    /// <summary>Notes the arcs of a curve.</summary>
    /// <param name="curve">The exact curve; a line or an arc is its own fit, and nothing is noted.</param>
    /// <param name="fitted">What stands for it, in its direction.</param>
    internal void Add(Curve curve, Contour fitted)
    {
        if (curve is LineCurve or ArcCurve)
        {
            return;
        }

        for (int i = 0; i < fitted.SegmentCount; i++)
        {
            if (fitted[i] is { IsLine: false } arc)
            {
                Point2 middle = arc.PointAt(0.5);
                (long, long) cell = Cell(middle);
                if (!_arcs.TryGetValue(cell, out List<(Point2, bool, int)>? here))
                {
                    _arcs[cell] = here = [];
                }

                here.Add((middle, arc.Bulge > 0, _curves.Count));
            }
        }

        _curves.Add(curve);
    }

    /// <summary>The tightest bend of a loop that is hollow from its right: of exact curves where arcs stand for them, else of the arcs and corners as drawn.</summary>
    internal HollowBend? Tightest(Contour loop)
    {
        if (_curves.Count == 0)
        {
            return InsideRadius.Tightest(loop, Side.Right);
        }

        HollowBend? tightest = null;
        foreach (HollowBend bend in InsideRadius.All(loop, Side.Right))
        {
            HollowBend exact = bend.Radius > 0 && Of(loop[bend.Segment]) is { } curve ? bend with { Radius = curve.Radius, At = curve.At } : bend;
            if (tightest is not { } known || exact.Radius < known.Radius)
            {
                tightest = exact;
            }
        }

        return tightest;
    }

    private CurveBend? Of(Segment arc)
    {
        Point2 middle = arc.PointAt(0.5);
        (long x, long y) = Cell(middle);
        double nearest = Moved;
        (int Curve, Side Side)? found = null;
        for (int i = 0; i < 9; i++)
        {
            foreach ((Point2 other, bool toLeft, int curve) in _arcs.GetValueOrDefault((x + (i % 3) - 1, y + (i / 3) - 1)) ?? [])
            {
                // Walked the other way, the curve's right is its left.
                if (other.DistanceTo(middle) is var distance && distance <= nearest)
                {
                    (nearest, found) = (distance, (curve, toLeft == arc.Bulge > 0 ? Side.Right : Side.Left));
                }
            }
        }

        if (found is not { } key)
        {
            return null;
        }

        if (!_bends.TryGetValue(key, out CurveBend? bend))
        {
            _bends[key] = bend = CurveBend.Tightest(_curves[key.Curve], key.Side);
        }

        return bend;
    }

    private static (long X, long Y) Cell(Point2 p) => ((long)Math.Floor(p.X / Moved), (long)Math.Floor(p.Y / Moved));
}
