using System.Collections.Immutable;
using ToolpathForge.Drawings;
using ToolpathForge.Exchange.Dxf;
using ToolpathForge.Exchange.Reading;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;
using ToolpathForge.Measures;
using ToolpathForge.Service.Files;
using ToolpathForge.Service.Telling;
using ToolpathForge.Service.Wire;

namespace ToolpathForge.Service;

/// <summary>What is asked of a drawing, as a person wrote it.</summary>
/// <param name="Layer">The one layer to look at; null for all.</param>
/// <param name="Unit">mm, cm, dm, m, in, ft or yd: the unit it is drawn in; null for what it says itself.</param>
/// <param name="Gap">How wide a gap is closed; null for the usual.</param>
/// <param name="Offset">Distance of a parallel outline, outside when positive; null for none.</param>
/// <param name="Dxf">The file that the parallel goes to; null for none.</param>
/// <param name="Bit">Diameter of a bit to try; null for none.</param>
public sealed record TraceOptions(string? Layer, string? Unit, string? Gap, string? Offset, string? Dxf, string? Bit);

/// <summary>Says what a drawing holds: outlines with their holes and sizes, what had to be put right, what a bit cannot reach.</summary>
public static class TraceDrawing
{
    /// <summary>More places that a bit does not reach than this are not told one by one.</summary>
    private const int PlacesTold = 50;

    /// <summary>Longest parallel distance or bit, mm.</summary>
    private const double LargestDistance = 1000;

    /// <summary>A bit that leaves less than this reaches, mm: what nobody sees, and more than fitting arcs to curves does.</summary>
    private const double LeastLeft = 1e-3;

    /// <summary>Traces a drawing.</summary>
    /// <param name="file">The drawing, DXF or SVG.</param>
    /// <param name="options">What is asked.</param>
    /// <param name="stage">Told the name of each stage as it begins; may be null.</param>
    /// <param name="cancel">Ends the work.</param>
    /// <exception cref="OperationCanceledException">Cancelled; nothing was written.</exception>
    public static Report Run(string file, TraceOptions options, Action<string>? stage, CancellationToken cancel) => Run(file, file, options, stage, cancel);

    /// <summary>Traces the drawing of a path that is told by another name.</summary>
    internal static Report Run(string path, string file, TraceOptions options, Action<string>? stage, CancellationToken cancel)
    {
        stage?.Invoke("reading");
        var findings = new List<Finding>();
        DrawingUnit? given = options.Unit is { } word ? DrawingUnit.Find(word) : null;
        if (options.Unit is { } unknown && given is null)
        {
            findings.Add(Finding.Of(TraceFindings.UnitUnknown, Place.None, Arg.Of("text", Short(unknown, 40))));
        }

        ReadDrawing? drawing = Read(path, file, given, findings, cancel);
        LengthUnit told = drawing?.Unit is { IsInches: true } ? LengthUnit.Inch : LengthUnit.Millimetre;
        double? gap = Length(options.Gap, "--gap", told, findings);
        double? offset = Distance(options.Offset, "--offset", told, findings, d => d != 0);
        double? bit = Distance(options.Bit, "--bit", told, findings, d => d > 0.01);
        if (drawing is { IsUsable: true } && options.Layer is { } layer && !drawing.Entities.Any(e => e.Layer == layer))
        {
            string used = string.Join(", ", drawing.Entities.Select(e => e.Layer).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).Take(10).Select(n => $"'{n}'"));
            findings.Add(Finding.Of(TraceFindings.LayerUnknown, Place.InFile(file, 0, 0), Arg.Of("text", Short(layer, 80)), Arg.Of("words", Short(used, 300))));
        }

        cancel.ThrowIfCancellationRequested();
        DrawingTrace? trace = null;
        if (drawing is not null && findings.Count == 0)
        {
            stage?.Invoke("outlines");
            trace = DrawingTrace.Of(drawing, file, options.Layer, gap);
            findings.AddRange(trace.Findings);
            if (drawing.IsUsable)
            {
                findings.AddRange(Asked(trace, file, offset, bit, options.Dxf, stage));
            }
        }
        else if (drawing is not null)
        {
            findings.AddRange([.. drawing.Findings, .. drawing.Repairs]);
        }

