using System.Reflection;
using System.Text.Json;
using System.Text.Json.Nodes;
using ToolpathForge.Plugin.Contract;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Plugin;

/// <summary>The contract's forms as one JSON schema (draft 2020-12), from the types and their documentation.</summary>
internal static class ContractSchema
{
    internal static Type[] Forms { get; } =
        [.. typeof(ContractVersion).Assembly.GetExportedTypes().Where(t => t.Namespace == typeof(ContractVersion).Namespace && !t.IsAbstract).OrderBy(t => t.Name, StringComparer.Ordinal)];

    internal static JsonObject Make()
    {
        var forms = new JsonObject();
        foreach (Type form in Forms)
        {
            forms.Add(form.Name, Form(form));
        }

        return new JsonObject
        {
            ["$schema"] = "https://json-schema.org/draft/2020-12/schema",
            ["title"] = $"ToolpathForge contract {ContractVersion.Current}",
            ["$defs"] = forms,
        };
    }

    internal static string Text() => Make().ToJsonString(new JsonSerializerOptions { WriteIndented = true, NewLine = "\n", Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping }) + "\n";

    private static JsonObject Form(Type form)
    {
        bool request = form.Name.EndsWith("Request", StringComparison.Ordinal);
        object fresh = Activator.CreateInstance(form)!;
        var properties = new JsonObject();
        var required = new JsonArray();
        foreach (PropertyInfo property in form.GetProperties())
        {
            bool absent = new NullabilityInfoContext().Create(property).ReadState == NullabilityState.Nullable;
            properties.Add(Camel(property.Name), Of(property.PropertyType));

            // A reply always has what may not be absent; a request must give what has no sensible value of its own, an empty text or list.
            if (!absent && (!request || property.GetValue(fresh) is "" or Array { Length: 0 }))
            {
                required.Add(Camel(property.Name));
            }
        }

        var schema = new JsonObject { ["type"] = "object", ["properties"] = properties };
        if (required.Count > 0)
        {
            schema["required"] = required;
        }

        // What a request does not know is refused; a reply may gain.
        if (request || form == typeof(WireEntity) || form == typeof(WireOutline))
        {
            schema["additionalProperties"] = false;
        }

        return schema;
    }

    private static JsonObject Of(Type type)
    {
        Type plain = Nullable.GetUnderlyingType(type) ?? type;
        return plain switch
        {
            { IsArray: true } => new JsonObject { ["type"] = "array", ["items"] = Of(plain.GetElementType()!) },
            _ when plain == typeof(string) => new JsonObject { ["type"] = "string" },
            _ when plain == typeof(double) => new JsonObject { ["type"] = "number" },
            _ when plain == typeof(int) || plain == typeof(long) => new JsonObject { ["type"] = "integer" },
            _ when plain == typeof(bool) => new JsonObject { ["type"] = "boolean" },
            _ => new JsonObject { ["$ref"] = "#/$defs/" + plain.Name },
        };
    }

    private static string Camel(string name) => char.ToLowerInvariant(name[0]) + name[1..];
}

/// <summary>The schema that ships is that of the types, and says nothing less than the first of its major version did.</summary>
public class ContractSchemaTests
{
    [Fact]
    public void The_schema_is_that_of_the_types() =>
        Golden.SameFile(Repo.Path("src", "ToolpathForge.Plugin", "schemas", "contract.json"), System.Text.Encoding.UTF8.GetBytes(ContractSchema.Text()));

    // tests/data/contract/1.0.json is what 1.0 was on its first day with a service; it is never made anew.
    [Fact]
    public void Within_a_major_version_things_are_only_added() => Assert.Empty(Broken(Baseline(), ContractSchema.Make()));

    [Theory]
    [InlineData("remove-form", "WireLimits is gone")]
    [InlineData("remove-property", "WireLimits.plans is gone")]
    [InlineData("retype", "WireLimits.plans holds something else")]
    [InlineData("may-be-absent", "WireLimits.plans may be absent")]
    [InlineData("must-be-given", "PlanRequest.job must be given")]
    public void Anything_else_is_seen(string change, string told)
    {
        JsonObject changed = ContractSchema.Make();
        JsonObject forms = changed["$defs"]!.AsObject();
        JsonObject limits = forms["WireLimits"]!.AsObject();
        switch (change)
        {
            case "remove-form":
                forms.Remove("WireLimits");
                break;
            case "remove-property":
                limits["properties"]!.AsObject().Remove("plans");
                break;
            case "retype":
                limits["properties"]!["plans"] = new JsonObject { ["type"] = "string" };
                break;
            case "may-be-absent":
                limits["required"] = new JsonArray([.. limits["required"]!.AsArray().Where(r => r!.GetValue<string>() != "plans").Select(r => r!.DeepClone())]);
                break;
            default:
                forms["PlanRequest"]!["required"] = new JsonArray("job");
                break;
        }

        Assert.Contains(told, Broken(Baseline(), changed));
    }

    private static JsonObject Baseline() => JsonNode.Parse(File.ReadAllText(Repo.Path("tests", "data", "contract", "1.0.json")))!.AsObject();

    private static List<string> Broken(JsonObject before, JsonObject now)
    {
        var broken = new List<string>();
        foreach ((string form, JsonNode? was) in before["$defs"]!.AsObject())
        {
            if (now["$defs"]![form] is not { } current)
            {
                broken.Add($"{form} is gone");
                continue;
            }

            foreach ((string property, JsonNode? type) in was!["properties"]!.AsObject())
            {
                JsonNode? type2 = current["properties"]![property];
                if (type2 is null)
                {
                    broken.Add($"{form}.{property} is gone");
                }
                else if (!JsonNode.DeepEquals(type, type2))
                {
                    broken.Add($"{form}.{property} holds something else");
                }
            }

            string[] must = [.. Required(was)];
            string[] mustNow = [.. Required(current)];
            bool request = form.EndsWith("Request", StringComparison.Ordinal);
            broken.AddRange(request ? mustNow.Except(must).Select(p => $"{form}.{p} must be given") : must.Except(mustNow).Select(p => $"{form}.{p} may be absent"));
        }

        return broken;
    }

    private static IEnumerable<string> Required(JsonNode form) => form["required"]?.AsArray().Select(r => r!.GetValue<string>()) ?? [];
}
