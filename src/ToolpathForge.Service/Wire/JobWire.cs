using ToolpathForge.Jobs;
using ToolpathForge.Measures;
using ToolpathForge.Plugin.Contract;
using static ToolpathForge.Service.Wire.WireNumber;

namespace ToolpathForge.Service.Wire;

/// <summary>A job in the contract's form.</summary>
internal static class JobWire
{
    internal static WireJob Of(Job job, string file) => new()
    {
        File = file,
        Name = job.Name,
        Unit = job.Unit == LengthUnit.Inch ? "in" : "mm",
        Tolerance = Rounded(job.Tolerance),
        Machine = job.Machine.Id,
        Dialect = job.Dialect.Id,
        Makes = [.. job.Makes.Select(Of)],
    };

    private static WireMake Of(Make make) => new()
    {
        Id = make.Id,
        Kind = KindOf(make),
        Count = make.Count,
        Board = (make as ProfileMake)?.Board.Id,
        DesignWidth = make is ProfileMake { DesignWidth: var width } ? Rounded(width) : null,
        Material = make.Material.Id,
        Thickness = Rounded(make.Thickness),
        Shape = (make as ProfileMake)?.Shape.Shape.Id,
        Bit = make.Bit.Id,
        Ends = (make as BoardEndMake)?.Batch.Ends,
    };

    internal static string KindOf(Make make) => make switch
    {
        PatternMake => "pattern",
        BoardEndMake => "board-end",
        OutlineMake => "outline",
        TrialMake => "trial",
        _ => throw new ArgumentException($"The contract has no word for a {make.GetType().Name}.", nameof(make)),
    };
}
