using System.Runtime.InteropServices;
using ToolpathForge.Findings;

namespace ToolpathForge.Geometry;

/// <summary>
/// Runs an offset: candidates, arrangement, check. What fails its check is tried again a hair beside the distance, where accidents of the input (three
/// pieces through one point, a gap of exactly two distances) no longer happen; the check always judges by the distance asked for.
/// </summary>
internal sealed class OffsetEngine
{
    [ThreadStatic]
    private static OffsetEngine? s_idle;

    private readonly LoopInput _input = new();
    private readonly RawOffset _raw = new();
    private readonly Arrangement _arrangement = new();
    private readonly OffsetOutput _output = new();
    private readonly LoopInput _inner = new();
    private readonly OffsetPatches _patches = new();
    private readonly List<Candidate> _sources = [];
    private bool[] _used = [];

    /// <summary>How many tries the last offset took; for the tests.</summary>
    [field: ThreadStatic]
    internal static int LastTries { get; private set; }

    /// <summary>Offsets closed loops (material on the left, or a single loop) or a path.</summary>
    /// <param name="loops">What is offset.</param>
    /// <param name="distance">mm, positive outwards.</param>
    /// <param name="join">Corners.</param>
    /// <param name="end">Ends of a path.</param>
    /// <param name="side">For a path: which part of the walk round it is wanted.</param>
    internal static OffsetResult Run(ReadOnlySpan<Contour> loops, double distance, JoinStyle join, EndStyle end, PathSide? side)
    {
        OffsetEngine engine = s_idle ?? new OffsetEngine();
        s_idle = null;
        OffsetResult result = engine.Offset(loops, distance, join, end, side);
        s_idle = engine;
        return result;
    }

    private OffsetResult Offset(ReadOnlySpan<Contour> loops, double distance, JoinStyle join, EndStyle end, PathSide? side)
    {
        bool isPath = side is not null;
        _input.Load(loops, isPath);
        if (!isPath && loops.Length == 1)
        {
            _input.TurnLoneLoop();
        }

        if (_input.Field.Count == 0)
        {
            return _output.Result(_input, _raw, _arrangement, loops, side);
        }

        if (isPath && end == EndStyle.Flat)
        {
            _input.Field.FlatStart = 0;
            _input.Field.FlatEnd = _input.Field.Count - 1;
        }

        double largest = _input.Largest + (2 * Math.Abs(distance));
        double tolerance = Accuracy.MergeWithin(largest);
        string reason = "";
        Point2 where = default;
        ReadOnlySpan<double> beside = [0, 4, -4, 16, -16, 64, -64];
        bool special = join == JoinStyle.Sharp || (isPath && end == EndStyle.Flat);
        bool direct = !isPath || end == EndStyle.Round || !ReachesBeyondFlat(Math.Abs(distance));
        for (int i = direct ? 0 : beside.Length; i < (special ? 2 : 1) * beside.Length; i++)
        {
            LastTries = i + 1;
            double tried = distance + (Math.Sign(distance) * beside[i % beside.Length] * tolerance);
            string? failure;
            Point2 at;
            bool passes = i < beside.Length
                ? Try(_input, tried, distance, join, end, largest, tolerance, out failure, out at)
                : TryPatched(tried, distance, join, end, largest, tolerance, out failure, out at);
            if (passes)
            {
                return _output.Result(_input, _raw, _arrangement, loops, side);
            }

            if (reason.Length == 0)
            {
                (reason, where) = (failure!, at);
            }
        }

        return new OffsetResult([], [], Unproven(loops, distance, reason, where));
    }

    // A flat end cuts off its own piece straight; where another vertex reaches beyond that line the outline is no longer what the walk gives.
    private bool ReachesBeyondFlat(double size)
    {
        EdgeField field = _input.Field;
        if (field.Count < 2)
        {
            return false;
        }

        Edge first = field.Edges[0];
        Edge last = field.Edges[field.Count - 1].Reversed;
        return Ahead(first) < size + Accuracy.OffsetCheck || Ahead(last) < size + Accuracy.OffsetCheck;

        static double Ahead(in Edge e) => e.StartDirection.Dot(new Point2(e.X1 - e.X0, e.Y1 - e.Y0));
    }

    private bool Try(LoopInput input, double tried, double distance, JoinStyle join, EndStyle end, double largest, double tolerance, out string? failure, out Point2 at)
    {
        _raw.Fill(input, tried, join, end, _arrangement);
        var test = new ClearTest(input.Field, _raw.Corners, Math.Abs(tried) - (4 * tolerance), 4 * tolerance);
        if (!_arrangement.Run(tried > 0 ? NodeRule.Union : NodeRule.Intersection, largest, tolerance, input.LoopStart.Count > 2, ref test))
        {
            failure = _arrangement.Failure;
            at = _arrangement.FailedAt + input.Shift;
            return false;
        }

        return Passes(input, distance, out failure, out at);
    }

