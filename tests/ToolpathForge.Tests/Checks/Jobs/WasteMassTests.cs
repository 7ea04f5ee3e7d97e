using ToolpathForge.Findings;

namespace ToolpathForge.Tests.Checks.Jobs;

/// <summary>Mass of what comes free of a board's end, by the area of an ellipse.</summary>
public class WasteMassTests
{
    // A belly of 3 1/4 by 2 1/2 in leaves of its rectangle what a quarter ellipse does not fill, ab(1 - π/4) (area of the ellipse πab: Archimedes); 1/8 in of allowance runs the whole 5 1/2 in.
    // An inch thick, in cedar of 373.0 kg/m³ at 19 % moisture and 608.4 at 100 % (worked by hand from 358 at 12 %).
    [Theory]
    [InlineData("", 373.0)]
    [InlineData(", moisture = 19", 373.0)]
    [InlineData(", moisture = 100", 608.4)]
    public void Waste_weighs_what_its_area_thickness_and_moisture_say(string moisture, double density)
    {
        (_, Finding[] findings) = SetUpJobs.Plan(SetUpJobs.With(
            SetUpJobs.Board, ("overcut = \"0.4 mm\"", "tabs = 4"), ("on-bed = \"14\"", "on-bed = \"14\"" + moisture)));
        double area = (3.175 * 139.7) + ((1 - (Math.PI / 4)) * 82.55 * 63.5);
        Finding told = Assert.Single(findings, f => f.Kind.Code == "tabs-on-board-end");
        Assert.Equal(area * 25.4 * density * 1e-9, told.Found!.Value.Value, 2e-5);
    }
}
