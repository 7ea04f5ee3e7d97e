using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using ToolpathForge.Service.Host;
using ToolpathForge.Tests.Planning;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Host;

/// <summary>The service's methods, in this process, a message a line.</summary>
public class HostServiceTests
{
    private const string Plate = """
        format = 1
        name = "Porch brace"
        unit = "mm"
        tolerance = "0.1 mm"
        machine = "desktop-400"
        dialect = "metric-centre"
        [[make]]
        id = "brace"
        kind = "outline"
        drawing = "@sketch"
        stock = { panel = "hardboard-1/4", thickness = "5.6 mm" }
        bit = "downcut-1/4"
        """;

    private static string Request(int id, string method, JsonObject? parameters = null) =>
        new JsonObject { ["jsonrpc"] = "2.0", ["id"] = id, ["method"] = method, ["params"] = parameters ?? [] }.ToJsonString();

    /// <summary>Sends messages and gives the replies by id; progress apart.</summary>
    private static (Dictionary<int, JsonNode> Replies, List<JsonNode> Progress, string All) Send(params IEnumerable<string> messages)
    {
        using var input = new MemoryStream(Encoding.UTF8.GetBytes(string.Join('\n', messages) + "\n"));
        using var output = new MemoryStream();
        Assert.Equal(0, HostServer.Run(input, output, TestContext.Current.CancellationToken));
        string all = Encoding.UTF8.GetString(output.ToArray());
        JsonNode[] said = [.. all.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(l => JsonNode.Parse(l)!)];
        return (
            said.Where(n => n["id"] is not null).ToDictionary(n => n["id"]!.GetValue<int>()),
            [.. said.Where(n => n["method"] is not null)],
            all);
    }

    private static string Hello(string? folder = null) => Request(0, "initialize", folder is null ? new JsonObject { ["protocol"] = "1" } : new JsonObject { ["protocol"] = "1", ["folder"] = folder });

    private static JsonObject Sketch(params JsonObject[] entities) =>
        new() { ["job"] = Plate, ["outlines"] = new JsonArray(new JsonObject { ["name"] = "sketch", ["entities"] = new JsonArray([.. entities]) }) };

    private static JsonObject Rectangle() => JsonNode.Parse("""{"kind":"polyline","points":[[0,0],[200,0],[200,120],[0,120]],"bulges":[0,0,0,-0.2],"closed":true}""")!.AsObject();

    [Fact]
    public void A_job_is_planned_shown_written_and_released()
    {
        using var scratch = new Scratch();
        scratch.Write("porch.toml", SamplePlan.Text);
        (Dictionary<int, JsonNode> replies, List<JsonNode> progress, _) = Send(
            Hello(scratch.Root),
            Request(1, "plan", new JsonObject { ["file"] = "porch.toml" }),
            Request(2, "preview", new JsonObject { ["plan"] = "p1", ["count"] = 100 }),
            Request(3, "preview", new JsonObject { ["plan"] = "p1", ["program"] = 1, ["from"] = 10 }),
            Request(4, "programs", new JsonObject { ["plan"] = "p1", ["folder"] = "out" }),
            Request(5, "release", new JsonObject { ["plan"] = "p1" }),
            Request(6, "preview", new JsonObject { ["plan"] = "p1" }));
        Assert.Equal("p1", replies[1]["result"]!["plan"]!.GetValue<string>());
        Assert.Equal(SamplePlan.Plan.Programs.Length, replies[1]["result"]!["programs"]!.AsArray().Count);
        Assert.Contains(progress, p => p["params"]!["request"]!.GetValue<string>() == "1" && p["params"]!["stage"]!.GetValue<string>() == "proof");

        // As many entities as the plan has moves, the first of each bit apart; a page at a time.
        int moves = SamplePlan.Plan.Programs.Sum(p => p.Cut.Works.Sum(w => w.Path.Moves.Length - 1));
        Assert.Equal((moves, 100, 100), (Int(replies[2], "total"), replies[2]["result"]!["entities"]!.AsArray().Count, Int(replies[2], "next")));
        Assert.All(replies[3]["result"]!["entities"]!.AsArray(), e => Assert.Equal(1, e!["program"]!.GetValue<int>()));

        // The text is that of the program, and what was written is what cut writes.
        JsonArray programs = replies[4]["result"]!["programs"]!.AsArray();
        Assert.Equal(SamplePlan.Plan.Programs.Select(p => p.Text), programs.Select(p => p!["text"]!.GetValue<string>()));
        Assert.Equal(0, Cli.Command.Run("cut", scratch.Path("porch.toml"), "--out", scratch.Path("same")).Code);
        Assert.Equal(Scratch.Snapshot(scratch.Path("same")), Scratch.Snapshot(scratch.Path("out")));
        Assert.Equal(-32602, Code(replies[6]));
    }

