using ToolpathForge.Geometry;

namespace ToolpathForge.Exchange.Svg;

/// <summary>
/// Reads path data (SVG 1.1, 8.3): every command, absolute and relative. As the specification has it, a path with an error counts up to the last segment before it
/// (SVG 1.1, F.2).
/// </summary>
internal ref struct SvgPathData
{
    private readonly List<SvgRun> _runs = [];
    private readonly Func<bool> _step;
    private SvgScanner _scanner;
    private List<SvgSegment> _row = [];
    private Point2 _start;
    private Point2 _at;
    private Point2 _control;
    private char _before;

    private SvgPathData(string text, Func<bool> step)
    {
        _scanner = new SvgScanner(text);
        _step = step;
    }

    /// <summary>Reads a path.</summary>
    /// <param name="text">The value of its d.</param>
    /// <param name="step">Asked at each segment whether to go on.</param>
    /// <returns>Its runs, and where it could not be followed any more, from 0; -1 for a sound path.</returns>
    internal static (List<SvgRun> Runs, int Broken) Read(string text, Func<bool> step)
    {
        var reader = new SvgPathData(text, step);
        int broken = reader.Commands();
        reader.End(false);
        return (reader._runs, broken);
    }

    private int Commands()
    {
        _scanner.Blanks();
        while (!_scanner.IsAtEnd)
        {
            int at = _scanner.At;
            char command = _scanner.Next;
            char kind = char.ToUpperInvariant(command);

            // Before anything else there must be a place to begin.
            if (!"MLHVCSQTAZ".Contains(kind, StringComparison.Ordinal) || (_before == '\0' && kind != 'M'))
            {
                return at;
            }

            _scanner.Skip();
            _scanner.Blanks();
            if (kind == 'Z')
            {
                Close();
                continue;
            }

            bool relative = char.IsAsciiLetterLower(command);
            do
            {
                at = _scanner.At;
                if (!Segment(kind, relative))
                {
                    return at;
                }

                // More points after a move are lines.
                _before = kind;
                kind = kind == 'M' ? 'L' : kind;
                if (_scanner.Comma() && !StartsNumber(_scanner.Next))
                {
                    return _scanner.At;
                }
            }
            while (StartsNumber(_scanner.Next) && _step());

            if (!_step())
            {
                return -1;
            }
        }

        return -1;
    }

    private static bool StartsNumber(char c) => char.IsAsciiDigit(c) || c is '+' or '-' or '.';

    private bool Segment(char kind, bool relative)
    {
        Point2 zero = relative ? _at : default;
        switch (kind)
        {
            case 'M':
                if (!Point(zero, out Point2 to))
                {
                    return false;
                }

                End(false);
                (_start, _at) = (to, to);
                return true;
            case 'L':
                return Point(zero, out to) && Add(SvgSegment.Line(_at, to), to, to);
            case 'H':
                return _scanner.Number(out double x) && Line(new Point2(zero.X + x, _at.Y));
            case 'V':
                return _scanner.Number(out double y) && Line(new Point2(_at.X, zero.Y + y));
            case 'C':
                return Point(zero, out Point2 by) && More(zero, out Point2 near) && More(zero, out to) && Add(SvgSegment.Cubic(_at, by, near, to), to, near);
            case 'S':
                by = _before is 'C' or 'S' ? (_at * 2) - _control : _at;
                return Point(zero, out near) && More(zero, out to) && Add(SvgSegment.Cubic(_at, by, near, to), to, near);
            case 'Q':
                return Point(zero, out by) && More(zero, out to) && Add(SvgSegment.Quadratic(_at, by, to), to, by);
            case 'T':
                by = _before is 'Q' or 'T' ? (_at * 2) - _control : _at;
                return Point(zero, out to) && Add(SvgSegment.Quadratic(_at, by, to), to, by);
            default:
                return Arc(zero);
        }
    }

    private bool Line(Point2 to) => Add(SvgSegment.Line(_at, to), to, to);

    private bool Arc(Point2 zero)
    {
        if (!_scanner.Number(out double rx))
        {
            return false;
        }

        _scanner.Comma();
        if (!_scanner.Number(out double ry))
        {
            return false;
        }

        _scanner.Comma();
        if (!_scanner.Number(out double turn))
        {
            return false;
        }

        _scanner.Comma();
        if (!_scanner.Flag(out bool large))
        {
            return false;
        }

        _scanner.Comma();
        if (!_scanner.Flag(out bool sweep) || !More(zero, out Point2 to))
        {
            return false;
        }

        return SvgArc.Of(_at, rx, ry, turn, large, sweep, to) is not { } arc || Add(arc, to, to);
    }

    private bool Point(Point2 zero, out Point2 point)
    {
        point = default;
        if (!_scanner.Number(out double x))
        {
            return false;
        }

        _scanner.Comma();
        bool read = _scanner.Number(out double y);
        point = new Point2(zero.X + x, zero.Y + y);
        return read;
    }

    private bool More(Point2 zero, out Point2 point)
    {
        _scanner.Comma();
        return Point(zero, out point);
    }

    private bool Add(SvgSegment segment, Point2 to, Point2 control)
    {
        _row.Add(segment);
        (_at, _control) = (to, control);
        return true;
    }

    private void Close()
    {
        if (_at != _start)
        {
            _row.Add(SvgSegment.Line(_at, _start));
        }

        End(true);
        _at = _start;
        _before = 'Z';
        _scanner.Blanks();
    }

    private void End(bool closed)
    {
        if (_row.Count > 0)
        {
            _runs.Add(new SvgRun(_row, closed));
            _row = [];
        }
    }
}
