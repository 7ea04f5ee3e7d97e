using System.Collections.Immutable;
using ToolpathForge.Checks.Hand;
using ToolpathForge.Checks.Settings;
using ToolpathForge.Drawings;
using ToolpathForge.Jobs;
using ToolpathForge.Measures;
using ToolpathForge.Pieces;

namespace ToolpathForge.Planning;

/// <summary>One pass of a hand router. Depths are those of the cutter's end below the base, mm.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="Least">Least depth.</param>
/// <param name="Most">Greatest depth.</param>
/// <param name="Best">The depth to set, on a mark of a rule.</param>
/// <param name="ComesOut">How far the bit comes out below the board at that depth; 0 where it stays in it.</param>
public sealed record HandPass(string Name, double Least, double Most, double Best, double ComesOut);

/// <summary>What is done by hand to a piece, before or after its program, worked out and ready for the sheet.</summary>
/// <param name="Work">What the job says of it.</param>
/// <param name="Bite">What the saw leaves outside the finished edge, mm.</param>
/// <param name="PatternBelow">Whether the pattern lies under the board.</param>
/// <param name="Passes">At least one.</param>
/// <param name="Feed">Which way to feed, a sentence or two.</param>
/// <param name="Section">The section to scale.</param>
/// <param name="Scale">The scale that the section is laid out for.</param>
public sealed record HandPlan(
    HandWork Work, double Bite, bool PatternBelow, ImmutableArray<HandPass> Passes, string Feed, Drawing Section, double Scale)
{
    /// <summary>What stands outside the finished edge below what the machine has cut, where the waste was sawn off beforehand, mm; null where it wasn't.</summary>
    public double? SawnBefore { get; init; }

    /// <summary>The hand work of a piece; null for none, and where no depth serves (which has been told).</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="unit">The unit of the section.</param>
    public static HandPlan? Of(ProfilePiece piece, LengthUnit unit)
    {
        ArgumentNullException.ThrowIfNull(piece);
        return piece.Make.Hand is { } work && JobHand.Of(piece.Make, piece.Profile) is { } answer && HandDrawing.Of(answer, unit) is { } drawn
            ? new HandPlan(
                work,
                JobHand.Bite(piece.Make),
                answer.Windows[0].Section!.Guide == HandGuide.PatternBelow,
                [.. answer.Windows.Select(w => Pass(w, w.Window.Best(w.CutsThrough, unit)))],
                answer.Feed!,
                drawn.Drawing,
                drawn.Scale)
            { SawnBefore = JobHand.SawnBefore(piece.Make) }
            : null;
    }

    /// <summary>The cautions of work by hand, for the sheet.</summary>
    /// <param name="comesOut">How far the bit comes out below the board at most, mm.</param>
    /// <param name="unit">The unit of the sheet.</param>
    public static ImmutableArray<string> Cautions(double comesOut, LengthUnit unit) => HandCautions.Of(comesOut, unit);

    private static HandPass Pass(NamedWindow named, double best) =>
        new(named.Pass, named.Window.Least, named.Window.Most, best, named.Section?.ComesOut(best) ?? 0);
}
