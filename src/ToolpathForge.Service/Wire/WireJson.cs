using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using ToolpathForge.Plugin.Contract;

namespace ToolpathForge.Service.Wire;

/// <summary>
/// Writes the contract's forms as JSON: names in camel case, properties in the order they are declared, what is absent left out, two spaces of indent and
/// plain line feeds. Generated at compile time, because looking at types at run time would cost a quarter of the command's start.
/// </summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
    WriteIndented = true,
    NewLine = "\n",
    GenerationMode = JsonSourceGenerationMode.Metadata)]
[JsonSerializable(typeof(CheckReply))]
[JsonSerializable(typeof(SettingsReply))]
[JsonSerializable(typeof(CutReply))]
[JsonSerializable(typeof(DrawReply))]
[JsonSerializable(typeof(TraceReply))]
[JsonSerializable(typeof(ProveReply))]
[JsonSerializable(typeof(CatalogueReply))]
[JsonSerializable(typeof(ProofFile))]
internal sealed partial class WireJson : JsonSerializerContext
{
    /// <summary>A form as text, ending in a line feed.</summary>
    internal static string Text<T>(T form) => JsonSerializer.Serialize(form, typeof(T), Plain.Value) + "\n";

    // Letters such as é and signs such as < are written as themselves: the text is for files and terminals, not for the inside of a web page.
    private static readonly Lazy<WireJson> Plain = new(() => new WireJson(new JsonSerializerOptions(Default!.Options) { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping }));
}
