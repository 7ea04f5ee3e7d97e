using System.Collections.Immutable;
using System.Text;
using ToolpathForge.Findings;

namespace ToolpathForge.Service.Output;

/// <summary>One file of the output.</summary>
/// <param name="Name">Relative to the folder, <c>/</c> between parts; letters, digits, dots, hyphens and underscores.</param>
/// <param name="Bytes">What it holds.</param>
internal sealed record OutputFile(string Name, ReadOnlyMemory<byte> Bytes)
{
    /// <summary>A text file in UTF-8 without a byte order mark.</summary>
    internal static OutputFile Text(string name, string text) => new(name, Encoding.UTF8.GetBytes(text));
}

/// <summary>How writing ended.</summary>
/// <param name="Folder">The folder it was about, links followed.</param>
/// <param name="Files">What the manifest lists, by name; empty when nothing was written.</param>
/// <param name="Findings">Why nothing was written, or what is worth knowing.</param>
internal sealed record OutputResult(string Folder, ImmutableArray<ManifestEntry> Files, ImmutableArray<Finding> Findings)
{
    /// <summary>Whether the new files are in place.</summary>
    internal bool Written => Findings.All(f => f.Kind.Severity != Severity.Stop);
}
