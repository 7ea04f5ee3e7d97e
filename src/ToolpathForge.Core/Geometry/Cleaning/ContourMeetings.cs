namespace ToolpathForge.Geometry;

/// <summary>How contours meet.</summary>
internal enum ContactKind
{
    /// <summary>One passes from one side of the other to the other side.</summary>
    Crossing,

    /// <summary>They share a point and stay on their sides.</summary>
    Touch,

    /// <summary>They share a stretch.</summary>
    Overlap,
}

/// <summary>One place where two contours meet, or one meets itself.</summary>
/// <param name="A">The contour of the smaller number.</param>
/// <param name="B">The other one; the same where it meets itself.</param>
/// <param name="Kind">How.</param>
/// <param name="At">Where; the middle of a shared stretch.</param>
/// <param name="Length">Length of a shared stretch, mm; else 0.</param>
internal readonly record struct Contact(int A, int B, ContactKind Kind, Point2 At, double Length)
{
    /// <summary>A total order: by contours, kind, place and length.</summary>
    internal static int Compare(Contact a, Contact b)
    {
        int order = a.A.CompareTo(b.A);
        order = order != 0 ? order : a.B.CompareTo(b.B);
        order = order != 0 ? order : a.Kind.CompareTo(b.Kind);
        order = order != 0 ? order : VertexOrder.Compare(a.At, b.At);
        return order != 0 ? order : a.Length.CompareTo(b.Length);
    }
}

/// <summary>Finds where contours cross, touch and overlap, by looking at the pairs of edges whose boxes meet.</summary>
internal sealed class ContourMeetings
{
    private readonly EdgeIndex _index;
    private readonly IReadOnlyList<(Vertex[] Row, bool IsClosed)> _rows;
    private readonly List<Contact> _contacts = [];
    private readonly HashSet<(int, int)> _seen = [];

    private ContourMeetings(EdgeIndex index, IReadOnlyList<(Vertex[] Row, bool IsClosed)> rows)
    {
        _index = index;
        _rows = rows;
    }

    /// <summary>Every contact, in order. Neighbouring segments meet at their vertex: that is none.</summary>
    internal static List<Contact> Find(EdgeIndex index, IReadOnlyList<(Vertex[] Row, bool IsClosed)> rows)
    {
        var search = new ContourMeetings(index, rows);
        search.Run();
        search._contacts.Sort(Contact.Compare);
        return search._contacts;
    }

    private void Run()
    {
        var near = new List<int>();
        Meetings found = default;
        for (int i = 0; i < _index.Edges.Length; i++)
        {
            _index.Near(i, i + 1, near);
            foreach (int j in near)
            {
                if (EdgeOverlap.Of(_index.Edges[i], _index.Edges[j], _index.Touching) is { } span)
                {
                    Point2 middle = _index.Edges[i].At(_index.Edges[i].Halfway(span.From, span.To));
                    Add(i, j, ContactKind.Overlap, middle, _index.Edges[i].LengthBetween(span.From, span.To));
                    continue;
                }

                EdgeMeeting.Find(_index.Edges[i], _index.Edges[j], _index.Touching, ref found);
                for (int k = 0; k < found.Count; k++)
                {
                    Take(i, j, found[k]);
                }

                if (found.Count == 0)
                {
                    Graze(i, j);
                }
            }
        }
    }

    private void Take(int i, int j, in Meeting meeting)
    {
        var at = new Point2(meeting.X, meeting.Y);
        if (meeting.Kind != MeetingKind.Touch)
        {
            Add(i, j, ContactKind.Crossing, at, 0);
            return;
        }

        // A place is the start of an edge or within one, so that each contact at a vertex has one name, whichever of its two edges found it.
        (int a, double placeA) = Place(i, meeting.EndA, meeting.PlaceA);
        (int b, double placeB) = Place(j, meeting.EndB, meeting.PlaceB);
        bool startA = meeting.EndA != 0;
        bool startB = meeting.EndB != 0;
        if (startA && startB && (a == b || IsTinyStep(a, b)))
        {
            return;
        }

        int nameA = (a << 1) | (startA ? 1 : 0);
        int nameB = (b << 1) | (startB ? 1 : 0);
        if (!_seen.Add((Math.Min(nameA, nameB), Math.Max(nameA, nameB))))
        {
            return;
        }

        Add(i, j, PassesThrough(a, placeA, startA, b, placeB, startB) ? ContactKind.Crossing : ContactKind.Touch, at, 0);
    }

