using System.Collections.Immutable;
using System.Runtime.InteropServices;

namespace ToolpathForge.Geometry;

/// <summary>
/// Judges a set operation by its definition: every piece of the result must lie on a boundary of the input and part what is wanted from what is not, by the winding
/// of the contours as they were given and by that of the result itself, which must be one inside and nothing outside; and every stretch of the input that plainly
/// parts the two must be in the result. It may miss a fault; it never condemns a good result.
/// </summary>
internal sealed class LevelCheck
{
    /// <summary>Pieces shorter than this are not judged, mm: a hundred times <see cref="Accuracy.StraightSagitta"/>, within which several boundaries may run.</summary>
    private const double LeastLength = 1e-5;

    /// <summary>How far from its input a piece may lie, and how far from the result an input stretch may that counts as in it, mm; as <see cref="Accuracy.OffsetCheck"/>.</summary>
    private const double Beside = Accuracy.OffsetCheck;

    private readonly WindingBands _bands;
    private readonly int _level;

    internal LevelCheck(ReadOnlySpan<Contour> loops, int level)
    {
        _bands = new WindingBands(loops);
        _level = level;
    }

    /// <summary>What is wrong; null when nothing is.</summary>
    internal string? Reason { get; private set; }

    /// <summary>Where it is wrong.</summary>
    internal Point2 Where { get; private set; }

    /// <summary>True when nothing wrong was found.</summary>
    /// <param name="loops">What was combined.</param>
    /// <param name="result">The loops of the result.</param>
    /// <param name="origins">For each segment of the result, loop by loop, the loop and segment of the input that it is part of.</param>
    internal bool Passes(ReadOnlySpan<Contour> loops, ImmutableArray<Contour> result, List<(int Loop, int Segment)> origins)
    {
        Reason = null;
        WindingBands? made = result.IsEmpty ? null : new WindingBands(result.AsSpan());
        var used = new List<(int Loop, int Segment, double From, double To)>(origins.Count);
        int at = 0;
        foreach (Contour loop in result)
        {
            for (int i = 0; i < loop.SegmentCount; i++)
            {
                (int of, int segment) = origins[at++];
                Segment piece = loop[i];
                Segment source = loops[of][segment];
                Point2 middle = piece.PointAt(0.5);
                if (source.Distance(middle) > Beside)
                {
                    return Fails("a piece lies on no boundary", middle);
                }

                if (piece.Length >= LeastLength && !Parts(piece, made!))
                {
                    return Fails("a piece parts nothing", middle);
                }

                used.Add((of, segment, ShareAt(source, piece.Start), ShareAt(source, piece.End)));
            }
        }

        used.Sort();
        return NothingMissing(loops, result, CollectionsMarshal.AsSpan(used));
    }

    // Each input segment less what the result uses of it, in order.
    private bool NothingMissing(ReadOnlySpan<Contour> loops, ImmutableArray<Contour> result, ReadOnlySpan<(int Loop, int Segment, double From, double To)> used)
    {
        LoopInput? made = null;
        int k = 0;
        for (int loop = 0; loop < loops.Length; loop++)
        {
            for (int i = 0; i < loops[loop].SegmentCount; i++)
            {
                Segment source = loops[loop][i];
                double reached = 0;
                while (k < used.Length && used[k].Loop == loop && used[k].Segment == i)
                {
                    if (IsMissing(source, reached, used[k].From, result, ref made))
                    {
                        return false;
                    }

                    reached = Math.Max(reached, used[k++].To);
                }

                if (IsMissing(source, reached, 1, result, ref made))
                {
                    return false;
                }
            }
        }

        return true;
    }

    // Plainly: thrice along its middle part, and four times as far aside as the engine looks.
    private bool IsMissing(Segment source, double from, double to, ImmutableArray<Contour> result, ref LoopInput? made)
    {
        if (to <= from || (to - from) * source.Length < LeastLength)
        {
            return false;
        }

        Segment gap = source.Part(from, to);
        foreach (double share in (ReadOnlySpan<double>)[0.25, 0.5, 0.75])
        {
            if (!PartsAt(gap, share, 1) || !PartsAt(gap, share, 4))
            {
                return false;
            }
        }

        // Of boundaries that coincide one is in the result.
        made ??= Loaded(result);
        Point2 middle = gap.PointAt(0.5);
        Point2 shifted = middle - made.Shift;
        if (!made.Field.IsClear(shifted.X, shifted.Y, Beside))
        {
            return false;
        }

        Fails("a piece is missing", middle);
        return true;
    }

    // Where several boundaries cross in one place of it, another place tells; where they run beside each other, a closer look.
    private bool Parts(Segment piece, WindingBands made)
    {
        foreach (double share in (ReadOnlySpan<double>)[0.5, 0.3, 0.7])
        {
            foreach (double times in (ReadOnlySpan<double>)[1, 0.1])
            {
                Point2 p = piece.PointAt(share);
                Point2 aside = piece.DirectionAt(share).Left * (LevelEngine.Aside * times);
                if (PartsAt(piece, share, times) && made.At(p + aside) == 1 && made.At(p - aside) == 0)
                {
                    return true;
                }
            }
        }

        return false;
    }

    private bool PartsAt(Segment piece, double share, double times)
    {
        Point2 p = piece.PointAt(share);
        Point2 aside = piece.DirectionAt(share).Left * (LevelEngine.Aside * times);
        return _bands.At(p + aside) >= _level && _bands.At(p - aside) < _level;
    }

    // The share of the way along a segment at which a point of it lies, 0 to 1.
    private static double ShareAt(Segment segment, Point2 p)
    {
        if (segment.IsLine)
        {
            Point2 along = segment.End - segment.Start;
            return Math.Clamp((p - segment.Start).Dot(along) / along.Dot(along), 0, 1);
        }

        // The angle between chord to the point and start direction is half the sweep that far.
        Point2 chord = p - segment.Start;
        Point2 start = segment.StartDirection;
        return chord.Length < Accuracy.SamePoint ? 0 : Math.Clamp(2 * Math.Atan2(start.Cross(chord), start.Dot(chord)) / segment.Sweep, 0, 1);
    }

    private static LoopInput Loaded(ImmutableArray<Contour> loops)
    {
        var made = new LoopInput();
        made.Load(loops.AsSpan(), false);
        return made;
    }

    private bool Fails(string reason, Point2 where)
    {
        (Reason, Where) = (reason, where);
        return false;
    }
}
