using System.Text.Json;
using CsCheck;
using ToolpathForge.Plugin.Contract;
using ToolpathForge.Plugin.Json;

namespace ToolpathForge.Tests.Plugin;

/// <summary>The plugin's own JSON against the base library's, which the plugin can't use.</summary>
public class PluginJsonTests
{
    private const string Odd = "{}[],:\"\\u0-9e.+ntrue \t\u0001";

    private static readonly JsonDocumentOptions Strict = new() { MaxDepth = JsonReader.MaxDepth, AllowDuplicateProperties = false };

    [Theory]
    [InlineData("""{"a":[1,-0.5e-3,"x\u00e9\n",true,false,null,{}],"b":[]}""", true)]
    [InlineData(" [ 0 , -0 , 10 ] ", true)]
    [InlineData("\"\\ud83d\\ude00\"", true)]
    [InlineData("", false)]
    [InlineData("01", false)]
    [InlineData("1.", false)]
    [InlineData(".5", false)]
    [InlineData("+1", false)]
    [InlineData("1e", false)]
    [InlineData("1e999", false)]
    [InlineData("NaN", false)]
    [InlineData("[1,]", false)]
    [InlineData("{\"a\":1,}", false)]
    [InlineData("{\"a\":1,\"a\":2}", false)]
    [InlineData("{a:1}", false)]
    [InlineData("[1]x", false)]
    [InlineData("/*c*/1", false)]
    [InlineData("\"\\x\"", false)]
    [InlineData("\"\\u12g4\"", false)]
    [InlineData("\"\\ud83d\"", false)]
    [InlineData("\"\\ude00\\ud83d\"", false)]
    [InlineData("\"a\nb\"", false)]
    [InlineData("\"a", false)]
    [InlineData("\"a\0\"", false)]
    [InlineData("tru", false)]
    [InlineData("\ufeff1", false)]
    public void It_takes_what_is_JSON_and_nothing_else(string text, bool good)
    {
        Assert.Equal(good, Ours(text) is not null);
        Assert.Equal(good, Theirs(text) is not null);
    }

    [Fact]
    public void It_goes_as_deep_as_its_limit()
    {
        string Nested(int depth) => new string('[', depth) + new string(']', depth);
        Assert.NotNull(Ours(Nested(JsonReader.MaxDepth)));
        Assert.Null(Ours(Nested(JsonReader.MaxDepth + 1)));
        Assert.Null(Ours(new string('[', 1_000_000)));
    }

    // Texts close to JSON: both readers take the same ones and read the same from them.
    [Fact]
    public void It_agrees_with_the_base_library_on_broken_texts()
    {
        Gen<string> good = Gen.Int[0, 4].SelectMany(_ => Value(3)).Select(v => JsonSerializer.Serialize(v));
        Gen.Select(good, Gen.Int[0, 3], Gen.Int[0, int.MaxValue]).Sample(
            (text, changes, seed) =>
            {
                var random = new Random(seed);
                for (int i = 0; i < changes && text.Length > 0; i++)
                {
                    int at = random.Next(text.Length);
                    text = random.Next(3) switch
                    {
                        0 => text.Remove(at, 1),
                        1 => text.Insert(at, Odd[random.Next(Odd.Length)].ToString()),
                        _ => text[..at] + (char)random.Next(1, 128) + text[(at + 1)..],
                    };
                }

                Assert.Equal(Theirs(text), Ours(text));
            },
            iter: 5000);
    }

    [Fact]
    public void What_is_written_is_read_back_by_both()
    {
        Gen.Double.Where(double.IsFinite).Sample(d =>
        {
            string text = JsonWriter.Write(JsonValue.Of(d));
            Assert.Equal(d, JsonReader.Read(text).Number);
            Assert.Equal(d, JsonDocument.Parse(text).RootElement.GetDouble());
        });
        Gen.String.Where(s => !HasHalf(s)).Sample(s =>
        {
            string text = JsonWriter.Write(JsonValue.Of(s));
            Assert.Equal(s, JsonReader.Read(text).Text);
            Assert.Equal(s, JsonDocument.Parse(text).RootElement.GetString());
            Assert.All(text, c => Assert.InRange(c, ' ', '~'));
        });
        Assert.Throws<ArgumentOutOfRangeException>(() => JsonValue.Of(double.NaN));
    }

    [Fact]
    public void Forms_go_over_and_come_back_as_the_core_writes_them()
    {
        var form = new PlanRequest
        {
            Job = "x\ny",
            Outlines = [new WireOutline { Name = "é", Entities = [new WireEntity { Kind = "polyline", Points = [[0, 0.1], [1e-7, 3]], Bulges = [0, -1], Closed = true }] }],
        };
        string ours = JsonWriter.Write(JsonForm.Write(form));
        PlanRequest back = JsonSerializer.Deserialize<PlanRequest>(ours, JsonSerializerOptions.Web)!;
        Assert.Equal(ours, JsonWriter.Write(JsonForm.Write(back)));
        Assert.Equal(ours, JsonWriter.Write(JsonForm.Write(JsonForm.Read<PlanRequest>(JsonReader.Read(ours)))));
        Assert.Equal(1e-7, back.Outlines![0].Entities[0].Points![1][0]);

        // A name from a later version is passed over; what is of another kind is told with its place.
        Assert.Equal("p", JsonForm.Read<PlanReply>(JsonReader.Read("""{"plan":"p","later":{"x":1},"job":null}""")).Plan);
        Assert.Contains("result.programs[0].proof.motion.lines", Assert.Throws<JsonFaultException>(() => JsonForm.Read<PlanReply>(JsonReader.Read("""{"programs":[{"proof":{"motion":{"lines":1.5}}}]}"""))).Message, StringComparison.Ordinal);
        Assert.Throws<JsonFaultException>(() => JsonForm.Read<PlanReply>(JsonReader.Read("""{"findings":null}""")));
        Assert.Throws<JsonFaultException>(() => JsonForm.Read<PlanReply>(JsonReader.Read("[]")));
    }

