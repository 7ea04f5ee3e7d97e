using ToolpathForge.Drawings;
using ToolpathForge.Pieces;
using ToolpathForge.Planning;

namespace ToolpathForge.RunSheets;

/// <summary>The families of a job on its run sheet: the boards of each side by side, so that the eye can judge them together before anything is cut.</summary>
internal static class FamilySection
{
    private const double PictureWidth = 186;
    private const double PictureHeight = 150;

    /// <summary>A picture for each family, in the order of the job; nothing for a job without one.</summary>
    internal static void Write(Html page, Plan plan)
    {
        foreach (IGrouping<string?, ProfilePiece> family in plan.Pieces.OfType<ProfilePiece>().GroupBy(p => p.Make.Family, StringComparer.Ordinal).Where(g => g.Key is not null))
        {
            ProfilePiece[] pieces = [.. family];
            (double scale, int inRow) = Fit(family.Key!, pieces, plan);
            page.Element("h3", $"The family {family.Key}");
            RunSheetPage.Picture(page, FamilyDrawing.Of(family.Key!, pieces, plan.Job.Unit, scale, inRow), scale, "The boards of the family side by side, reference edges in line.");
        }
    }

    // As large as the page allows, and then as many side by side as can be.
    private static (double Scale, int InRow) Fit(string family, ProfilePiece[] pieces, Plan plan)
    {
        foreach (double scale in SheetPaper.CommonScales.Where(s => s <= FamilyDrawing.Scale))
        {
            for (int inRow = pieces.Length; inRow >= 1; inRow--)
            {
                Drawing drawing = FamilyDrawing.Of(family, pieces, plan.Job.Unit, scale, inRow);
                Geometry.Box2 box = Draughting.BoxOf(Draughting.Marks(drawing, scale));
                if (box.Width * scale <= PictureWidth && box.Height * scale <= PictureHeight)
                {
                    return (scale, inRow);
                }
            }
        }

        return (SheetPaper.CommonScales[^1], pieces.Length);
    }
}
