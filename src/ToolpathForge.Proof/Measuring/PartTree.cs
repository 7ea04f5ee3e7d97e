namespace ToolpathForge.Proof;

/// <summary>
/// Finds parts near a place quickly. Parts come as a path runs, so neighbours in the list are neighbours on the bed, and a tree of boxes over halves of the list needs no sorting.
/// Each part has an offset that is added to every distance to it (minus the bit's radius, say), so that the nearest <em>surface</em> is found among bits of several sizes.
/// </summary>
internal sealed class PartTree
{
    private const int LeafSize = 4;

    private readonly PathPart[] parts;
    private readonly double[] offsets;
    private readonly Box[] boxes;
    private readonly Node[] nodes;

    internal PartTree(PathPart[] parts, double[] offsets)
    {
        this.parts = parts;
        this.offsets = offsets;
        boxes = new Box[parts.Length];
        for (int i = 0; i < parts.Length; i++)
        {
            boxes[i] = parts[i].Box;
        }

        var list = new List<Node>((parts.Length / 2) + 1);
        if (parts.Length > 0)
        {
            Build(list, 0, parts.Length);
        }

        nodes = [.. list];
    }

    internal ReadOnlySpan<PathPart> Parts => parts;

    internal double Offset(int index) => offsets[index];

    internal Box BoxOf(int index) => boxes[index];

    /// <summary>Box of all parts; there has to be one.</summary>
    internal Box Box => nodes[0].Box;

    /// <summary>Part with the least distance plus offset to a point.</summary>
    /// <param name="p">The point.</param>
    /// <param name="hint">A part to try first, or -1.</param>
    /// <param name="value">Its distance plus offset; infinite without parts.</param>
    /// <returns>Index of the part, the first of equals save for the hint; -1 without parts.</returns>
    internal int NearestTo(PlanePoint p, int hint, out double value)
    {
        int best = -1;
        value = double.PositiveInfinity;
        if (hint >= 0 && hint < parts.Length)
        {
            best = hint;
            value = Distances.Between(p, parts[hint], out _) + offsets[hint];
        }

        if (nodes.Length == 0)
        {
            return best;
        }

        Span<int> stack = stackalloc int[64];
        int depth = 0;
        stack[depth++] = 0;
        while (depth > 0)
        {
            ref readonly Node node = ref nodes[stack[--depth]];
            if (!IsCloser(node.Box.SquareDistanceTo(p), node.LeastOffset, value))
            {
                continue;
            }

            if (node.Right == 0)
            {
                for (int i = node.First; i < node.End; i++)
                {
                    if (IsCloser(boxes[i].SquareDistanceTo(p), offsets[i], value))
                    {
                        double distance = Distances.Between(p, parts[i], out _) + offsets[i];
                        if (distance < value)
                        {
                            (best, value) = (i, distance);
                        }
                    }
                }

                continue;
            }

            int left = stack[depth] + 1, right = node.Right;
            bool leftFirst = nodes[left].Box.SquareDistanceTo(p) <= nodes[right].Box.SquareDistanceTo(p);
            stack[depth++] = leftFirst ? right : left;
            stack[depth++] = leftFirst ? left : right;
        }

        return best;
    }

    /// <summary>Least distance plus offset between a part and any of these.</summary>
    /// <param name="part">The part.</param>
    /// <param name="box">Its box.</param>
    /// <param name="cutoff">Only what is below it counts; takes the value found.</param>
    /// <param name="nearest">Where; the first point lies on <paramref name="part"/>.</param>
    /// <returns>Index of the part found; -1 if none is below the cutoff.</returns>
    internal int NearestTo(in PathPart part, Box box, ref double cutoff, ref Nearest nearest)
    {
        int best = -1;
        if (nodes.Length == 0)
        {
            return best;
        }

        Span<int> stack = stackalloc int[64];
        int depth = 0;
        stack[depth++] = 0;
        while (depth > 0)
        {
            ref readonly Node node = ref nodes[stack[--depth]];
            if (!IsCloser(node.Box.SquareDistanceTo(box), node.LeastOffset, cutoff))
            {
                continue;
            }

            if (node.Right == 0)
            {
                for (int i = node.First; i < node.End; i++)
                {
                    if (IsCloser(boxes[i].SquareDistanceTo(box), offsets[i], cutoff))
                    {
                        Nearest found = Distances.Between(part, parts[i]);
                        if (found.Value + offsets[i] < cutoff)
                        {
                            (best, cutoff, nearest) = (i, found.Value + offsets[i], found);
                        }
                    }
                }

                continue;
            }

            int left = stack[depth] + 1, right = node.Right;
            bool leftFirst = nodes[left].Box.SquareDistanceTo(box) <= nodes[right].Box.SquareDistanceTo(box);
            stack[depth++] = leftFirst ? right : left;
            stack[depth++] = leftFirst ? left : right;
        }

        return best;
    }

    /// <summary>Adds every part whose box comes so near to a box that its distance plus offset may be at most a limit, in the order of the list.</summary>
    internal void AddNear(Box box, double limit, List<int> found)
    {
        if (nodes.Length == 0)
        {
            return;
        }

        Span<int> stack = stackalloc int[64];
        int depth = 0;
        stack[depth++] = 0;
        while (depth > 0)
        {
            int index = stack[--depth];
            ref readonly Node node = ref nodes[index];
            if (!IsWithin(node.Box.SquareDistanceTo(box), node.LeastOffset, limit))
            {
                continue;
            }

            if (node.Right == 0)
            {
                for (int i = node.First; i < node.End; i++)
                {
                    if (IsWithin(boxes[i].SquareDistanceTo(box), offsets[i], limit))
                    {
                        found.Add(i);
                    }
                }

                continue;
            }

            stack[depth++] = node.Right;
            stack[depth++] = index + 1;
        }
    }

    private static bool IsCloser(double square, double offset, double value)
    {
        double room = value - offset;
        return room > 0 && square < room * room;
    }

    private static bool IsWithin(double square, double offset, double value)
    {
        double room = value - offset;
        return room >= 0 && square <= room * room;
    }

    private void Build(List<Node> list, int first, int end)
    {
        int own = list.Count;
        list.Add(default);
        if (end - first <= LeafSize)
        {
            Box box = boxes[first];
            double least = offsets[first];
            for (int i = first + 1; i < end; i++)
            {
                box = box.With(boxes[i]);
                least = Math.Min(least, offsets[i]);
            }

            list[own] = new Node(box, least, first, end, 0);
            return;
        }

        int middle = first + ((end - first) / 2);
        Build(list, first, middle);
        int right = list.Count;
        Build(list, middle, end);
        list[own] = new Node(list[own + 1].Box.With(list[right].Box), Math.Min(list[own + 1].LeastOffset, list[right].LeastOffset), first, end, right);
    }

    /// <summary>The left child follows its parent in the list; a leaf has no right one.</summary>
    private readonly record struct Node(Box Box, double LeastOffset, int First, int End, int Right);
}