    // A line touched by an arc, or two arcs touching, between their ends.
    private void Graze(int i, int j)
    {
        ref Edge a = ref _index.Edges[i];
        ref Edge b = ref _index.Edges[j];
        if (a.Kappa == 0 && b.Kappa == 0)
        {
            return;
        }

        SegmentGap gap = SegmentDistance.Between(Of(a), Of(b));
        if (gap.Distance <= _index.Touching)
        {
            Add(i, j, ContactKind.Touch, gap.On, 0);
        }
    }

    private static Segment Of(in Edge e) => new(new Point2(e.X0, e.Y0), new Point2(e.X1, e.Y1), e.Bulge);

    // The last point of an open contour begins no edge: it is named by the complement of the one that ends there.
    private (int Edge, double Place) Place(int edge, int end, double place)
    {
        if (end != 1)
        {
            return (edge, place);
        }

        int next = Next(edge);
        return next < 0 ? (~edge, place) : (next, -_index.Edges[next].EndPlace);
    }

    private int Next(int edge)
    {
        int owner = _index.OwnerOf[edge];
        return edge + 1 < _index.FirstOf[owner + 1] ? edge + 1 : _rows[owner].IsClosed ? _index.FirstOf[owner] : -1;
    }

    private int Before(int edge)
    {
        int owner = _index.OwnerOf[edge];
        return edge > _index.FirstOf[owner] ? edge - 1 : _rows[owner].IsClosed ? _index.FirstOf[owner + 1] - 1 : -1;
    }

    // Vertices of one contour with nothing but an edge too short to matter between them.
    private bool IsTinyStep(int a, int b) => IsTinyTo(a, b) || IsTinyTo(b, a);

    private bool IsTinyTo(int a, int b) => a >= 0 && 2 * _index.Edges[a].Half < 4 * _index.Touching && Next(a) == b;

    private bool PassesThrough(int a, double placeA, bool startA, int b, double placeB, bool startB)
    {
        if (a < 0 || b < 0)
        {
            return false;
        }

        int beforeA = startA ? Before(a) : a;
        int beforeB = startB ? Before(b) : b;
        if (beforeA < 0 || beforeB < 0)
        {
            return false;
        }

        double look = Math.Min(Math.Min(_index.Edges[a].Half, _index.Edges[b].Half), Math.Min(_index.Edges[beforeA].Half, _index.Edges[beforeB].Half)) / 4;
        look = Math.Min(look, 1);
        double from = Leaving(beforeA, startA ? _index.Edges[beforeA].EndPlace : placeA, -look);
        double ahead = Round(Leaving(a, placeA, look) - from);
        double one = Round(Leaving(beforeB, startB ? _index.Edges[beforeB].EndPlace : placeB, -look) - from);
        double two = Round(Leaving(b, placeB, look) - from);
        if (Alike(one, 0) || Alike(two, 0) || Alike(one, ahead) || Alike(two, ahead))
        {
            return false;
        }

        return one < ahead != two < ahead;

        static double Round(double angle) => angle < 0 ? angle + (2 * Math.PI) : angle;

        static bool Alike(double x, double y) => Math.Abs(Math.IEEERemainder(x - y, 2 * Math.PI)) < Accuracy.SameDirection;
    }

    // Which way a point of the edge lies that is a little ahead or behind.
    private double Leaving(int edge, double place, double look)
    {
        ref Edge e = ref _index.Edges[edge];
        double t = e.Kappa * place / 2;
        double there = Math.Clamp(place + (look * (1 + (t * t))), -e.EndPlace, e.EndPlace);
        return (e.At(there) - e.At(place)).Angle;
    }

    private void Add(int i, int j, ContactKind kind, Point2 at, double length)
    {
        int a = _index.OwnerOf[i];
        int b = _index.OwnerOf[j];
        _contacts.Add(new Contact(Math.Min(a, b), Math.Max(a, b), kind, at + _index.Shift, length));
    }
}
