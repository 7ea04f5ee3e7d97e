using System.Numerics;
using System.Runtime.CompilerServices;

namespace ToolpathForge.Geometry;

/// <summary>
/// Splits directed lines and arcs where they meet, selects the pieces that bound what is wanted, and stitches them into loops.
/// One engine serves offsets and set operations. An instance is a workspace that keeps its arrays from call to call.
/// </summary>
/// <remarks>
/// <para>Terms, in the order the data meets them. <b>Edge</b>: a directed line or arc. <b>Joined</b>: an edge that begins where another ends; an end that is not joined
/// is <b>free</b>. <b>Contact</b>: a point two edges share. <b>Event</b>: a contact seen from one of its edges, told by its place. <b>Slice</b>: the part of an edge
/// between neighbouring events. <b>Node</b>: where slices meet. <b>Run</b>: slices that follow one another. <b>Loop</b>: a run that closes.</para>
/// <para>A <b>plain</b> node is one crossing of two edges, away from any other event. There the continuation is known from the sign alone: what is wanted lies on the
/// left of every edge, so at a union's boundary an edge that passes to the left of another ends and the other goes on; at an intersection's the reverse. All slices of a run
/// through plain nodes are therefore right or wrong together, and one test of one slice decides a whole loop. This is why one engine suffices: a
/// simple outline costs one test for each loop, as in the methods that slice and stitch, and no winding number is swept along.</para>
/// <para>Every other node (three edges through a point, an end on an edge, edges that coincide, a shallow crossing) is <b>knotted</b>: runs end there, each is
/// tested on its own, coincident ones are paired off, and what is left is joined by the order of directions about the node.</para>
/// <para>Measured before settling (2 cores, gear of 20,000 arcs): testing every slice by its distance cost 2.1 times as much as this, and walking winding numbers needs the
/// links at concave corners as further edges, a third more crossings on a noisy ring.</para>
/// </remarks>
internal sealed partial class Arrangement
{
    private readonly BoxTree _tree = new();
    private int[] _found = new int[64];
    private double[] _turned = [];
    private Contact[] _contacts = new Contact[64];
    private int _contactCount;
    private double _tolerance;

    /// <summary>The edges; <see cref="EdgeCount"/> of them count.</summary>
    internal Edge[] Edges = new Edge[64];

    /// <summary>For each edge the edge that begins where it ends, or -1.</summary>
    internal int[] Next = new int[64];

    /// <summary>For each joined edge the edge that ends where it begins.</summary>
    private int[] _previous = new int[64];

    /// <summary>For each edge what is known of its ends.</summary>
    internal EdgeTraits[] Traits = new EdgeTraits[64];

    /// <summary>How many edges there are.</summary>
    internal int EdgeCount { get; private set; }

    /// <summary>Why the last run failed; null when it did not.</summary>
    internal string? Failure { get; private set; }

    /// <summary>Begins anew with room for a number of edges.</summary>
    internal void Clear(int room)
    {
        EdgeCount = 0;
        if (Edges.Length < room)
        {
            int size = Math.Max(room, Edges.Length * 2);
            Edges = new Edge[size];
            Next = new int[size];
            _previous = new int[size];
            Traits = new EdgeTraits[size];
        }
    }

    // For loops that are taken as they are nobody knows how many edges come.
    private void MakeRoom()
    {
        if (EdgeCount == Edges.Length)
        {
            Array.Resize(ref Edges, EdgeCount * 2);
            Array.Resize(ref Next, EdgeCount * 2);
            Array.Resize(ref _previous, EdgeCount * 2);
            Array.Resize(ref Traits, EdgeCount * 2);
        }
    }

    /// <summary>Adds an edge with a free start and end, to be written where it stays: a copy would wait for its fields. The caller has asked for room.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal ref Edge Add()
    {
        int index = EdgeCount++;
        Next[index] = -1;
        Traits[index] = EdgeTraits.None;
        return ref Edges[index];
    }

    /// <summary>Says that an edge begins where another ends; tangent tells that the two do so smoothly and meet nowhere else.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal void Link(int from, int to, bool tangent)
    {
        Next[from] = to;
        _previous[to] = from;
        Traits[to] |= EdgeTraits.StartJoined;
        if (tangent)
        {
            Traits[from] |= EdgeTraits.TangentNext;
        }
    }

    /// <summary>Splits, selects and stitches what has been added. The loops are then read from <see cref="LoopCount"/> on. False with a reason when they do not close.</summary>
    /// <param name="kind">What decides at a plain node.</param>
    /// <param name="largest">Bound of the coordinates, mm.</param>
    /// <param name="tolerance">What counts as one point, mm.</param>
    /// <param name="scattered">True when edges that follow one another in order do not stand near each other, as in many loops.</param>
    /// <param name="test">Decides about slices.</param>
    internal bool Run<TTest>(NodeRule kind, double largest, double tolerance, bool scattered, ref TTest test)
        where TTest : struct, ISliceTest
    {
        Failure = null;
        _tolerance = tolerance;
        FindContacts(largest, scattered);
        SortEvents();
        MarkKnots(kind);
        return Trace(kind, ref test);
    }

