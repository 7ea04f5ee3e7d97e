using System.Collections.Concurrent;
using ToolpathForge.Plugin;
using ToolpathForge.Plugin.Conformance;
using ToolpathForge.Plugin.Contract;

namespace ToolpathForge.SecondRuntime;

/// <summary>A host whose drawing is lists in memory, inches; its thread is one of its own, in place of a window's.</summary>
internal sealed class MemoryHost : ICadHost, IHostProbe, IDisposable
{
    private readonly BlockingCollection<Action> _posted = new();
    private readonly ConcurrentQueue<string> _told = new();
    private readonly List<WireEntity> _preview = new();
    private readonly List<(double X, double Y, string Text)> _marks = new();
    private IReadOnlyList<WireEntity> _selected = Array.Empty<WireEntity>();
    private readonly Thread _thread;
    private string? _answer;

    internal MemoryHost()
    {
        _thread = new Thread(() =>
        {
            foreach (Action action in _posted.GetConsumingEnumerable())
            {
                action();
            }
        })
        {
            IsBackground = true,
        };
        _thread.Start();
    }

    public string Name => "Memory";

    public string Unit => "in";

    public IReadOnlyList<WireEntity> Selected() => _selected;

    public void DrawPreview(IReadOnlyList<WireEntity> entities) => _preview.AddRange(entities);

    public void ClearPreview()
    {
        _preview.Clear();
        _marks.Clear();
    }

    public void Mark(double x, double y, string text) => _marks.Add((x, y, text));

    public string? Ask(string question, string proposal) => _answer;

    public void Tell(string severity, string text) => _told.Enqueue(severity + ": " + text);

    public void Post(Action action) => _posted.Add(action);

    public void DrawAndSelect(IReadOnlyList<WireEntity> entities) => OnThread(() => _selected = entities);

    public IReadOnlyList<WireEntity> Preview() => OnThread(() => _preview.ToArray());

    public IReadOnlyList<(double X, double Y, string Text)> Marks() => OnThread(() => _marks.ToArray());

    public void WillAnswer(string? answer) => OnThread(() => _answer = answer);

    public IReadOnlyList<string> Told() => _told.ToArray();

    public void Dispose()
    {
        _posted.CompleteAdding();
        _thread.Join();
        _posted.Dispose();
    }

    private T OnThread<T>(Func<T> action)
    {
        var done = new TaskCompletionSource<T>();
        Post(() => done.SetResult(action()));
        return done.Task.GetAwaiter().GetResult();
    }
}
