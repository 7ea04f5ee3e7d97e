using ToolpathForge.Clampings;
using ToolpathForge.Cutting;
using ToolpathForge.Findings;
using ToolpathForge.Jobs;

namespace ToolpathForge.Planning;

/// <summary>Where no tab fits on a flat panel, a skin holds the plate; only if the job states how flat the sheet lies, and asks for no tabs of its own.</summary>
internal static class SkinInstead
{
    /// <summary>A skin stays instead of tabs.</summary>
    internal static readonly FindingKind Left = new(
        "skin-instead-of-tabs",
        Severity.Note,
        "No straight unfinished edge has room for tabs, so a skin of {found} stays under the whole cut; more than {allowed}, twice the sheet's unevenness.",
        "Cut the skin with a knife from the back, and trim it flush with a block plane.");

    // Common practice: enough to hold, little enough for a knife.
    private const double Least = 0.4;
    private const double Spare = 0.1;

    /// <summary>The skin's thickness and the note about it; null when tabs fit or none may be left.</summary>
    internal static (double Thickness, Finding Note)? Of(Job job, Clamping clamping)
    {
        Make make = clamping.Make;
        if (make.Sheet?.Flatness is not { } flatness
            || !clamping.Makes.All(m => m.Cut is { Tabs: null, Skin: null, TabPlaces.IsEmpty: true })
            || clamping.Pieces.All(p => TabPlacing.Place(p, CutSettings.For(p.Piece.Make, job.Machine, p.Piece.CutLength, p.Piece.Make.LeftBelow), clamping.Stock.Bottom, new List<Finding>()) is not null))
        {
            return null;
        }

        double skin = Math.Max(Least, (2 * flatness) + Spare);
        return (skin, Finding.Of(Left, make.At["stock.flatness"].OfMake(make.Id), Quantity.Length(skin), Quantity.Length(2 * flatness)));
    }
}