    /// <summary>
    /// A smooth chain that turns by less than half a turn in all, left and right alike, cannot meet itself: a loop with one corner turns by half a turn at least.
    /// A turn is at most four times the bulge; the bound keeps a hundredth in hand for joins that are smooth but for rounding.
    /// </summary>
    private const double ChainBulges = (Math.PI / 4) - 0.01;

    private void SumTurns()
    {
        int count = EdgeCount;
        Grow(ref _turned, count);
        double[] turned = _turned;
        Edge[] edges = Edges;
        int[] next = Next;
        EdgeTraits[] traits = Traits;
        double sum = 0;
        for (int i = 0; i < count; i++)
        {
            sum += Math.Abs(edges[i].Bulge);
            turned[i] = sum;
            if (next[i] != i + 1 || (traits[i] & EdgeTraits.TangentNext) == EdgeTraits.None)
            {
                sum += 1;
            }
        }
    }

    private void FindContacts(double largest, bool scattered)
    {
        _contactCount = 0;
        int count = EdgeCount;
        SumTurns();
        _tree.Reset(count);
        double pad = BoxTree.PadFor(largest, _tolerance);
        Edge[] edges = Edges;
        for (int i = 0; i < count; i++)
        {
            _tree.Set(i, edges[i], pad);
        }

        _tree.Build(scattered);
        double[] turned = _turned;
        Unsafe.SkipInit(out Meetings meetings);
        int groups = _tree.Groups;
        for (int g = 0; g < groups; g++)
        {
            int near = _tree.Collect(_tree.Round(g), g, ref _found);
            int first = g << 3;
            int own8 = Math.Min(8, count - first);
            for (int k = 0; k < near; k++)
            {
                int h = _found[k];
                BoxTree.Boxes8 other = _tree.Group(h);
                for (int lane = 0; lane < own8; lane++)
                {
                    uint mask = other.Meeting(_tree.Item(first + lane));
                    if (h == g)
                    {
                        mask &= ~0u << (lane + 1);
                    }

                    if (mask == 0)
                    {
                        continue;
                    }

                    int i = first + lane;
                    double before = turned[i] - Math.Abs(edges[i].Bulge);
                    while (mask != 0)
                    {
                        int j = (h << 3) + BitOperations.TrailingZeroCount(mask);
                        mask &= mask - 1;
                        if (turned[j] - before >= ChainBulges)
                        {
                            Meet(i, j, ref meetings);
                        }
                    }
                }
            }
        }
    }

    private void Meet(int i, int j, ref Meetings meetings)
    {
        bool follows = Next[i] == j;
        bool leads = Next[j] == i;
        if ((follows && (Traits[i] & EdgeTraits.TangentNext) != EdgeTraits.None) || (leads && (Traits[j] & EdgeTraits.TangentNext) != EdgeTraits.None))
        {
            return;
        }

        EdgeMeeting.Find(Edges[i], Edges[j], _tolerance, ref meetings);
        for (int k = 0; k < meetings.Count; k++)
        {
            ref readonly Meeting m = ref meetings[k];

            // Where one edge ends and the next begins is no contact but the join itself.
            if ((follows && m.EndA == 1 && m.EndB == -1) || (leads && m.EndA == -1 && m.EndB == 1))
            {
                continue;
            }

            if (_contactCount == _contacts.Length)
            {
                Array.Resize(ref _contacts, _contactCount * 2);
            }

            ref Contact c = ref _contacts[_contactCount++];
            c.A = i;
            c.B = j;
            c.PlaceA = m.PlaceA;
            c.PlaceB = m.PlaceB;
            c.X = m.X;
            c.Y = m.Y;
            c.EndA = m.EndA;
            c.EndB = m.EndB;
            c.EntersLeft = m.EntersLeft;
            c.Knotted = m.Kind is MeetingKind.ShallowCross or MeetingKind.Touch;
            c.Slight = m.Kind == MeetingKind.SlightCross;
        }
    }

    /// <summary>A point that two edges share, and its rank among the events of each.</summary>
    private struct Contact
    {
        internal double PlaceA, PlaceB, X, Y;
        internal int A, B, RankA, RankB;
        internal sbyte EndA, EndB;
        internal bool EntersLeft, Knotted, Slight;
    }
}

/// <summary>What is known of an edge's ends.</summary>
[Flags]
internal enum EdgeTraits : byte
{
    /// <summary>Both ends are free.</summary>
    None = 0,

    /// <summary>It begins where another edge ends.</summary>
    StartJoined = 1,

    /// <summary>The edge that begins at its end is tangent to it and meets it nowhere else.</summary>
    TangentNext = 2,
}

/// <summary>What decides at a plain node (see <see cref="Arrangement"/>).</summary>
internal enum NodeRule
{
    /// <summary>What is wanted is left of either edge: unions, offsets outwards.</summary>
    Union,

    /// <summary>What is wanted is left of both edges: offsets inwards.</summary>
    Intersection,

    /// <summary>The sign decides nothing; every node is knotted.</summary>
    Tested,
}

/// <summary>Decides whether a slice bounds what is wanted.</summary>
internal interface ISliceTest
{
    /// <summary>Asked about the middle of a slice.</summary>
    /// <param name="edge">The index of the edge.</param>
    /// <param name="middle">A point well inside the slice.</param>
    /// <param name="direction">Direction of travel there.</param>
    bool Keep(int edge, Point2 middle, Point2 direction);
}
