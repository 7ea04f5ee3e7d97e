using System.Buffers;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Unicode;

namespace ToolpathForge.Service.Host;

/// <summary>A request as a method gets it.</summary>
/// <param name="Method">Its name.</param>
/// <param name="Id">Its id as JSON; null for a notification.</param>
/// <param name="Parameters">An object or an array; undefined where there are none.</param>
public readonly record struct RpcRequest(string Method, string? Id, JsonElement Parameters)
{
    /// <summary>The id as text: that of a string without its quotation marks; empty for a notification.</summary>
    public string IdText => Id is ['"', ..] ? JsonElement.Parse(Id).GetString()! : Id ?? "";
}

/// <summary>Answers a request: a result as JSON in UTF-8; null where there is no such method.</summary>
/// <param name="request">The request.</param>
/// <returns>The result.</returns>
/// <exception cref="RpcException">The request cannot be answered.</exception>
public delegate byte[]? RpcMethods(RpcRequest request);

/// <summary>
/// JSON-RPC 2.0 to the letter (jsonrpc.org/specification, 2013): what goes in is one message, what comes out is the reply to it, or nothing where nothing may be replied.
/// Knows no method and no stream. Of ours only because no library that was tried stays alive on malformed messages and answers each as the specification asks.
/// </summary>
/// <param name="methods">Answers requests.</param>
/// <param name="most">Requests of one batch, at most.</param>
public sealed class RpcDispatcher(RpcMethods methods, int most)
{
    /// <summary>Deeper JSON is not looked at.</summary>
    private const int Deepest = 64;

    private static readonly JsonWriterOptions s_writing = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The reply to a message; null for none.</summary>
    /// <param name="message">UTF-8.</param>
    public byte[]? Answer(ReadOnlyMemory<byte> message)
    {
        // Text on the wire is UTF-8 (RFC 8259, 8.1), which the parser looks at only where it is asked for a text.
        if (!Utf8.IsValid(message.Span))
        {
            return Error(null, RpcError.Parse);
        }

        JsonDocument document;
        try
        {
            document = JsonDocument.Parse(message, new JsonDocumentOptions { MaxDepth = Deepest });
        }
        catch (JsonException)
        {
            return Error(null, RpcError.Parse);
        }

        using (document)
        {
            JsonElement root = document.RootElement;
            if (root.ValueKind != JsonValueKind.Array)
            {
                return One(root);
            }

            if (root.GetArrayLength() == 0)
            {
                return Error(null, RpcError.InvalidRequest);
            }

            if (root.GetArrayLength() > most)
            {
                return Error(null, RpcError.InvalidRequest.Because(FormattableString.Invariant($"a batch holds {most} requests at most")));
            }

            byte[][] replies = [.. root.EnumerateArray().Select(One).OfType<byte[]>()];
            return replies.Length == 0 ? null : Batch(replies);
        }
    }

    /// <summary>The reply that says an error.</summary>
    /// <param name="id">The request's id as JSON; null where it is not known.</param>
    /// <param name="error">The error.</param>
    public static byte[] Error(string? id, RpcError error)
    {
        ArgumentNullException.ThrowIfNull(error);
        return Write(writer =>
        {
            writer.WriteStartObject();
            writer.WriteString("jsonrpc", "2.0");
            writer.WriteStartObject("error");
            writer.WriteNumber("code", error.Code);
            writer.WriteString("message", error.Message);
            writer.WriteEndObject();
            WriteId(writer, id);
            writer.WriteEndObject();
        });
    }

    /// <summary>A notification from here.</summary>
    /// <param name="method">Its name.</param>
    /// <param name="parameters">JSON in UTF-8.</param>
    public static byte[] Notification(string method, byte[] parameters) => Write(writer =>
    {
        writer.WriteStartObject();
        writer.WriteString("jsonrpc", "2.0");
        writer.WriteString("method", method);
        writer.WritePropertyName("params");
        writer.WriteRawValue(parameters, skipInputValidation: true);
        writer.WriteEndObject();
    });

    private byte[]? One(JsonElement element)
    {
        if (!TryRead(element, out RpcRequest request, out string? id))
        {
            return Error(id, RpcError.InvalidRequest);
        }

        byte[] reply;
        try
        {
            reply = methods(request) is { } result ? Result(request.Id, result) : Error(request.Id, RpcError.NoSuchMethod);
        }
        catch (RpcException refused)
        {
            reply = Error(request.Id, refused.Error);
        }
        catch (OperationCanceledException)
        {
            reply = Error(request.Id, RpcError.Cancelled);
        }
        catch (Exception fault) when (fault is not OutOfMemoryException)
        {
            // Its kind helps whoever looks for the fault; where in the code it was is nobody's business on the wire.
            reply = Error(request.Id, RpcError.Internal.Because(fault.GetType().Name));
        }

        return request.Id is null ? null : reply;
    }

    // A request is an object with jsonrpc "2.0", a method, and params and id only of the kinds that the specification knows.
    private static bool TryRead(JsonElement element, out RpcRequest request, out string? id)
    {
        (request, id) = (default, null);
        if (element.ValueKind != JsonValueKind.Object)
        {
            return false;
        }

        bool hasId = element.TryGetProperty("id", out JsonElement given);
        if (hasId && given.ValueKind is not (JsonValueKind.String or JsonValueKind.Number or JsonValueKind.Null))
        {
            return false;
        }

        id = hasId ? given.GetRawText() : null;
        if (!element.TryGetProperty("jsonrpc", out JsonElement version) || version.ValueKind != JsonValueKind.String || !version.ValueEquals("2.0")
            || !element.TryGetProperty("method", out JsonElement method) || method.ValueKind != JsonValueKind.String)
        {
            return false;
        }

        bool hasParameters = element.TryGetProperty("params", out JsonElement parameters);
        if (hasParameters && parameters.ValueKind is not (JsonValueKind.Object or JsonValueKind.Array))
        {
            return false;
        }

        try
        {
            request = new RpcRequest(method.GetString()!, id, parameters);
            _ = hasId && given.ValueKind == JsonValueKind.String ? given.GetString() : null;
            return true;
        }
        catch (InvalidOperationException)
        {
            // Half of a surrogate pair, which no text can hold.
            id = null;
            return false;
        }
    }

    private static byte[] Result(string? id, byte[] result) => Write(writer =>
    {
        writer.WriteStartObject();
        writer.WriteString("jsonrpc", "2.0");
        writer.WritePropertyName("result");
        writer.WriteRawValue(result, skipInputValidation: true);
        WriteId(writer, id);
        writer.WriteEndObject();
    });

    private static byte[] Batch(byte[][] replies) => Write(writer =>
    {
        writer.WriteStartArray();
        foreach (byte[] reply in replies)
        {
            writer.WriteRawValue(reply, skipInputValidation: true);
        }

        writer.WriteEndArray();
    });

    private static void WriteId(Utf8JsonWriter writer, string? id)
    {
        writer.WritePropertyName("id");
        writer.WriteRawValue(id ?? "null", skipInputValidation: true);
    }

    private static byte[] Write(Action<Utf8JsonWriter> body)
    {
        var buffer = new ArrayBufferWriter<byte>();
        using (var writer = new Utf8JsonWriter(buffer, s_writing))
        {
            body(writer);
        }

        return buffer.WrittenSpan.ToArray();
    }
}
