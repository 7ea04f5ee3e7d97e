using System.Collections.Immutable;
using System.Text.RegularExpressions;
using ToolpathForge.Findings;
using ToolpathForge.Measures;
using ToolpathForge.Wording;

namespace ToolpathForge.Tests.Wording;

public class FindingKindsTests
{
    private static readonly ImmutableArray<DeclaredFinding> s_all =
        FindingKinds.In(typeof(Finding).Assembly, typeof(ToolpathForge.Exchange.Dxf.DxfWriter).Assembly, typeof(ToolpathForge.Service.CheckJob).Assembly);

    [Fact]
    public void Every_kind_has_a_code_of_its_own_and_says_what_and_what_to_do()
    {
        Assert.True(s_all.Length > 60);
        Assert.Equal(s_all.Length, s_all.Select(d => d.Kind.Code).Distinct(StringComparer.Ordinal).Count());
        Assert.All(s_all, d =>
        {
            Assert.Matches("^[a-z][a-z0-9]*(-[a-z0-9]+)*$", d.Kind.Code);

            // What the system itself says brings its own full stop.
            Assert.Matches("(\\.|\\{reason\\})$", d.Kind.Says);
            Assert.NotEqual("", d.Kind.Advice);
        });
    }

    // Each name in braces is filled from found, allowed or an argument that some finding of the sources gives it.
    [Fact]
    public void Every_name_in_a_wording_is_given_somewhere()
    {
        string sources = string.Concat(Directory.EnumerateFiles(Support.Repo.Path("src"), "*.cs", SearchOption.AllDirectories)
            .Where(f => !f.Contains("/obj/", StringComparison.Ordinal)).Select(File.ReadAllText));
        HashSet<string> given = [.. Regex.Matches(sources, "Arg\\.Of\\(\\s*\"([a-z-]+)\"").Select(m => m.Groups[1].Value), "found", "allowed"];
        Assert.All(s_all, d => Assert.All(FindingText.Placeholders(d.Kind), name => Assert.Contains(name, given)));
    }

    // The page is made from all kinds and all fault codes, so that none can be missing; each is filled with an example.
    [Fact]
    public void The_reference_of_findings_is_what_the_code_can_say() =>
        Support.Golden.SameFile(Support.Repo.Path("shared", "findings.md"), System.Text.Encoding.UTF8.GetBytes(FindingsPage.Text(s_all)));

    [Fact]
    public void A_finding_is_worded_in_the_persons_unit()
    {
        var kind = new FindingKind("test-kind", Severity.Warn, "It is {found}; {allowed} is allowed for {what}.", "Do less.");
        var finding = Finding.Of(kind, Place.InFile("porch.toml", 3, 7).OfMake("tail"), Quantity.Length(25.4), Quantity.Length(12.7), Arg.Of("what", "this"));
        Assert.Equal("porch.toml:3:7, tail: warning: It is 1 in; 1/2 in is allowed for this. Do less.", FindingText.Word(finding, LengthUnit.Inch).ToString());
        Assert.Contains("It is 25.4 mm; 12.7 mm is allowed", FindingText.Word(finding, LengthUnit.Millimetre).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_fault_of_a_proof_has_a_sentence_of_its_own_on_what_to_do()
    {
        Assert.Equal(
            ToolpathForge.Proof.FaultCodes.All.Select(c => c.Name).Order(StringComparer.Ordinal), ToolpathForge.Proof.FaultAdvice.Names.Order(StringComparer.Ordinal));
        string[] advice = [.. ToolpathForge.Proof.FaultCodes.All.Select(ToolpathForge.Proof.FaultAdvice.For)];
        Assert.Equal(advice.Length, advice.Distinct(StringComparer.Ordinal).Count());
        Assert.All(advice, a => Assert.EndsWith(".", a, StringComparison.Ordinal));
    }
}
