namespace ToolpathForge.Geometry;

/// <summary>
/// How often closed contours wind round a point, counted on the contours as they were given: the bystander that set operations are checked against, sharing
/// nothing with the index that they are made by. The plane is cut into bands across Y; a ray to the right meets only what reaches into its band.
/// </summary>
internal sealed class WindingBands
{
    private readonly Segment[] _segments;
    private readonly int[] _start;
    private readonly int[] _held;
    private readonly double _bottom;
    private readonly double _perHeight;

    internal WindingBands(ReadOnlySpan<Contour> loops)
    {
        int count = 0;
        foreach (Contour loop in loops)
        {
            count += loop.SegmentCount;
        }

        _segments = new Segment[count];
        var low = new double[count];
        var high = new double[count];
        int n = 0;
        double bottom = double.PositiveInfinity;
        double top = double.NegativeInfinity;
        double heights = 0;
        foreach (Contour loop in loops)
        {
            for (int i = 0; i < loop.SegmentCount; i++)
            {
                Box2 box = loop[i].Box;
                (_segments[n], low[n], high[n]) = (loop[i], box.MinY, box.MaxY);
                bottom = Math.Min(bottom, box.MinY);
                top = Math.Max(top, box.MaxY);
                heights += box.MaxY - box.MinY;
                n++;
            }
        }

        // As many bands as segments, fewer where these are so tall that they would be held more than eight times on average.
        double most = heights > 0 ? 8 * count * (top - bottom) / heights : count;
        int bands = (int)Math.Clamp(most, 1, count);
        _bottom = bottom;
        _perHeight = top > bottom ? bands / (top - bottom) : 0;
        _start = new int[bands + 1];
        for (int i = 0; i < count; i++)
        {
            for (int band = BandOf(low[i]); band <= BandOf(high[i]); band++)
            {
                _start[band]++;
            }
        }

        int sum = 0;
        for (int band = 0; band < bands; band++)
        {
            sum += _start[band];
            _start[band] = sum;
        }

        _start[bands] = sum;
        _held = new int[sum];
        for (int i = count - 1; i >= 0; i--)
        {
            for (int band = BandOf(low[i]); band <= BandOf(high[i]); band++)
            {
                _held[--_start[band]] = i;
            }
        }
    }

    /// <summary>The sum of all loops' winding numbers; points on a loop may fall either way.</summary>
    internal int At(Point2 p)
    {
        int band = BandOf(p.Y);
        int winding = 0;
        for (int k = _start[band]; k < _start[band + 1]; k++)
        {
            winding += Winding.Of(_segments[_held[k]], p);
        }

        return winding;
    }

    // Points beyond the lowest and highest band meet nothing there.
    private int BandOf(double y) => (int)Math.Clamp((y - _bottom) * _perHeight, 0, _start.Length - 2);
}
