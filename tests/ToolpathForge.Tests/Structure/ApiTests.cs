using System.Reflection;
using System.Text;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Structure;

/// <summary>
/// The public members of the packages are those of tests/data/api: an addition is written there on purpose (UPDATE_GOLDEN=1), and a removal shows in the difference
/// before it breaks somebody else's code.
/// </summary>
public class ApiTests
{
    [Theory]
    [InlineData("ToolpathForge.Plugin")]
    [InlineData("ToolpathForge.Proof")]
    [InlineData("ToolpathForge.Core")]
    public void Public_members_are_those_that_were_agreed(string name)
    {
        string path = Repo.Path("tests", "data", "api", name + ".txt");
        string now = ApiText.Of(Assembly.Load(name));
        if (Environment.GetEnvironmentVariable("UPDATE_GOLDEN") != "1")
        {
            string[] kept = File.ReadAllLines(path), found = now.Split('\n', StringSplitOptions.RemoveEmptyEntries);
            string[] differences = [.. kept.Except(found, StringComparer.Ordinal).Select(l => "removed: " + l), .. found.Except(kept, StringComparer.Ordinal).Select(l => "added:   " + l)];
            Assert.True(differences.Length == 0, $"{name}: UPDATE_GOLDEN=1 writes the list anew, if this is meant.\n{string.Join('\n', differences)}");
        }

        Golden.SameFile(path, Encoding.UTF8.GetBytes(now));
    }

    [Fact]
    public void Lists_show_what_was_taken_away_and_what_came_to_it()
    {
        string[] lines = ApiText.Of(typeof(ApiTests).Assembly).Split('\n');
        Assert.Contains("ToolpathForge.Tests.Structure.ApiTests.Lists_show_what_was_taken_away_and_what_came_to_it() : Void", lines);
        Assert.DoesNotContain(lines, l => l.Contains("ApiText", StringComparison.Ordinal));
    }
}
