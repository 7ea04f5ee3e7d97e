using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using ToolpathForge.Service.Host;
using ToolpathForge.Tests.Planning;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Host;

/// <summary>
/// Conversations with the service, kept line by line and held for ever: what a client of this major version has once been answered it is answered again. A line of a transcript is
/// <c>{"send": text}</c> or <c>{"get": message}</c>. Replies may gain properties and words may be put better; everything else stays.
/// </summary>
public class TranscriptTests
{
    private static readonly string Folder = Repo.Path("tests", "data", "transcripts");

    public static TheoryData<string> Names => [.. Directory.EnumerateFiles(Folder, "*.jsonl").Select(f => Path.GetFileName(f)).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Names))]
    public void The_service_answers_as_it_did(string name)
    {
        JsonNode[] lines = [.. File.ReadLines(Path.Combine(Folder, name)).Select(l => JsonNode.Parse(l)!)];
        JsonNode[] got = Serve(lines.Where(l => l["send"] is not null).Select(l => l["send"]!.GetValue<string>()));
        JsonNode[] kept = [.. lines.Where(l => l["get"] is not null).Select(l => l["get"]!)];
        Assert.Equal(kept.Length, got.Length);
        Assert.All(kept.Zip(got), pair => Assert.Equal("", Lacks(pair.First, pair.Second, "$")));
    }

    // The same by a client in another language, against a process.
    [Fact]
    public void A_client_in_python_is_answered_as_it_was()
    {
        var asked = new JsonObject
        {
            ["command"] = new JsonArray("dotnet", "exec", Path.Combine(AppContext.BaseDirectory, "toolpathforge.dll"), "host"),
            ["transcripts"] = new JsonArray([.. Directory.EnumerateFiles(Folder, "*.jsonl").Order(StringComparer.Ordinal).Select(f => (JsonNode)f)]),
        };
        string said = OutsideTool.Python("replay_transcripts.py", asked.ToJsonString(), "json");
        Assert.Equal("as before", said.Trim());
    }

    // UPDATE_GOLDEN=1 writes a transcript that is missing, and never one that is there.
    [Fact]
    public void Every_conversation_is_kept()
    {
        foreach ((string name, string[] sends) in Conversations())
        {
            string path = Path.Combine(Folder, name + ".jsonl");
            if (Environment.GetEnvironmentVariable("UPDATE_GOLDEN") == "1" && !File.Exists(path))
            {
                File.WriteAllText(path, string.Concat(
                [
                    .. sends.Select(s => new JsonObject { ["send"] = s }.ToJsonString() + "\n"),
                    .. Serve(sends).Select(g => new JsonObject { ["get"] = g }.ToJsonString() + "\n"),
                ]));
            }

            Assert.True(File.Exists(path), $"{path} is missing; UPDATE_GOLDEN=1 writes it.");
        }
    }

    private static IEnumerable<(string Name, string[] Sends)> Conversations()
    {
        static string Request(string id, string method, JsonNode parameters) =>
            new JsonObject { ["jsonrpc"] = "2.0", ["id"] = id, ["method"] = method, ["params"] = parameters }.ToJsonString();
        string hello = Request("hello", "initialize", new JsonObject { ["protocol"] = "1", ["client"] = "a transcript" });
        string job = new StringBuilder(SamplePlan.Text).ToString();
        yield return ("plan", [hello, Request("plan", "plan", new JsonObject { ["job"] = job }), Request("page", "preview", new JsonObject { ["plan"] = "p1", ["program"] = 0, ["from"] = 40, ["count"] = 5 }), Request("release", "release", new JsonObject { ["plan"] = "p1" }), Request("end", "shutdown", new JsonObject())]);
        yield return ("stop", [hello, Request("plan", "plan", new JsonObject { ["job"] = job.Replace("depth = \"4 1/4\"", "depth = \"7\"", StringComparison.Ordinal) })]);
        yield return ("outline",
        [
            hello,
            Request("plan", "plan", JsonNode.Parse("""
                {"job":"format = 1\nname = \"Porch plate\"\nunit = \"mm\"\ntolerance = \"0.1 mm\"\nmachine = \"desktop-400\"\ndialect = \"metric-centre\"\n[[make]]\nid = \"plate\"\nkind = \"outline\"\ndrawing = \"@sketch\"\nstock = { panel = \"hardboard-1/4\", thickness = \"5.6 mm\" }\nbit = \"downcut-1/4\"\n",
                 "outlines":[{"name":"sketch","entities":[{"kind":"polyline","points":[[0,0],[200,0],[200,120],[0,120]],"closed":true},{"kind":"circle","centre":[60,60],"radius":15}]}]}
                """)!),
            Request("text", "programs", new JsonObject { ["plan"] = "p1" }),
        ]);
        yield return ("protocol", ["{rubbish", "[]", "[1]", """{"jsonrpc":"2.0","id":1,"method":"plan"}""", hello, """{"jsonrpc":"2.0","id":2,"method":"no-such"}""", """[{"jsonrpc":"2.0","id":3,"method":"catalogue","params":{"lists":["dialects"]}},{"jsonrpc":"2.0","method":"cancel","params":{"request":9}}]""", """{"jsonrpc":"2.0","id":4,"method":"plan","params":{"jobs":1}}"""]);
    }

    private static JsonNode[] Serve(IEnumerable<string> sends)
    {
        using var input = new MemoryStream(Encoding.UTF8.GetBytes(string.Join('\n', sends) + "\n"));
        using var output = new MemoryStream();
        HostServer.Run(input, output, TestContext.Current.CancellationToken);
        return [.. Encoding.UTF8.GetString(output.ToArray()).Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(l => JsonNode.Parse(l)!)];
    }

    // Where something that was said is no longer said; nothing where all of it is. Words for people, versions and times may change.
    private static string Lacks(JsonNode? kept, JsonNode? got, string at)
    {
        switch (kept)
        {
            case JsonObject before when got is JsonObject now:
                return before.Select(p => Free.Contains(p.Key) ? now.ContainsKey(p.Key) ? "" : $"{at}.{p.Key}" : Lacks(p.Value, now[p.Key], $"{at}.{p.Key}")).FirstOrDefault(s => s.Length > 0) ?? "";
            case JsonArray before when got is JsonArray now:
                return before.Count > now.Count ? at : before.Select((n, i) => Lacks(n, now[i], $"{at}[{i}]")).FirstOrDefault(s => s.Length > 0) ?? "";
            default:
                return JsonNode.DeepEquals(kept, got) ? "" : at;
        }
    }

    // Plans get better from version to version: what they say may change, that they say it may not.
    private static readonly HashSet<string> Free = new(StringComparer.Ordinal)
    {
        "message", "advice", "version", "name", "says", "asks", "text", "sha256", "minutes", "cuttingLength", "proof", "feed", "speed", "passName", "at", "fromZ", "toZ", "way", "total", "next", "entities", "found", "allowed",
    };
}
