using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using ToolpathForge.Service.Host;

namespace ToolpathForge.Tests.Host;

/// <summary>The dispatcher against the examples of the JSON-RPC 2.0 specification (jsonrpc.org/specification, section 7), request by reply, with the methods that those assume.</summary>
public class RpcDispatcherTests
{
    private static readonly RpcDispatcher s_dispatcher = new(Methods, 100);

    // subtract, sum, get_data and the notifications of the examples.
    private static byte[]? Methods(RpcRequest request)
    {
        JsonElement p = request.Parameters;
        return request.Method switch
        {
            "subtract" when p.ValueKind == JsonValueKind.Array => Number(p[0].GetInt32() - p[1].GetInt32()),
            "subtract" => Number(p.GetProperty("minuend").GetInt32() - p.GetProperty("subtrahend").GetInt32()),
            "sum" => Number(p.EnumerateArray().Sum(e => e.GetInt32())),
            "get_data" => "[\"hello\",5]"u8.ToArray(),
            "update" or "notify_sum" or "notify_hello" => "null"u8.ToArray(),
            "fail" => throw new InvalidOperationException("a secret of the code\n   at Somewhere.In(It)"),
            "refuse" => throw new RpcException(RpcError.InvalidParameters.Because("what\nis\tasked")),
            "late" => throw new OperationCanceledException(),
            _ => null,
        };

        static byte[] Number(int n) => Encoding.UTF8.GetBytes(n.ToString(System.Globalization.CultureInfo.InvariantCulture));
    }

    private static string? Answer(string message) => s_dispatcher.Answer(Encoding.UTF8.GetBytes(message)) is { } reply ? Encoding.UTF8.GetString(reply) : null;

    [Theory]
    [InlineData("""{"jsonrpc": "2.0", "method": "subtract", "params": [42, 23], "id": 1}""", """{"jsonrpc": "2.0", "result": 19, "id": 1}""")]
    [InlineData("""{"jsonrpc": "2.0", "method": "subtract", "params": [23, 42], "id": 2}""", """{"jsonrpc": "2.0", "result": -19, "id": 2}""")]
    [InlineData("""{"jsonrpc": "2.0", "method": "subtract", "params": {"subtrahend": 23, "minuend": 42}, "id": 3}""", """{"jsonrpc": "2.0", "result": 19, "id": 3}""")]
    [InlineData("""{"jsonrpc": "2.0", "method": "subtract", "params": {"minuend": 42, "subtrahend": 23}, "id": 4}""", """{"jsonrpc": "2.0", "result": 19, "id": 4}""")]
    [InlineData("""{"jsonrpc": "2.0", "method": "update", "params": [1,2,3,4,5]}""", null)]
    [InlineData("""{"jsonrpc": "2.0", "method": "foobar"}""", null)]
    [InlineData("""{"jsonrpc": "2.0", "method": "foobar", "id": "1"}""", """{"jsonrpc": "2.0", "error": {"code": -32601, "message": "Method not found"}, "id": "1"}""")]
    [InlineData("""{"jsonrpc": "2.0", "method": "foobar, "params": "bar", "baz]""", """{"jsonrpc": "2.0", "error": {"code": -32700, "message": "Parse error"}, "id": null}""")]
    [InlineData("""{"jsonrpc": "2.0", "method": 1, "params": "bar"}""", """{"jsonrpc": "2.0", "error": {"code": -32600, "message": "Invalid Request"}, "id": null}""")]
    [InlineData("""[ {"jsonrpc": "2.0", "method": "sum", "params": [1,2,4], "id": "1"}, {"jsonrpc": "2.0", "method" ]""", """{"jsonrpc": "2.0", "error": {"code": -32700, "message": "Parse error"}, "id": null}""")]
    [InlineData("[]", """{"jsonrpc": "2.0", "error": {"code": -32600, "message": "Invalid Request"}, "id": null}""")]
    [InlineData("[1]", """[{"jsonrpc": "2.0", "error": {"code": -32600, "message": "Invalid Request"}, "id": null}]""")]
    [InlineData(
        "[1,2,3]",
        """[{"jsonrpc": "2.0", "error": {"code": -32600, "message": "Invalid Request"}, "id": null}, {"jsonrpc": "2.0", "error": {"code": -32600, "message": "Invalid Request"}, "id": null}, {"jsonrpc": "2.0", "error": {"code": -32600, "message": "Invalid Request"}, "id": null}]""")]
    [InlineData(
        """[{"jsonrpc": "2.0", "method": "sum", "params": [1,2,4], "id": "1"}, {"jsonrpc": "2.0", "method": "notify_hello", "params": [7]}, {"jsonrpc": "2.0", "method": "subtract", "params": [42,23], "id": "2"}, {"foo": "boo"}, {"jsonrpc": "2.0", "method": "foo.get", "params": {"name": "myself"}, "id": "5"}, {"jsonrpc": "2.0", "method": "get_data", "id": "9"}]""",
        """[{"jsonrpc": "2.0", "result": 7, "id": "1"}, {"jsonrpc": "2.0", "result": 19, "id": "2"}, {"jsonrpc": "2.0", "error": {"code": -32600, "message": "Invalid Request"}, "id": null}, {"jsonrpc": "2.0", "error": {"code": -32601, "message": "Method not found"}, "id": "5"}, {"jsonrpc": "2.0", "result": ["hello", 5], "id": "9"}]""")]
    [InlineData("""[{"jsonrpc": "2.0", "method": "notify_sum", "params": [1,2,4]}, {"jsonrpc": "2.0", "method": "notify_hello", "params": [7]}]""", null)]
    public void The_examples_of_the_specification(string request, string? reply)
    {
        string? said = Answer(request);
        Assert.Equal(reply is null, said is null);
        Assert.True(reply is null || JsonNode.DeepEquals(JsonNode.Parse(reply), JsonNode.Parse(said!)), said);
    }

