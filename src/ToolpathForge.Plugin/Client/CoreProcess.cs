using System.Diagnostics;
using System.Globalization;
using System.Text;
using ToolpathForge.Plugin.Json;

namespace ToolpathForge.Plugin.Client;

/// <summary>
/// One process of the core and the messages to and from it, one a line. One request is open at a time. After the first failure it is ended and answers no more; whoever
/// holds it begins another. It leaves no orphan: the process ends when this one does, since its input then closes.
/// </summary>
internal sealed class CoreProcess : IDisposable
{
    private static readonly UTF8Encoding Utf8 = new(false, true);

    private readonly object _gate = new();
    private readonly Process _process;
    private readonly CorePatience _patience;
    private readonly Queue<string> _lastWords = new();
    private readonly Thread _errors;
    private CoreException? _failure;
    private int _open;
    private JsonValue? _reply;
    private Action<JsonValue>? _heard;
    private DateTime _lastHeard;
    private int _lastId;
    private int _disposed;

    private CoreProcess(Process process, CorePatience patience)
    {
        _process = process;
        _patience = patience;
        _errors = new Thread(ReadErrors) { IsBackground = true, Name = "core errors" };
        _errors.Start();
        new Thread(ReadMessages) { IsBackground = true, Name = "core messages" }.Start();
    }

    /// <summary>The process's id.</summary>
    internal int Id => _process.Id;

    /// <summary>Whether it answers no more.</summary>
    internal bool HasFailed
    {
        get
        {
            lock (_gate)
            {
                return _failure is not null;
            }
        }
    }

    /// <summary>Starts it.</summary>
    /// <exception cref="CoreException">It can't be started.</exception>
    internal static CoreProcess Start(CoreCommand command, CorePatience patience)
    {
        var process = new Process
        {
            StartInfo = new ProcessStartInfo(command.File, command.Line())
            {
                UseShellExecute = false,
                CreateNoWindow = true,
                RedirectStandardInput = true,
                RedirectStandardOutput = true,
                RedirectStandardError = true,
            },
        };
        try
        {
            process.Start();
            return new CoreProcess(process, patience);
        }
        catch (Exception e) when (e is System.ComponentModel.Win32Exception or InvalidOperationException or IOException)
        {
            process.Dispose();
            throw new CoreException(CoreFailure.NotStarted, "'" + command.File + "' can't be started: " + e.Message);
        }
    }

    /// <summary>Sends a request and waits for its result.</summary>
    /// <param name="method">The method.</param>
    /// <param name="parameters">Its parameters.</param>
    /// <param name="heard">Given the parameters of each notification of progress meanwhile, on another thread.</param>
    /// <param name="cancel">Cancels the request.</param>
    /// <exception cref="CoreException">There is no result.</exception>
    internal JsonValue Call(string method, JsonValue parameters, Action<JsonValue>? heard, CancellationToken cancel)
    {
        int id;
        lock (_gate)
        {
            if (_failure is { } failed)
            {
                throw failed;
            }

            if (cancel.IsCancellationRequested)
            {
                throw Cancelled();
            }

            id = _open = ++_lastId;
            _reply = null;
            _heard = heard;
            _lastHeard = DateTime.UtcNow;
        }

        // On another thread: a core that hangs doesn't read, and the pipe fills up.
        Send(Message(("id", JsonValue.Of(id)), ("method", JsonValue.Of(method)), ("params", parameters)));
        using (cancel.Register(() => { lock (_gate) { Monitor.PulseAll(_gate); } }))
        {
            return Result(Wait(id, cancel), cancel);
        }
    }

