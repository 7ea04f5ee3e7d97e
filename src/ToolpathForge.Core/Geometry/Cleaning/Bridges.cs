namespace ToolpathForge.Geometry;

/// <summary>
/// Which pieces can be part of no closed loop: those whose loss would part what hangs together (the bridges of the graph of ends and pieces).
/// By Tarjan's lowest numbers in one depth-first walk (R. E. Tarjan, A note on finding the bridges of a graph, Information Processing Letters 2, 1974), with a stack of its own,
/// so that a long chain is no deep recursion.
/// </summary>
internal static class Bridges
{
    /// <summary>For each piece whether it is a bridge.</summary>
    internal static bool[] Find(EndKnots ends)
    {
        var bridge = new bool[ends.PieceCount];
        int count = ends.Knots.Count;
        var number = new int[count];
        var lowest = new int[count];
        var next = new int[count];
        var arrived = new int[count];
        int counter = 0;
        var stack = new Stack<int>();
        for (int start = 0; start < count; start++)
        {
            if (number[start] != 0)
            {
                continue;
            }

            number[start] = lowest[start] = ++counter;
            arrived[start] = -1;
            stack.Push(start);
            while (stack.Count > 0)
            {
                int knot = stack.Peek();
                if (next[knot] < ends.Knots[knot].Count)
                {
                    int end = ends.Knots[knot][next[knot]++];
                    if (end >> 1 == arrived[knot])
                    {
                        continue;
                    }

                    int to = ends.KnotOf(end ^ 1);
                    if (number[to] != 0)
                    {
                        lowest[knot] = Math.Min(lowest[knot], number[to]);
                        continue;
                    }

                    number[to] = lowest[to] = ++counter;
                    arrived[to] = end >> 1;
                    stack.Push(to);
                    continue;
                }

                stack.Pop();
                if (arrived[knot] >= 0)
                {
                    int above = stack.Peek();
                    lowest[above] = Math.Min(lowest[above], lowest[knot]);
                    bridge[arrived[knot]] = lowest[knot] > number[above];
                }
            }
        }

        return bridge;
    }
}
