using System.Globalization;
using System.Text;
using ToolpathForge.Catalogue;
using ToolpathForge.Cutting;
using ToolpathForge.Geometry;

namespace ToolpathForge.Posting;

/// <summary>Writes one program in a dialect: header, bit, spindle, moves on the dialect's grid, footer.</summary>
internal sealed class ProgramWriter(Dialect dialect)
{
    /// <summary>Flatter arcs are written as chords, mm: their centres would lie beyond what readers accept, and their radii could not be told apart.</summary>
    private const double LargestRadius = 1e5;

    private readonly Grid _grid = new(dialect);
    private readonly ProgramLines _lines = new(dialect);
    private GridPoint _at;
    private bool _knowsPlane;
    private bool _knowsHeight;
    private string _motion = "";
    private string _feed = "";

    internal string Write(ProgramInput input)
    {
        foreach (string note in input.Notes)
        {
            _lines.Comment(note);
        }

        var stops = new StopLines(dialect, input, _lines);
        for (int i = 0; i < input.Paths.Length; i++)
        {
            Toolpath path = input.Paths[i];
            string Fill(string line) => Placeholders.Fill(line, input.Name, path.Bit.Name, i + 1, path.Speed);
            if (i == 0)
            {
                WriteAll(dialect.Header, Fill);
            }

            if (i > 0 || stops.ChangesByCommand)
            {
                stops.ForBit(path, i, Fill);
            }

            _lines.Comment("Bit: " + path.Bit.Name + stops.Setting(path));
            WritePath(path, input.ChordTolerance, Fill);
            foreach (string message in input.Waits)
            {
                stops.ForBoards(message, Fill);
                WritePath(path, input.ChordTolerance, Fill);
            }

            if (i == input.Paths.Length - 1)
            {
                stops.AtEnd(Fill);
            }
        }

        return _lines.ToString();
    }

    // From a start or a stop on: a hand may have moved every axis and changed every mode. Nothing that was written before counts any more.
    private void WritePath(Toolpath path, double chordTolerance, Func<string, string> fill)
    {
        WriteAll(dialect.SpindleLines, fill);
        if (dialect.RunsSpindle && dialect.SpindleDwell > 0)
        {
            _lines.Line(Placeholders.FillSeconds(dialect.DwellWord, dialect.SpindleDwell));
        }

        _knowsPlane = false;
        _knowsHeight = false;
        _motion = "";
        _feed = "";
        WriteMoves(path, chordTolerance);
    }

    private void WriteAll(IEnumerable<string> lines, Func<string, string> fill)
    {
        foreach (string line in lines)
        {
            _lines.Line(fill(line));
        }
    }

    private void WriteMoves(Toolpath path, double chordTolerance)
    {
        int run = -1;
        var from = default(Point3);
        foreach (Move move in path.Moves)
        {
            if (move.Run != run && move.Run >= 0)
            {
                _lines.Comment(path.Runs[move.Run].Name);
                run = move.Run;
            }

            if (move.Kind == MoveKind.Arc)
            {
                WriteArc(from, move, chordTolerance);
            }
            else
            {
                WriteStraight(move);
            }

            from = move.End;
        }
    }

    private void WriteStraight(Move move)
    {
        GridPoint end = _grid.RoundStraight(move.End);
        if (move.Purpose is Purpose.Retract or Purpose.Descend)
        {
            // Straight up or down: the plane's words stay out, so that the first line after a start or a stop lifts the bit wherever it stands.
            end = end with { X = _at.X, Y = _at.Y };
            Straight(move, end, plane: false);
        }
        else
        {
            Straight(move, end, plane: true);
            _knowsPlane = true;
        }
    }

    private void Straight(Move move, GridPoint end, bool plane)
    {
        var words = new StringBuilder();
        Axis(words, 'X', end.X, plane && !(_knowsPlane && end.X == _at.X));
        Axis(words, 'Y', end.Y, plane && !(_knowsPlane && end.Y == _at.Y));
        Axis(words, 'Z', end.Z, !(_knowsHeight && end.Z == _at.Z));
        if (words.Length > 0)
        {
            Emit(move.Kind == MoveKind.Rapid ? "G0" : "G1", words, move.Feed);
        }

        _at = end;
        _knowsHeight = true;
    }

