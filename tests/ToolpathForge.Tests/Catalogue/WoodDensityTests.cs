using ToolpathForge.Catalogue;
using ToolpathForge.Checks.Settings;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Catalogue;

/// <summary>Densities of timber by moisture against tables of another book, and what follows from them.</summary>
public class WoodDensityTests
{
    // FPL Wood Handbook, table of mechanical properties: specific gravity at 12 % moisture and green, both on oven-dry mass (from memory). A species' own shrinkage differs from the
    // formula's, hence four in a hundred.
    [Theory]
    [InlineData("douglas-fir", 0.48, 0.45)]
    [InlineData("southern-pine", 0.51, 0.47)]
    [InlineData("western-red-cedar", 0.32, 0.31)]
    [InlineData("white-oak", 0.68, 0.60)]
    [InlineData("yellow-poplar", 0.42, 0.40)]
    [InlineData("hard-maple", 0.63, 0.56)]
    [InlineData("beech", 0.64, 0.56)]
    public void Rows_and_green_wood_agree_with_the_handbooks_specific_gravities(string id, double atTwelve, double green)
    {
        Material row = Catalogues.Shipped.Materials.Find(id)!;

        // Mass of a cubic meter at 12 %: 1000 kg of water, G of it in wood, and 12 % of that in water.
        Assert.Equal(1000 * atTwelve * 1.12, row.Density, 0.5);
        Assert.Equal(row.Density, row.DensityAt(12), 1e-9);

        // Green at 100 %: as much water as wood.
        Assert.Equal(2000 * green, row.DensityAt(100), 0.04 * 2000 * green);
    }

    // Above fiber saturation wood no longer swells: each per cent adds a hundredth of the dry mass (FPL Wood Handbook).
    [Fact]
    public void Above_saturation_only_water_is_added()
    {
        double dry = WoodDensity.At(538, 30) / 1.3;
        Assert.All((double[])[30, 45, 80, 115], m => Assert.Equal(dry * (1 + (m / 100)), WoodDensity.At(538, m), 1e-9));
    }

    // Below it wood takes up water and swells, and is heavier all the same. Oven-dry softwoods are some 5 to 8 % lighter than at 12 % (from memory).
    [Fact]
    public void Wetter_wood_is_heavier()
    {
        double[] by = [.. Enumerable.Range(0, 60).Select(m => WoodDensity.At(538, m))];
        Assert.Equal(by.Order(), by);
        Assert.InRange(by[0] / by[12], 0.92, 0.95);
    }

    [Fact]
    public void A_panel_keeps_the_density_of_its_row() => Assert.Equal(TestJobs.Hardboard.Density, TestJobs.Hardboard.DensityAt(100));

    // A green 2x10 of Douglas-fir, 12 ft with 0.4 m on the bed, weighs about 30 kg where a dry one weighs 18 (worked by hand), and turns with as much more.
    [Fact]
    public void A_green_board_tips_with_its_water()
    {
        Material fir = Catalogues.Shipped.Materials.Find("douglas-fir")!;
        double Moment(double moisture) => MachineSettings.Of(
            new MachineQuestion(Catalogues.Shipped.Bits.Find("upcut-1/4-long")!, fir, Catalogues.Shipped.Machines.Find("desktop-400")!, 38.1)
            {
                Overhang = new Overhang(3660, 235, 400, Stand: false) { Moisture = moisture },
            }).Rows.Single(r => r.Setting == "tipping").Is!.Value.Value;
        double arm = 9.80665 * (1.83 - 0.4);
        Assert.Equal(18.2, Moment(19) / arm, 0.3);
        Assert.Equal(29.2, Moment(100) / arm, 0.3);
    }
}
