using System.Collections.Immutable;
using System.Reflection;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using ToolpathForge.Plugin.Contract;

namespace ToolpathForge.Service.Host;

/// <summary>The methods of the service: what may be called, in which order, with which parameters. What each does is a use case of its own.</summary>
internal sealed class HostMethods(Action<string, byte[]> notify, Action<int> watch)
{
    /// <summary>The notification that cancels a request.</summary>
    internal const string Cancel = "cancel";

    private const string Progress = "progress";

    private HostSession? _session;

    /// <summary>The methods by name.</summary>
    internal static ImmutableArray<string> Names { get; } = ["initialize", "catalogue", "trace", "plan", "preview", "programs", "release", "shutdown"];

    /// <summary>Whether the client has asked for the end.</summary>
    internal bool IsShutDown { get; private set; }

    /// <summary>Answers a request; null where there is no such method.</summary>
    internal byte[]? Call(RpcRequest request, CancellationToken cancel)
    {
        if (request.Method == Cancel)
        {
            // Done when it came in; as a request it has nothing to say.
            return request.Id is null ? Of(new DoneReply(), HostJson.Default.DoneReply) : null;
        }

        if (!Names.Contains(request.Method, StringComparer.Ordinal))
        {
            return null;
        }

        // Nothing that begins anything is done for a notification, whose outcome nobody would learn.
        if (request.Id is null)
        {
            throw new RpcException(RpcError.InvalidRequest);
        }

        if (request.Method == "initialize" ? _session is not null : _session is null)
        {
            throw new RpcException(request.Method == "initialize" ? RpcError.InvalidRequest.Because("initialized already") : RpcError.NotInitialized);
        }

        cancel.ThrowIfCancellationRequested();
        void Stage(string stage) => notify(Progress, Of(new WireProgress { Request = request.IdText, Stage = stage }, HostJson.Default.WireProgress));
        switch (request.Method)
        {
            case "initialize":
                return Of(Initialize(Read(request, HostJson.Default.InitializeRequest)), HostJson.Default.InitializeReply);
            case "catalogue":
                return Of(HostSession.Catalogue(Read(request, HostJson.Default.CatalogueRequest)), HostJson.Default.CatalogueReply);
            case "trace":
                return _session!.Trace(Read(request, HostJson.Default.TraceRequest), Stage, cancel);
            case "plan":
                return Of(_session!.Plan(Read(request, HostJson.Default.PlanRequest), Stage, cancel), HostJson.Default.PlanReply);
            case "preview":
                return Of(_session!.Preview(Read(request, HostJson.Default.PreviewRequest)), HostJson.Default.PreviewReply);
            case "programs":
                return Of(_session!.Programs(Read(request, HostJson.Default.ProgramsRequest), Stage, cancel), HostJson.Default.ProgramsReply);
            case "release":
                _session!.Release(Read(request, HostJson.Default.ReleaseRequest));
                return Of(new DoneReply(), HostJson.Default.DoneReply);
            default:
                IsShutDown = true;
                return Of(new DoneReply(), HostJson.Default.DoneReply);
        }
    }

    private InitializeReply Initialize(InitializeRequest request)
    {
        if (request.Protocol != "1")
        {
            throw new RpcException(RpcError.InvalidParameters.Because("protocol must be \"1\""));
        }

        if (request.Folder is { } folder && (!Path.IsPathFullyQualified(folder) || !Directory.Exists(folder)))
        {
            throw new RpcException(RpcError.InvalidParameters.Because("folder must be the full path of a folder that is there"));
        }

        if (request.Parent is { } parent)
        {
            watch(parent);
        }

        _session = new HostSession(request.Folder);
        return new InitializeReply
        {
            Version = typeof(HostMethods).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion ?? "",
            Methods = [.. Names],
            Notifications = [Progress],
            Limits = HostLimits.Wire,
        };
    }

    // Parameters by name alone; what a method does not know is refused, since passing over it would do less than was asked without a word.
    private static T Read<T>(RpcRequest request, JsonTypeInfo<T> form)
        where T : class, new()
    {
        if (request.Parameters.ValueKind == JsonValueKind.Undefined)
        {
            return new T();
        }

        if (request.Parameters.ValueKind != JsonValueKind.Object)
        {
            throw new RpcException(RpcError.InvalidParameters.Because("parameters are given by name"));
        }

        try
        {
            return request.Parameters.Deserialize(form) ?? new T();
        }
        catch (Exception e) when (e is JsonException or InvalidOperationException)
        {
            string where = e is JsonException { Path: { Length: > 0 } path } ? $"at {path}" : "text that is no Unicode";
            throw new RpcException(RpcError.InvalidParameters.Because(where));
        }
    }

    internal static byte[] Of<T>(T form, JsonTypeInfo<T> info) => JsonSerializer.SerializeToUtf8Bytes(form, info);
}
