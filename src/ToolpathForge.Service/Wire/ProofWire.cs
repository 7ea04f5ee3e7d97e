using ToolpathForge.Planning;
using ToolpathForge.Plugin.Contract;
using ToolpathForge.Proof;
using ToolpathForge.Service.Telling;
using static ToolpathForge.Service.Wire.WireNumber;

namespace ToolpathForge.Service.Wire;

/// <summary>Proofs in the contract's form.</summary>
internal static class ProofWire
{
    internal static WireProof Of(ProofReport report, double tolerance) => new()
    {
        Passed = report.Passed,
        Gouge = Rounded(report.WorstGouge),
        LeftOver = Known(report.WorstLeftover),
        Tolerance = Rounded(tolerance),
        Faults = [.. report.Faults.Select(Of)],
        Pieces = [.. report.Pieces.Select(p => new WirePieceProof { Name = p.Name, Slabs = [.. p.Slabs.Select(Of)] })],
        Motion = new WireMotion
        {
            Lines = report.Motion.Lines,
            StraightFeeds = report.Motion.StraightFeeds,
            Arcs = report.Motion.Arcs,
            Rapids = report.Motion.Rapids,
            FeedLength = Rounded(report.Motion.FeedLength),
            RapidLength = Rounded(report.Motion.RapidLength),
        },
    };

    private static WireSlabProof Of(SlabProof slab) => new()
    {
        Bottom = Rounded(slab.Bottom),
        Top = Rounded(slab.Top),
        Gouge = Rounded(slab.Gouge),
        GougeLine = LineOf(slab.GougeAt),
        LeftOver = Known(slab.Leftover),
        LeftOverLine = LineOf(slab.LeftoverAt),
    };

    private static int? LineOf(ProofPlace? place) => place is { Line: > 0 and var line } ? line : null;

    private static WireFault Of(Fault fault) => new()
    {
        Line = fault.Line > 0 ? fault.Line : null,
        Code = fault.Code.Name,
        Message = FaultText.Says(fault),
        Subject = fault.Subject,
        Found = Of(fault.Found, fault.Code.Unit),
        Allowed = Of(fault.Allowed, fault.Code.Unit),
        Count = fault.Count,
    };

    private static WireQuantity? Of(double? value, FaultUnit unit) => value is { } v && double.IsFinite(v)
        ? new WireQuantity
        {
            Value = Rounded(v),
            Unit = unit switch
            {
                FaultUnit.Length => "mm",
                FaultUnit.Feed => "mm/min",
                FaultUnit.Speed => "rpm",
                FaultUnit.Angle => "deg",
                FaultUnit.Time => "s",
                _ => "1",
            },
        }
        : null;
}
