using ToolpathForge.Findings;

namespace ToolpathForge.Geometry;

/// <summary>Puts what the cleaning did and found into findings: one for each kind of repair, one for each pair of contours that meet.</summary>
internal static class CleaningFindings
{
    /// <summary>The gap to be closed, within its bounds; told when it was outside.</summary>
    internal static double GapWithinBounds(CleaningOptions options, List<Finding> findings)
    {
        double asked = options.Gap;
        double gap = asked >= 0 ? Math.Min(asked, CleaningOptions.WidestGap) : double.IsNaN(asked) ? CleaningOptions.UsualGap : 0;
        if (gap != asked)
        {
            findings.Add(Finding.Of(GeometryFindings.GapOutOfRange, Place.None, Quantity.Length(asked), Quantity.Length(gap)));
        }

        return gap;
    }

    /// <summary>Tells everything, in a fixed order.</summary>
    internal static void Tell(List<Repair> repairs, List<Contact> contacts, List<Chain> chains, double gap, List<Finding> findings)
    {
        for (int from = 0; from < contacts.Count;)
        {
            int to = from + 1;
            while (to < contacts.Count && contacts[to].A == contacts[from].A && contacts[to].B == contacts[from].B && contacts[to].Kind == contacts[from].Kind)
            {
                to++;
            }

            Contact first = contacts[from];
            double longest = 0;
            for (int i = from; i < to; i++)
            {
                longest = Math.Max(longest, contacts[i].Length);
            }

            findings.Add(new Finding(
                KindOf(first, chains),
                At(first.At),
                first.Kind == ContactKind.Overlap ? Quantity.Length(longest) : null,
                null,
                [Arg.Of("count", Quantity.Number(to - from)), Arg.Of("sources", Written(chains[first.A], chains[first.B]))]));
            from = to;
        }

        Repairs(repairs, RepairKind.JunctionDecided, GeometryFindings.JunctionDecided, findings);
        OpenEnds(chains, gap, findings);
        Repairs(repairs, RepairKind.EndsMoved, GeometryFindings.EndsMoved, findings);
        Repairs(repairs, RepairKind.GapBridged, GeometryFindings.GapsBridged, findings);
        Repairs(repairs, RepairKind.DoubledDropped, GeometryFindings.DoubledDropped, findings);
        Repairs(repairs, RepairKind.ZeroLengthDropped, GeometryFindings.ZeroLengthDropped, findings);
    }

    private static FindingKind KindOf(Contact contact, List<Chain> chains) => (contact.Kind, contact.A == contact.B) switch
    {
        (ContactKind.Crossing, _) when !(chains[contact.A].IsClosed && chains[contact.B].IsClosed) => GeometryFindings.LinesCross,
        (ContactKind.Touch, _) when !(chains[contact.A].IsClosed && chains[contact.B].IsClosed) => GeometryFindings.LinesTouch,
        (ContactKind.Crossing, true) => GeometryFindings.CrossesItself,
        (ContactKind.Crossing, false) => GeometryFindings.OutlinesCross,
        (ContactKind.Touch, true) => GeometryFindings.TouchesItself,
        (ContactKind.Touch, false) => GeometryFindings.OutlinesTouch,
        _ => GeometryFindings.StretchShared,
    };

    // The largest stands for all; each is in the list of repairs. What the finest increment hides is not worth a line.
    private static void Repairs(List<Repair> repairs, RepairKind kind, FindingKind says, List<Finding> findings)
    {
        int count = 0;
        Repair largest = default;
        foreach (Repair repair in repairs)
        {
            if (repair.Kind == kind && (kind != RepairKind.EndsMoved || repair.Size >= ContourCleaner.SameEnd))
            {
                largest = count == 0 || repair.Size > largest.Size ? repair : largest;
                count++;
            }
        }

        if (count > 0)
        {
            Quantity size = kind == RepairKind.JunctionDecided ? new Quantity(largest.Size * 180 / Math.PI, QuantityKind.Angle) : Quantity.Length(largest.Size);
            findings.Add(new Finding(says, At(largest.At), size, null, [Arg.Of("count", Quantity.Number(count))]));
        }
    }

    // Which two free ends come nearest to each other: that is where a larger gap would begin to close something.
    private static void OpenEnds(List<Chain> chains, double gap, List<Finding> findings)
    {
        Chain[] open = [.. chains.Where(c => !c.IsClosed)];
        if (open.Length == 0)
        {
            return;
        }

        Point2[] ends = [.. open.SelectMany(c => new[] { c.Row[0].Point, c.Row[^1].Point })];
        var tree = new EndTree(ends);
        double least = double.PositiveInfinity;
        Point2 at = default;
        for (int e = 0; e < ends.Length; e++)
        {
            int near = tree.Nearest(e, least, static (_, _) => true);
            if (near >= 0 && ends[e].DistanceTo(ends[near]) < least)
            {
                (least, at) = (ends[e].DistanceTo(ends[near]), ends[e]);
            }
        }

        findings.Add(Finding.Of(
            GeometryFindings.OutlinesOpen, At(at), Quantity.Length(least), Quantity.Length(gap), Arg.Of("count", Quantity.Number(open.Length))));
    }

    private static Place At(Point2 p) => Place.None.AtPoint(p.X, p.Y);

    // A few are enough to find the place in the drawing.
    private static string Written(Chain a, Chain b)
    {
        const int Few = 6;
        int[] all = [.. a.Sources.Concat(b.Sources).Distinct().Order()];
        return string.Join(", ", all.Take(Few).Select(static s => s.ToString(System.Globalization.CultureInfo.InvariantCulture))) + (all.Length > Few ? ", ..." : "");
    }
}
