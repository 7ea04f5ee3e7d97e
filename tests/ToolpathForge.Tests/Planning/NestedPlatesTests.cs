using ToolpathForge.Clampings;
using ToolpathForge.Planning;

namespace ToolpathForge.Tests.Planning;

/// <summary>Plates that may be turned: more on a blank, and still proven.</summary>
public class NestedPlatesTests
{
    private static Plan PlanOf(string turned, int count) => Planner.Plan(
        SamplePlan.Read($$"""
            format = 1
            name = "Boathouse porch"
            unit = "in"
            tolerance = "0.1 mm"
            machine = "desktop-400"
            dialect = "metric-centre"

            [[make]]
            id = "bracket"
            kind = "pattern"
            count = {{count}}
            board = "2x6"
            stock = { panel = "hardboard-1/4", thickness = "5.6 mm" }
            bit = "downcut-1/4"
            shape = { kind = "quarter-ellipse", form = "scoop", run = "9", depth = "4 3/4" }
            plate = { hold = "3/4", seat = "3/4", reach = "1/4", turned = "{{turned}}" }
            cut = { tabs = 3 }
            """),
        cancel: CancellationToken.None);

    [Fact]
    public void A_blank_holds_more_plates_when_they_may_be_turned_and_the_program_is_proven()
    {
        PlannedProgram rows = Assert.Single(PlanOf("no", 6).Programs);
        PlannedProgram nested = Assert.Single(PlanOf("quarter", 6).Programs);
        Assert.True(nested.Proof.Passed);
        Assert.True(nested.Cut.Clamping.Pieces.Length > rows.Cut.Clamping.Pieces.Length, $"{nested.Cut.Clamping.Pieces.Length} against {rows.Cut.Clamping.Pieces.Length}");
        Assert.True(nested.Cut.Clamping.Times < rows.Cut.Clamping.Times);
        Assert.Contains(nested.Cut.Clamping.Pieces, p => p.Placement.Turn != Math.PI);
        Clamping clamping = nested.Cut.Clamping;
        Assert.True(clamping.Times * clamping.Pieces.Length >= 6);
    }

    [Fact]
    public void A_single_plate_lies_as_it_did()
    {
        Assert.Equal(Assert.Single(PlanOf("no", 1).Programs).Text, Assert.Single(PlanOf("quarter", 1).Programs).Text);
    }
}
