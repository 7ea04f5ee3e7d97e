using System.Collections.Immutable;
using System.Runtime.InteropServices;
using ToolpathForge.Findings;

namespace ToolpathForge.Geometry;

/// <summary>
/// Finds where closed loops wind at least a number of times: what unions, intersections and differences come down to. What does not close or fails its check is
/// tried again with a closer look aside, where thin strips are told apart, and with more counting as one point, where they fall together; the check stays the same.
/// </summary>
internal sealed class LevelEngine
{
    /// <summary>
    /// How far to each side of a slice its winding numbers are taken, mm: a hundred times what the splitting calls one point, and no more than
    /// <see cref="Accuracy.StraightSagitta"/>, by which lines may stand for arcs. Strips thinner than this come and go as a whole.
    /// </summary>
    internal const double Aside = 1e-7;

    [ThreadStatic]
    private static LevelEngine? s_idle;

    private readonly LoopInput _input = new();
    private readonly Arrangement _arrangement = new();
    private readonly List<(int Loop, int Segment)> _origins = [];

    /// <summary>How many tries the last set operation took; for the tests.</summary>
    [field: ThreadStatic]
    internal static int LastTries { get; private set; }

    /// <summary>The region where the loops wind at least <paramref name="level"/> times, with the finding if its check could not vouch for it.</summary>
    internal static RegionResult Run(ReadOnlySpan<Contour> loops, int level)
    {
        LevelEngine engine = s_idle ?? new LevelEngine();
        s_idle = null;
        RegionResult result = engine.Find(loops, level, out _);
        s_idle = engine;
        return result;
    }

    /// <summary>The loops round where others wind at least <paramref name="level"/> times, in no particular order, with the wanted on their left.</summary>
    /// <param name="loops">What is combined.</param>
    /// <param name="level">How often.</param>
    /// <param name="take">Called with each loop and, for each of its segments, the loop and segment it is part of.</param>
    /// <returns>What its check could not vouch for; null when all is well.</returns>
    internal static Finding? Trace(ReadOnlySpan<Contour> loops, int level, Action<Contour, ReadOnlySpan<(int Loop, int Segment)>> take)
    {
        LevelEngine engine = s_idle ?? new LevelEngine();
        s_idle = null;
        RegionResult result = engine.Find(loops, level, out ImmutableArray<Contour> found);
        int at = 0;
        foreach (Contour loop in found)
        {
            take(loop, CollectionsMarshal.AsSpan(engine._origins).Slice(at, loop.SegmentCount));
            at += loop.SegmentCount;
        }

        s_idle = engine;
        return result.Unproven;
    }

    private RegionResult Find(ReadOnlySpan<Contour> loops, int level, out ImmutableArray<Contour> found)
    {
        found = [];
        LastTries = 0;
        _input.Load(loops, false);
        if (_input.Field.Count == 0)
        {
            return new RegionResult(Region.Empty, null);
        }

        var check = new LevelCheck(loops, level);
        string reason = "";
        Point2 where = default;

        foreach ((double times, double aside) in (ReadOnlySpan<(double, double)>)[(1, Aside), (1, Aside / 10), (16, Aside), (64, Aside), (4, Aside / 5), (1, Aside * 10)])
        {
            bool closed = Arrange(level, aside, loops.Length > 1, times);
            if (closed)
            {
                ImmutableArray<Contour> result = Contours();
                if (check.Passes(loops, result, _origins))
                {
                    found = result;
                    return new RegionResult(Region.Oriented(result), null);
                }
            }

            if (LastTries++ == 0)
            {
                reason = closed ? check.Reason! : _arrangement.Failure!;
                where = closed ? check.Where : _arrangement.FailedAt + _input.Shift;
            }
        }

        return new RegionResult(Region.Empty, Finding.Of(
            GeometryFindings.RegionUnproven,
            Place.None.AtPoint(where.X, where.Y),
            Arg.Of("reason", reason),
            Arg.Of("reproducer", Reproducer.Of(FormattableString.Invariant($"level {level}"), loops))));
    }

    private bool Arrange(int level, double aside, bool scattered, double times)
    {
        EdgeField field = _input.Field;
        _arrangement.Clear(field.Count);
        for (int loop = 0; loop + 1 < _input.LoopStart.Count; loop++)
        {
            int from = _input.LoopStart[loop];
            int to = _input.LoopStart[loop + 1];
            for (int i = from; i < to; i++)
            {
                _arrangement.Add() = field.Edges[i];
            }

            for (int i = from; i < to; i++)
            {
                _arrangement.Link(i, i + 1 < to ? i + 1 : from, false);
            }
        }

        var test = new LevelTest(field, level, aside);
        return _arrangement.Run(NodeRule.Tested, _input.Largest, Accuracy.MergeWithin(_input.Largest) * times, scattered, ref test);
    }

    private ImmutableArray<Contour> Contours()
    {
        EdgeField field = _input.Field;
        _origins.Clear();
        var result = ImmutableArray.CreateBuilder<Contour>(_arrangement.LoopCount);
        var vertices = new List<Vertex>();
        for (int k = 0; k < _arrangement.LoopCount; k++)
        {
            vertices.Clear();
            int first = _origins.Count;
            foreach (ref readonly LoopPiece piece in _arrangement.Loop(k))
            {
                Edge edge = _arrangement.Edges[piece.Edge];
                var p = new Point2(piece.X + _input.Shift.X, piece.Y + _input.Shift.Y);
                if (vertices.Count > 0 && vertices[^1].Point.DistanceTo(p) < Accuracy.SamePoint)
                {
                    vertices.RemoveAt(vertices.Count - 1);
                    _origins.RemoveAt(_origins.Count - 1);
                }

                _origins.Add((field.ContourOf[piece.Edge], field.SegmentOf[piece.Edge]));
                vertices.Add(new Vertex(p, Math.Clamp(edge.BulgeBetween(piece.From, piece.To), -1, 1)));
            }

            if (vertices.Count > 1 && vertices[^1].Point.DistanceTo(vertices[0].Point) < Accuracy.SamePoint)
            {
                vertices.RemoveAt(vertices.Count - 1);
                _origins.RemoveAt(_origins.Count - 1);
            }

            if (vertices.Count > 1)
            {
                result.Add(new Contour(vertices.ToArray(), true, true));
            }
            else
            {
                _origins.RemoveRange(first, _origins.Count - first);
            }
        }

        return result.DrainToImmutable();
    }

    private readonly struct LevelTest(EdgeField field, int level, double aside) : ISliceTest
    {
        public bool Keep(int edge, Point2 middle, Point2 direction)
        {
            Point2 left = middle + (direction.Left * aside);
            Point2 right = middle + (direction.Right * aside);
            return field.Winding(left.X, left.Y) >= level && field.Winding(right.X, right.Y) < level;
        }
    }
}