    /// <summary>Closes its input, waits a little for its end, and ends it otherwise.</summary>
    public void Dispose()
    {
        if (Interlocked.Exchange(ref _disposed, 1) != 0)
        {
            return;
        }

        Fail(new CoreException(CoreFailure.Ended, "The core was ended."), false);
        try
        {
            _process.StandardInput.BaseStream.Dispose();
        }
        catch (Exception e) when (e is IOException or InvalidOperationException or ObjectDisposedException)
        {
            // It has gone already.
        }

        if (!_process.WaitForExit((int)_patience.End.TotalMilliseconds))
        {
            Kill();
            _process.WaitForExit((int)_patience.End.TotalMilliseconds);
        }
    }

    private JsonValue Wait(int id, CancellationToken cancel)
    {
        DateTime begun = DateTime.UtcNow;
        DateTime? cancelled = null;
        while (true)
        {
            bool tell = false;
            lock (_gate)
            {
                DateTime now = DateTime.UtcNow;
                if (_reply is { } reply)
                {
                    _open = 0;
                    return reply;
                }

                if (_failure is { } failed)
                {
                    throw failed;
                }

                tell = cancel.IsCancellationRequested && cancelled is null;
                if (tell)
                {
                    cancelled = now;
                }

                DateTime until = Earlier(_lastHeard + _patience.Silence, begun + _patience.Longest);
                until = cancelled is { } since ? Earlier(until, since + _patience.End) : until;
                if (now >= until)
                {
                    Fail(cancelled is null
                        ? new CoreException(CoreFailure.TimedOut, string.Format(CultureInfo.InvariantCulture, "The core has not answered for {0:0.#} seconds and was ended.", (now - _lastHeard).TotalSeconds))
                        : Cancelled(), true);
                    throw _failure!;
                }

                if (!tell)
                {
                    Monitor.Wait(_gate, until - now + TimeSpan.FromMilliseconds(1));
                }
            }

            if (tell)
            {
                Send(Message(("method", JsonValue.Of("cancel")), ("params", JsonValue.Of([new KeyValuePair<string, JsonValue>("request", JsonValue.Of(id))]))));
            }
        }
    }

    private static JsonValue Result(JsonValue reply, CancellationToken cancel)
    {
        if (reply["result"] is { } result)
        {
            return result;
        }

        JsonValue error = reply["error"]!;
        int code = (int)error["code"]!.Number;
        throw code == -32001 && cancel.IsCancellationRequested
            ? Cancelled()
            : new CoreException(CoreFailure.Refused, string.Format(CultureInfo.InvariantCulture, "The core refused the request ({0}): {1}", code, error["message"]!.Text), code);
    }

    private static CoreException Cancelled() => new(CoreFailure.Cancelled, "Cancelled.");

    private static DateTime Earlier(DateTime a, DateTime b) => a < b ? a : b;

    private static byte[] Message(params (string Name, JsonValue Value)[] members)
    {
        var all = new List<KeyValuePair<string, JsonValue>> { new("jsonrpc", JsonValue.Of("2.0")) };
        all.AddRange(members.Select(m => new KeyValuePair<string, JsonValue>(m.Name, m.Value)));
        return Utf8.GetBytes(JsonWriter.Write(JsonValue.Of(all)) + "\n");
    }

    private void Send(byte[] message) => _ = Task.Run(() =>
    {
        try
        {
            // The bytes themselves: a writer of text may put a byte order mark before them.
            Stream input = _process.StandardInput.BaseStream;
            input.Write(message, 0, message.Length);
            input.Flush();
        }
        catch (Exception e) when (e is IOException or ObjectDisposedException or InvalidOperationException)
        {
            // It has gone; whoever reads its output knows more.
        }
    });

