using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace ToolpathForge.Geometry;

/// <summary>
/// A static index of boxes, packed in groups of eight in the order they are given. A contour's edges in their own order lie near each other already, so nothing is
/// sorted; building is one pass. Boxes are kept in single precision, rounded outwards: it answers "may meet", never "does not meet" wrongly.
/// </summary>
/// <remarks>
/// A group is 32 floats: eight left sides, eight lower sides, eight right sides, eight upper sides, so that one comparison tests eight boxes.
/// Level 0 holds the boxes themselves; item i of level k + 1 is the box round group i of level k. The top level has one group; but up to 32 boxes are flat, level 0
/// alone with up to four groups, for going through those costs less than a level above them.
/// Where neighbours in order are not near each other (many loops), the groups of level 0 keep their place, but the items of level 1 stand along a curve that fills
/// the plane (their centres' coordinates with the bits taken in turns).
/// </remarks>
internal sealed class BoxTree
{
    private const int Fan = 8;
    private const int GroupFloats = 4 * Fan;
    private const int FlatCount = 32;
    private readonly int[] _levelStart = new int[12];
    private float[] _boxes = new float[GroupFloats];
    private int[] _stack = new int[64];
    private int _levels;
    private bool _scattered;
    private int[] _order = [];
    private uint[] _keys = [];

    /// <summary>How many boxes it holds.</summary>
    internal int Count { get; private set; }

    /// <summary>How many groups of eight hold the boxes themselves.</summary>
    internal int Groups => (Count + Fan - 1) / Fan;

    /// <summary>Makes ready for a number of boxes, each to be given by <see cref="Set"/> before <see cref="Build"/>.</summary>
    internal void Reset(int count)
    {
        Count = count;
        _levels = 0;
        int groups = 0;
        int items = count;
        do
        {
            items = (items + Fan - 1) / Fan;
            _levelStart[_levels++] = groups * GroupFloats;
            groups += items;
        }
        while (items > 1 && count > FlatCount);
        if (_boxes.Length < groups * GroupFloats)
        {
            _boxes = new float[Math.Max(groups * GroupFloats, _boxes.Length * 2)];
        }
    }

    /// <summary>Gives box number <paramref name="index"/>; the pad covers the rounding to single precision (see <see cref="PadFor"/>).</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal void Set(int index, in Edge edge, double pad)
    {
        edge.Bounds(out Vector128<double> min, out Vector128<double> max);
        Vector128<double> padding = Vector128.Create(pad);
        Vector128<float> box = Vector128.Narrow(min - padding, max + padding);
        ref float at = ref Unsafe.Add(ref MemoryMarshal.GetArrayDataReference(_boxes), ((index >> 3) * GroupFloats) + (index & 7));
        at = box.GetElement(0);
        Unsafe.Add(ref at, Fan) = box.GetElement(1);
        Unsafe.Add(ref at, 2 * Fan) = box.GetElement(2);
        Unsafe.Add(ref at, 3 * Fan) = box.GetElement(3);
    }

    /// <summary>The pad that makes up for single precision: half a unit of the last of 24 bits at the largest coordinate, doubled, plus what must count as touching.</summary>
    internal static double PadFor(double largestCoordinate, double touching) => (largestCoordinate * 1.2e-7) + touching;

    /// <summary>Builds the upper levels.</summary>
    /// <param name="scattered">True when neighbours in order may lie far apart.</param>
    internal void Build(bool scattered)
    {
        int items = Count;
        _scattered = scattered && _levels > 2;
        if (_scattered)
        {
            ClearTail(0, items);
            Order();
        }

        for (int level = 0; level < _levels; level++)
        {
            ClearTail(level, items);
            int groups = (items + Fan - 1) / Fan;
            if (level + 1 < _levels)
            {
                for (int g = 0; g < groups; g++)
                {
                    int from = _scattered && level == 0 ? _order[g] : g;
                    ref float at = ref Unsafe.Add(ref MemoryMarshal.GetArrayDataReference(_boxes), _levelStart[level] + (from * GroupFloats));
                    ref float up = ref Unsafe.Add(ref MemoryMarshal.GetArrayDataReference(_boxes), _levelStart[level + 1] + ((g >> 3) * GroupFloats) + (g & 7));
                    up = Least(Vector256.LoadUnsafe(ref at));
                    Unsafe.Add(ref up, Fan) = Least(Vector256.LoadUnsafe(ref at, Fan));
                    Unsafe.Add(ref up, 2 * Fan) = -Least(-Vector256.LoadUnsafe(ref at, 2 * Fan));
                    Unsafe.Add(ref up, 3 * Fan) = -Least(-Vector256.LoadUnsafe(ref at, 3 * Fan));
                }
            }

            items = groups;
        }
    }

