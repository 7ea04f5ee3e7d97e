using System.Collections.Concurrent;
using ToolpathForge.Plugin;
using ToolpathForge.Plugin.Conformance;
using ToolpathForge.Plugin.Contract;

namespace ToolpathForge.DrawingHost;

/// <summary>The adapter: a drawing in memory, a thread of its own in place of a window's, and the terminal for questions and news.</summary>
internal sealed class DrawingFileHost : ICadHost, IHostProbe, IDisposable
{
    private readonly DrawingDocument _document;
    private readonly TextReader? _answers;
    private readonly TextWriter _news;
    private readonly BlockingCollection<Action> _posted = [];
    private readonly ConcurrentQueue<string?> _prepared = new();
    private readonly ConcurrentQueue<string> _told = new();
    private readonly Thread _thread;

    /// <summary>Makes one.</summary>
    /// <param name="document">The drawing.</param>
    /// <param name="answers">Where answers are read from, a line each; null to take what is proposed.</param>
    /// <param name="news">Where the person is told.</param>
    internal DrawingFileHost(DrawingDocument document, TextReader? answers, TextWriter news)
    {
        _document = document;
        _answers = answers;
        _news = news;
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

    /// <summary>The drawing; touched on the host's own thread, or when nothing is posted.</summary>
    internal DrawingDocument Document => _document;

    public string Name => "Drawing file";

    public string Unit => "mm";

    public IReadOnlyList<WireEntity> Selected() => [.. _document.Selected];

    public void DrawPreview(IReadOnlyList<WireEntity> entities) => _document.Preview.AddRange(entities);

    public void ClearPreview()
    {
        _document.Preview.Clear();
        _document.Marks.Clear();
    }

    public void Mark(double x, double y, string text) => _document.Marks.Add((x, y, text));

    public string? Ask(string question, string proposal)
    {
        if (_prepared.TryDequeue(out string? prepared))
        {
            return prepared;
        }

        if (_answers is null)
        {
            return proposal;
        }

        _news.Write($"{question} [{proposal}]: ");
        string? line = _answers.ReadLine();
        return line is { Length: 0 } ? proposal : line;
    }

    public void Tell(string severity, string text)
    {
        _told.Enqueue(text);
        _news.WriteLine(severity == "note" ? text : severity + ": " + text);
    }

    public void Post(Action action) => _posted.Add(action);

    void IHostProbe.DrawAndSelect(IReadOnlyList<WireEntity> entities) => Wait(() =>
    {
        _document.Own.AddRange(entities);
        _document.Selected.Clear();
        _document.Selected.AddRange(entities);
    });

    IReadOnlyList<WireEntity> IHostProbe.Preview()
    {
        WireEntity[] all = [];
        Wait(() => all = [.. _document.Preview]);
        return all;
    }

    IReadOnlyList<(double X, double Y, string Text)> IHostProbe.Marks()
    {
        (double, double, string)[] all = [];
        Wait(() => all = [.. _document.Marks]);
        return all;
    }

    void IHostProbe.WillAnswer(string? answer) => _prepared.Enqueue(answer);

    IReadOnlyList<string> IHostProbe.Told() => [.. _told];

    public void Dispose()
    {
        _posted.CompleteAdding();
        _thread.Join();
        _posted.Dispose();
    }

    private void Wait(Action action)
    {
        var done = new ManualResetEventSlim();
        Post(() =>
        {
            action();
            done.Set();
        });
        done.Wait();
    }
}
