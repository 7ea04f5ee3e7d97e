using System.Text;
using System.Text.Json;
using ToolpathForge.Cutting;
using ToolpathForge.Exchange.Toolpaths;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;
using ToolpathForge.Planning;
using ToolpathForge.Proof;
using ToolpathForge.Service.Files;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.DrawnMakes;

/// <summary>The sample that is cut by a drawing, from its files to its proven program, and what its plan looks like in other hands.</summary>
public sealed class BraceSampleTests
{
    private static readonly Lazy<Plan> s_plan = new(() =>
    {
        Loaded loaded = JobFile.Load(Repo.Path("samples", "boathouse", "brace.toml"), CancellationToken.None);
        Assert.Empty(loaded.Findings);
        return Planner.Plan(loaded.Job!, cancel: CancellationToken.None);
    });

    private static PlannedProgram Program => Assert.Single(s_plan.Value.Programs);

    [Fact]
    public void TheDrawingOfTheSampleIsOurs() =>
        Golden.SameFile(Repo.Path("samples", "boathouse", "brace.dxf"), Encoding.UTF8.GetBytes(BraceDrawing.Dxf));

    [Fact]
    public void The_program_is_kept_and_proven()
    {
        Assert.Empty(s_plan.Value.Findings.Where(f => f.Kind.Severity == Severity.Stop));
        Assert.True(Program.Proof.Passed);
        Assert.InRange(Program.Proof.WorstGouge, 0, 0.001);
        Assert.InRange(Program.Proof.WorstLeftover, 0, 0.001);
        Golden.Same("boathouse-brace.nc", Program.Text);
    }

    [Fact]
    public void A_hole_that_is_shifted_in_the_program_is_caught()
    {
        // Every opening in turn: its moves, by the plan's own word for them, half a millimetre to the right, written anew.
        CutPlan cut = Program.Cut;
        Toolpath path = cut.Path;
        for (int run = 0; run < path.Runs.Length; run++)
        {
            if (path.Runs[run].Kind != RunKind.Opening)
            {
                continue;
            }

            var moves = path.Moves.ToArray();
            for (int i = 0; i < moves.Length; i++)
            {
                bool ofIt = moves[i].Run == run || (moves[i].Run < 0 && ((i > 0 && moves[i - 1].Run == run) || (i + 1 < moves.Length && moves[i + 1].Run == run)));
                moves[i] = ofIt ? moves[i] with { End = moves[i].End with { X = moves[i].End.X + 0.5 } } : moves[i];
            }

            var post = new ToolpathForge.Posting.DialectPostProcessor(s_plan.Value.Job.Dialect);
            string text = post.Write(new ToolpathForge.Posting.ProgramInput(Program.Name, [], [path with { Moves = [.. moves] }], 0.04));
            ProofReport proof = Prover.Prove(text, Program.Target);
            Assert.False(proof.Passed, path.Runs[run].Name);
            Assert.InRange(Math.Max(proof.WorstGouge, proof.WorstLeftover), 0.4, 0.6);
        }
    }

    [Fact]
    public void Toolpaths_are_read_by_ezdxf_entity_by_entity()
    {
        CutPlan cut = Program.Cut;
        var layers = PassLayer.Of(cut);

        // All but the way to the first place, up and across.
        Assert.Equal(cut.Path.Moves.Length - 2, layers.Sum(l => l.Parts.Length));
        using JsonDocument read = JsonDocument.Parse(OutsideTool.Python("toolpath_read.py", ToolpathDxf.Write(layers), "ezdxf"));
        JsonElement root = read.RootElement;
        Assert.Equal((0, 4), (root.GetProperty("errors").GetInt32(), root.GetProperty("unit").GetInt32()));
        Assert.Equal(layers.Select(l => l.Name).Order(StringComparer.Ordinal), root.GetProperty("layers").EnumerateObject().Select(l => l.Name).Order(StringComparer.Ordinal));
        foreach (PassLayer layer in layers)
        {
            JsonElement[] rows = [.. root.GetProperty("layers").GetProperty(layer.Name).EnumerateArray()];
            Assert.Equal(layer.Parts.Length, rows.Length);
            for (int i = 0; i < rows.Length; i++)
            {
                var part = layer.Parts[i];
                double flat = part.From.Flat == part.To.Flat ? 0 : new Segment(part.From.Flat, part.To.Flat, part.Bulge).Length;
                double length = part.Bulge != 0 ? flat : Math.Sqrt((flat * flat) + Math.Pow(part.To.Z - part.From.Z, 2));
                Assert.Equal(part.Bulge == 0 ? "LINE" : "ARC", rows[i][0].GetString());
                Assert.Equal(length, rows[i][1].GetDouble(), 1e-6);
                Assert.Equal(part.To.Z, rows[i][3].GetDouble(), 1e-9);
            }
        }

        Assert.Contains("rough-2", layers.Select(l => l.Name));
        Assert.Contains("opening-1", layers.Select(l => l.Name));
    }

    [Fact]
    public void The_picture_of_toolpaths_has_a_path_for_every_move_in_the_plane()
    {
        var layers = PassLayer.Of(Program.Cut);
        var picture = System.Xml.Linq.XDocument.Parse(ToolpathSvg.Write(layers));
        System.Xml.Linq.XNamespace svg = "http://www.w3.org/2000/svg";
        Assert.Equal(layers.Select(l => l.Name), picture.Root!.Elements(svg + "g").Select(g => g.Attribute("id")!.Value));
        Assert.Equal(layers.Sum(l => l.Parts.Count(p => p.From.Flat != p.To.Flat)), picture.Descendants(svg + "path").Count());
    }
}
