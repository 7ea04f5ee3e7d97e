using System.Globalization;
using ToolpathForge.Plugin.Client;
using ToolpathForge.Plugin.Contract;

namespace ToolpathForge.Plugin;

/// <summary>
/// The plugin itself, the same for every host: sends the selection to the core in mm, tells what it finds, shows findings where they are, draws toolpaths on a layer a purpose and
/// pass, and has programs written. The core's process is begun by the first wish, kept for the next, and ended with the session.
/// </summary>
public sealed class PluginSession : IDisposable
{
    private readonly ICadHost _host;
    private readonly CoreClient _core;
    private readonly SemaphoreSlim _one = new(1, 1);

    /// <summary>Makes one; no process is started yet.</summary>
    /// <param name="host">The host.</param>
    /// <param name="folder">The working folder, a full path: programs are written inside of it; null to write none.</param>
    /// <param name="core">The core's file; null to look for it, see <see cref="CoreCommand.Find(string?)"/>.</param>
    /// <param name="patience">How long the core is waited for; null for the usual.</param>
    public PluginSession(ICadHost host, string? folder = null, string? core = null, CorePatience? patience = null)
        : this(host, new CoreClient(() => CoreCommand.Find(core), host.Name, folder, patience))
    {
    }

    internal PluginSession(ICadHost host, CoreClient core)
    {
        _host = host;
        _core = core;
    }

    /// <summary>The core, for whatever else is to be asked of it.</summary>
    public CoreClient Core => _core;

    /// <summary>
    /// Fulfils a wish in the background; one at a time, the next waits. May be called on any thread, the host's own too, which must not wait for it: it is needed meanwhile. A core that
    /// fails is told, started anew and tried once more. Nothing is thrown but what the framework itself throws: failures are told to the person.
    /// </summary>
    /// <param name="wish">The wish.</param>
    /// <param name="cancel">Cancels it: what was drawn is taken away, nothing is left half written.</param>
    public Task<SessionResult> FulfilAsync(SessionWish wish, CancellationToken cancel = default) => Task.Run(() => Fulfil(wish, cancel));

    /// <summary>Ends the core. The preview stays.</summary>
    public void Dispose()
    {
        _core.Dispose();
        _one.Dispose();
    }

    private SessionResult Fulfil(SessionWish wish, CancellationToken cancel)
    {
        bool entered = false;
        try
        {
            _one.Wait(cancel);
            entered = true;
            return Twice(wish, cancel);
        }
        catch (OperationCanceledException)
        {
            return new SessionResult(SessionEnd.Cancelled);
        }
        catch (HostException e)
        {
            TellOfHost("The drawing could not be used: " + e.Message);
            return new SessionResult(SessionEnd.Failed);
        }
        finally
        {
            if (entered)
            {
                _one.Release();
            }
        }
    }

    private SessionResult Twice(SessionWish wish, CancellationToken cancel)
    {
        OnHost(_host.ClearPreview, cancel);
        string unit = OnHost(() => _host.Unit, cancel);
        if (HostUnit.Millimetres(unit) is not { } mm)
        {
            throw new HostException("'" + unit + "' is no unit of length.");
        }

        IReadOnlyList<WireEntity> selected = OnHost(_host.Selected, cancel) ?? throw new HostException("it gave no selection.");
        if (selected.Count == 0)
        {
            OnHost(() => _host.Tell("warn", "Nothing is selected. Select the outlines to cut first."), cancel);
            return new SessionResult(SessionEnd.NothingSelected);
        }

        string? job = wish.Job ?? AskForJob(cancel);
        if (job is null)
        {
            return new SessionResult(SessionEnd.Cancelled);
        }

        var request = new PlanRequest
        {
            Job = job,
            Outlines = [new WireOutline { Name = SelectionJob.OutlineName, Entities = [.. selected.Select(e => HostUnit.Scaled(e, mm))] }],
        };
        for (int attempt = 1; ; attempt++)
        {
            try
            {
                return Once(request, selected, wish, mm, cancel);
            }
            catch (CoreException e)
            {
                // Half of a preview would look like a whole one.
                OnHost(_host.ClearPreview, CancellationToken.None);
                if (e.Failure == CoreFailure.Cancelled)
                {
                    return new SessionResult(SessionEnd.Cancelled);
                }

                bool again = e.IsBroken && attempt == 1;
                OnHost(() => _host.Tell(again ? "warn" : "stop", again ? e.Message + " It is started again." : e.Message), cancel);
                if (!again)
                {
                    return new SessionResult(SessionEnd.Failed);
                }
            }
            catch (OperationCanceledException)
            {
                OnHost(_host.ClearPreview, CancellationToken.None);
                throw;
            }
        }
    }

    private SessionResult Once(PlanRequest request, IReadOnlyList<WireEntity> selected, SessionWish wish, double mm, CancellationToken cancel)
    {
        PlanReply reply = _core.Plan(request, cancel);
        var result = new SessionResult(reply.Plan is null ? SessionEnd.Stopped : SessionEnd.Done) { Findings = reply.Findings, Programs = reply.Programs };
        Show(reply, mm, cancel);
        if (reply.Plan is not { } plan)
        {
            return result;
        }

        int? process = _core.ProcessId;
        try
        {
            if (wish.Preview)
            {
                Draw(plan, result, selected, wish, mm, cancel);
            }

            if (wish.Folder is { } folder)
            {
                Write(plan, result, folder, cancel);
            }

            return result;
        }
        finally
        {
            Release(plan, process);
        }
    }