    // Section 4: an id is text, a number or null, and comes back as it was; section 4.2: parameters are structured.
    [Theory]
    [InlineData("""{"jsonrpc":"2.0","method":"get_data","id":null}""", "null", null)]
    [InlineData("""{"jsonrpc":"2.0","method":"get_data","id":12345678901234567890123}""", "12345678901234567890123", null)]
    [InlineData("""{"jsonrpc":"2.0","method":"get_data","id":1.50}""", "1.50", null)]
    [InlineData("""{"jsonrpc":"2.0","method":"get_data","id":"é\n"}""", "\"é\\n\"", null)]
    [InlineData("""{"jsonrpc":"2.0","method":"get_data","id":true}""", "null", -32600)]
    [InlineData("""{"jsonrpc":"2.0","method":"get_data","id":[1]}""", "null", -32600)]
    [InlineData("""{"jsonrpc":"1.0","method":"get_data","id":7}""", "7", -32600)]
    [InlineData("""{"method":"get_data","id":7}""", "7", -32600)]
    [InlineData("""{"jsonrpc":"2.0","method":"get_data","params":3,"id":7}""", "7", -32600)]
    [InlineData("""{"jsonrpc":"2.0","method":"get_data","params":null,"id":7}""", "7", -32600)]
    [InlineData("""{"jsonrpc":"2.0","method":"fail","id":7}""", "7", -32603)]
    [InlineData("""{"jsonrpc":"2.0","method":"refuse","id":7}""", "7", -32602)]
    [InlineData("""{"jsonrpc":"2.0","method":"late","id":7}""", "7", -32001)]
    [InlineData("""{"jsonrpc":"2.0","method":"get_data","id":"\ud800"}""", "null", -32600)]
    [InlineData("""{"jsonrpc":"2.0","method":"get_data","id":7,}""", "null", -32700)]
    [InlineData("null", "null", -32600)]
    [InlineData("\"text\"", "null", -32600)]
    [InlineData("", "null", -32700)]
    public void Ids_come_back_as_they_were_and_errors_have_their_codes(string request, string id, int? code)
    {
        string said = Answer(request)!;
        Assert.EndsWith($"\"id\":{id}}}", said, StringComparison.Ordinal);
        JsonNode reply = JsonNode.Parse(said)!;
        Assert.Equal(code, reply["error"]?["code"]?.GetValue<int>());
        Assert.Equal(code is null, reply["result"] is not null);
        Assert.DoesNotContain("secret", said, StringComparison.Ordinal);
        Assert.DoesNotContain(" at ", said, StringComparison.Ordinal);
    }

    [Fact]
    public void Bytes_that_are_no_text_and_nests_without_end_are_parse_errors()
    {
        byte[][] messages = [[0xFF, 0xFE, 0x00], [.. "{\"jsonrpc\":\"2.0\",\"method\":\""u8, 0xC3, (byte)'"', (byte)'}'], [.. Enumerable.Repeat((byte)'[', 100_000)]];
        Assert.All(messages, m => Assert.Contains("-32700", Encoding.UTF8.GetString(s_dispatcher.Answer(m)!), StringComparison.Ordinal));
    }

    [Fact]
    public void A_batch_without_end_is_refused_whole() =>
        Assert.Contains("-32600", Answer("[" + string.Join(',', Enumerable.Repeat("""{"jsonrpc":"2.0","method":"get_data","id":1}""", 101)) + "]"), StringComparison.Ordinal);
}
