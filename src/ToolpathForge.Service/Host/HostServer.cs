using System.Collections.Concurrent;
using System.Diagnostics;
using System.Text.Json;

namespace ToolpathForge.Service.Host;

/// <summary>
/// Serves one client: messages in, replies out, until the stream ends, the client asks for the end, its process is gone, or nobody takes the replies. Requests are answered one at a
/// time in their order; a cancellation is seen at once.
/// </summary>
public sealed class HostServer : IDisposable
{
    /// <summary>Requests that may wait; then the client has to.</summary>
    private const int Waiting = 256;

    private readonly MessageStream _incoming;
    private readonly Stream _output;
    private readonly HostMethods _methods;
    private readonly RpcDispatcher _dispatcher;
    private readonly Lock _writing = new();
    private readonly CancellationTokenSource _end = new();
    private readonly ConcurrentDictionary<string, CancellationTokenSource> _open = new(StringComparer.Ordinal);
    private Timer? _watch;

    private HostServer(Stream input, Stream output)
    {
        _incoming = new MessageStream(input, HostLimits.MessageBytes);
        _output = output;
        _methods = new HostMethods(Notify, Watch);
        _dispatcher = new RpcDispatcher(Call, HostLimits.BatchRequests);
    }

    /// <summary>Serves until there is nobody to serve.</summary>
    /// <param name="input">From the client.</param>
    /// <param name="output">To the client; flushed after every message.</param>
    /// <param name="cancel">Ends the service.</param>
    /// <returns>The exit code.</returns>
    public static int Run(Stream input, Stream output, CancellationToken cancel)
    {
        using var server = new HostServer(input, output);
        using CancellationTokenRegistration stop = cancel.Register(server._end.Cancel);
        return server.Serve();
    }

    private int Serve()
    {
        using var queue = new BlockingCollection<Incoming>(Waiting);

        // A background thread: one that waits for a client that never writes again does not keep the process.
        var reader = new Thread(() => Receive(queue)) { IsBackground = true, Name = "messages" };
        reader.Start();
        try
        {
            foreach (Incoming message in queue.GetConsumingEnumerable(_end.Token))
            {
                byte[]? reply = message.Fault is { } fault ? RpcDispatcher.Error(null, fault) : _dispatcher.Answer(message.Bytes);
                if (reply is not null)
                {
                    Write(reply);
                }

                if (_methods.IsShutDown)
                {
                    break;
                }
            }
        }
        catch (OperationCanceledException)
        {
            // The end was asked for, or the client is gone.
        }
        catch (IOException)
        {
            // Nobody takes the replies.
        }

        _end.Cancel();
        return ExitCodes.Fine;
    }

    /// <summary>Stops looking after the client's process. What the reading thread still waits for stays its own.</summary>
    public void Dispose()
    {
        _watch?.Dispose();
        _end.Cancel();
    }

    private void Receive(BlockingCollection<Incoming> queue)
    {
        try
        {
            while (_incoming.Read() is { } message)
            {
                if (message.Fault is null)
                {
                    CancelAtOnce(message.Bytes);
                }

                queue.Add(message, _end.Token);
            }

            queue.CompleteAdding();
        }
        catch (Exception e) when (e is IOException or ObjectDisposedException or OperationCanceledException or InvalidOperationException)
        {
            // The stream broke, or the service has ended meanwhile.
            if (!_end.IsCancellationRequested)
            {
                _end.Cancel();
            }
        }
    }

    // A cancellation must overtake the request that it is about. It is small; anything else is left to the dispatcher, which sees this message too and finds nothing to do.
    private void CancelAtOnce(ReadOnlyMemory<byte> message)
    {
        if (message.Length > 4096 || message.Span.IndexOf("\"cancel\""u8) < 0)
        {
            return;
        }

        try
        {
            using var document = JsonDocument.Parse(message, new JsonDocumentOptions { MaxDepth = 16 });
            JsonElement root = document.RootElement;
            if (root.ValueKind == JsonValueKind.Object
                && root.TryGetProperty("method", out JsonElement method) && method.ValueKind == JsonValueKind.String && method.ValueEquals(HostMethods.Cancel)
                && root.TryGetProperty("params", out JsonElement parameters) && parameters.ValueKind == JsonValueKind.Object
                && parameters.TryGetProperty("request", out JsonElement id))
            {
                Of(id.GetRawText()).Cancel();
            }
        }
        catch (JsonException)
        {
            // The dispatcher says so.
        }
    }

    // Asked for by the reader before the request is begun, or while it runs.
    private CancellationTokenSource Of(string id) => _open.GetOrAdd(id, _ => new CancellationTokenSource());

    private byte[]? Call(RpcRequest request)
    {
        if (request.Id is not { } id)
        {
            // What it was about came before it, and has been answered.
            if (request.Method == HostMethods.Cancel && request.Parameters.ValueKind == JsonValueKind.Object && request.Parameters.TryGetProperty("request", out JsonElement cancelled))
            {
                _open.TryRemove(cancelled.GetRawText(), out _);
            }

            return _methods.Call(request, _end.Token);
        }

        CancellationTokenSource own = Of(id);
        try
        {
            using var both = CancellationTokenSource.CreateLinkedTokenSource(own.Token, _end.Token);
            return _methods.Call(request, both.Token);
        }
        finally
        {
            _open.TryRemove(id, out _);
        }
    }

    private void Notify(string method, byte[] parameters) => Write(RpcDispatcher.Notification(method, parameters));

    private void Write(byte[] message)
    {
        lock (_writing)
        {
            if (_incoming.Framing == Framing.Lengths)
            {
                _output.Write(System.Text.Encoding.ASCII.GetBytes(FormattableString.Invariant($"Content-Length: {message.Length}\r\n\r\n")));
                _output.Write(message);
            }
            else
            {
                _output.Write(message);
                _output.WriteByte((byte)'\n');
            }

            _output.Flush();
        }
    }

    // No signal tells that a parent has died where it leaves the streams open to others: looked at once a second.
    private void Watch(int parent)
    {
        Process process;
        try
        {
            process = Process.GetProcessById(parent);
        }
        catch (ArgumentException)
        {
            throw new RpcException(RpcError.InvalidParameters.Because("there is no process of that id"));
        }

        _watch = new Timer(
            _ =>
            {
                if (process.HasExited)
                {
                    _end.Cancel();
                }
            },
            null,
            1000,
            1000);
    }
}
