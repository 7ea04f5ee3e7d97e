using System.Collections.Immutable;
using System.Text;
using ToolpathForge.Exchange.Reading;
using ToolpathForge.Findings;
using ToolpathForge.Measures;
using ToolpathForge.Planning;
using ToolpathForge.Plugin.Contract;
using ToolpathForge.Service.Files;
using ToolpathForge.Service.Output;
using ToolpathForge.Service.Telling;
using ToolpathForge.Service.Wire;

namespace ToolpathForge.Service.Host;

/// <summary>What the service does for its client: use cases like those of the commands, on a working folder and on plans that are kept until they are released.</summary>
/// <param name="folder">The working folder; null where no file may be read or written.</param>
internal sealed class HostSession(string? folder)
{
    private readonly Dictionary<string, Kept> _plans = new(StringComparer.Ordinal);
    private int _last;

    /// <summary>The catalogues that ship with the core.</summary>
    internal static CatalogueReply Catalogue(CatalogueRequest request)
    {
        CatalogueReply all = new();
        foreach (string list in request.Lists ?? [.. ListCatalogue.Kinds])
        {
            if (!ListCatalogue.Kinds.Contains(list, StringComparer.Ordinal))
            {
                throw new RpcException(RpcError.InvalidParameters.Because($"there is no list '{list}'"));
            }

            CatalogueReply one = ListCatalogue.Of(list);
            all.Lumber ??= one.Lumber;
            all.Panels ??= one.Panels;
            all.Bits ??= one.Bits;
            all.Materials ??= one.Materials;
            all.Machines ??= one.Machines;
            all.Dialects ??= one.Dialects;
            all.Shapes ??= one.Shapes;
            all.Figures ??= one.Figures;
        }

        return all;
    }

    /// <summary>Traces a drawing of the working folder.</summary>
    internal byte[] Trace(TraceRequest request, Action<string> stage, CancellationToken cancel)
    {
        string path = Within(request.Drawing, "drawing");
        Report report = TraceDrawing.Run(path, request.Drawing, new TraceOptions(request.Layer, request.Unit, request.Gap, null, null, request.Bit), stage, cancel);
        return Encoding.UTF8.GetBytes(report.Json!());
    }

    /// <summary>Plans a job, and keeps the plan if nothing stops it.</summary>
    internal PlanReply Plan(PlanRequest request, Action<string> stage, CancellationToken cancel)
    {
        if (request.Job is null == request.File is null)
        {
            throw new RpcException(RpcError.InvalidParameters.Because("give either job or file"));
        }

        if (_plans.Count >= HostLimits.Plans)
        {
            throw new RpcException(RpcError.InvalidParameters.Because(FormattableString.Invariant($"{HostLimits.Plans} plans are kept; release one first")));
        }

        IReadOnlyDictionary<string, ReadDrawing> outlines = HostOutlines.Read(request.Outlines ?? []);
        string name = request.File ?? "job";
        Walked walked = Walked.From(name, () => Load(request, name, outlines, cancel), null, stage, cancel);
        string? id = null;
        if (walked.ExitCode == ExitCodes.Fine && walked.Plan is { } plan)
        {
            id = FormattableString.Invariant($"p{++_last}");
            _plans.Add(id, new Kept(plan, name, new Lazy<HostPreview>(() => HostPreview.Of(plan))));
        }

        return new PlanReply
        {
            Plan = id,
            Job = walked.WireJob,
            Findings = walked.Teller.Wire(walked.Findings),
            Programs = walked.WirePrograms,
        };
    }

    /// <summary>A page of a plan's preview.</summary>
    internal PreviewReply Preview(PreviewRequest request)
    {
        Kept kept = Of(request.Plan);
        if (request.Program is { } wanted && (wanted < 0 || wanted >= kept.Plan.Programs.Length))
        {
            throw new RpcException(RpcError.InvalidParameters.Because("the plan has no such program"));
        }

        int from = request.From ?? 0;
        int count = request.Count ?? HostLimits.PreviewEntities;
        if (from < 0 || count is < 1 or > HostLimits.PreviewEntities)
        {
            throw new RpcException(RpcError.InvalidParameters.Because(FormattableString.Invariant($"from is 0 or more, count 1 to {HostLimits.PreviewEntities}")));
        }

        return kept.Preview.Value.Page(request.Program, from, count);
    }

    /// <summary>The programs of a plan, written too if that is asked.</summary>
    internal ProgramsReply Programs(ProgramsRequest request, Action<string> stage, CancellationToken cancel)
    {
        Kept kept = Of(request.Plan);
        ImmutableArray<Finding> hindrances = [];
        OutputResult? written = null;
        if (request.Folder is { } target)
        {
            string path = Within(target, "folder");
            hindrances = OutputFolder.Prepare(path, OutputOwner.Of(OutputOwner.Programs, kept.File), Disk.Real);
            if (Teller.ExitCode(hindrances) == ExitCodes.Fine)
            {
                stage("writing");
                written = OutputFolder.Write(path, OutputFiles.Of(kept.Plan, kept.File), OutputOwner.Of(OutputOwner.Programs, kept.File), Disk.Real, cancel);
            }
        }

        return new ProgramsReply
        {
            Programs = [.. kept.Plan.Programs.Select(p => new WireProgramText { Program = ProgramWire.Of(p, kept.Plan.Job), Text = p.Text })],
            Findings = new Teller(kept.Plan.Job.Unit).Wire([.. hindrances, .. written?.Findings ?? []]),
            Files = written is { Written: true } ? [.. written.Files.Select(f => new WireFile { Name = f.Name, Bytes = f.Bytes, Sha256 = f.Sha256 })] : [],
        };
    }

    /// <summary>Forgets a plan.</summary>
    internal void Release(ReleaseRequest request)
    {
        _ = Of(request.Plan);
        _plans.Remove(request.Plan);
    }

    private Loaded Load(PlanRequest request, string name, IReadOnlyDictionary<string, ReadDrawing> outlines, CancellationToken cancel)
    {
        if (request.Job is { } text)
        {
            return JobFile.Read(text, name, folder, outlines, cancel, confined: true);
        }

        string path = Within(request.File!, "file");
        (string? read, Finding? fault) = TextFile.Read(path, name, TextFile.LargestJob);
        return read is null ? new Loaded(null, [fault!], []) : JobFile.Read(read, name, Path.GetDirectoryName(path), outlines, cancel, confined: true);
    }

    private Kept Of(string plan) => _plans.TryGetValue(plan, out Kept? kept)
        ? kept
        : throw new RpcException(RpcError.InvalidParameters.Because("there is no such plan"));

    // A path that a request names, which must not lead out of the working folder.
    private string Within(string name, string what) => folder is null
        ? throw new RpcException(RpcError.InvalidParameters.Because($"{what}: no working folder was given"))
        : JobDrawings.Within(folder, name) ?? throw new RpcException(RpcError.InvalidParameters.Because($"{what} must lie in the working folder"));

    private sealed record Kept(Plan Plan, string File, Lazy<HostPreview> Preview);
}
