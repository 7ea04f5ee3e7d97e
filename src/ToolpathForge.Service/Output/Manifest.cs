using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text.Json;

namespace ToolpathForge.Service.Output;

/// <summary>A file as the manifest knows it.</summary>
/// <param name="Name">Relative to the folder, <c>/</c> between parts.</param>
/// <param name="Bytes">Its size.</param>
/// <param name="Sha256">Its SHA-256, lower-case hexadecimal.</param>
internal readonly record struct ManifestEntry(string Name, long Bytes, string Sha256);

/// <summary>
/// The list of what an output folder holds: <c>manifest.json</c>. It says which folder may be replaced and which file has been edited since. It carries
/// no date, so that the same job gives the same bytes.
/// </summary>
/// <param name="Files">By name, ordinal; the manifest itself is not among them.</param>
/// <param name="Owner">Whose output it is; null in a folder of an earlier version.</param>
internal sealed record Manifest(ImmutableArray<ManifestEntry> Files, OutputOwner? Owner)
{
    internal const string FileName = "manifest.json";

    private const string Kind = "toolpathforge-output";

    private const int Format = 1;

    internal static Manifest Of(IEnumerable<OutputFile> files, OutputOwner? owner = null) => new(
        [.. files.Select(f => new ManifestEntry(f.Name, f.Bytes.Length, Hash(f.Bytes.Span))).OrderBy(e => e.Name, StringComparer.Ordinal)], owner);

    internal static string Hash(ReadOnlySpan<byte> bytes) => Convert.ToHexStringLower(SHA256.HashData(bytes));

    internal byte[] ToBytes()
    {
        var buffer = new MemoryStream();
        using (var json = new Utf8JsonWriter(buffer, new JsonWriterOptions { Indented = true, NewLine = "\n" }))
        {
            json.WriteStartObject();
            json.WriteString("kind", Kind);
            json.WriteNumber("format", Format);
            if (Owner is { } owner)
            {
                json.WriteString("made", owner.Made);
                json.WriteString("job", owner.Job);
            }

            json.WriteStartArray("files");
            foreach (ManifestEntry file in Files)
            {
                json.WriteStartObject();
                json.WriteString("name", file.Name);
                json.WriteNumber("bytes", file.Bytes);
                json.WriteString("sha256", file.Sha256);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        buffer.WriteByte((byte)'\n');
        return buffer.ToArray();
    }

    /// <summary>Reads a manifest back. Anything that this program would not have written makes it no manifest of ours: null.</summary>
    internal static Manifest? Read(ReadOnlyMemory<byte> bytes)
    {
        try
        {
            using JsonDocument json = JsonDocument.Parse(bytes);
            JsonElement root = json.RootElement;
            if (root.GetProperty("kind").GetString() != Kind || root.GetProperty("format").GetInt32() != Format)
            {
                return null;
            }

            ImmutableArray<ManifestEntry> files =
            [
                .. root.GetProperty("files").EnumerateArray().Select(f => new ManifestEntry(
                    f.GetProperty("name").GetString() ?? "", f.GetProperty("bytes").GetInt64(), f.GetProperty("sha256").GetString() ?? "")),
            ];
            OutputOwner? owner = root.TryGetProperty("made", out JsonElement made) && root.TryGetProperty("job", out JsonElement job)
                ? new OutputOwner(made.GetString() ?? "", job.GetString() ?? "")
                : null;
            return files.All(f => IsName(f.Name)) ? new Manifest(files, owner) : null;
        }
        catch (Exception e) when (e is JsonException or InvalidOperationException or KeyNotFoundException or FormatException)
        {
            return null;
        }
    }

    /// <summary>
    /// Whether a name stays inside the folder on every system: plain characters, no empty part, no part that begins with a dot. A manifest is read from
    /// a disk that others write on, and what it names is deleted when the folder is replaced.
    /// </summary>
    internal static bool IsName(string name) =>
        name.Length is > 0 and < 200
        && name != FileName
        && name.Split('/').All(part => part.Length > 0 && part[0] != '.' && part[^1] != '.' && part.All(c => char.IsAsciiLetterOrDigit(c) || c is '.' or '-' or '_'));
}
