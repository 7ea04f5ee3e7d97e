using ToolpathForge.Cutting;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;

namespace ToolpathForge.Checks;

/// <summary>Whether the machine can bring the bit everywhere the toolpath goes.</summary>
internal static class MachineTravel
{
    /// <summary>Too large for the travel in the plane.</summary>
    internal static readonly FindingKind Outside = new(
        "outside-travel",
        Severity.Stop,
        "The bit must move over {found} along {axis}; {machine} travels {allowed}.",
        "Make the piece smaller (less hold), choose a larger machine, or put fewer pieces on the bed.");

    /// <summary>Too little height.</summary>
    internal static readonly FindingKind TooHigh = new(
        "outside-travel-z",
        Severity.Stop,
        "The bit must rise and fall over {found}; {machine} travels {allowed}.",
        "Lower the clearance, or use thinner stock.");

    /// <summary>Nothing but the person sees to it that the machine has that room.</summary>
    internal static readonly FindingKind RoomFromZero = new(
        "room-from-zero",
        Severity.Note,
        "{machine} does not find its own limits: from the work zero the bit goes {left} to the left, {right} to the right, {near} towards you and {far} away from you.",
        "Before the start move it to these ends by hand, raised, and see that it gets there.");

    internal static IEnumerable<Finding> Find(CheckInput input, CutPlan cut)
    {
        Box2 box = cut.Works.Aggregate(Box2.Empty, (all, work) => all.Union(work.Path.Extent));
        double low = cut.Works.Min(w => w.Path.Moves.Min(m => m.End.Z));
        double high = cut.Works.Max(w => w.Path.Moves.Max(m => m.End.Z));
        Arg machine = Arg.Of("machine", input.Machine.Name);
        Box2 travel = input.Clamping.Travel;
        foreach ((string axis, double size, double most, bool within) in ((string, double, double, bool)[])
        [
            ("X", box.Width, input.Machine.TravelX, box.MinX >= travel.MinX - 1e-6 && box.MaxX <= travel.MaxX + 1e-6),
            ("Y", box.Height, input.Machine.TravelY, box.MinY >= travel.MinY - 1e-6 && box.MaxY <= travel.MaxY + 1e-6),
        ])
        {
            if (!within)
            {
                // Seen from the zero the reach counts, not the extent alone.
                double reach = axis == "X"
                    ? Math.Max(size, Math.Max(box.MaxX - travel.MinX, travel.MaxX - box.MinX))
                    : Math.Max(size, Math.Max(box.MaxY - travel.MinY, travel.MaxY - box.MinY));
                yield return Finding.Of(Outside, input.At("id"), Quantity.Length(reach), Quantity.Length(most), machine, Arg.Of("axis", axis));
            }
        }

        if (!input.Machine.Homing)
        {
            yield return Finding.Of(
                RoomFromZero,
                input.At("id"),
                machine,
                Arg.Of("left", Quantity.Length(Math.Max(0, -box.MinX))),
                Arg.Of("right", Quantity.Length(Math.Max(0, box.MaxX))),
                Arg.Of("near", Quantity.Length(Math.Max(0, -box.MinY))),
                Arg.Of("far", Quantity.Length(Math.Max(0, box.MaxY))));
        }

        if (high - low > input.Machine.TravelZ)
        {
            yield return Finding.Of(TooHigh, input.At("id"), Quantity.Length(high - low), Quantity.Length(input.Machine.TravelZ), machine);
        }
    }
}