    // By the definition: the round offset, which is made and checked first, and what sharp corners and flat ends put beside it, united as regions.
    private bool TryPatched(double tried, double distance, JoinStyle join, EndStyle end, double largest, double tolerance, out string? failure, out Point2 at)
    {
        _patches.Clear();
        if (!AddRound(tried, distance, end, largest, tolerance, out failure, out at))
        {
            return false;
        }

        _raw.Fill(_input, tried, join, end, _arrangement);
        _patches.AddCorners(_raw.Corners, tried);
        _sources.Clear();
        _arrangement.TakeLoops();
        Finding? unproven = LevelEngine.Trace(CollectionsMarshal.AsSpan(_patches.Loops), 1, (loop, origins) =>
        {
            foreach ((int of, int segment) in origins)
            {
                _sources.Add(_patches.Sources[of][segment]);
            }

            _arrangement.TakeLoop(loop.Vertices);
        });
        if (unproven is not null)
        {
            (failure, at) = (unproven.Args[0].Text, unproven.Place.Point is var (x, y) ? new Point2(x, y) + _input.Shift : default);
            return false;
        }

        if (_raw.Sources.Length < _sources.Count)
        {
            _raw.Sources = new Candidate[_sources.Count];
        }

        _sources.CopyTo(_raw.Sources);
        return Passes(_input, distance, out failure, out at);
    }

    // The round loops; with flat ends those of the path without its end pieces, which come as loops of their own.
    private bool AddRound(double tried, double distance, EndStyle end, double largest, double tolerance, out string? failure, out Point2 at)
    {
        (failure, at) = (null, default);
        EdgeField field = _input.Field;
        if (!_input.IsPath || end == EndStyle.Round)
        {
            if (!Try(_input, tried, distance, JoinStyle.Round, EndStyle.Round, largest, tolerance, out failure, out at))
            {
                return false;
            }

            _patches.AddFound(_arrangement, _raw.Sources);
            return true;
        }

        int n = field.Count;
        if (n < 2)
        {
            (failure, at) = ("a lone piece with flat ends", new Point2(field.Edges[0].X0, field.Edges[0].Y0) + _input.Shift);
            return false;
        }

        if (n > 2)
        {
            _inner.LoadPart(_input, 1, n - 1);
            if (!Try(_inner, tried, distance, JoinStyle.Round, EndStyle.Round, largest, tolerance, out failure, out at))
            {
                return false;
            }

            for (int i = 0; i < _arrangement.EdgeCount; i++)
            {
                // The part's ends are vertices of the path.
                Candidate c = _raw.Sources[i];
                bool isEnd = (c.Role & CandidateRole.Cap) != CandidateRole.None;
                bool atStart = (c.Role & CandidateRole.Back) != CandidateRole.None;
                _raw.Sources[i] = isEnd
                    ? new Candidate(atStart ? 0 : n - 2, atStart ? 1 : n - 1, CandidateRole.Join)
                    : new Candidate(c.Edge + 1, c.Other < 0 ? -1 : c.Other + 1, c.Role);
            }

            _patches.AddFound(_arrangement, _raw.Sources);
        }
        else
        {
            _patches.AddCircle(new Point2(field.Edges[1].X0, field.Edges[1].Y0), tried, new Candidate(0, 1, CandidateRole.Join));
        }

        _patches.AddFlatEnd(field.Edges[0], 0, tried, CandidateRole.None);
        _patches.AddFlatEnd(field.Edges[n - 1].Reversed, n - 1, tried, CandidateRole.Back);
        return true;
    }

    private bool Passes(LoopInput input, double distance, out string? failure, out Point2 at)
    {
        if (_used.Length < _arrangement.EdgeCount)
        {
            _used = new bool[_arrangement.Edges.Length];
        }

        var check = new OffsetCheck(input, _raw, _arrangement, Math.Abs(distance), distance > 0);
        bool passes = check.Passes(_used.AsSpan(0, _arrangement.EdgeCount));
        failure = check.Reason;
        at = check.Where;
        return passes;
    }

    private static Finding Unproven(ReadOnlySpan<Contour> loops, double distance, string reason, Point2 where) => Finding.Of(
        GeometryFindings.OffsetUnproven,
        Place.None.AtPoint(where.X, where.Y),
        Quantity.Length(distance),
        Quantity.Length(distance),
        Arg.Of("reason", reason),
        Arg.Of("reproducer", Reproducer.Of(FormattableString.Invariant($"{distance:R}"), loops)));

    /// <summary>Wanted are slices that no edge is nearer to than the distance.</summary>
    private readonly struct ClearTest(EdgeField field, SharpCorners corners, double limit, double margin) : ISliceTest
    {
        public bool Keep(int edge, Point2 middle, Point2 direction) =>
            field.IsClear(middle.X, middle.Y, limit) && !corners.Holds(middle, margin);
    }
}

/// <summary>Which part of the walk round a path is wanted.</summary>
internal enum PathSide
{
    /// <summary>All of it.</summary>
    Both,

    /// <summary>What lies to the left of the path.</summary>
    Left,

    /// <summary>What lies to the right of the path.</summary>
    Right,
}
