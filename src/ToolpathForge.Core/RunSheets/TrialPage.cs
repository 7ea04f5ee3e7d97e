using System.Globalization;
using ToolpathForge.Cutting;
using ToolpathForge.Jobs;
using ToolpathForge.Measures;
using ToolpathForge.Pieces;
using ToolpathForge.Planning;

namespace ToolpathForge.RunSheets;

/// <summary>The page of a trial piece: how to cut it, what to measure on it, what to write into the job, and the formulas.</summary>
public static class TrialPage
{
    /// <summary>Writes the page for a plan from <see cref="Planner.Trial"/> whose program is proven.</summary>
    /// <param name="plan">The plan.</param>
    public static string Write(Plan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        Job job = plan.Job;
        PlannedProgram program = plan.Programs[0];
        CutPlan cut = program.Cut;
        string bit = cut.Clamping.Make.Bit.Name;
        var page = new Html();
        page.Raw("<!DOCTYPE html>").Raw("<html lang=\"en\">").Raw("<head>").Raw("<meta charset=\"utf-8\">")
            .Raw("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">").Element("title", $"Trial piece: {bit}")
            .Raw("<style>").Raw(SheetStyle.Css).Raw("</style>").Raw("</head>").Raw("<body>");
        page.Raw("<header>").Element("h1", $"Trial piece: {bit}")
            .Element("p", $"For {job.FileName}. Machine: {job.Machine.Name}. Program: {program.FileName}, about {SheetWords.Time(program.Seconds)}.", "lead").Raw("</header>");
        page.Element("h3", "Set up").List(true, SetUp.Steps(job, cut));
        page.Raw("<div class=\"caution\">").Element("h3", "Every time").List(false, SheetWords.Cautions).Raw("</div>");
        RunSheetPage.Picture(page, BedDrawing.Of(cut, job.Unit), 0.5, "On the bed, seen from above.");
        page.Element("h3", "What to measure").List(true, Measuring(job.Unit));
        RunSheetPage.Picture(page, TrialPiece.Readings(cut.Clamping.Make.Bit, job.Unit), 1, "As it lies on the machine, the slot towards you; each reading by the name of its key.");
        page.Element("h3", "What to write into the job").Element("p", "At its head, before the first make; the figures here are what a machine without any error gives:")
            .Raw($"<pre>{Html.Encode(Table(cut.Clamping.Make, job.Unit))}</pre>");
        page.Element("h3", "What comes of it").List(false, Formulas(cut.Clamping.Make, job.Unit));
        RunSheetPage.ProofBox(page, job, program);
        page.Raw("</body>").Raw("</html>");
        return page.ToString();
    }

    private static IEnumerable<string> Measuring(LengthUnit unit) =>
    [
        "Before you lift it off, pencil an arrow on it that points away from you, along Y. The slot lies towards you.",
        "Cut the tabs and sand them flush; measure away from them. Break no edge.",
        "slot: its width, in three places, the inside jaws square to it. Take the mean.",
        "across-x and across-y: the width between the sides, in three places each. The means again.",
        $"rising: from the near left corner to the far right one; falling: from the far left to the near right. They are about {ShopText.Size(TrialPiece.Side(unit) * Math.Sqrt(2), unit)}.",
        "hole-x and hole-y: the width of the hole along X and along Y. They show whether something has play.",
    ];

    private static string Table(Make make, LengthUnit unit)
    {
        double side = TrialPiece.Side(unit);
        double hole = TrialPiece.Hole(unit);
        string Say(double mm) => unit == LengthUnit.Inch
            ? string.Create(CultureInfo.InvariantCulture, $"\"{mm / Length.MillimetresPerInch:0.0000} in\"")
            : string.Create(CultureInfo.InvariantCulture, $"\"{mm:0.00} mm\"");
        return $"""
            [trial]
            bit = "{make.Bit.Id}"
            slot = {Say(make.Bit.Diameter)}
            side = {Say(side)}
            across-x = {Say(side)}
            across-y = {Say(side)}
            rising = {Say(side * Math.Sqrt(2))}
            falling = {Say(side * Math.Sqrt(2))}
            hole = {Say(hole)}
            hole-x = {Say(hole)}
            hole-y = {Say(hole)}
            """;
    }

    private static IEnumerable<string> Formulas(Make make, LengthUnit unit)
    {
        string track = ShopText.Size(TrialPiece.Side(unit) + make.Bit.Diameter, unit);
        return
        [
            "The bit's true diameter d is the slot's width, run-out and all.",
            "Out of square: q = (rising² - falling²) / (4 · across-x · across-y), sin φ = (√(1 + 4q²) - 1) / 2q; φ is how far the Y axis leans to the right.",
            $"Scale of X: (across-x + d) / (cos φ · {track}); scale of Y: (across-y + d) / (cos φ · {track}).",
            "Every program of the job then makes up for all three, and is proven on the machine as it is. What is off by more than a hundredth, or leans by more than half a degree, is put right at the machine instead.",
        ];
    }
}