    private void ReadMessages()
    {
        try
        {
            Stream output = _process.StandardOutput.BaseStream;
            using var line = new MemoryStream();
            byte[] buffer = new byte[65536];
            int count;
            while ((count = output.Read(buffer, 0, buffer.Length)) > 0)
            {
                int from = 0;
                for (int i = 0; i < count; i++)
                {
                    if (buffer[i] == (byte)'\n')
                    {
                        line.Write(buffer, from, i - from);
                        Take(Utf8.GetString(line.GetBuffer(), 0, (int)line.Length));
                        line.SetLength(0);
                        from = i + 1;
                    }
                }

                line.Write(buffer, from, count - from);
                if (line.Length > _patience.MessageBytes)
                {
                    throw new JsonFaultException("a message without end");
                }
            }

            // What it complained of may still be on its way through the other pipe.
            _process.WaitForExit((int)_patience.End.TotalMilliseconds);
            _errors.Join(_patience.End);
            Fail(new CoreException(CoreFailure.Ended, (line.Length > 0 ? "The core ended in the middle of a message." : "The core ended without an answer.") + LastWords()), true);
        }
        catch (Exception e) when (e is JsonFaultException or DecoderFallbackException)
        {
            Fail(new CoreException(CoreFailure.Rubbish, "What the core said makes no sense (" + e.Message + "); it was ended." + LastWords()), true);
        }
        catch (Exception e) when (e is IOException or ObjectDisposedException or InvalidOperationException)
        {
            Fail(new CoreException(CoreFailure.Ended, "The core can't be heard any more: " + e.Message), true);
        }
    }

    private void Take(string text)
    {
        JsonValue message = JsonReader.Read(text);
        if (message["jsonrpc"]?.Text != "2.0")
        {
            throw new JsonFaultException("no message of JSON-RPC 2.0");
        }

        Action<JsonValue>? heard;
        lock (_gate)
        {
            _lastHeard = DateTime.UtcNow;
            if (message["id"] is null && message["method"] is { Kind: JsonKind.Text } method)
            {
                // Other notifications may be added to the contract.
                heard = method.Text == "progress" ? _heard : null;
            }
            else
            {
                bool isError = message["error"] is { } e && e["code"]?.Kind == JsonKind.Number && e["message"]?.Kind == JsonKind.Text;
                if (isError == message["result"] is not null)
                {
                    throw new JsonFaultException("a reply is either a result or an error");
                }

                if (message["id"] is not { Kind: JsonKind.Number } id || _open == 0 || _reply is not null || !id.Number.Equals(_open))
                {
                    throw new JsonFaultException("a reply to nothing that was asked");
                }

                _reply = message;
                heard = null;
            }

            Monitor.PulseAll(_gate);
        }

        try
        {
            heard?.Invoke(message["params"] ?? JsonValue.Null);
        }
        catch (Exception e)
        {
            // A fault of whoever listens must not end the host's process, as it would on this thread.
            Trace.TraceWarning("A listener to progress failed: " + e.Message);
        }
    }

    // Its own complaints tell why it ended; only the last few, so that a flood costs nothing.
    private void ReadErrors()
    {
        try
        {
            StreamReader errors = _process.StandardError;
            var buffer = new char[1024];
            int count;
            while ((count = errors.Read(buffer, 0, buffer.Length)) > 0)
            {
                lock (_lastWords)
                {
                    _lastWords.Enqueue(new string(buffer, 0, count));
                    while (_lastWords.Count > 4)
                    {
                        _lastWords.Dequeue();
                    }
                }
            }
        }
        catch (Exception e) when (e is IOException or ObjectDisposedException or InvalidOperationException)
        {
            // It has gone.
        }
    }

    private string LastWords()
    {
        lock (_lastWords)
        {
            string all = string.Concat(_lastWords).Trim();
            return all.Length == 0 ? "" : " Its last words: " + all.Substring(Math.Max(0, all.Length - 300));
        }
    }

    private void Fail(CoreException why, bool kill)
    {
        lock (_gate)
        {
            _failure ??= why;
            Monitor.PulseAll(_gate);
        }

        if (kill)
        {
            Kill();
        }
    }

    private void Kill()
    {
        try
        {
            _process.Kill();
        }
        catch (Exception e) when (e is InvalidOperationException or System.ComponentModel.Win32Exception or NotSupportedException)
        {
            // It has ended.
        }
    }
}
