using System.Collections.Immutable;
using ToolpathForge.Checks.Hand;
using ToolpathForge.Drawings;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;
using ToolpathForge.Lettering;
using ToolpathForge.Measures;

namespace ToolpathForge.Checks.Settings;

/// <summary>
/// The depths of a hand router as a drawing to scale: for each pass a section at the least depth and one at the greatest, and below them every limit as the
/// sum that makes it.
/// </summary>
public static class HandDrawing
{
    // Between two sections, before the first and after the last for dimensions, and round the whole; mm of paper.
    private const double Between = 28;
    private const double Before = 22;
    private const double After = 21;
    private const double Margin = 4;
    private const double Line = DrawingStyle.TextHeight * StrokeAlphabet.LineSpacing;

    /// <summary>Height of the words below a section, mm of paper.</summary>
    private const double WordHeight = 2.4;

    /// <summary>What a sheet of A4 takes between its margins, mm.</summary>
    private const double SheetWidth = 186;

    /// <summary>Draws an answer about a hand router; null where it has no depths to show.</summary>
    /// <param name="answer">From <see cref="HandSettings"/>.</param>
    /// <param name="unit">The unit of its dimensions.</param>
    public static ScaledDrawing? Of(SettingsAnswer answer, LengthUnit unit)
    {
        ArgumentNullException.ThrowIfNull(answer);
        ImmutableArray<NamedWindow> shown = [.. answer.Windows.Where(w => w.Section is not null && w.Window.Least > 0)];
        if (shown.IsEmpty)
        {
            return null;
        }

        double widest = shown.Max(w => Before + (2 * (HandSectionDrawing.WorkShown + HandSectionDrawing.RightEnd(w.Section!))) + Between + After);
        double scale = widest <= SheetWidth - (2 * Margin) ? 1 : 0.5;
        var elements = ImmutableArray.CreateBuilder<DrawingElement>();
        double y = 0;
        foreach (NamedWindow named in shown)
        {
            y = AddPass(elements, named, y, scale, unit);
        }

        return new ScaledDrawing(
            new Drawing("Setting the hand router", $"{answer.About} Sections across the edge, at the least and at the greatest depth.", elements.ToImmutable()), scale);
    }

    // Adds one pass below a height and gives the height below it.
    private static double AddPass(ImmutableArray<DrawingElement>.Builder elements, NamedWindow named, double y, double scale, LengthUnit unit)
    {
        (DepthWindow window, HandSection section) = (named.Window, named.Section!);
        double[] depths = window.Most > 0 && Math.Abs(window.Most - window.Least) > 1e-6 ? [window.Least, window.Most] : [window.Least];
        double above = depths.Max(section.HighestPoint) + HandSectionDrawing.ColletShown;
        double below = depths.Max(d => -section.LowestPoint(d));
        double left = -HandSectionDrawing.WorkShown - (Before / scale);
        string title = window.IsOpen
            ? $"{Capital(named.Pass)}: {Say(window.Least)} to {Say(window.Most)}, best {Say(window.Best(named.CutsThrough, unit))}"
            : $"{Capital(named.Pass)}: no depth serves";
        double heading = y - (Line / scale);
        elements.Add(new Text(title, new Point2(left, heading), TextAlign.Start, 3.2));
        var at = new Point2(0, heading - (12 / scale) - above);
        for (int i = 0; i < depths.Length; i++)
        {
            string which = !window.IsOpen ? (i == 0 ? "needed" : "allowed") : depths.Length == 1 ? "the only setting" : i == 0 ? "lowest setting" : "highest setting";
            var drawing = new HandSectionDrawing(section, depths[i], at, scale, unit);
            elements.AddRange(i == 0 ? drawing.Named() : drawing.Measured());
            elements.Add(new Text($"{which}: {Say(depths[i])}", at + new Point2(-HandSectionDrawing.WorkShown, above + (2.5 / scale)), TextAlign.Start));
            at += new Point2(HandSectionDrawing.RightEnd(section) + HandSectionDrawing.WorkShown + (Between / scale), 0);
        }

        ImmutableArray<string> words = [.. HandWords.Limits(window, unit).SelectMany(Lines)];
        double bottom = at.Y - below - (9 / scale);
        elements.Add(new Text(string.Join('\n', words), new Point2(left, bottom), TextAlign.Start, WordHeight));
        return bottom - (((words.Length * WordHeight * StrokeAlphabet.LineSpacing) + 6) / scale);

        string Say(double millimetres) => QuantityText.Write(Quantity.Length(millimetres), unit);
    }

    // The sum first, then the reason; in one line where it fits.
    private static IEnumerable<string> Lines((string Sum, string Reason) limit)
    {
        string whole = $"{limit.Sum}: {limit.Reason}";
        return StrokeAlphabet.WidthOf(whole, WordHeight) <= SheetWidth - (2 * Margin) ? [whole] : [limit.Sum + ":", "      " + limit.Reason];
    }

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}

/// <summary>A drawing and the scale that its layout is made for.</summary>
/// <param name="Drawing">What it shows.</param>
/// <param name="Scale">mm of paper for a mm of the thing drawn.</param>
public sealed record ScaledDrawing(Drawing Drawing, double Scale);
