using System.Reflection;
using System.Text.RegularExpressions;
using ToolpathForge.Plugin.Contract;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Plugin;

/// <summary>The contract's page and its types say the same, property by property and in the same order.</summary>
public partial class ContractReferenceTests
{
    private static readonly Type[] Forms =
        [.. typeof(ContractVersion).Assembly.GetExportedTypes().Where(t => t.Namespace == typeof(ContractVersion).Namespace && !t.IsAbstract)];

    private static readonly string Page = File.ReadAllText(Repo.Path("src", "ToolpathForge.Plugin", "README.md"));

    [GeneratedRegex(@"^\| `(?<name>\w+)` \| (?<holds>[^|]+) \| (?<meaning>[^|]+) \|$", RegexOptions.Multiline | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Row();

    [GeneratedRegex(@"^### (?<name>\w+)$", RegexOptions.Multiline | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Heading();

    public static TheoryData<string> Names => [.. Forms.Select(f => f.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void Every_form_is_described_property_by_property(string name)
    {
        Type form = Forms.Single(f => f.Name == name);
        string section = Page.Split("\n### ").Single(s => s.StartsWith(name + "\n", StringComparison.Ordinal));
        string described = string.Join('\n', Row().Matches(section).Select(m => $"{m.Groups["name"].Value}: {m.Groups["holds"].Value}"));
        Assert.Equal(string.Join('\n', form.GetProperties().Select(p => $"{Camel(p.Name)}: {Holds(p)}")), described);
    }

    [Fact]
    public void No_form_is_described_that_does_not_exist()
    {
        Assert.True(Forms.Length > 20);
        Assert.Equal(
            string.Join(' ', Forms.Select(f => f.Name).Order(StringComparer.Ordinal)),
            string.Join(' ', Heading().Matches(Page).Select(m => m.Groups["name"].Value).Order(StringComparer.Ordinal)));
        Assert.Contains($"`{ContractVersion.Current}`", Page, StringComparison.Ordinal);
    }

    private static string Camel(string name) => char.ToLowerInvariant(name[0]) + name[1..];

    private static string Holds(PropertyInfo property)
    {
        Type type = property.PropertyType;
        bool absent = new NullabilityInfoContext().Create(property).ReadState == NullabilityState.Nullable;
        type = Nullable.GetUnderlyingType(type) ?? type;
        string lists = "";
        Type item = type;
        while (item.IsArray)
        {
            (item, lists) = (item.GetElementType()!, lists + "list of ");
        }

        string word = item switch
        {
            _ when item == typeof(string) => "text",
            _ when item == typeof(double) => "number",
            _ when item == typeof(int) || item == typeof(long) => "whole number",
            _ when item == typeof(bool) => "true or false",
            _ => $"[{item.Name}](#{item.Name.ToLowerInvariant()})",
        };
        return lists + word + (absent ? ", may be absent" : "");
    }
}
