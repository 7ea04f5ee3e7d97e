using System.Diagnostics.CodeAnalysis;
using System.Runtime.CompilerServices;

namespace ToolpathForge.Geometry;

/// <summary>One point that two edges share. Written where it stays, for copies of it show in the time of small offsets.</summary>
internal struct Meeting
{
    /// <summary>Its place on the first edge (see <see cref="Edge"/>).</summary>
    internal double PlaceA;

    /// <summary>Its place on the second edge.</summary>
    internal double PlaceB;

    /// <summary>The point.</summary>
    internal double X, Y;

    /// <summary>-1 when it is the start of the first edge, 1 its end, 0 a point between.</summary>
    internal sbyte EndA;

    /// <summary>The same of the second edge.</summary>
    internal sbyte EndB;

    /// <summary>What kind of meeting.</summary>
    internal MeetingKind Kind;

    /// <summary>For a crossing: the first edge passes from the right of the second to its left.</summary>
    internal bool EntersLeft;
}

/// <summary>How two edges meet.</summary>
internal enum MeetingKind : byte
{
    /// <summary>They cross between their ends, plainly.</summary>
    Cross,

    /// <summary>They cross between their ends at a small angle: plainly as long as nothing else happens close by on either edge.</summary>
    SlightCross,

    /// <summary>They cross between their ends at so small an angle that the order along an edge may be rounding.</summary>
    ShallowCross,

    /// <summary>An end of one lies on the other.</summary>
    Touch,
}

/// <summary>The meetings of one pair of edges: at most two crossings and four ends.</summary>
internal struct Meetings
{
    private Buffer _items;

    /// <summary>How many there are.</summary>
    internal int Count;

    /// <summary>One of them.</summary>
    [UnscopedRef]
    internal ref readonly Meeting this[int index] => ref _items[index];

    /// <summary>Adds one.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal void Add(double placeA, double placeB, double x, double y, int endA, int endB, MeetingKind kind, bool entersLeft)
    {
        ref Meeting m = ref _items[Count++];
        m.PlaceA = placeA;
        m.PlaceB = placeB;
        m.X = x;
        m.Y = y;
        m.EndA = (sbyte)endA;
        m.EndB = (sbyte)endB;
        m.Kind = kind;
        m.EntersLeft = entersLeft;
    }

    /// <summary>Adds one.</summary>
    internal void Add(in Meeting meeting) => _items[Count++] = meeting;

    [InlineArray(6)]
    private struct Buffer
    {
        private Meeting _first;
    }
}