    // Arcs are written a quarter turn at most: in radius form a longer one loses its centre, in centre form its radii drift apart.
    private void WriteArc(Point3 from, Move move, double chordTolerance)
    {
        var whole = new Segment(from.Flat, move.End.Flat, move.Bulge);
        bool asChords = dialect.Arcs == ArcForm.Lines || whole.Radius > LargestRadius;
        int parts = Math.Max(1, (int)Math.Ceiling((Math.Abs(whole.Sweep) / (Math.PI / 2)) - 1e-9));
        if (asChords)
        {
            // A chord of sweep s rises r(1 - cos s/2) short of its arc.
            // Written with sin²: 1 - cos loses every digit on a flat arc.
            double step = 4 * Math.Asin(Math.Min(1, Math.Sqrt(chordTolerance / (2 * whole.Radius))));
            parts = whole.IsLine ? 1 : Math.Max(1, (int)Math.Ceiling(Math.Abs(whole.Sweep) / step));
        }

        for (int i = 0; i < parts; i++)
        {
            Segment part = whole.Part((double)i / parts, (double)(i + 1) / parts);
            double z = from.Z + ((move.End.Z - from.Z) * (i + 1) / parts);
            Move piece = move with { End = new Point3(part.End, z) };
            if (asChords)
            {
                WriteStraight(piece with { Kind = MoveKind.Line });
            }
            else
            {
                Arc(piece with { Bulge = part.Bulge });
            }
        }
    }

    private void Arc(Move move)
    {
        GridPoint end = _grid.RoundArc(move.End);

        // An arc flatter than half an increment is a line on this grid. One whose written ends agree would be a full circle: as a straight
        // move it vanishes, or becomes the change of height that is left of it.
        if (ArcWords.Sagitta(_at, end, move.Bulge) < 0.5)
        {
            Straight(move with { Kind = MoveKind.Line }, end, plane: true);
            return;
        }

        var words = new StringBuilder();
        Axis(words, 'X', end.X, end.X != _at.X || !dialect.Modal);
        Axis(words, 'Y', end.Y, end.Y != _at.Y || !dialect.Modal);
        Axis(words, 'Z', end.Z, end.Z != _at.Z);
        if (dialect.Arcs == ArcForm.Radius)
        {
            Axis(words, 'R', ArcWords.Radius(_at, end, move.Bulge), true);
        }
        else
        {
            (long i, long j) = ArcWords.Centre(_at, end, move.Bulge);
            Axis(words, 'I', i, true);
            Axis(words, 'J', j, true);
        }

        Emit(move.Bulge > 0 ? "G3" : "G2", words, move.Feed);
        _at = end;
    }

    private void Axis(StringBuilder words, char letter, long count, bool write)
    {
        if (write)
        {
            words.Append(' ').Append(letter).Append(_grid.Text(count));
        }
    }

    private void Emit(string motion, StringBuilder words, double feed)
    {
        if (motion != "G0")
        {
            string text = FeedText(feed);
            if (text != _feed)
            {
                words.Append(" F").Append(text);
                _feed = text;
            }
        }

        _lines.Line(dialect.Modal && motion == _motion ? words.ToString().TrimStart() : motion + words);
        _motion = motion;
    }

    // Rounded down, so that no limit is passed by rounding.
    private string FeedText(double feed)
    {
        double unit = dialect.Unit == Measures.LengthUnit.Inch ? Measures.Length.MillimetresPerInch : 1;
        double scale = Math.Pow(10, dialect.FeedDecimals);
        double value = Math.Max(1, Math.Floor((feed / unit * scale) + 1e-6)) / scale;
        return value.ToString(CultureInfo.InvariantCulture);
    }
}
