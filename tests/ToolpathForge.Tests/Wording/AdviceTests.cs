using System.Collections.Immutable;
using System.Reflection;
using System.Text.RegularExpressions;
using ToolpathForge.Catalogue;
using ToolpathForge.Findings;
using ToolpathForge.Jobs;
using ToolpathForge.Planning;
using ToolpathForge.Shapes;
using ToolpathForge.Tables;
using ToolpathForge.Tests.Support;
using ToolpathForge.Wording;

namespace ToolpathForge.Tests.Wording;

/// <summary>Advice that can be followed: what it tells to write exists, and no sample is left with a warning that nothing takes away.</summary>
public partial class AdviceTests
{
    // Compound words of plain English; everything else with a hyphen is something to write.
    private static readonly string[] s_english = ["right-hand", "left-hand", "metal-free", "double-sided", "keep-outs", "two-part"];

    [Fact]
    public void What_advice_tells_to_write_is_a_key_or_a_word_that_is_taken()
    {
        HashSet<string> known = [.. Keys().SelectMany(k => k.Words.Prepend(k.Name)), .. s_english];
        foreach (Question question in ShapeList.All.SelectMany(s => s.Questions).Concat(PartList.All.SelectMany(p => p.Questions)))
        {
            known.UnionWith(question.Choices.IsDefault ? [question.Key] : [question.Key, .. question.Choices]);
        }

        known.UnionWith(Catalogues.Shipped.Bits.Ids.Concat(Catalogues.Shipped.Machines.Ids).SelectMany(id => (string[])[id, .. id.Split('/')]));
        int looked = 0;
        foreach (DeclaredFinding declared in FindingKinds.In(typeof(Job).Assembly))
        {
            foreach (Match word in Hyphenated().Matches(declared.Kind.Advice))
            {
                looked++;
                Assert.True(known.Contains(word.Value), $"{declared.Kind.Code} tells to write '{word.Value}', which nothing takes.");
            }
        }

        Assert.True(looked > 10, "Advice names no key at all.");
    }

    [Theory]
    [InlineData("boathouse.toml")]
    [InlineData("boards.toml")]
    [InlineData("family.toml")]
    [InlineData("guide.toml")]
    public void No_sample_warns(string file)
    {
        JobReading reading = JobReader.Read(File.ReadAllText(Repo.Path("samples", "boathouse", file)), file, _ => null);
        Plan plan = Planner.Plan(reading.Job!, cancel: TestContext.Current.CancellationToken);
        Assert.DoesNotContain(reading.Findings.Concat(plan.Findings), f => f.Kind.Severity != Severity.Note);
    }

    private static IEnumerable<Key> Keys()
    {
        const BindingFlags All = BindingFlags.Static | BindingFlags.Public | BindingFlags.NonPublic;
        foreach (Type type in typeof(Job).Assembly.GetTypes().Where(t => !t.ContainsGenericParameters))
        {
            foreach (object? value in type.GetProperties(All).Where(p => p.GetIndexParameters().Length == 0 && IsOfKeys(p.PropertyType)).Select(p => p.GetValue(null))
                .Concat(type.GetFields(All).Where(f => IsOfKeys(f.FieldType)).Select(f => f.GetValue(null))))
            {
                foreach (Key key in value switch
                {
                    TableKeys table => table.Keys,
                    Key one => [one],
                    ImmutableArray<Key> many => many,
                    _ => ImmutableArray<Key>.Empty,
                })
                {
                    yield return key;
                }
            }
        }
    }

    private static bool IsOfKeys(Type type) => type == typeof(TableKeys) || type == typeof(Key) || type == typeof(ImmutableArray<Key>);

    [GeneratedRegex(@"(?<![\w/.-])[a-z]+(?:-[a-z]+)+(?![\w/])", RegexOptions.CultureInvariant)]
    private static partial Regex Hyphenated();
}
