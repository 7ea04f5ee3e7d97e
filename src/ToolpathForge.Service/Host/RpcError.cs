namespace ToolpathForge.Service.Host;

/// <summary>An error of the protocol (JSON-RPC 2.0, section 5.1). What is wrong with a job is never one: that is a result with findings.</summary>
/// <param name="Code">Of the specification, or from -32000 to -32099, which it leaves to servers.</param>
/// <param name="Message">One short sentence.</param>
public sealed record RpcError(int Code, string Message)
{
    /// <summary>The message is no JSON.</summary>
    public static RpcError Parse { get; } = new(-32700, "Parse error");

    /// <summary>The message is JSON, but no request.</summary>
    public static RpcError InvalidRequest { get; } = new(-32600, "Invalid Request");

    /// <summary>There is no such method.</summary>
    public static RpcError NoSuchMethod { get; } = new(-32601, "Method not found");

    /// <summary>The parameters are not those of the method.</summary>
    public static RpcError InvalidParameters { get; } = new(-32602, "Invalid params");

    /// <summary>A fault of the core.</summary>
    public static RpcError Internal { get; } = new(-32603, "Internal error");

    /// <summary>The client has cancelled the request.</summary>
    public static RpcError Cancelled { get; } = new(-32001, "Cancelled");

    /// <summary>The first request must be initialize, once.</summary>
    public static RpcError NotInitialized { get; } = new(-32002, "Not initialized");

    /// <summary>The message is larger than the core takes.</summary>
    public static RpcError TooLarge { get; } = new(-32003, "Message too large");

    /// <summary>The same error with more said.</summary>
    /// <param name="more">A clause; control characters become spaces.</param>
    public RpcError Because(string more) => this with { Message = $"{Message}: {new string([.. more.Take(300).Select(c => char.IsControl(c) ? ' ' : c)])}" };
}

/// <summary>Thrown by a method to answer with an error of the protocol.</summary>
public sealed class RpcException(RpcError error) : Exception(error.Message)
{
    /// <summary>The error.</summary>
    public RpcError Error { get; } = error;
}
