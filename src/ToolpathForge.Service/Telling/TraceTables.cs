using System.Collections.Immutable;
using System.Globalization;
using ToolpathForge.Exchange.Reading;
using ToolpathForge.Findings;
using ToolpathForge.Measures;

namespace ToolpathForge.Service.Telling;

/// <summary>What a drawing holds, as text to read.</summary>
internal static class TraceTables
{
    /// <summary>More regions than this are not listed one by one; JSON holds them all.</summary>
    private const int RegionsListed = 200;

    internal static ImmutableArray<Section> Of(DrawingTrace trace, LengthUnit unit)
    {
        bool known = trace.Drawing.Unit is not null;
        string Length(double mm) => known ? QuantityText.Write(Quantity.Length(mm), unit) : Plain(mm);
        string Area(double mm2) => known ? QuantityText.Write(new Quantity(mm2, QuantityKind.Area), unit) : Plain(mm2);
        var sections = ImmutableArray.CreateBuilder<Section>();
        string drawn = known ? $"drawn in {trace.Drawing.Unit!.Name}" : "in a unit that it does not state: sizes are in that unit";
        int holes = trace.Regions.Sum(r => r.Region.Loops.Length - 1);
        sections.Add(Section.Of(
            $"{trace.Drawing.Format}, {drawn}; {Length(trace.Box.Width)} x {Length(trace.Box.Height)} over all.",
            $"{Count(trace.Regions.Length, "outline")} with {Count(holes, "hole")}, {Area(trace.Area)} without them; {Count(trace.Outlines.Open.Length, "open line")}; {Count(trace.Repairs, "repair")}."));
        if (!trace.Drawing.Ignored.IsEmpty)
        {
            sections.Add(Section.Of("Left alone: " + string.Join(", ", trace.Drawing.Ignored.Select(i => $"{Whole(i.Count)} {Clean(i.Kind)} ({Why(i.Reason)})")) + "."));
        }

        if (!trace.Regions.IsEmpty)
        {
            sections.Add(new Section(
                trace.Regions.Length > RegionsListed ? [$"The first {RegionsListed} outlines; --json lists all."] : [],
                [new("outline", true), new("from x", true), new("from y", true), new("wide", true), new("high", true), new("holes", true), new("area", true), new("length", true), new("tightest inside", true), new("narrowest slot", true)],
                [
                    .. trace.Regions.Take(RegionsListed).Select((r, i) => (ImmutableArray<string>)
                    [
                        Whole(i + 1), Length(r.Box.MinX), Length(r.Box.MinY), Length(r.Box.Width), Length(r.Box.Height), Whole(r.Region.Loops.Length - 1), Area(r.Area), Length(r.Length),
                        r.Tightest is not { } bend ? "-" : bend.Radius == 0 ? "sharp" : Length(bend.Radius),
                        r.Slot is { } slot ? Length(slot.Width) : "-",
                    ]),
                ]));
        }

        return sections.ToImmutable();
    }

    private static string Why(IgnoreReason reason) => reason switch
    {
        IgnoreReason.NoCurve => "no line or curve",
        IgnoreReason.LayerOff => "layer off",
        IgnoreReason.LayerFrozen => "layer frozen",
        IgnoreReason.Hidden => "hidden",
        _ => "on a sheet for printing",
    };

    private static string Clean(string kind) => new([.. kind.Take(40).Select(c => char.IsControl(c) ? ' ' : c)]);

    private static string Count(int count, string what) => $"{Whole(count)} {what}{(count == 1 ? "" : "s")}";

    private static string Whole(int number) => number.ToString(CultureInfo.InvariantCulture);

    private static string Plain(double value) => value.ToString("0.###", CultureInfo.InvariantCulture);
}
