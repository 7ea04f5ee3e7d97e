using System.Text.RegularExpressions;
using ToolpathForge.Catalogue;
using ToolpathForge.Findings;
using ToolpathForge.Jobs;
using ToolpathForge.RunSheets;
using ToolpathForge.Tests.Checks.Jobs;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Wording;

/// <summary>
/// Words that users read: those of the trade, and American spelling beside American lumber (our own choice). Ids and keys keep the spelling they were first written
/// in, and both are taken.
/// </summary>
public partial class TradeWordsTests
{
    [GeneratedRegex(@"(?<![-\w`""/])(\w*(centre|metre|colour|fibre|neighbour|smoulder)\w*|grey|nook|chip a tooth|gives? way|hangs over by|no arc)(?![-\w`""])", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture)]
    private static partial Regex NotOurs();

    private static void Holds(string where, string text)
    {
        foreach (Match found in NotOurs().Matches(text))
        {
            Assert.Fail($"{where} says '{found.Value}': …{text[Math.Max(0, found.Index - 40)..Math.Min(text.Length, found.Index + 40)]}…");
        }
    }

    [Theory]
    [InlineData("shared", "findings.md")]
    [InlineData("README.md")]
    [InlineData("samples", "README.md")]
    [InlineData("postprocessors", "README.md")]
    public void Pages_for_users_have_the_words_of_the_trade(params string[] path) => Holds(path[^1], File.ReadAllText(Repo.Path(path)));

    [Fact]
    public void Rows_of_the_catalogues_have_them()
    {
        Catalogues rows = Catalogues.Shipped;
        Assert.All(rows.Materials.All, m => Holds(m.Id, m.Name));
        Assert.All(rows.Panels.All, p => Holds(p.Id, p.Name));
        Assert.All(rows.Dialects.All, d => Holds(d.Id, d.Name));
        Assert.All(rows.Bits.All, b => Holds(b.Id, b.Name));
    }

    [Fact]
    public void Sheets_have_them()
    {
        string Words(string html) => Regex.Replace(html, "<style>.*?</style>|<svg.*?</svg>|<[^>]*>", " ", RegexOptions.Singleline);
        Holds("a board's sheet", Words(RunSheetPage.Write(SetUpJobs.Plan(SetUpJobs.Board).Plan!)));
        string pattern = RunSheetPage.Write(SetUpJobs.Plan(SetUpJobs.Plate).Plan!);
        Holds("a pattern's sheet", Words(pattern));
        Assert.Contains("Chip load", pattern, StringComparison.Ordinal);
        Assert.Contains("Deflection, estimated", pattern, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--help")]
    [InlineData("check", "--help")]
    [InlineData("list", "shapes")]
    [InlineData("list", "materials")]
    [InlineData("check", "--bit", "downcut-1/4", "--material", "mdf", "--depth", "6 mm")]
    public void Screens_have_them(params string[] args)
    {
        string said = Regex.Replace(Cli.Command.Run(args).Out, @"\s+", " ");
        Assert.NotEmpty(said);
        Holds(string.Join(' ', args), said);
    }

    [Theory]
    [InlineData("metric-centre", "metric-center")]
    [InlineData("form = \"scoop\"", "form = \"hollow\"")]
    public void Another_word_for_the_same_is_taken(string ours, string other)
    {
        JobReading reading = JobReader.Read(SetUpJobs.With(SetUpJobs.Plate, (ours, other)), "set-up.toml", _ => "format = 1\nunit = \"mm\"");
        Assert.NotNull(reading.Job);
        Assert.DoesNotContain(reading.Findings, f => f.Kind.Severity == Severity.Stop);
    }
}
