namespace ToolpathForge.Geometry;

/// <content>Events in order along each edge, and which nodes are knotted.</content>
internal sealed partial class Arrangement
{
    private int[] _eventStart = new int[65];
    private int[] _events = new int[64];
    private int[] _parent = [];
    private bool[] _knotted = [];
    private bool _anyKnot;

    /// <summary>How near another event makes a slight crossing a knot, in tolerances: a tenth of one across, divided by the least sine of such a crossing.</summary>
    private const double SlightTolerances = 1e4;

    // An event is contact·2 + side: side 0 is the contact's first edge.
    private void SortEvents()
    {
        int count = EdgeCount;
        Grow(ref _eventStart, count + 1);
        int[] start = _eventStart;
        Array.Clear(start, 0, count + 1);
        for (int c = 0; c < _contactCount; c++)
        {
            ref Contact contact = ref _contacts[c];
            if (contact.EndA == 0)
            {
                start[contact.A]++;
            }

            if (contact.EndB == 0)
            {
                start[contact.B]++;
            }
        }

        int sum = 0;
        for (int e = 0; e < count; e++)
        {
            sum += start[e];
            start[e] = sum;
        }

        start[count] = sum;
        Grow(ref _events, sum);

        // Filled from the back, each start walks down to its place; contacts then stand in ascending order.
        for (int c = _contactCount - 1; c >= 0; c--)
        {
            ref Contact contact = ref _contacts[c];
            if (contact.EndA == 0)
            {
                _events[--start[contact.A]] = c << 1;
            }

            if (contact.EndB == 0)
            {
                _events[--start[contact.B]] = (c << 1) | 1;
            }
        }

        for (int e = 0; e < count; e++)
        {
            int from = start[e];
            int to = start[e + 1];
            for (int i = from; i < to; i++)
            {
                int moving = _events[i];
                double place = PlaceOf(moving);
                int k = i;
                while (k > from && PlaceOf(_events[k - 1]) > place)
                {
                    _events[k] = _events[k - 1];
                    k--;
                }

                _events[k] = moving;
            }

            for (int i = from; i < to; i++)
            {
                ref Contact contact = ref _contacts[_events[i] >> 1];
                if ((_events[i] & 1) == 0)
                {
                    contact.RankA = i - from;
                }
                else
                {
                    contact.RankB = i - from;
                }
            }
        }
    }

    private double PlaceOf(int @event)
    {
        ref Contact contact = ref _contacts[@event >> 1];
        return (@event & 1) == 0 ? contact.PlaceA : contact.PlaceB;
    }

    // Nodes: e is the end of edge e, EdgeCount + e its start when free, 2·EdgeCount + c contact c. Joined into one where they lie within the tolerance.
    private void MarkKnots(NodeRule rule)
    {
        double merge = 2 * _tolerance;
        double wide = SlightTolerances * _tolerance;
        _anyKnot = false;
        if (rule == NodeRule.Tested)
        {
            for (int c = 0; c < _contactCount; c++)
            {
                _contacts[c].Knotted = true;
            }
        }

        bool united = false;
        for (int e = 0; e < EdgeCount; e++)
        {
            int from = _eventStart[e];
            int to = _eventStart[e + 1];
            if (from == to)
            {
                continue;
            }

            double end = Edges[e].EndPlace;
            double before = -end;
            for (int i = from; i <= to; i++)
            {
                double place = i < to ? PlaceOf(_events[i]) : end;
                if (place - before < merge)
                {
                    united |= Unite(ref united, i == from ? StartNode(e) : ContactNode(i - 1), i == to ? e : ContactNode(i));
                    MarkContact(i - 1, from, to);
                    MarkContact(i, from, to);
                }
                else if (place - before < wide && (IsSlight(i - 1, from, to) || IsSlight(i, from, to)))
                {
                    // Which comes first is not certain.
                    MarkContact(i - 1, from, to);
                    MarkContact(i, from, to);
                }

                before = place;
            }
        }

        for (int c = 0; c < _contactCount; c++)
        {
            ref Contact contact = ref _contacts[c];
            if (!contact.Knotted)
            {
                continue;
            }

            _anyKnot = true;
            if (contact.EndA != 0)
            {
                united |= Unite(ref united, contact.EndA < 0 ? StartNode(contact.A) : contact.A, (2 * EdgeCount) + c);
            }

            if (contact.EndB != 0)
            {
                united |= Unite(ref united, contact.EndB < 0 ? StartNode(contact.B) : contact.B, (2 * EdgeCount) + c);
            }
        }

        if (!_anyKnot)
        {
            return;
        }

        Begin(ref united);
        int nodes = (2 * EdgeCount) + _contactCount;
        Grow(ref _knotted, nodes);
        Array.Clear(_knotted, 0, nodes);
        for (int c = 0; c < _contactCount; c++)
        {
            if (_contacts[c].Knotted)
            {
                _knotted[Root((2 * EdgeCount) + c)] = true;
            }
        }

        int ContactNode(int i) => (2 * EdgeCount) + (_events[i] >> 1);

        bool IsSlight(int i, int from, int to) => i >= from && i < to && _contacts[_events[i] >> 1].Slight;

        void MarkContact(int i, int from, int to)
        {
            if (i >= from && i < to)
            {
                _contacts[_events[i] >> 1].Knotted = true;
            }
        }
    }

    private int StartNode(int edge) => (Traits[edge] & EdgeTraits.StartJoined) != EdgeTraits.None ? _previous[edge] : EdgeCount + edge;

    private void Begin(ref bool begun)
    {
        if (begun)
        {
            return;
        }

        begun = true;
        int nodes = (2 * EdgeCount) + _contactCount;
        Grow(ref _parent, nodes);
        for (int i = 0; i < nodes; i++)
        {
            _parent[i] = i;
        }
    }

    private bool Unite(ref bool begun, int a, int b)
    {
        Begin(ref begun);
        a = Root(a);
        b = Root(b);

        // The lower index leads, so that the order of finds has no say.
        if (a < b)
        {
            _parent[b] = a;
        }
        else
        {
            _parent[a] = b;
        }

        return true;
    }

    private int Root(int node)
    {
        while (_parent[node] != node)
        {
            _parent[node] = _parent[_parent[node]];
            node = _parent[node];
        }

        return node;
    }

    private static void Grow<T>(ref T[] array, int size)
    {
        if (array.Length < size)
        {
            array = new T[Math.Max(size, array.Length * 2)];
        }
    }
}
