using ToolpathForge.Clampings;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;

namespace ToolpathForge.Cutting;

/// <summary>
/// Rows along the board that cut the waste of an end to chips, so that nothing comes loose. Each begins in the air past the raw end and runs inwards
/// as far as the roughing track; neighbours overlap by a fifth of the bit.
/// </summary>
internal static class WasteRows
{
    /// <summary>Rows cannot get at all of the waste.</summary>
    internal static readonly FindingKind Enclosed = new(
        "waste-enclosed",
        Severity.Stop,
        "Part of the waste lies behind wood that stays, where no row from the end of the board gets.",
        "Have the waste screwed down instead of cut to chips, or saw it off beforehand.");

    /// <summary>Room between rows as a share of the diameter (common practice): a bit cuts over most of its width, and no ridge is left.</summary>
    internal const double Share = 0.8;

    /// <summary>The rows from the lower edge upwards, each inwards; null with a finding when they do not reach all of the waste.</summary>
    /// <param name="placed">The piece where it lies.</param>
    /// <param name="distance">How far the bit's axis stays from the piece, mm: that of the roughing track.</param>
    /// <param name="stock">Its block.</param>
    /// <param name="findings">Takes what is wrong.</param>
    internal static IReadOnlyList<Segment>? Of(PlacedContour placed, double distance, Box2 stock, ICollection<Finding> findings)
    {
        Make make = placed.Placed.Piece.Make;
        OffsetResult kept = Offsetter.Closed(placed.Contour, distance);
        if (kept.Unproven is { } unproven)
        {
            findings.Add(unproven);
            return null;
        }

        double step = Share * make.Bit.Diameter;
        int count = Math.Max(1, (int)Math.Ceiling((stock.Height / step) - 1e-9));
        double right = stock.MaxX + make.Bit.Radius + 2;
        var rows = new List<Segment>();
        for (int i = 0; i < count; i++)
        {
            double y = stock.MinY + ((i + 0.5) * stock.Height / count);
            List<double> meets = Meets(kept, y);

            // Right of the last meeting lies the waste that opens to the end; left of it every second gap is waste that does not.
            for (int k = meets.Count - 1; k >= 3; k -= 2)
            {
                if (meets[k - 1] - meets[k - 2] > 1e-6)
                {
                    findings.Add(Finding.Of(Enclosed, make.At["end.waste"].OfMake(make.Id)));
                    return null;
                }
            }

            if (meets.Count > 0 && meets[^1] < stock.MaxX + make.Bit.Radius)
            {
                rows.Add(new Segment(new Point2(right, y), new Point2(meets[^1], y)));
            }
        }

        return rows;
    }

    private static List<double> Meets(OffsetResult kept, double y)
    {
        var meets = new List<double>();
        foreach (OffsetLoop loop in kept.Loops)
        {
            for (int i = 0; i < loop.Contour.SegmentCount; i++)
            {
                AddMeets(loop.Contour[i], y, meets);
            }
        }

        meets.Sort();
        return meets;
    }

    // Half-open in Y along the way, so that a vertex on the line counts once where the outline passes through it and twice or never where it only touches.
    private static void AddMeets(Segment s, double y, List<double> meets)
    {
        if (s.IsLine)
        {
            if (s.Start.Y <= y != s.End.Y <= y)
            {
                meets.Add(s.Start.X + ((s.End.X - s.Start.X) * (y - s.Start.Y) / (s.End.Y - s.Start.Y)));
            }

            return;
        }

        // An arc is monotonic in Y between the levels of its top and bottom.
        double start = (s.Start - s.Center).Angle;
        double end = start + s.Sweep;
        double low = Math.Min(start, end);
        double high = Math.Max(start, end);
        var turns = new List<double> { low };
        for (double a = (Math.PI / 2) + (Math.PI * Math.Ceiling((low - (Math.PI / 2)) / Math.PI)); a < high; a += Math.PI)
        {
            turns.Add(a);
        }

        turns.Add(high);
        for (int i = 1; i < turns.Count; i++)
        {
            double from = HeightAt(turns[i - 1]);
            double to = HeightAt(turns[i]);
            if (from <= y != to <= y)
            {
                double sine = Math.Clamp((y - s.Center.Y) / s.Radius, -1, 1);
                double reach = Math.Sqrt(1 - (sine * sine)) * s.Radius;
                meets.Add(s.Center.X + (Math.Cos((turns[i - 1] + turns[i]) / 2) < 0 ? -reach : reach));
            }
        }

        // Ends come from the vertices themselves, so that neighbours agree about them.
        double HeightAt(double angle) => angle == start ? s.Start.Y : angle == end ? s.End.Y : s.Center.Y + (s.Radius * Math.Sin(angle));
    }
}