    private void Draw(string plan, SessionResult result, IReadOnlyList<WireEntity> selected, SessionWish wish, double mm, CancellationToken cancel)
    {
        PreviewLayout? layout = null;
        int? from = 0;
        while (from is { } at)
        {
            PreviewReply page = _core.Preview(new PreviewRequest { Plan = plan, From = at }, cancel);
            layout ??= new PreviewLayout(wish, page.Beds, selected, mm);
            WireEntity Placed(WireEntity entity, int program, string layer) =>
                OnLayer(HostUnit.Scaled(entity, 1 / mm, layout.Zero(program).X, layout.Zero(program).Y), layer);

            WireEntity[] beds = [.. (page.Beds ?? []).SelectMany(b => b.Shapes.Select(s => Placed(s, b.Program, s.Layer ?? "")))];
            WireEntity[] ways = [.. page.Entities.Where(e => e.Way is not null).Select(e => Placed(e.Way!, e.Program, e.Layer))];
            OnHost(() => _host.DrawPreview([.. beds, .. ways]), cancel);
            result.Drawn += beds.Length + ways.Length;
            from = page.Next > at ? page.Next : null;
        }
    }

    private void Write(string plan, SessionResult result, string folder, CancellationToken cancel)
    {
        ProgramsReply written = _core.Programs(new ProgramsRequest { Plan = plan, Folder = folder }, cancel);
        result.Files = written.Files;
        result.Findings = [.. result.Findings, .. written.Findings];
        Tell(written.Findings, cancel);
        result.End = written.Files.Length == 0 ? SessionEnd.Stopped : SessionEnd.Done;
        if (written.Files.Length > 0)
        {
            string told = string.Format(CultureInfo.InvariantCulture, "{0} written to {1}, proven: {2}.", written.Programs.Length == 1 ? "One program" : written.Programs.Length + " programs", folder, string.Join(", ", written.Programs.Select(p => p.Program.File)));
            OnHost(() => _host.Tell("note", told), cancel);
        }
    }

    // Plans that are kept are counted; a process that failed has taken its own along.
    private void Release(string plan, int? process)
    {
        if (_core.ProcessId is { } id && id == process)
        {
            try
            {
                _core.Release(new ReleaseRequest { Plan = plan }, CancellationToken.None);
            }
            catch (CoreException e)
            {
                System.Diagnostics.Trace.TraceWarning(e.Message);
            }
        }
    }

    // A finding about an outline lies in the drawing that was sent; one about a shape lies in the frame of its board, which is nowhere in the drawing.
    private void Show(PlanReply reply, double mm, CancellationToken cancel)
    {
        Tell(reply.Findings, cancel);
        foreach (WireFinding finding in reply.Findings)
        {
            if (finding.Where is { Point: { } point } where && IsOutline(reply.Job, where.Make))
            {
                OnHost(() => _host.Mark(point.X / mm, point.Y / mm, finding.Message), cancel);
            }
        }
    }

    // One block may hold several outlines: each goes by the block's id and a number.
    private static bool IsOutline(WireJob? job, string? make) =>
        job is null || make is null || job.Makes.Any(m => m.Kind == "outline" && (m.Id == make || m.Id.StartsWith(make + "-", StringComparison.Ordinal)));

    private void Tell(WireFinding[] findings, CancellationToken cancel)
    {
        foreach (WireFinding finding in findings)
        {
            OnHost(() => _host.Tell(finding.Severity, (finding.Message + "\n" + finding.Advice).Trim()), cancel);
        }
    }

    private string? AskForJob(CancellationToken cancel)
    {
        var job = new SelectionJob();
        return OnHost(() => job.AskFor(_host), cancel) ? job.Text() : null;
    }

    private static WireEntity OnLayer(WireEntity entity, string layer)
    {
        entity.Layer = "toolpath-" + layer;
        return entity;
    }

    // What a host can still do after it failed: half of a preview goes, the person is told. Not waited for longer than a person would.
    private void TellOfHost(string text)
    {
        foreach (Action last in new Action[] { _host.ClearPreview, () => _host.Tell("stop", text) })
        {
            using var soon = new CancellationTokenSource(TimeSpan.FromSeconds(5));
            try
            {
                OnHost(last, soon.Token);
            }
            catch (Exception e) when (e is HostException or OperationCanceledException)
            {
                System.Diagnostics.Trace.TraceError(text + " And then: " + e.Message);
            }
        }
    }

    private void OnHost(Action action, CancellationToken cancel) => OnHost(
        () =>
        {
            action();
            return true;
        },
        cancel);

    // Whatever an adapter throws stays with the session: on the host's own thread it would end the host.
    private T OnHost<T>(Func<T> action, CancellationToken cancel)
    {
        var done = new TaskCompletionSource<T>(TaskCreationOptions.RunContinuationsAsynchronously);
        try
        {
            _host.Post(() =>
            {
                try
                {
                    done.TrySetResult(action());
                }
                catch (Exception e)
                {
                    done.TrySetException(new HostException(e.Message));
                }
            });
        }
        catch (Exception e)
        {
            throw new HostException(e.Message);
        }

        // This way of waiting doesn't wrap what the task throws.
        Task.WaitAny([done.Task], cancel);
        return done.Task.GetAwaiter().GetResult();
    }

    private sealed class HostException(string message) : Exception(message);
}