    [Fact]
    public void An_outline_that_comes_with_the_request_is_cut()
    {
        JsonObject circle = JsonNode.Parse("""{"kind":"circle","centre":[60,60],"radius":15,"layer":"holes"}""")!.AsObject();
        (Dictionary<int, JsonNode> replies, _, string all) = Send(Hello(), Request(1, "plan", Sketch(Rectangle(), circle)), Request(2, "programs", new JsonObject { ["plan"] = "p1" }));
        Assert.True(replies[1]["result"]!["plan"] is not null, all);
        Assert.True(replies[2]["result"]!["programs"]![0]!["program"]!["proof"]!["passed"]!.GetValue<bool>());
    }

    // Each kind of entity closes an outline with what it needs, and gives the area that its formula says, seen through the length of cut.
    [Theory]
    [InlineData("""[{"kind":"circle","centre":[100,100],"radius":60}]""")]
    [InlineData("""[{"kind":"arc","centre":[100,100],"radius":60,"start":0,"sweep":180},{"kind":"line","from":[40,100],"to":[160,100]}]""")]
    [InlineData("""[{"kind":"ellipse","centre":[100,100],"major":[80,0],"ratio":0.6}]""")]
    [InlineData("""[{"kind":"ellipse","centre":[100,100],"major":[80,0],"ratio":0.6,"start":0,"sweep":180},{"kind":"line","from":[20,100],"to":[180,100]}]""")]
    [InlineData("""[{"kind":"spline","degree":3,"knots":[0,0,0,0,1,1,1,1],"points":[[0,0],[0,150],[200,150],[200,0]]},{"kind":"line","from":[0,0],"to":[200,0]}]""")]
    [InlineData("""[{"kind":"spline","degree":2,"knots":[0,0,0,1,1,1],"points":[[0,0],[100,200],[200,0]],"weights":[1,0.7,1]},{"kind":"line","from":[0,0],"to":[200,0]}]""")]
    public void Every_kind_of_entity_makes_an_outline(string entities)
    {
        JsonObject request = Sketch();
        request["job"] = Plate.Replace("bit = \"downcut-1/4\"", "bit = \"downcut-1/4\"\ncut = { skin = \"0.5 mm\" }", StringComparison.Ordinal)
            .Replace("thickness = \"5.6 mm\"", "thickness = \"5.6 mm\", flatness = \"0.1 mm\"", StringComparison.Ordinal);
        request["outlines"]![0]!["entities"] = JsonNode.Parse(entities);
        (Dictionary<int, JsonNode> replies, _, string all) = Send(Hello(), Request(1, "plan", request));
        Assert.True(replies[1]["result"]?["plan"] is not null, all);
    }

