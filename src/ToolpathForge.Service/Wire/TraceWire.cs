using ToolpathForge.Exchange.Reading;
using ToolpathForge.Geometry;
using ToolpathForge.Plugin.Contract;
using static ToolpathForge.Service.Wire.WireNumber;

namespace ToolpathForge.Service.Wire;

/// <summary>A traced drawing in the contract's form.</summary>
internal static class TraceWire
{
    internal static TraceReply Of(DrawingTrace? trace, WireFinding[] findings) => new()
    {
        Unit = trace?.Drawing.Unit?.Name,
        MmPerUnit = trace?.Drawing.Unit?.Millimetres,
        NetAreaMm2 = Rounded(trace?.Area ?? 0),
        BoxMm = Of(trace?.Box ?? Box2.Empty),
        Regions = [.. (trace?.Regions ?? []).Select(Of)],
        Ignored = trace?.Drawing.Ignored.Sum(i => i.Count) ?? 0,
        Repairs = trace?.Repairs ?? 0,
        Findings = [.. findings.Select(f => new TraceFinding { Severity = f.Severity, Code = f.Code, Message = f.Message, Where = f.Where })],
    };

    private static TraceRegion Of(TracedRegion region) => new()
    {
        AreaMm2 = Rounded(region.Area),
        LengthMm = Rounded(region.Length),
        BoxMm = Of(region.Box),
        Loops = region.Region.Loops.Length,
        TightestInsideRadiusMm = region.Tightest is { } bend ? Rounded(bend.Radius) : null,
        NarrowestSlotMm = region.Slot is { } slot ? Rounded(slot.Width) : null,
    };

    private static double[] Of(Box2 box) => box.IsEmpty ? [] : [Rounded(box.MinX), Rounded(box.MinY), Rounded(box.MaxX), Rounded(box.MaxY)];
}
