using ToolpathForge.Proof;

namespace ToolpathForge.Tests.Proof;

/// <summary>Programs that are right are found right, with the figures worked by hand.</summary>
public class PlateTests
{
    [Theory]
    [InlineData(false, false)]
    [InlineData(true, false)]
    [InlineData(false, true)]
    public void A_rectangle_with_rounded_corners_passes(bool tabs, bool climb)
    {
        string text = HandWritten.RectangleProgram(tabs, climb).Text;
        ProofReport report = Prover.Prove(text, HandWritten.Target(HandWritten.Rectangle(tabs)));
        Assert.Empty(report.Faults);
        Assert.True(report.Passed);
        Assert.InRange(report.WorstGouge, 0, 2e-4);
        Assert.InRange(report.WorstLeftover, 0, 2e-4);
        Assert.All(report.EdgePasses, p => Assert.Equal(climb ? CutDirection.Climb : CutDirection.Conventional, p.Direction));
    }

    [Fact]
    public void Every_fault_code_has_its_own_name_and_a_meaning()
    {
        Assert.Equal(FaultCodes.All.Length, FaultCodes.All.Select(c => c.Name).Distinct(StringComparer.Ordinal).Count());
        Assert.All(FaultCodes.All, c => Assert.Matches("^[a-z]+(-[a-z]+)*$", c.Name));
        Assert.All(FaultCodes.All, c => Assert.EndsWith(".", c.Meaning, StringComparison.Ordinal));
    }
}