    [Theory]
    [InlineData("""{"kind":"line","from":[0,0],"to":[0,0]}""", "no length")]
    [InlineData("""{"kind":"line","from":[0,0]}""", "a point is X and Y")]
    [InlineData("""{"kind":"arc","centre":[0,0],"radius":-1,"start":0,"sweep":90}""", "more than 0")]
    [InlineData("""{"kind":"arc","centre":[0,0],"radius":1,"start":0}""", "sweep")]
    [InlineData("""{"kind":"spline","degree":3,"points":[[0,0]],"knots":[0]}""", "control points")]
    [InlineData("""{"kind":"spline","degree":99,"points":[[0,0],[1,1]],"knots":[0]}""", "degree 99")]
    [InlineData("""{"kind":"polyline","points":[[0,0],[1e300,0]]}""", "within a kilometer")]
    [InlineData("""{"kind":"helix"}""", "no such kind")]
    [InlineData("""null""", "it is null")]
    [InlineData("""{"kind":"circle","center":[0,0],"radius":1}""", "$.outlines[0].entities[0].center")]
    public void An_entity_that_is_none_is_an_error_of_the_client(string entity, string says)
    {
        JsonObject request = Sketch();
        request["outlines"]![0]!["entities"] = new JsonArray(JsonNode.Parse(entity));
        (Dictionary<int, JsonNode> replies, _, _) = Send(Hello(), Request(1, "plan", request));
        Assert.Equal(-32602, Code(replies[1]));
        Assert.Contains(says, replies[1]["error"]!["message"]!.GetValue<string>(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_stop_is_a_result_without_a_plan()
    {
        (Dictionary<int, JsonNode> replies, _, _) = Send(
            Hello(),
            Request(1, "plan", new JsonObject { ["job"] = SamplePlan.Text.Replace("depth = \"4 1/4\"", "depth = \"7\"", StringComparison.Ordinal) }),
            Request(2, "plan", new JsonObject { ["job"] = "this is no job" }));
        Assert.All((int[])[1, 2], id =>
        {
            JsonNode result = replies[id]["result"]!;
            Assert.Null(result["plan"]);
            Assert.Empty(result["programs"]!.AsArray());
            Assert.Contains(result["findings"]!.AsArray(), f => f!["severity"]!.GetValue<string>() == "stop");
        });
    }

    // Nothing outside the working folder is read or written, whatever names it: a request, a job, or a link.
    [Fact]
    public void Nothing_outside_the_working_folder_is_touched()
    {
        using var scratch = new Scratch();
        scratch.Write("secret.toml", SamplePlan.Text);
        scratch.Write("secret.dxf", "0\nEOF\n");
        string inside = scratch.Path("work");
        Directory.CreateDirectory(inside);
        scratch.Write("work/porch.toml", SamplePlan.Text);
        scratch.Write("work/own.toml", SamplePlan.Text.Replace("format = 1", "format = 1\ncatalogues = [\"../secret.toml\"]", StringComparison.Ordinal));
        scratch.Write("work/out.toml", Plate.Replace("@sketch", "../secret.dxf", StringComparison.Ordinal));
        File.CreateSymbolicLink(Path.Combine(inside, "link.toml"), scratch.Path("secret.toml"));
        using var elsewhere = new Scratch();
        elsewhere.Write("secret.toml", SamplePlan.Text);
        Directory.CreateSymbolicLink(Path.Combine(inside, "up"), elsewhere.Root);
        SortedDictionary<string, string?> before = Scratch.Snapshot(scratch.Root);
        string[] names = ["../secret.toml", scratch.Path("secret.toml"), "link.toml", "up/secret.toml", "./../secret.toml", "..\\secret.toml", "/etc/passwd", "", "x\u0000y", "."];
        (Dictionary<int, JsonNode> replies, _, _) = Send(
        [
            Hello(inside),
            .. names.Select((n, i) => Request(i + 1, "plan", new JsonObject { ["file"] = n })),
            .. names.Select((n, i) => Request(i + 101, "trace", new JsonObject { ["drawing"] = n })),
            Request(200, "plan", new JsonObject { ["file"] = "own.toml" }),
            Request(201, "plan", new JsonObject { ["file"] = "out.toml" }),
            Request(202, "plan", new JsonObject { ["file"] = "porch.toml" }),
            .. names.Where(n => n.Length > 0).Select((n, i) => Request(i + 301, "programs", new JsonObject { ["plan"] = "p1", ["folder"] = n })),
        ]);
        Assert.All(Enumerable.Range(1, names.Length).Concat(Enumerable.Range(101, names.Length)).Concat(Enumerable.Range(301, names.Length - 2)), id => Assert.True(Code(replies[id]) == -32602 || replies[id]["result"]?["findings"]?.AsArray().Count > 0, replies[id].ToJsonString()));
        Assert.Contains("catalogue", replies[200]["result"]!["findings"]![0]!["code"]!.GetValue<string>(), StringComparison.Ordinal);
        Assert.Contains(replies[201]["result"]!["findings"]!.AsArray(), f => f!["code"]!.GetValue<string>() == "drawing-outside-folder");
        Assert.Equal(before, Scratch.Snapshot(scratch.Root));
        Assert.Equal("secret.toml", Scratch.Names(elsewhere.Root));
    }

    [Fact]
    public void Without_a_folder_no_file_is_touched()
    {
        (Dictionary<int, JsonNode> replies, _, _) = Send(Hello(), Request(1, "plan", new JsonObject { ["file"] = "porch.toml" }), Request(2, "trace", new JsonObject { ["drawing"] = "x.dxf" }));
        Assert.Equal([-32602, -32602], ((int[])[1, 2]).Select(i => Code(replies[i])));
    }

    [Fact]
    public void Order_is_kept_and_limits_hold()
    {
        (Dictionary<int, JsonNode> replies, _, _) = Send(
        [
            Request(1, "catalogue"),
            Request(2, "initialize", new JsonObject { ["protocol"] = "2" }),
            Request(3, "initialize", new JsonObject { ["protocol"] = "1", ["folder"] = "not/a/full/path" }),
            Hello(),
            Request(4, "initialize", new JsonObject { ["protocol"] = "1" }),
            Request(5, "catalogue", new JsonObject { ["lists"] = new JsonArray("bits") }),
            Request(6, "catalogue", new JsonObject { ["lists"] = new JsonArray("nuts") }),
            Request(7, "preview", new JsonObject { ["plan"] = "p9" }),
            Request(8, "plan"),
            .. Enumerable.Range(100, HostLimits.Plans + 1).Select(i => Request(i, "plan", Sketch(Rectangle()))),
            Request(9, "shutdown"),
            Request(10, "catalogue"),
        ]);
        Assert.Equal([-32002, -32602, -32602, -32600], ((int[])[1, 2, 3, 4]).Select(i => Code(replies[i])));
        Assert.True(replies[5]["result"]!["bits"]!.AsArray().Count > 10 && replies[5]["result"]!["lumber"] is null);
        Assert.Equal([-32602, -32602, -32602, -32602], ((int[])[6, 7, 8, 100 + HostLimits.Plans]).Select(i => Code(replies[i])));
        Assert.NotNull(replies[99 + HostLimits.Plans]["result"]!["plan"]);
        Assert.True(replies[9]["result"]!["done"]!.GetValue<bool>());
        Assert.False(replies.ContainsKey(10));
    }

    // Both come in before the worker begins the first plan or while it works on it; either way it ends as cancelled, and the next request is answered.
    [Fact]
    public void A_cancellation_overtakes_its_request()
    {
        (Dictionary<int, JsonNode> replies, _, _) = Send(
            Hello(),
            Request(1, "plan", new JsonObject { ["job"] = SamplePlan.Text }),
            Request(2, "plan", new JsonObject { ["job"] = SamplePlan.Text }),
            """{"jsonrpc":"2.0","method":"cancel","params":{"request":2}}""",
            Request(3, "catalogue"),
            Request(2, "release", new JsonObject { ["plan"] = "p1" }).Replace("\"id\":2", "\"id\":4", StringComparison.Ordinal));
        Assert.NotNull(replies[1]["result"]);
        Assert.Equal(-32001, Code(replies[2]));
        Assert.NotNull(replies[3]["result"]);
        Assert.NotNull(replies[4]["result"]);
    }

    // A seeded stream of messages broken in every way that mutation finds: each is answered by exactly one error or passed over as a notification, and the service goes on.
    [Fact]
    public void Ten_thousand_malformed_messages_are_each_answered_or_refused()
    {
        var random = new Random(20261126);
        string[] good = [Request(7, "plan", new JsonObject { ["plan"] = 1 }), Request(8, "preview", new JsonObject { ["plan"] = "p1" }), """[{"jsonrpc":"2.0","method":"x","id":1},{"jsonrpc":"2.0","method":"cancel"}]""", """{"jsonrpc":"2.0","method":"catalogue","params":[],"id":1}"""];
        string[] broken = [.. Enumerable.Range(0, 10_000).Select(_ => Broken(random, good[random.Next(good.Length)]))];
        long before = GC.GetTotalMemory(true);
        using var input = new MemoryStream(Encoding.UTF8.GetBytes(Hello() + "\n" + string.Join('\n', broken) + "\n" + Request(99, "catalogue", new JsonObject { ["lists"] = new JsonArray("lumber") }) + "\n"));
        using var output = new MemoryStream();
        Assert.Equal(0, HostServer.Run(input, output, TestContext.Current.CancellationToken));
        string[] lines = Encoding.UTF8.GetString(output.ToArray()).Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(99, JsonNode.Parse(lines[^1])!["id"]!.GetValue<int>());

        // In the order of the messages: those that may not be answered are exactly those that are notifications.
        int at = 1;
        foreach (string message in broken.Where(m => m.Trim(' ', '\t', '\r').Length > 0))
        {
            if (MayBeAnswered(message))
            {
                JsonNode reply = JsonNode.Parse(lines[at++])!;
                Assert.All(reply is JsonArray several ? several.ToArray() : (JsonNode?[])[reply], one => Assert.True(one!["error"] is not null || one["result"] is not null));
            }
        }

        Assert.Equal(lines.Length - 1, at);
        Assert.InRange(GC.GetTotalMemory(true) - before, long.MinValue, 32 * 1024 * 1024);
    }

    // By the specification alone: a message gets no reply only when it is a notification, or a batch of nothing else. Of a name given twice the last counts.
    private static bool MayBeAnswered(string message)
    {
        try
        {
            using var document = JsonDocument.Parse(message);
            JsonElement root = document.RootElement;
            return root.ValueKind == JsonValueKind.Array && root.GetArrayLength() > 0 ? root.EnumerateArray().Any(e => !IsNotification(e)) : !IsNotification(root);
        }
        catch (JsonException)
        {
            return true;
        }
    }

    private static bool IsNotification(JsonElement e) =>
        e.ValueKind == JsonValueKind.Object
        && !e.TryGetProperty("id", out _)
        && e.TryGetProperty("jsonrpc", out JsonElement version) && version.ToString() == "2.0" && version.ValueKind == JsonValueKind.String
        && e.TryGetProperty("method", out JsonElement method) && method.ValueKind == JsonValueKind.String
        && (!e.TryGetProperty("params", out JsonElement given) || given.ValueKind is JsonValueKind.Object or JsonValueKind.Array);

    private static string Broken(Random random, string message)
    {
        var text = new StringBuilder(message);
        for (int i = random.Next(1, 4); i > 0 && text.Length > 0; i--)
        {
            int at = random.Next(text.Length);
            switch (random.Next(5))
            {
                case 0:
                    text.Remove(at, Math.Min(random.Next(1, 12), text.Length - at));
                    break;
                case 1:
                    text.Insert(at, "{}[],:\"\\0-9e.nulltrue "[random.Next(22)]);
                    break;
                case 2:
                    text[at] = (char)random.Next(32, 127);
                    break;
                case 3:
                    text.Insert(at, text.ToString(at, Math.Min(random.Next(1, 20), text.Length - at)));
                    break;
                default:
                    text.Length = at;
                    break;
            }
        }

        return text.ToString();
    }

    private static int Code(JsonNode reply) => reply["error"]?["code"]?.GetValue<int>() ?? 0;

    private static int Int(JsonNode reply, string name) => reply["result"]![name]!.GetValue<int>();
}
