using System.Runtime.CompilerServices;

namespace ToolpathForge.Geometry;

/// <summary>One point that two edges share.</summary>
/// <param name="PlaceA">Its place on the first edge (see <see cref="Edge"/>).</param>
/// <param name="PlaceB">Its place on the second edge.</param>
/// <param name="X">The point.</param>
/// <param name="Y">The point.</param>
/// <param name="EndA">-1 when it is the start of the first edge, 1 its end, 0 a point between.</param>
/// <param name="EndB">The same of the second edge.</param>
/// <param name="Kind">What kind of meeting.</param>
/// <param name="EntersLeft">For a crossing: the first edge passes from the right of the second to its left.</param>
internal readonly record struct Meeting(double PlaceA, double PlaceB, double X, double Y, sbyte EndA, sbyte EndB, MeetingKind Kind, bool EntersLeft);

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
    internal Meeting this[int index] => _items[index];

    /// <summary>Adds one.</summary>
    internal void Add(in Meeting meeting) => _items[Count++] = meeting;

    [InlineArray(6)]
    private struct Buffer
    {
        private Meeting _first;
    }
}
