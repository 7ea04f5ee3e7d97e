using System.Collections.Immutable;
using System.Reflection;
using ToolpathForge.Findings;

namespace ToolpathForge.Tests.Wording;

/// <summary>A kind of finding with the class that declares it.</summary>
/// <param name="Kind">The kind.</param>
/// <param name="Owner">The declaring type's name with its folder: <c>Jobs.JobFindings</c>.</param>
/// <param name="Field">The field's name.</param>
internal sealed record DeclaredFinding(FindingKind Kind, string Owner, string Field);

/// <summary>Finds every kind of finding that an assembly declares, public or not; the reference of all findings is made from this. Here and not in the core, which looks at no type by reflection.</summary>
internal static class FindingKinds
{
    private const string Root = "ToolpathForge.";

    /// <summary>The kinds of some assemblies, by code.</summary>
    /// <param name="assemblies">The assemblies to look through.</param>
    internal static ImmutableArray<DeclaredFinding> In(params IEnumerable<Assembly> assemblies) =>
    [
        .. assemblies
            .SelectMany(a => a.GetTypes())
            .SelectMany(t => t.GetFields(BindingFlags.Static | BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.DeclaredOnly))
            .Where(f => f.FieldType == typeof(FindingKind) && !f.Name.StartsWith('<'))
            .Select(f => new DeclaredFinding((FindingKind)f.GetValue(null)!, Owner(f.DeclaringType!), f.Name))
            .OrderBy(d => d.Kind.Code, StringComparer.Ordinal).ThenBy(d => d.Owner, StringComparer.Ordinal).ThenBy(d => d.Field, StringComparer.Ordinal),
    ];

    private static string Owner(Type type)
    {
        string name = type.FullName ?? type.Name;
        return name.StartsWith(Root, StringComparison.Ordinal) ? name[Root.Length..] : name;
    }
}
