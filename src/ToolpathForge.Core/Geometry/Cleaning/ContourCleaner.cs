using System.Collections.Immutable;
using ToolpathForge.Findings;

namespace ToolpathForge.Geometry;

/// <summary>
/// Makes outlines of what a drawing holds: lines, arcs and rows of them in any order and direction, with gaps, doubles and leftovers.
/// Everything it changes is told with its place and size, and everything it cannot decide is told as a finding. The order and the direction in which pieces come make no
/// difference to the result, not even in the last digit.
/// </summary>
public static class ContourCleaner
{
    /// <summary>
    /// Ends this near are one, mm, and lines that follow each other this closely are drawn twice: the finest increment that any dialect writes. Single lines shorter than this are
    /// left out.
    /// </summary>
    public const double SameEnd = 1e-4;

    /// <summary>Cleans pieces up.</summary>
    /// <param name="pieces">Any number, in any order. A piece with a coordinate that is no number, or beyond <see cref="Accuracy.LargestCoordinate"/>, is left out and told.</param>
    /// <param name="options">How; null for <see cref="CleaningOptions.Usual"/>.</param>
    /// <returns>What was made, what was put right, and what the person should know. It never throws on what a piece holds.</returns>
    public static CleanOutlines Clean(ReadOnlySpan<LoosePiece> pieces, CleaningOptions? options = null) => CleanFrom(pieces.ToArray(), options);

    /// <summary>The same of pieces that come one after the other, so that no list of all of them need be held beside what is made of them.</summary>
    /// <inheritdoc cref="Clean"/>
    public static CleanOutlines CleanFrom(IEnumerable<LoosePiece> pieces, CleaningOptions? options = null)
    {
        var repairs = new List<Repair>();
        var findings = new List<Finding>();
        double gap = CleaningFindings.GapWithinBounds(options ?? CleaningOptions.Usual, findings);
        double same = Math.Clamp(gap, Accuracy.SamePoint, SameEnd);
        List<UsablePiece> usable = PieceIntake.Take(pieces, same, repairs, findings);
        DoubledPieces.Drop(usable, same, repairs);
        List<Chain> chains = ChainMaking.Make(usable, same, gap, repairs);

        (Vertex[] Row, bool IsClosed)[] rows = [.. chains.Select(c => (c.Row, c.IsClosed))];
        var index = new EdgeIndex(rows, Accuracy.StraightSagitta);
        List<Contact> contacts = ContourMeetings.Find(index, rows);
        bool[] crossing = Crossing(contacts, chains);
        var nesting = new Nesting(index, rows, [.. chains.Select((c, i) => c.IsClosed && !crossing[i])]);

        int[] closed = [.. Enumerable.Range(0, chains.Count).Where(i => chains[i].IsClosed)];
        var placeOf = new int[chains.Count];
        for (int k = 0; k < closed.Length; k++)
        {
            placeOf[closed[k]] = k;
        }

        ImmutableArray<CleanContour> outlines = [.. closed.Select(i => Closed(chains[i], i, nesting, placeOf, !crossing[i]))];
        ImmutableArray<CleanContour> open =
        [
            .. chains.Select((c, i) => (c, i)).Where(x => !x.c.IsClosed).Select(x => new CleanContour(new Contour(x.c.Row, false, true), x.c.Sources, 0, -1, !crossing[x.i])),
        ];
        repairs.Sort(ByKindAndPlace);
        CleaningFindings.Tell(repairs, contacts, chains, gap, findings);
        return new CleanOutlines(Regions(outlines), outlines, open, [.. repairs], [.. findings]);
    }

    // Between a closed and an open contour only the open one may be at fault: a line across an outline leaves the outline whole.
    private static bool[] Crossing(List<Contact> contacts, List<Chain> chains)
    {
        var crossing = new bool[chains.Count];
        foreach (Contact contact in contacts)
        {
            if (contact.Kind == ContactKind.Crossing)
            {
                bool alike = chains[contact.A].IsClosed == chains[contact.B].IsClosed;
                crossing[contact.A] |= alike || !chains[contact.A].IsClosed;
                crossing[contact.B] |= alike || !chains[contact.B].IsClosed;
            }
        }

        return crossing;
    }

    private static CleanContour Closed(Chain chain, int i, Nesting nesting, int[] placeOf, bool sound)
    {
        bool wanted = (nesting.Depth[i] & 1) == 0;
        Vertex[] row = nesting.IsCounterClockwise[i] == wanted ? chain.Row : VertexOrder.FromSmallest(VertexOrder.Reversed(chain.Row, true));
        int parent = nesting.Parent[i];
        return new CleanContour(new Contour(row, true, true), chain.Sources, nesting.Depth[i], parent < 0 ? -1 : placeOf[parent], sound);
    }

    private static ImmutableArray<Region> Regions(ImmutableArray<CleanContour> closed)
    {
        var holes = new List<Contour>[closed.Length];
        for (int i = 0; i < closed.Length; i++)
        {
            if (closed[i] is { IsSound: true, Parent: >= 0 } hole && (hole.Depth & 1) == 1)
            {
                (holes[hole.Parent] ??= []).Add(hole.Contour);
            }
        }

        ImmutableArray<Region>.Builder regions = ImmutableArray.CreateBuilder<Region>();
        for (int i = 0; i < closed.Length; i++)
        {
            if (closed[i].IsSound && (closed[i].Depth & 1) == 0)
            {
                regions.Add(Region.Oriented([closed[i].Contour, .. holes[i] ?? []]));
            }
        }

        return regions.ToImmutable();
    }

    private static int ByKindAndPlace(Repair a, Repair b)
    {
        int order = a.Kind.CompareTo(b.Kind);
        order = order != 0 ? order : VertexOrder.Compare(a.At, b.At);
        order = order != 0 ? order : a.Size.CompareTo(b.Size);
        return order != 0 ? order : a.Sources.AsSpan().SequenceCompareTo(b.Sources.AsSpan());
    }
}
