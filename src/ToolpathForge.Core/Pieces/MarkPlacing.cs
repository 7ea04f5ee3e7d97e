using System.Collections.Immutable;
using ToolpathForge.Geometry;
using ToolpathForge.Lettering;

namespace ToolpathForge.Pieces;

/// <summary>Finds room for marks on a face: inside the edge, clear of openings and of each other. The face is looked at through a grid of cells.</summary>
internal sealed class MarkPlacing
{
    /// <summary>Strokes are looked at this often along the width of a cell.</summary>
    private const double SamplesPerCell = 4;

    private readonly Contour _edge;
    private readonly ImmutableArray<Contour> _openings;
    private readonly double _rim;
    private readonly double _cell;
    private readonly Box2 _face;
    private readonly int _across;
    private readonly bool[] _free;
    private readonly List<(Contour Stroke, double Clear)> _taken = [];

    /// <summary>Looks at a face.</summary>
    /// <param name="edge">The face's outline.</param>
    /// <param name="openings">Openings in it.</param>
    /// <param name="rim">How far strokes stay from edge and openings, mm.</param>
    /// <param name="cell">Size of a cell, mm: strokes may be kept out of room that is this much too small.</param>
    internal MarkPlacing(Contour edge, ImmutableArray<Contour> openings, double rim, double cell)
    {
        (_edge, _openings, _rim, _cell, _face) = (edge, openings, rim, cell, edge.Box);
        _across = (int)Math.Ceiling(_face.Width / cell) + 1;
        int up = (int)Math.Ceiling(_face.Height / cell) + 1;
        _free = new bool[_across * up];
        Array.Fill(_free, true);
        double reach = rim + HalfDiagonal;
        bool wasClear = false;
        foreach (Contour boundary in openings.Add(edge))
        {
            for (int i = 0; i < boundary.SegmentCount; i++)
            {
                Segment segment = boundary[i];
                Clear(segment.Box, reach, p => segment.Distance(p) >= reach);
            }
        }

        // Between cells of a row that all lie clear of edge and openings runs neither, so the first of them speaks for all.
        for (int i = 0; i < _free.Length; i++)
        {
            if (_free[i])
            {
                _free[i] = i % _across > 0 && wasClear ? _free[i - 1] : IsInside(MiddleOf(i), reach);
                wasClear = true;
            }
            else
            {
                wasClear = false;
            }
        }
    }

    // No point of a cell is farther from its middle.
    private double HalfDiagonal => _cell * Math.Sqrt(0.5);

    /// <summary>Takes the place of some strokes if it is free; null if it is not.</summary>
    /// <param name="strokes">The strokes.</param>
    /// <param name="clear">How far later marks stay from them, mm.</param>
    internal ImmutableArray<Contour>? Take(ImmutableArray<Contour> strokes, double clear)
    {
        if (!Samples(strokes).All(p => IsFree(p) || (IsInside(p, _rim) && !WasTaken(p))))
        {
            return null;
        }

        Mark(strokes, clear);
        return strokes;
    }

    /// <summary>Sets lines of text, the last of the marks, flush left, at the highest place with room, the leftmost of equals; null when there is none.</summary>
    /// <param name="lines">The lines, from the top.</param>
    /// <param name="height">Of a capital, mm.</param>
    internal ImmutableArray<Contour>? Place(ImmutableArray<string> lines, double height)
    {
        double spacing = height * StrokeAlphabet.LineSpacing;
        ImmutableArray<Contour> block = [.. lines.SelectMany((line, i) => StrokeAlphabet.Write(line, height, new Point2(0, -i * spacing)).Strokes)];
        Point2[] samples = [.. Samples(block)];
        for (double top = _face.MaxY - _rim - height; top > _face.MinY; top -= _cell)
        {
            for (double left = _face.MinX + _rim; left < _face.MaxX; left += _cell)
            {
                var shift = new Point2(left, top);
                if (Array.TrueForAll(samples, p => IsFree(p + shift)))
                {
                    return [.. block.Select(s => s.Placed(Placement.At(left, top)))];
                }
            }
        }

        return null;
    }

    private void Mark(ImmutableArray<Contour> strokes, double clear)
    {
        _taken.AddRange(strokes.Select(s => (s, clear)));
        double reach = clear + HalfDiagonal;
        foreach (Contour stroke in strokes)
        {
            Clear(stroke.Box, reach, p => stroke.Distance(p) > reach);
        }
    }

    // Keeps, of the cells about a box, those whose middles lie clear.
    private void Clear(Box2 box, double reach, Predicate<Point2> isClear)
    {
        int right = Math.Min(_across - 1, (int)((box.MaxX + reach - _face.MinX) / _cell));
        int top = Math.Min((_free.Length / _across) - 1, (int)((box.MaxY + reach - _face.MinY) / _cell));
        for (int y = Math.Max(0, (int)((box.MinY - reach - _face.MinY) / _cell)); y <= top; y++)
        {
            for (int x = Math.Max(0, (int)((box.MinX - reach - _face.MinX) / _cell)); x <= right; x++)
            {
                int i = (y * _across) + x;
                _free[i] = _free[i] && isClear(MiddleOf(i));
            }
        }
    }

    private IEnumerable<Point2> Samples(ImmutableArray<Contour> strokes)
    {
        foreach (Contour stroke in strokes)
        {
            for (int i = 0; i < stroke.SegmentCount; i++)
            {
                int parts = Math.Max(1, (int)Math.Ceiling(stroke[i].Length * SamplesPerCell / _cell));
                for (int k = 0; k <= parts; k++)
                {
                    yield return stroke[i].PointAt((double)k / parts);
                }
            }
        }
    }

    private Point2 MiddleOf(int cell) => new(
        _face.MinX + ((cell % _across) * _cell) + (_cell / 2), _face.MinY + ((cell / _across) * _cell) + (_cell / 2));

    private bool IsFree(Point2 p)
    {
        double x = (p.X - _face.MinX) / _cell;
        double y = (p.Y - _face.MinY) / _cell;
        int index = ((int)y * _across) + (int)x;
        return x >= 0 && y >= 0 && x < _across && index < _free.Length && _free[index];
    }

    private bool IsInside(Point2 p, double clear)
    {
        if (!_edge.Contains(p) || _edge.Distance(p) < clear)
        {
            return false;
        }

        foreach (Contour opening in _openings)
        {
            if (opening.Contains(p) || opening.Distance(p) < clear)
            {
                return false;
            }
        }

        return true;
    }

    private bool WasTaken(Point2 p) => _taken.Exists(t => t.Stroke.Distance(p) < t.Clear);
}
