using System.Globalization;

namespace ToolpathForge.Plugin.Conformance;

/// <summary>The checks as they are made: each on a thread of its own, so that one that never ends is told and left behind.</summary>
/// <param name="host">The host.</param>
/// <param name="probe">Its other side.</param>
/// <param name="patience">How long anything may take.</param>
internal sealed class ConformanceRun(ICadHost host, IHostProbe probe, TimeSpan patience)
{
    private readonly List<ConformanceCheck> _checks = [];

    internal ICadHost Host => host;

    internal IHostProbe Probe => probe;

    internal TimeSpan Patience => patience;

    /// <summary>Makes a check.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="check">Gives what is wrong; null for nothing.</param>
    internal void Check(string name, Func<string?> check)
    {
        string? reason = Bounded(() => (object?)check(), "the check did not end", out object? result);
        _checks.Add(new ConformanceCheck(name, reason ?? (string?)result));
    }

    /// <summary>Has an action done on the host's thread and waits for it; says what went wrong.</summary>
    internal string? OnHost(Action action)
    {
        OnHost<object?>(() =>
        {
            action();
            return null;
        });
        return null;
    }

    /// <summary>Has a value fetched on the host's thread.</summary>
    /// <exception cref="ConformanceException">It threw, or never ran.</exception>
    internal T OnHost<T>(Func<T> action)
    {
        var done = new TaskCompletionSource<T>(TaskCreationOptions.RunContinuationsAsynchronously);
        host.Post(() =>
        {
            try
            {
                done.TrySetResult(action());
            }
            catch (Exception e)
            {
                done.TrySetException(e);
            }
        });
        return Task.WaitAny([done.Task], patience) == 0
            ? done.Task.GetAwaiter().GetResult()
            : throw new ConformanceException(string.Format(CultureInfo.InvariantCulture, "an action that was posted did not end within {0} seconds", patience.TotalSeconds));
    }

    /// <summary>Leaves no preview behind, whatever was found.</summary>
    internal void CleanUp() => Bounded(() => OnHost(host.ClearPreview), "", out _);

    internal ConformanceReport Report()
    {
        Bounded(() => host.Name, "", out object? name);
        return new ConformanceReport(name as string ?? "", _checks);
    }

    private string? Bounded(Func<object?> action, string late, out object? result)
    {
        object? given = null;
        string? threw = null;
        var thread = new Thread(() =>
        {
            try
            {
                given = action();
            }
            catch (ConformanceException e)
            {
                threw = e.Message;
            }
            catch (Exception e)
            {
                threw = "it threw " + e.GetType().Name + ": " + e.Message;
            }
        })
        {
            IsBackground = true,
        };
        thread.Start();
        bool ended = thread.Join(TimeSpan.FromTicks(patience.Ticks * 3));
        result = ended ? given : null;
        return ended ? threw : late;
    }

    private sealed class ConformanceException(string message) : Exception(message);
}