    // Every property of every form, whatever is added to the contract later.
    [Fact]
    public void Every_form_of_the_contract_goes_over_and_comes_back()
    {
        int forms = 0;
        foreach (Type type in typeof(PlanReply).Assembly.GetTypes().Where(t => t.Namespace == typeof(PlanReply).Namespace && t is { IsPublic: true, IsAbstract: false, IsEnum: false }))
        {
            object filled = Filled(type, 0);
            string theirs = JsonSerializer.Serialize(filled, type, JsonSerializerOptions.Web);
            object back = typeof(JsonForm).GetMethod("Read", System.Reflection.BindingFlags.NonPublic | System.Reflection.BindingFlags.Static, [typeof(JsonValue)])!
                .MakeGenericMethod(type).Invoke(null, [JsonReader.Read(theirs)])!;
            Assert.Equal(theirs, JsonSerializer.Serialize(back, type, JsonSerializerOptions.Web));
            Assert.Equal(Theirs(theirs), Ours(JsonWriter.Write(JsonForm.Write(filled))));
            forms++;
        }

        Assert.True(forms > 40);
    }

    private static object Filled(Type type, int seed)
    {
        type = Nullable.GetUnderlyingType(type) ?? type;
        if (type.IsArray)
        {
            var array = Array.CreateInstance(type.GetElementType()!, 2);
            array.SetValue(Filled(type.GetElementType()!, seed + 1), 0);
            array.SetValue(Filled(type.GetElementType()!, seed + 2), 1);
            return array;
        }

        if (type == typeof(string) || type.IsPrimitive)
        {
            return type == typeof(string) ? $"é{seed}" : type == typeof(bool) ? seed % 2 == 0 : Convert.ChangeType(seed + (type == typeof(double) ? 0.25 : 0), type, System.Globalization.CultureInfo.InvariantCulture);
        }

        object form = Activator.CreateInstance(type)!;
        foreach (System.Reflection.PropertyInfo property in type.GetProperties())
        {
            property.SetValue(form, Filled(property.PropertyType, ++seed));
        }

        return form;
    }

    private static Gen<object?> Value(int depth) => depth == 0
        ? Gen.OneOf<object?>(Gen.Int.Select(i => (object?)i), Gen.Double[-1e9, 1e9].Select(d => (object?)d), Gen.String.Where(s => !HasHalf(s)).Select(s => (object?)s), Gen.Bool.Select(b => (object?)b), Gen.Const((object?)null))
        : Gen.OneOf(Value(depth - 1), Value(depth - 1).Array[0, 3].Select(a => (object?)a), Gen.Dictionary(Gen.String[Gen.Char.AlphaNumeric, 0, 4], Value(depth - 1))[0, 3].Select(d => (object?)d));

    private static bool HasHalf(string text)
    {
        for (int i = 0; i < text.Length; i++)
        {
            if (char.IsHighSurrogate(text[i]) && i + 1 < text.Length && char.IsLowSurrogate(text[i + 1]))
            {
                i++;
            }
            else if (char.IsSurrogate(text[i]))
            {
                return true;
            }
        }

        return false;
    }

    private static string? Ours(string text)
    {
        try
        {
            return Flat(JsonReader.Read(text));
        }
        catch (JsonFaultException)
        {
            return null;
        }
    }

    // The base library looks at texts and numbers only when they are asked for.
    private static string? Theirs(string text)
    {
        try
        {
            using var document = JsonDocument.Parse(text, Strict);
            return Flat(document.RootElement);
        }
        catch (Exception e) when (e is JsonException or InvalidOperationException or FormatException or ArgumentException)
        {
            return null;
        }
    }

    private static string Flat(JsonValue v) => v.Kind switch
    {
        JsonKind.Map => "{" + string.Concat(v.Members.Select(m => Hex(m.Key) + ":" + Flat(m.Value) + ",")) + "}",
        JsonKind.List => "[" + string.Concat(v.Items.Select(i => Flat(i) + ",")) + "]",
        JsonKind.Text => Hex(v.Text),
        JsonKind.Number => Bits(v.Number),
        JsonKind.Truth => v.Truth ? "t" : "f",
        _ => "n",
    };

    private static string Flat(JsonElement v) => v.ValueKind switch
    {
        JsonValueKind.Object => "{" + string.Concat(v.EnumerateObject().Select(m => Hex(m.Name) + ":" + Flat(m.Value) + ",")) + "}",
        JsonValueKind.Array => "[" + string.Concat(v.EnumerateArray().Select(i => Flat(i) + ",")) + "]",
        JsonValueKind.String => Hex(v.GetString()!),
        JsonValueKind.Number => double.IsFinite(v.GetDouble()) ? Bits(v.GetDouble()) : throw new FormatException(),
        JsonValueKind.True => "t",
        JsonValueKind.False => "f",
        _ => "n",
    };

    private static string Hex(string text) => "'" + string.Concat(text.Select(c => ((int)c).ToString("x4", System.Globalization.CultureInfo.InvariantCulture)));

    private static string Bits(double number) => BitConverter.DoubleToInt64Bits(number).ToString(System.Globalization.CultureInfo.InvariantCulture);
}
