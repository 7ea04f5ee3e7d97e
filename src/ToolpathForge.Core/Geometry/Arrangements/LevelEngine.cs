using System.Collections.Immutable;

namespace ToolpathForge.Geometry;

/// <summary>Finds where closed loops wind at least a number of times: what unions, intersections and differences come down to.</summary>
internal sealed class LevelEngine
{
    /// <summary>
    /// How far to each side of a slice its winding numbers are taken, mm: a hundred times what the splitting calls one point, and no more than
    /// <see cref="Accuracy.StraightSagitta"/>, by which lines may stand for arcs. Strips thinner than this come and go as a whole.
    /// </summary>
    private const double Aside = 1e-7;

    [ThreadStatic]
    private static LevelEngine? s_idle;

    private readonly LoopInput _input = new();
    private readonly Arrangement _arrangement = new();

    /// <summary>The boundary of where the loops wind at least <paramref name="level"/> times, that side on the left.</summary>
    internal static ImmutableArray<Contour> Run(ReadOnlySpan<Contour> loops, int level)
    {
        LevelEngine engine = s_idle ?? new LevelEngine();
        s_idle = null;
        ImmutableArray<Contour> result = engine.Find(loops, level);
        s_idle = engine;
        return result;
    }

    private ImmutableArray<Contour> Find(ReadOnlySpan<Contour> loops, int level)
    {
        _input.Load(loops, false);
        EdgeField field = _input.Field;
        if (field.Count == 0)
        {
            return [];
        }

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

        var test = new LevelTest(field, level);
        if (!_arrangement.Run(NodeRule.Tested, _input.Largest, Accuracy.MergeWithin(_input.Largest), loops.Length > 1, ref test))
        {
            throw new InvalidOperationException("A set operation did not close: " + _arrangement.Failure);
        }

        var result = ImmutableArray.CreateBuilder<Contour>(_arrangement.LoopCount);
        var vertices = new List<Vertex>();
        for (int k = 0; k < _arrangement.LoopCount; k++)
        {
            vertices.Clear();
            foreach (ref readonly LoopPiece piece in _arrangement.Loop(k))
            {
                Edge edge = _arrangement.Edges[piece.Edge];
                var p = new Point2(piece.X + _input.Shift.X, piece.Y + _input.Shift.Y);
                if (vertices.Count > 0 && vertices[^1].Point.DistanceTo(p) < Accuracy.SamePoint)
                {
                    vertices.RemoveAt(vertices.Count - 1);
                }

                vertices.Add(new Vertex(p, Math.Clamp(edge.BulgeBetween(piece.From, piece.To), -1, 1)));
            }

            if (vertices.Count > 1 && vertices[^1].Point.DistanceTo(vertices[0].Point) < Accuracy.SamePoint)
            {
                vertices.RemoveAt(vertices.Count - 1);
            }

            if (vertices.Count > 1)
            {
                result.Add(new Contour(vertices.ToArray(), true, true));
            }
        }

        return result.DrainToImmutable();
    }

    private readonly struct LevelTest(EdgeField field, int level) : ISliceTest
    {
        public bool Keep(int edge, Point2 middle, Point2 direction)
        {
            Point2 left = middle + (direction.Left * Aside);
            Point2 right = middle + (direction.Right * Aside);
            return field.Winding(left.X, left.Y) >= level && field.Winding(right.X, right.Y) < level;
        }
    }
}
