using System.Collections.Immutable;
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
    private bool[] _used = [];

    /// <summary>How many tries the last offset took; for the tests.</summary>
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
        for (int i = 0; i < beside.Length; i++)
        {
            LastTries = i + 1;
            double tried = distance + (Math.Sign(distance) * beside[i] * tolerance);
            if (Try(tried, distance, join, end, largest, tolerance, out string? failure, out Point2 at))
            {
                return _output.Result(_input, _raw, _arrangement, loops, side);
            }

            if (i == 0)
            {
                (reason, where) = (failure!, at);
            }
        }

        return new OffsetResult([], [], Unproven(loops, distance, reason, where));
    }

    private bool Try(double tried, double distance, JoinStyle join, EndStyle end, double largest, double tolerance, out string? failure, out Point2 at)
    {
        _raw.Fill(_input, tried, join, end, _arrangement);
        var test = new ClearTest(_input.Field, _raw.Corners, Math.Abs(tried) - (4 * tolerance), 4 * tolerance);
        if (!_arrangement.Run(tried > 0 ? NodeRule.Union : NodeRule.Intersection, largest, tolerance, _input.LoopStart.Count > 2, ref test))
        {
            failure = _arrangement.Failure;
            at = _arrangement.FailedAt + _input.Shift;
            return false;
        }

        if (_used.Length < _arrangement.EdgeCount)
        {
            _used = new bool[_arrangement.Edges.Length];
        }

        var check = new OffsetCheck(_input, _raw, _arrangement, Math.Abs(distance), distance > 0);
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
