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

    // What a catalogue to choose from must offer.
    [Fact]
    public void There_is_enough_to_choose_from()
    {
        Assert.True(s_shipped.Bits.All.Length >= 25);
        Assert.Equal(Enum.GetValues<BitKind>(), s_shipped.Bits.All.Select(b => b.Kind).Distinct().Order());
        Assert.True(s_shipped.Materials.All.Length >= 12);
        Assert.True(s_shipped.Machines.All.Length >= 6);
        Assert.Contains(s_shipped.Lumber.All, r => Math.Abs(r.Thickness - 45) < 1e-9);
        Assert.Contains(s_shipped.Panels.All, r => Math.Abs(r.Nominal - 12) < 1e-9);
        Assert.All(s_shipped.Machines.All, m => Assert.True(m.Opening >= m.TravelZ && m.Collet >= 6 && m.HalfFootprint > 0));
    }

    // A bearing runs flush with the cutter, or the edge it leaves is not the pattern's; a round-over's cutter is its bearing and two radii; a chamfer of
    // 45 degrees and a V are as high as half their width over the tangent of half their angle.
    [Fact]
    public void Parts_of_bits_fit_each_other()
    {
        Assert.All(s_shipped.Bits.All.Where(b => b.Kind is BitKind.TopBearing or BitKind.TipBearing), b => Assert.Equal(b.Diameter, b.Bearing!.Diameter, 9));
        Assert.All(s_shipped.Bits.All.Where(b => b.Kind == BitKind.RoundOver), b => Assert.Equal(b.Diameter, b.Bearing!.Diameter + (2 * b.EdgeRadius), 9));
        Assert.All(s_shipped.Bits.All.Where(b => b.Kind == BitKind.V), b => Assert.InRange(b.FluteLength - (b.Radius / Math.Tan(b.TipAngle * Math.PI / 360)), -0.2, 0.2));
    }

    [Theory]
    [InlineData("top-bearing", "", "row-bit-part")]
    [InlineData("top-bearing", "bearing-diameter = 12", "row-bit-part")]
    [InlineData("straight", "bearing-diameter = 12\nbearing-height = 5", "row-bit-part")]
    [InlineData("round-over", "bearing-diameter = 12\nedge-radius = 3", "row-bit-part")]
    [InlineData("v", "", "row-bit-part")]
    [InlineData("ball", "edge-radius = 3", "row-bit-part")]
    [InlineData("compression", "", "row-up-cut-part")]
    [InlineData("v", "tip-angle = 60", null)]
    [InlineData("round-over", "edge-radius = 3", null)]
    [InlineData("tip-bearing", "bearing-diameter = 12\nbearing-height = 5\nbearing-gap = 0.3", null)]
    public void A_bit_has_the_parts_of_its_kind_and_no_others(string kind, string parts, string? code)
    {
        string row = $"""
            format = 1
            unit = "mm"
            [[bit]]
            id = "mine"
            name = "mine"
            kind = "{kind}"
            substance = "steel"
            diameter = 12
            flute-length = 20
            flutes = 2
            shank = 8
            overall-length = 58
            max-speed = 22000
            can-plunge = false
            ramp-angle = 0
            {parts}
            basis = "user"
            source = "measured"
            """;
        var findings = new List<ToolpathForge.Findings.Finding>();
        Catalogues mine = s_shipped.With(row, "mine.toml", findings);
        Assert.Equal(code is null ? [] : [code], findings.Select(f => f.Kind.Code).Distinct());
        Assert.Equal(code is null, mine.Bits.Find("mine") is not null);
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
    [InlineData("header = [\"G21 G90 G17 G94 G54\", \"G0 X0\"]", "dialect-moves")]
    [InlineData("header = [\"G21 G90 G17 G94 G54 ({who})\"]", "dialect-placeholder")]
    [InlineData("header = [\"G21 G90 G17 G94\"]", "dialect-word-missing")]
    [InlineData("header = [\"G21 G90 G17 G94 G54\", \"G55\"]", "dialect-contradicts")]
    [InlineData("header = [\"G21 G90 G17 G94 G54 M3\"]", "dialect-stop-undone")]
    [InlineData("header = [\"G20 G90 G17 G94 G54\"]", "dialect-contradicts")]
    public void A_dialect_that_cannot_be_is_refused(string header, string code)
    {
        string text = File.ReadAllText(Support.Repo.Path("postprocessors", "metric-hand-switched.toml"))
            .Replace("header = [\n    \"G17 G21 G54 G90 G94\",\n]", header, StringComparison.Ordinal);
        Assert.Contains(header, text, StringComparison.Ordinal);
        var findings = new List<ToolpathForge.Findings.Finding>();
        s_shipped.With(text, "mine.toml", findings);
        Assert.Contains(findings, f => f.Kind.Code == code);
    }

    // Words of NISTIR 6556 (2000): M0 waits always, M1 only if a switch is on; M5 stops the spindle; M2 and M30 end the program.
    [Theory]
    [InlineData("metric-centre", "pause-lines = [\"M5\", \"M0\"]", "pause-lines = [\"M5\"]", "dialect-stop-missing")]
    [InlineData("metric-centre", "pause-lines = [\"M5\", \"M0\"]", "pause-lines = [\"M0\"]", "dialect-stop-missing")]
    [InlineData("metric-centre", "pause-lines = [\"M5\", \"M0\"]", "pause-lines = [\"M5 M0\"]", "dialect-stop-missing")]
    [InlineData("metric-centre", "pause-lines = [\"M5\", \"M0\"]", "pause-lines = [\"M0\", \"M5\"]", "dialect-stop-missing")]
    [InlineData("metric-centre", "pause-lines = [\"M5\", \"M0\"]", "pause-lines = [\"M5\", \"(M0)\"]", "dialect-stop-missing")]
    [InlineData("metric-centre", "pause-lines = [\"M5\", \"M0\"]", "pause-lines = [\"M5\", \"M1\"]", "dialect-stop-undone")]
    [InlineData("metric-centre", "pause-lines = [\"M5\", \"M0\"]", "pause-lines = [\"M5\", \"M0\", \"M3\"]", "dialect-stop-undone")]
    [InlineData("metric-centre", "pause-lines = [\"M5\", \"M0\"]", "pause-lines = [\"M5\", \"M0\", \"M30\"]", "dialect-stop-undone")]
    [InlineData("metric-centre", "pause-lines = [\"M5\", \"M0\"]", "pause-lines = [\"M5\", \"M0\", \"G55\"]", "dialect-contradicts")]
    [InlineData("metric-centre", "    \"M5\",\n    \"T{tool} M6 ({bit})\",", "    \"T{tool} M6\",", "dialect-stop-missing")]
    [InlineData("metric-centre", "\"T{tool} M6 ({bit})\"", "\"T{tool}\"", "dialect-stop-missing")]
    [InlineData("metric-centre", "    \"M5\",\n    \"M30\"", "    \"M30\"", "dialect-stop-missing")]
    [InlineData("metric-centre", "\"S{speed} M3\"", "\"S{speed}\"", "dialect-stop-missing")]
    [InlineData("metric-centre", "spindle-dwell = 4\nspindle-stop-dwell = 10\ndwell-word = \"G4 P{seconds}\"", "spindle-dwell = 0", "dialect-word-missing")]
    [InlineData("metric-lines", "    \"M5\",\n    \"M0\"", "    \"M5\"", "dialect-stop-missing")]
    [InlineData("metric-hand-switched", "pause-lines = [\"M0\"]", "pause-lines = [\"M9\"]", "dialect-stop-missing")]
    public void A_dialect_that_lets_hands_come_near_a_turning_bit_is_refused(string id, string before, string after, string code)
    {
        string text = File.ReadAllText(Support.Repo.Path("postprocessors", id + ".toml")).ReplaceLineEndings("\n");
        Assert.Contains(before, text, StringComparison.Ordinal);
        var findings = new List<ToolpathForge.Findings.Finding>();
        s_shipped.With(text, "mine.toml", findings);
        Assert.Empty(findings);
        s_shipped.With(text.Replace(before, after, StringComparison.Ordinal), "mine.toml", findings);
        Assert.Contains(findings, f => f.Kind.Code == code);
    }
}
