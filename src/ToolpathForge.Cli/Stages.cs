using System.Diagnostics;
using System.Globalization;

namespace ToolpathForge.Cli;

/// <summary>Times the stages of a use case, and shows on a screen which one is at work once a second has passed.</summary>
internal sealed class Stages : IDisposable
{
    private readonly Lock gate = new();
    private readonly Stopwatch clock = Stopwatch.StartNew();
    private readonly List<(string Name, TimeSpan Time)> done = [];
    private readonly Terminal terminal;
    private readonly Timer? timer;
    private string? current;
    private TimeSpan began;
    private bool shown;

    internal Stages(Terminal terminal)
    {
        this.terminal = terminal;
        timer = terminal.ErrorIsScreen ? new Timer(_ => Show(), null, 1000, 200) : null;
    }

    /// <summary>A stage begins, and the one before it ends. The same stage may come again.</summary>
    internal void Begin(string stage)
    {
        lock (gate)
        {
            End();
            current = stage;
            began = clock.Elapsed;
        }
    }

    private void End()
    {
        if (current is null)
        {
            return;
        }

        TimeSpan took = clock.Elapsed - began;
        int at = done.FindIndex(d => d.Name == current);
        if (at < 0)
        {
            done.Add((current, took));
        }
        else
        {
            done[at] = (current, done[at].Time + took);
        }

        current = null;
    }

    private void Show()
    {
        lock (gate)
        {
            if (current is not null)
            {
                shown = true;
                terminal.Error.Write(string.Create(CultureInfo.InvariantCulture, $"\r{current} … {clock.Elapsed.TotalSeconds:0} s\e[K"));
                terminal.Error.Flush();
            }
        }
    }

    /// <summary>Stops the clock and takes the progress off the screen.</summary>
    public void Dispose()
    {
        timer?.Dispose();
        lock (gate)
        {
            End();
            if (shown)
            {
                shown = false;
                terminal.Error.Write("\r\e[K");
            }
        }
    }

    /// <summary>What each stage took, in the order they began.</summary>
    internal void Print(TextWriter to)
    {
        lock (gate)
        {
            foreach ((string name, TimeSpan time) in done)
            {
                to.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{name,-12} {time.TotalMilliseconds,9:0.0} ms"));
            }

            to.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{"all",-12} {clock.Elapsed.TotalMilliseconds,9:0.0} ms"));
        }
    }
}
