using System.Collections.Immutable;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using ToolpathForge.Clampings;
using ToolpathForge.Cutting;
using ToolpathForge.Drawings;
using ToolpathForge.Findings;
using ToolpathForge.Jobs;
using ToolpathForge.Pieces;
using ToolpathForge.Planning;
using ToolpathForge.Proof;
using ToolpathForge.Wording;

namespace ToolpathForge.RunSheets;

/// <summary>The run sheet: one page that prints, with everything a person needs beside the machine and nothing to fetch from elsewhere.</summary>
public static class RunSheetPage
{
    /// <summary>Writes the page for a plan whose programs are proven.</summary>
    /// <param name="plan">The plan.</param>
    public static string Write(Plan plan)
    {
        Job job = plan.Job;
        var page = new Html();
        page.Raw("<!DOCTYPE html>").Raw("<html lang=\"en\">").Raw("<head>").Raw("<meta charset=\"utf-8\">")
            .Raw("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">")
            .Element("title", $"Run sheet: {job.Name}")
            .Raw("<style>").Raw(SheetStyle.Css).Raw("</style>").Raw("</head>").Raw("<body>");
        Overview(page, plan);
        var drawn = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (PlannedProgram program in plan.Programs)
        {
            Program(page, plan, program, drawn);
        }

        page.Raw("</body>").Raw("</html>");
        return page.ToString();
    }

    private static void Overview(Html page, Plan plan)
    {
        Job job = plan.Job;
        page.Raw("<header>").Element("h1", job.Name)
            .Element("p", $"Run sheet for {job.FileName}. Machine: {job.Machine.Name}. Programs: {job.Dialect.Id}.", "lead").Raw("</header>");
        page.Element("h3", "What there is to run").Table(
            ["Program", "Makes", "Bit", "Runs", "Time each"],
            plan.Programs.Select(p => (IReadOnlyList<string>)
            [
                p.FileName,
                SheetWords.Makes(p.Cut.Clamping),
                SheetWords.Bits(p.Cut),
                SheetWords.Starts(p.Cut.Clamping),
                SheetWords.Time(p.Seconds),
            ]));
        FamilySection.Write(page, plan);
        PanelSection.Write(page, plan);
        ScheduleSection.Write(page, plan);
        if (!plan.Findings.IsEmpty)
        {
            page.Element("h3", "Worth knowing before you start");
            foreach (Finding finding in plan.Findings)
            {
                WordedFinding worded = FindingText.Word(finding, job.Unit);
                page.Raw($"<p class=\"finding\"><b>{Html.Encode(worded.Weight)}</b>{Html.Encode(finding.Place.Make is { } make ? $" ({make})" : "")}: "
                    + $"{Html.Encode(worded.Message)} <span class=\"advice\">{Html.Encode(worded.Advice)}</span></p>");
            }
        }

        page.Raw("<div class=\"caution\">").Element("h3", "Every time").List(false, SheetWords.Cautions).Raw("</div>");
        CarryingSection.Write(page, plan);
    }

    private static void Program(Html page, Plan plan, PlannedProgram program, Dictionary<string, string> drawn)
    {
        Job job = plan.Job;
        CutPlan cut = program.Cut;
        page.Raw("<section>").Element("h2", $"{program.Name}: {SheetWords.Makes(cut.Clamping)}")
            .Element("p", $"{program.FileName} · {SheetWords.Starts(cut.Clamping)} · about {SheetWords.Time(program.Seconds)} each", "lead");
        page.Raw("<div class=\"columns\">").Raw("<div>").Element("h3", "Set up").List(true, SetUp.Steps(job, cut)).Raw("</div>");
        page.Raw("<div>").Element("h3", "Figures").Facts(SetUp.Figures(job, cut)).Raw("</div>").Raw("</div>");

        Picture(page, BedDrawing.Of(cut, job.Unit), 186, 118, "On the bed, seen from above. Solid: the last round and the finish. Dashed: the bit coming down. Dotted: above the work. Bars: tabs. Ring with a dot: where the first move goes. Crossed ring: where the bit stands at the end.");
        page.Element("h3", "Passes").Table(["Pass", "To depth", "Feed", "Which way", "Why"], cut.Works.SelectMany(w => w.Path.Runs.Select(r => SetUp.Pass(job, w, r))));
        if (cut.Works[^1].Outline)
        {
            GrainSection.Write(page, job, cut);
            FittingsSection.Write(page, plan, cut);
            HandPage.Write(page, plan, cut);
        }

        Pieces(page, plan, program, drawn);
        BoardsSection.Write(page, job, cut.Clamping);
        // The title block never lies alone on a last page.
        page.Raw("<div class=\"keep\">");
        ProofBox(page, job, program);
        page.Raw("<footer>")
            .Raw($"<div><span>Job</span>{Html.Encode(job.Name)}</div>")
            .Raw($"<div><span>Program</span>{Html.Encode(program.FileName)}</div>")
            .Raw("<div><span>Date and hand</span>&nbsp;</div>").Raw("</footer>").Raw("</div>").Raw("</section>");
    }

    // A make that lies on several panels is drawn under the first.
    private static void Pieces(Html page, Plan plan, PlannedProgram program, Dictionary<string, string> drawn)
    {
        ImmutableArray<Make> makes = program.Cut.Clamping.Makes;
        foreach (Piece piece in makes.SelectMany(m => plan.Pieces.Where(p => p.Make.Id == m.Id)).Where(p => p.Make is not TrialMake && drawn.TryAdd(p.Make.Id, program.Name)))
        {
            string which = program.Cut.Clamping.IsShared ? piece.Make.Id : "The piece";
            string lies = piece is not ProfilePiece profile
                ? "as it was drawn."
                : $"as a {(profile.IsLeftHand ? "left" : "right")}-hand piece lies: face up, profile edge towards you, end at your {(profile.IsLeftHand ? "left" : "right")}.";
            Picture(page, PieceDrawing.Of(piece, plan.Job.Unit), 186, 118, $"{which}, {lies}");
        }

        string[] before = [.. makes.Where(m => drawn.TryGetValue(m.Id, out string? by) && by != program.Name).Select(m => $"{m.Id} with {drawn[m.Id]}")];
        if (before.Length > 0)
        {
            page.Element("p", $"Drawn further up: {string.Join(", ", before)}.");
        }
    }

    internal static void ProofBox(Html page, Job job, PlannedProgram program)
    {
        string Fine(double mm) => SheetWords.Fine(mm, job.Unit);
        string hash = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(program.Text)));
        page.Raw("<div class=\"proof\">").Element("h3", "Proof")
            .Element("p", "The finished text of this program was read back and measured against the exact piece.")
            .Facts(
                [
                    ("Deepest into the piece", $"{Fine(program.Proof.WorstGouge)} (allowed {Fine(job.Tolerance)})"),
                    ("Most left on an edge", $"{Fine(program.Proof.WorstLeftover)} (allowed {Fine(job.Tolerance)}){(program.Cut.Tabs.IsEmpty ? "" : ", tabs apart")}"),
                    .. Marks(program, Fine),
                    ("Lowest point", Lowest(program.Cut, Fine)),
                ])
            .Raw($"<p class=\"hash\">SHA-256 {hash}</p>").Raw("</div>");
    }

    private static IEnumerable<(string Term, string Value)> Marks(PlannedProgram program, Func<double, string> fine)
    {
        ImmutableArray<MarkProof> marks = [.. program.Proof.Pieces.SelectMany(p => p.Marks)];
        if (marks.Length > 0)
        {
            yield return ("Furthest from a mark's stroke", fine(marks.Max(m => m.Missed)));
        }
    }

    private static string Lowest(CutPlan cut, Func<double, string> fine) => cut.Settings switch
    {
        { Skin: > 0 } s when cut.Clamping.Make is ProfileMake { Hand: not null } => $"{fine(s.Skin)} stays for the hand",
        { Skin: > 0 } s => $"a skin of {fine(s.Skin)} stays",
        { Overcut: > 0 } s => $"{fine(s.Overcut)} below the stock",
        var s => $"{fine(s.Steps[^1])} below the upper face",
    };

    private static void Picture(Html page, Drawing drawing, double width, double height, string caption)
    {
        Picture(page, drawing, SheetPaper.Within(drawing, width, height)?.Scale ?? SheetPaper.CommonScales[^1], caption);
    }

    internal static void Picture(Html page, Drawing drawing, double at, string caption)
    {
        SheetPaper paper = SheetPaper.Around(drawing, at);
        string scale = paper.Scale >= 1 ? "full size" : "1:" + (1 / paper.Scale).ToString("0.##", CultureInfo.InvariantCulture);
        page.Raw("<figure>").Raw(SvgWriter.Write(drawing, paper)).Element("figcaption", $"{caption} Scale {scale} when printed without scaling.").Raw("</figure>");
    }
}
