using System.Text.Json;
using System.Text.Json.Serialization;
using ToolpathForge.Plugin.Contract;

namespace ToolpathForge.Service.Host;

/// <summary>Reads and writes the forms of the service as JSON on one line, absent for null, unknown names refused; generated, so that the first reply does not wait for types to be looked at.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
    RespectNullableAnnotations = true,
    UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
    GenerationMode = JsonSourceGenerationMode.Metadata)]
[JsonSerializable(typeof(InitializeRequest))]
[JsonSerializable(typeof(InitializeReply))]
[JsonSerializable(typeof(CatalogueRequest))]
[JsonSerializable(typeof(CatalogueReply))]
[JsonSerializable(typeof(TraceRequest))]
[JsonSerializable(typeof(PlanRequest))]
[JsonSerializable(typeof(PlanReply))]
[JsonSerializable(typeof(PreviewRequest))]
[JsonSerializable(typeof(PreviewReply))]
[JsonSerializable(typeof(ProgramsRequest))]
[JsonSerializable(typeof(ProgramsReply))]
[JsonSerializable(typeof(ReleaseRequest))]
[JsonSerializable(typeof(DoneReply))]
[JsonSerializable(typeof(WireProgress))]
internal sealed partial class HostJson : JsonSerializerContext
{
}