        bool wrote = options.Dxf is not null && trace is not null && Teller.ExitCode(findings) == ExitCodes.Fine;
        var teller = new Teller(told);
        return new Report(
            Teller.ExitCode(findings),
            teller.Remarks(findings),
            trace is { Drawing.IsUsable: true } ? [.. TraceTables.Of(trace, told), .. wrote ? [Section.Of($"The parallel was written to {options.Dxf}.")] : (ImmutableArray<Section>)[]] : [],
            () => WireJson.Text(TraceWire.Of(trace, teller.Wire(findings))));
    }

    // In a place of its own, so that the bytes can go as soon as they are read.
    private static ReadDrawing? Read(string path, string file, DrawingUnit? given, List<Finding> findings, CancellationToken cancel)
    {
        (byte[]? bytes, Finding? fault) = TextFile.ReadBytes(path, file, (int)DrawingLimits.Default.Bytes);
        findings.AddRange(fault is null ? [] : [fault]);
        return bytes is null || findings.Count > 0 ? null : DrawingReader.ReadRepairing(bytes, file, given, null, cancel);
    }

    private static List<Finding> Asked(DrawingTrace trace, string file, double? offset, double? bit, string? dxf, Action<string>? stage)
    {
        var findings = new List<Finding>();
        if (trace.Regions.IsEmpty)
        {
            findings.Add(Finding.Of(TraceFindings.NothingClosed, Place.InFile(file, 0, 0)));
            if (offset is null)
            {
                return findings;
            }
        }

        if ((offset is not null || bit is not null) && trace.Drawing.Unit is null)
        {
            findings.Add(Finding.Of(TraceFindings.UnitNeeded, Place.InFile(file, 0, 0)));
            return findings;
        }

        if (bit is { } diameter)
        {
            stage?.Invoke("bit");
            findings.AddRange(Unreached(trace, file, diameter));
        }

        // What crosses or could not be read whole is told above as a stop; a parallel of the rest would look complete.
        if (offset is { } distance && dxf is not null && Teller.ExitCode(trace.Findings) == ExitCodes.Fine)
        {
            stage?.Invoke("parallel");
            findings.AddRange(Parallel(trace, file, distance, dxf));
        }

        return findings;
    }

    private static List<Finding> Unreached(DrawingTrace trace, string file, double diameter)
    {
        Contour[] loops = [.. trace.Regions.SelectMany(r => r.Region.Loops)];
        ImmutableArray<Unreached> left = Reach.Of(loops, diameter / 2, Side.Right, LeastLeft);
        Place At(Point2 p) => Place.InFile(file, 0, 0).AtPoint(p.X, p.Y);
        return left.IsEmpty
            ? [new Finding(TraceFindings.BitReaches, Place.InFile(file, 0, 0), null, Quantity.Length(diameter), [])]
            : [.. left.OrderByDescending(u => u.Left).ThenBy(u => u.At.X).ThenBy(u => u.At.Y).Take(PlacesTold)
                .Select(u => Finding.Of(TraceFindings.BitLeaves, At(u.At), Quantity.Length(Math.Min(u.Left, loops[u.Contour].Length)), Quantity.Length(diameter), Arg.Of("length", Quantity.Length(u.Length))))];
    }

    private static List<Finding> Parallel(DrawingTrace trace, string file, double distance, string dxf)
    {
        // Islands lie in the holes of others: all regions together, so that what grows into each other becomes one.
        Region all = Region.Of([.. trace.Regions.SelectMany(r => r.Region.Loops)]);
        OffsetResult result = all.IsEmpty ? new OffsetResult([], [], null) : Offsetter.Closed(all, distance);
        if (result.Unproven is { } unproven)
        {
            return [unproven with { Place = unproven.Place with { File = file } }];
        }

        if (result.Loops.IsEmpty)
        {
            return [new Finding(TraceFindings.NothingLeft, Place.InFile(file, 0, 0), Quantity.Length(distance), null, [])];
        }

        string text = DxfWriter.Write([new DxfLayer("parallel", LineRole.FinishedEdge, [], [.. result.Loops.Select(l => l.Contour)])]);

        // The same file again is no loss; anything else that is there stays.
        return NewFile.Write(dxf, text, there => there == text) is { } fault ? [fault] : [];
    }

    /// <summary>Text from a file or a command line, fit to be repeated: cut short, without control characters.</summary>
    private static string Short(string text, int longest) =>
        new([.. (text.Length > longest ? text[..longest] + "…" : text).Select(c => char.IsControl(c) ? ' ' : c)]);

    private static double? Length(string? text, string option, LengthUnit unit, List<Finding> findings)
    {
        if (text is null)
        {
            return null;
        }

        Reading<Length> read = MeasureText.ReadLength(text, unit);
        if (read.IsRead)
        {
            return read.Value.Millimetres;
        }

        findings.Add(read.ToFinding(Place.None, option, text));
        return null;
    }

    private static double? Distance(string? text, string option, LengthUnit unit, List<Finding> findings, Func<double, bool> may)
    {
        if (Length(text, option, unit, findings) is not { } distance)
        {
            return null;
        }

        if (Math.Abs(distance) <= LargestDistance && may(distance))
        {
            return distance;
        }

        findings.Add(new Finding(TraceFindings.DistanceUnusable, Place.None, Quantity.Length(distance), null, [Arg.Of("key", option)]));
        return null;
    }
}
