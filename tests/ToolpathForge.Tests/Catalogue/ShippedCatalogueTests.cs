using ToolpathForge.Catalogue;

namespace ToolpathForge.Tests.Catalogue;

public class ShippedCatalogueTests
{
    private static readonly Catalogues s_shipped = Catalogues.Shipped;

    // American Softwood Lumber Standard PS 20, sizes for dimension lumber, dry: nominal 2, 4, 6, 8, 10, 12 in.
    [Theory]
    [InlineData("2x4", 1.5, 3.5)]
    [InlineData("2x6", 1.5, 5.5)]
    [InlineData("2x8", 1.5, 7.25)]
    [InlineData("2x10", 1.5, 9.25)]
    [InlineData("2x12", 1.5, 11.25)]
    [InlineData("4x8", 3.5, 7.25)]
    public void Dimension_lumber_has_the_dressed_sizes_of_its_standard(string id, double thickness, double width)
    {
        Lumber row = s_shipped.Lumber.Find(id)!;
        Assert.Equal(thickness * 25.4, row.Thickness, 9);
        Assert.Equal(width * 25.4, row.Width, 9);
    }

    [Fact]
    public void Every_row_says_where_it_comes_from()
    {
        Source[] sources =
        [
            .. s_shipped.Lumber.All.Select(r => r.Source), .. s_shipped.Panels.All.Select(r => r.Source), .. s_shipped.Bits.All.Select(r => r.Source),
            .. s_shipped.Materials.All.Select(r => r.Source), .. s_shipped.Machines.All.Select(r => r.Source), .. s_shipped.Dialects.All.Select(r => r.Source),
        ];
        Assert.All(sources, s => Assert.True(s.Text.Length > 10));
        Assert.DoesNotContain(sources, s => s.Kind == SourceKind.User);
    }

    [Fact]
    public void Bits_and_materials_are_such_as_can_be()
    {
        Assert.All(s_shipped.Bits.All, b =>
        {
            Assert.True(b.FluteLength < b.OverallLength && b.Diameter > 0 && b.Flutes > 0);
            Assert.True((b.Kind == BitKind.Compression) == (b.UpCutLength > 0));
        });
        Assert.All(s_shipped.Materials.All, m =>
        {
            Assert.Equal(m.Chips.Select(c => c.Diameter), m.Chips.Select(c => c.Diameter).Order());
            Assert.All(m.Chips, c => Assert.True(c.Least < c.Most));
            Assert.InRange(m.ChipAt(6.35).Least, 0.01, 1);
        });
        Assert.All(s_shipped.Panels.All, p => Assert.NotNull(s_shipped.Materials.Find(p.Material)));
    }

    // Rim speed: v = π d n. At their largest speed no shipped bit passes the 10,996 ft/min that common practice reaches (55.9 m/s).
    [Fact]
    public void No_bit_is_marked_for_more_than_practice_lets_its_rim_run() =>
        Assert.All(s_shipped.Bits.All, b => Assert.InRange(Math.PI * b.Diameter / 1000 * b.MaxSpeed / 60, 0, 55.9));

    [Fact]
    public void A_users_row_takes_the_place_of_a_shipped_one()
    {
        const string Mine = """
            format = 1
            unit = "in"
            [[lumber]]
            id = "2x8"
            name = "my 2x8"
            thickness = "1.48"
            width = "7.2"
            basis = "user"
            source = "measured with a caliper"
            """;
        var findings = new List<ToolpathForge.Findings.Finding>();
        Catalogues mine = s_shipped.With(Mine, "mine.toml", findings);
        Assert.Empty(findings);
        Assert.Equal(7.2 * 25.4, mine.Lumber.Find("2x8")!.Width, 9);
        Assert.Equal(s_shipped.Lumber.All.Length, mine.Lumber.All.Length);
    }

    [Theory]
    [InlineData("header = [\"G21 G90 G17 G94\", \"G0 X0\"]", "dialect-moves")]
    [InlineData("header = [\"G21 G90 G17 G94 ({who})\"]", "dialect-placeholder")]
    [InlineData("header = [\"G20 G90 G17 G94\"]", "dialect-contradicts")]
    public void A_dialect_that_cannot_be_is_refused(string header, string code)
    {
        string text = File.ReadAllText(Support.Repo.Path("postprocessors", "metric-hand-switched.toml"))
            .Replace("header = [\n    \"G17 G21 G90 G94\",\n]", header, StringComparison.Ordinal);
        Assert.Contains(header, text, StringComparison.Ordinal);
        var findings = new List<ToolpathForge.Findings.Finding>();
        s_shipped.With(text, "mine.toml", findings);
        Assert.Contains(findings, f => f.Kind.Code == code);
    }
}