    /// <summary>The eight boxes of a group.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal Boxes8 Group(int group) => Load(0, group);

    /// <summary>One box.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal Box1 Item(int index)
    {
        ref float at = ref Unsafe.Add(ref MemoryMarshal.GetArrayDataReference(_boxes), ((index >> 3) * GroupFloats) + (index & 7));
        return new Box1(at, Unsafe.Add(ref at, Fan), Unsafe.Add(ref at, 2 * Fan), Unsafe.Add(ref at, 3 * Fan));
    }

    /// <summary>The box round a group; of no meaning when flat, where <see cref="Collect"/> needs none.</summary>
    internal Box1 Round(int group)
    {
        if (_levels == 1)
        {
            return default;
        }

        if (_scattered)
        {
            Boxes8 all = Load(0, group);
            return new Box1(Least(all.MinX), Least(all.MinY), -Least(-all.MaxX), -Least(-all.MaxY));
        }

        Boxes8 up = Load(1, group >> 3);
        int lane = group & 7;
        return new Box1(up.MinX.GetElement(lane), up.MinY.GetElement(lane), up.MaxX.GetElement(lane), up.MaxY.GetElement(lane));
    }

    /// <summary>Lists the groups, from a given one on, that hold a box which may meet the one given. Returns how many; the list grows as needed.</summary>
    internal int Collect(in Box1 box, int fromGroup, ref int[] found)
    {
        int count = 0;
        if (_levels == 1)
        {
            for (int group = fromGroup; group < Groups; group++)
            {
                found[count++] = group;
            }

            return count;
        }

        int depth = 0;
        int[] stack = _stack;
        stack[depth++] = (_levels - 1) << 27;
        while (depth > 0)
        {
            int top = stack[--depth];
            int level = top >> 27;
            int group = top & 0x7FFFFFF;
            uint mask = Load(level, group).Meeting(box);
            if (depth + Fan > stack.Length)
            {
                Array.Resize(ref _stack, stack.Length * 2);
                stack = _stack;
            }

            // Of a level-k item the level-0 groups run from item·8^(k-1) to the next item's first.
            int shift = 3 * (level - 1);
            while (mask != 0)
            {
                int item = (group << 3) + BitOperations.TrailingZeroCount(mask);
                mask &= mask - 1;
                if (_scattered && level == 1)
                {
                    item = _order[item];
                }

                if ((!_scattered || level == 1) && ((item + 1) << shift) <= fromGroup)
                {
                    continue;
                }

                if (level == 1)
                {
                    if (count == found.Length)
                    {
                        Array.Resize(ref found, found.Length * 2);
                    }

                    found[count++] = item;
                }
                else
                {
                    stack[depth++] = ((level - 1) << 27) | item;
                }
            }
        }

        return count;
    }

    /// <summary>Walks items of all levels for <see cref="EdgeField"/>'s winding count: the eight boxes of a group of a level.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal Boxes8 Group(int level, int group) => Load(level, group);

    /// <summary>The boxes that an item of a level goes round, where they follow one another: false above level 1 when scattered.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal bool Span(int level, int item, out int first, out int last)
    {
        if (_scattered && level > 0)
        {
            first = level == 1 ? _order[item] << 3 : 0;
            last = Math.Min(first + Fan, Count) - 1;
            return level == 1;
        }

        first = item << (3 * level);
        last = Math.Min((item + 1) << (3 * level), Count) - 1;
        return true;
    }

    /// <summary>Number of levels.</summary>
    internal int Levels => _levels;

