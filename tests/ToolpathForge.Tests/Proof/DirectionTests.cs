using System.Collections.Immutable;
using ToolpathForge.Proof;

namespace ToolpathForge.Tests.Proof;

/// <summary>In which direction an edge was cut where motions of both directions run along it, or none.</summary>
public class DirectionTests
{
    [Fact]
    public void Where_two_cuts_run_along_one_surface_the_earlier_one_made_it()
    {
        const double Turn = 60;
        HandWritten program = new HandWritten().Header();
        program.Rapid(0, -HandWritten.R).RapidZ(1).Line(0, -HandWritten.R, HandWritten.Deep, 300);
        program.Line(Turn, -HandWritten.R, feed: 1200).Line(Turn, -10).Line(HandWritten.Wide, -10).Line(HandWritten.Wide, -HandWritten.R).Line(0, -HandWritten.R).Footer();
        EdgePass[] passes = [.. Passes(program, HandWritten.Rectangle(tabs: false)).Where(p => p is { Loop: 0, Edge: 0 })];

        Assert.Equal([CutDirection.Conventional, CutDirection.Climb], passes.Select(p => p.Direction));
        Assert.Equal((0, 1), (passes[0].FromShare, passes[1].ToShare));
        Assert.Equal(passes[0].ToShare, passes[1].FromShare, 1e-9);

        // Beyond its end the first cut still reaches to within the tolerance, 0.01, as far as a bit that stands there does: √((R + 0.01)² - R²).
        double reach = Math.Sqrt(Math.Pow(HandWritten.R + 0.01, 2) - Math.Pow(HandWritten.R, 2));
        Assert.Equal(Turn + reach, passes[0].ToShare * HandWritten.Wide, ProofAccuracy.ShortestStretch);
    }

    [Fact]
    public void Two_cuts_all_along_a_surface_leave_it_to_the_first()
    {
        HandWritten program = new HandWritten().Header();
        program.Rapid(-10, -HandWritten.R).RapidZ(1).Line(-10, -HandWritten.R, HandWritten.Deep, 300);
        program.Line(130, -HandWritten.R, feed: 1200).Line(-10, -HandWritten.R).Footer();

        EdgePass pass = Assert.Single(Passes(program, HandWritten.Rectangle(tabs: false)), p => p is { Loop: 0, Edge: 0 });
        Assert.Equal((CutDirection.Conventional, 0.0, 1.0), (pass.Direction, pass.FromShare, pass.ToShare));
    }

    [Fact]
    public void A_drilled_hole_was_cut_in_no_direction()
    {
        TargetPiece plate = HandWritten.Rectangle(tabs: false);
        plate = plate with { Loops = plate.Loops.Add([new ArcEdge(new(60, 40), HandWritten.R, 0, -2 * Math.PI)]) };
        HandWritten program = new HandWritten().Header();
        program.Rapid(60, 40).RapidZ(1).Line(60, 40, HandWritten.Deep, 300).RapidZ(1);
        program.Rapid(-10, -HandWritten.R).Line(-10, -HandWritten.R, HandWritten.Deep).Line(130, -HandWritten.R, feed: 1200).Footer();

        Assert.All(Passes(program, plate), p => Assert.Equal((0, 0), (p.Loop, p.Edge)));
    }

    private static ImmutableArray<EdgePass> Passes(HandWritten program, TargetPiece piece) =>
        Prover.Prove(program.Text, HandWritten.Target(piece)).EdgePasses;
}
