using System.Text;
using ToolpathForge.Catalogue;
using ToolpathForge.Jobs;
using ToolpathForge.Posting;
using ToolpathForge.Shapes;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Jobs;

/// <summary>The reference pages say what the readers read: their tables are made from the readers' own keys and compared byte for byte.</summary>
public class ReferencePageTests
{
    [Fact]
    public void The_reference_of_the_job_file_is_what_the_reader_reads()
    {
        var parts = new Dictionary<string, string>(StringComparer.Ordinal)
        {
            ["head"] = ReferencePage.Table(JobKeys.Head),
            ["pattern"] = ReferencePage.Table(JobKeys.Pattern),
            ["pattern stock"] = ReferencePage.Table(JobKeys.PanelStock),
            ["plate"] = ReferencePage.Table(JobKeys.Plate),
            ["block"] = ReferencePage.Table(PlateKeys.Block),
            ["stop"] = ReferencePage.Table(PlateKeys.Stop),
            ["brads"] = ReferencePage.Table(PlateKeys.Brads),
            ["hang"] = ReferencePage.Table(PlateKeys.Hang),
            ["boards of a pattern"] = ReferencePage.Table(JobKeys.MeasuredForPattern),
            ["board end"] = ReferencePage.Table(JobKeys.BoardEnd),
            ["board stock"] = ReferencePage.Table(JobKeys.BoardStock),
            ["panels"] = ReferencePage.Table(PanelReader.Keys),
            ["trial"] = ReferencePage.Table(TrialReader.Keys),
            ["buying"] = ReferencePage.Table(JobKeys.Buying),
            ["clamp"] = ReferencePage.Table(JobKeys.Clamp),
            ["boards"] = ReferencePage.Table(JobKeys.Measured),
            ["hand pattern"] = ReferencePage.Table(HandKeys.Pattern),
            ["hand board end"] = ReferencePage.Table(HandKeys.BoardEnd),
            ["family"] = ReferencePage.Table(FamilyReader.Keys),
            ["outline"] = ReferencePage.Table(JobKeys.Outline),
            ["place in drawing"] = ReferencePage.Table(OutlineKeys.OnEdge),
            ["end"] = ReferencePage.Table(JobKeys.End),
            ["cut"] = ReferencePage.Table(JobKeys.Cut),
            ["opening"] = ReferencePage.Table(JobKeys.Opening),
            ["marks"] = ReferencePage.Table(JobKeys.Marks),
            ["place"] = ReferencePage.Table(JobKeys.OnEdge),
            ["shapes"] = string.Join('\n', ShapeList.All.Select(s => $"**`{s.Id}`**: {s.Says}\n\n{ReferencePage.Table(JobKeys.ShapeTable(s))}")),
            ["parts"] = string.Join('\n', PartList.All.Select(p => $"**`{p.Id}`**: {p.Says}\n\n{ReferencePage.Table(JobKeys.PartTable(p, PartList.All))}")),
            ["drawn curves"] = string.Join('\n', DrawnCurves.All.Select(p => $"**`{p.Id}`**: {p.Says}\n\n{ReferencePage.Table(JobKeys.PartTable(p, DrawnCurves.All))}")),
        };
        Same(Repo.Path("samples", "README.md"), parts);
    }

    [Fact]
    public void The_reference_of_dialects_is_what_the_reader_reads()
    {
        var parts = new Dictionary<string, string>(StringComparer.Ordinal)
        {
            ["dialect"] = ReferencePage.Table(CatalogueKeys.Dialect),
            ["placeholders"] = string.Join('\n', Placeholders.Names.Select(n => $"- `{{{n}}}`")) + "\n",
            ["shipped"] = string.Join('\n', Catalogues.Shipped.Dialects.All.Select(d => $"- `{d.Id}`: {d.Name}.")) + "\n",
        };
        Same(Repo.Path("postprocessors", "README.md"), parts);
    }

    private static void Same(string path, Dictionary<string, string> parts) =>
        Golden.SameFile(path, Encoding.UTF8.GetBytes(ReferencePage.Fill(File.ReadAllText(path), parts)));
}
