using ToolpathForge.Clampings;
using ToolpathForge.Cutting;
using ToolpathForge.Drawings;
using ToolpathForge.Measures;
using ToolpathForge.Planning;

namespace ToolpathForge.RunSheets;

/// <summary>The blanks that several makes share, on the first pages of the run sheet: what comes out of each, and what stays whole.</summary>
internal static class PanelSection
{
    private const double PictureWidth = 92;
    private const double PictureHeight = 100;

    /// <summary>A picture for each blank, two side by side, all at one scale; nothing where no blank is shared.</summary>
    internal static void Write(Html page, Plan plan)
    {
        CutPlan[] cuts = [.. plan.Programs.Where(p => p.Cut.Clamping.IsShared).DistinctBy(p => p.Cut.Clamping.Name, StringComparer.Ordinal).Select(p => p.Cut)];
        if (cuts.Length == 0)
        {
            return;
        }

        LengthUnit unit = plan.Job.Unit;
        double scale = cuts.Min(c => SheetPaper.Within(NestDrawing.Of(c, unit, 1), PictureWidth, PictureHeight)?.Scale ?? SheetPaper.CommonScales[^1]);
        page.Element("h3", "The blanks").Raw("<div class=\"pair\">");
        foreach (CutPlan cut in cuts)
        {
            Clamping clamping = cut.Clamping;
            string times = clamping.Times > 1 ? $", {SheetWords.Times(clamping.Times)}" : "";
            RunSheetPage.Picture(
                page,
                NestDrawing.Of(cut, unit, scale),
                scale,
                $"{clamping.Name}{times}: {ShopText.Size(clamping.Stock.Box.Width, unit)} by {ShopText.Size(clamping.Stock.Box.Height, unit)}, {OffcutWords.UsedShare(clamping)} becomes pieces.{HeldWords.Within(clamping)}");
        }

        page.Raw("</div>");
    }
}