    private void Order()
    {
        int groups = Groups;
        if (_order.Length < groups)
        {
            _order = new int[Math.Max(groups, _order.Length * 2)];
            _keys = new uint[_order.Length];
        }

        Box1 all = new(float.PositiveInfinity, float.PositiveInfinity, float.NegativeInfinity, float.NegativeInfinity);
        for (int g = 0; g < groups; g++)
        {
            Box1 b = Round(g);
            all = new Box1(Math.Min(all.MinX, b.MinX), Math.Min(all.MinY, b.MinY), Math.Max(all.MaxX, b.MaxX), Math.Max(all.MaxY, b.MaxY));
        }

        float scale = 65535 / Math.Max(Math.Max(all.MaxX - all.MinX, all.MaxY - all.MinY), float.Epsilon);
        for (int g = 0; g < groups; g++)
        {
            Box1 b = Round(g);
            _order[g] = g;
            _keys[g] = Spread((uint)((((b.MinX + b.MaxX) / 2) - all.MinX) * scale)) | (Spread((uint)((((b.MinY + b.MaxY) / 2) - all.MinY) * scale)) << 1);
        }

        Array.Sort(_keys, _order, 0, groups);
    }

    // 16 bits with a gap after each.
    private static uint Spread(uint x)
    {
        x = (x | (x << 8)) & 0x00FF00FF;
        x = (x | (x << 4)) & 0x0F0F0F0F;
        x = (x | (x << 2)) & 0x33333333;
        return (x | (x << 1)) & 0x55555555;
    }

    private static float Least(Vector256<float> v)
    {
        Vector128<float> m = Vector128.Min(v.GetLower(), v.GetUpper());
        m = Vector128.Min(m, Vector128.Shuffle(m, Vector128.Create(2, 3, 0, 1)));
        m = Vector128.Min(m, Vector128.Shuffle(m, Vector128.Create(1, 0, 3, 2)));
        return m.ToScalar();
    }

    private void ClearTail(int level, int items)
    {
        for (int i = items; (i & 7) != 0; i++)
        {
            int at = _levelStart[level] + ((i >> 3) * GroupFloats) + (i & 7);
            _boxes[at] = float.PositiveInfinity;
            _boxes[at + Fan] = float.PositiveInfinity;
            _boxes[at + (2 * Fan)] = float.NegativeInfinity;
            _boxes[at + (3 * Fan)] = float.NegativeInfinity;
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private Boxes8 Load(int level, int group)
    {
        ref float at = ref Unsafe.Add(ref MemoryMarshal.GetArrayDataReference(_boxes), _levelStart[level] + (group * GroupFloats));
        return new Boxes8(
            Vector256.LoadUnsafe(ref at), Vector256.LoadUnsafe(ref at, Fan), Vector256.LoadUnsafe(ref at, 2 * Fan), Vector256.LoadUnsafe(ref at, 3 * Fan));
    }

    /// <summary>One box in single precision, rounded outwards.</summary>
    internal readonly record struct Box1(float MinX, float MinY, float MaxX, float MaxY)
    {
        /// <summary>The box round a point.</summary>
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        internal static Box1 Around(double x, double y, double reach) =>
            new((float)(x - reach), (float)(y - reach), (float)(x + reach), (float)(y + reach));
    }

    /// <summary>Eight boxes side by side.</summary>
    internal readonly struct Boxes8(Vector256<float> minX, Vector256<float> minY, Vector256<float> maxX, Vector256<float> maxY)
    {
        internal readonly Vector256<float> MinX = minX;
        internal readonly Vector256<float> MinY = minY;
        internal readonly Vector256<float> MaxX = maxX;
        internal readonly Vector256<float> MaxY = maxY;

        /// <summary>A bit for each box that may meet the one given.</summary>
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        internal uint Meeting(in Box1 box) => (
            Vector256.LessThanOrEqual(MinX, Vector256.Create(box.MaxX))
            & Vector256.LessThanOrEqual(MinY, Vector256.Create(box.MaxY))
            & Vector256.GreaterThanOrEqual(MaxX, Vector256.Create(box.MinX))
            & Vector256.GreaterThanOrEqual(MaxY, Vector256.Create(box.MinY))).ExtractMostSignificantBits();
    }
}
