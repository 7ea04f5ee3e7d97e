using System.Diagnostics;
using ToolpathForge.Plugin.Contract;
using ToolpathForge.Plugin.Json;

namespace ToolpathForge.Plugin.Client;

/// <summary>
/// The methods of the core as calls. The process is started by the first one, and anew by the one after a failure, as often as <see cref="CorePatience.Failures"/> allows;
/// plans of a process that failed are gone with it. One call at a time; calls from several threads wait for each other.
/// </summary>
public sealed class CoreClient : IDisposable
{
    private readonly object _gate = new();
    private readonly Func<CoreCommand> _find;
    private readonly string? _folder;
    private readonly string _name;
    private readonly CorePatience _patience;
    private CoreProcess? _process;
    private InitializeReply? _core;
    private int _failures;
    private bool _disposed;

    /// <summary>Makes one; nothing is started yet.</summary>
    /// <param name="find">Finds the core: <see cref="CoreCommand.Find(string?)"/>.</param>
    /// <param name="name">Who drives it, for whoever looks for a fault.</param>
    /// <param name="folder">The working folder, a full path, which alone is read and written; null where no file may be.</param>
    /// <param name="patience">How long it is waited for; null for the usual.</param>
    public CoreClient(Func<CoreCommand> find, string name, string? folder = null, CorePatience? patience = null)
    {
        _find = find;
        _name = name;
        _folder = folder;
        _patience = patience ?? new CorePatience();
    }

    /// <summary>The process id of the core; null while none runs.</summary>
    public int? ProcessId
    {
        get
        {
            lock (_gate)
            {
                return _process?.Id;
            }
        }
    }

    /// <summary>Told of each stage that a request has come to, on another thread.</summary>
    public Action<WireProgress>? Progress { get; set; }

    /// <summary>Starts the core, if it does not run, and says what it is.</summary>
    /// <exception cref="CoreException">There is no result.</exception>
    public InitializeReply Initialize(CancellationToken cancel = default)
    {
        lock (_gate)
        {
            Start(cancel);
            return _core!;
        }
    }

    /// <summary>What the catalogues hold.</summary>
    /// <exception cref="CoreException">There is no result.</exception>
    public CatalogueReply Catalogue(CatalogueRequest request, CancellationToken cancel = default) => Call<CatalogueReply>("catalogue", request, cancel);

    /// <summary>What a drawing in the working folder holds.</summary>
    /// <exception cref="CoreException">There is no result.</exception>
    public TraceReply Trace(TraceRequest request, CancellationToken cancel = default) => Call<TraceReply>("trace", request, cancel);

    /// <summary>Plans a job.</summary>
    /// <exception cref="CoreException">There is no result.</exception>
    public PlanReply Plan(PlanRequest request, CancellationToken cancel = default) => Call<PlanReply>("plan", request, cancel);

    /// <summary>A page of the ways of a plan.</summary>
    /// <exception cref="CoreException">There is no result.</exception>
    public PreviewReply Preview(PreviewRequest request, CancellationToken cancel = default) => Call<PreviewReply>("preview", request, cancel);

    /// <summary>The programs of a plan, written where a folder is named.</summary>
    /// <exception cref="CoreException">There is no result.</exception>
    public ProgramsReply Programs(ProgramsRequest request, CancellationToken cancel = default) => Call<ProgramsReply>("programs", request, cancel);

    /// <summary>Lets go of a plan.</summary>
    /// <exception cref="CoreException">There is no result.</exception>
    public void Release(ReleaseRequest request, CancellationToken cancel = default) => Call<DoneReply>("release", request, cancel);

    /// <summary>Lets a core that was given up be tried again.</summary>
    public void TryAgain()
    {
        lock (_gate)
        {
            _failures = 0;
        }
    }

    /// <summary>Ends the core.</summary>
    public void Dispose()
    {
        lock (_gate)
        {
            _disposed = true;
            End();
        }
    }

    private T Call<T>(string method, object request, CancellationToken cancel)
        where T : class
    {
        lock (_gate)
        {
            Start(cancel);
            T reply = Once<T>(method, request, cancel);

            // One that starts well and then fails every time must come to an end too: only work done counts.
            _failures = 0;
            return reply;
        }
    }

    private void Start(CancellationToken cancel)
    {
        if (_disposed)
        {
            throw new ObjectDisposedException(nameof(CoreClient));
        }

        if (_process is not null)
        {
            return;
        }

        if (_failures >= _patience.Failures)
        {
            throw new CoreException(CoreFailure.GivenUp, FormattableString.Invariant($"The core failed {_failures} times in a row and is not started again."));
        }

        try
        {
            _process = CoreProcess.Start(_find(), _patience);
        }
        catch (CoreException e) when (e.IsBroken)
        {
            _failures++;
            throw;
        }

        using Process self = Process.GetCurrentProcess();
        string major = ContractVersion.Current.Split('.')[0];
        try
        {
            _core = Once<InitializeReply>("initialize", new InitializeRequest { Protocol = major, Client = _name, Folder = _folder, Parent = self.Id }, cancel);
        }
        catch (CoreException)
        {
            // Also where it only refused: what is half begun is of no use.
            End();
            throw;
        }

        if (_core.Contract.Split('.')[0] != major)
        {
            End();
            throw new CoreException(CoreFailure.Refused, "The core speaks version " + _core.Contract + " of the contract, this plugin " + ContractVersion.Current + ". Install matching versions.");
        }
    }

    private T Once<T>(string method, object request, CancellationToken cancel)
        where T : class
    {
        try
        {
            JsonValue result = _process!.Call(method, JsonForm.Write(request), Heard, cancel);
            return JsonForm.Read<T>(result);
        }
        catch (JsonFaultException e)
        {
            throw Failed(new CoreException(CoreFailure.Rubbish, "What the core said makes no sense (" + e.Message + "); it was ended."));
        }
        catch (CoreException e) when (e.IsBroken)
        {
            throw Failed(e);
        }
        catch (CoreException e) when (e.Failure == CoreFailure.Cancelled)
        {
            // It may have been ended for its silence.
            if (_process!.HasFailed)
            {
                End();
            }

            throw;
        }
    }

    private CoreException Failed(CoreException why)
    {
        _failures++;
        End();
        return why;
    }

    private void End()
    {
        _process?.Dispose();
        _process = null;
    }

    private void Heard(JsonValue parameters)
    {
        if (Progress is { } told && parameters.Kind == JsonKind.Map)
        {
            told(new WireProgress { Request = parameters["request"]?.Text ?? "", Stage = parameters["stage"]?.Text ?? "" });
        }
    }
}
