using System.Collections.Immutable;
using System.Globalization;
using ToolpathForge.Drawings;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;
using ToolpathForge.MarkingOut;
using ToolpathForge.Measures;
using ToolpathForge.Pieces;
using ToolpathForge.Planning;

namespace ToolpathForge.RunSheets;

/// <summary>The sheet for marking out by hand: for every board end its ordinates, ellipse stick, beam compass and saw line. One page, nothing to fetch from elsewhere.</summary>
public static class MarkingOutPage
{
    // After a page that says how to read them, a board has two pages: its picture with the ordinates, then stick, two abreast, and compass.
    private const double PictureWidth = 180;
    private const double PictureHeight = 110;
    private const double StickWidth = 88;
    private const double StickHeight = 90;

    private const string Css = """
        body { font-size: 9.5pt; } table { font-size: 8.5pt; } th, td { padding: .6mm 2mm .6mm 0; } h3 { margin: 3mm 0 1mm; } section { margin-top: 5mm; padding-top: 1mm; } .lead { margin-bottom: 1mm; } h2 + .lead { margin: 0; }
        .beside { display: grid; grid-template-columns: 1fr 1fr; gap: 5mm; } figure { margin-top: 1mm; }
        """;

    /// <summary>Writes the page.</summary>
    /// <param name="plan">What can be drawn.</param>
    /// <param name="step">What ordinates are to stand apart, mm; null for a usual step.</param>
    public static string Write(DrawPlan plan, double? step)
    {
        ArgumentNullException.ThrowIfNull(plan);
        Job job = plan.Job;
        var page = new Html();
        page.Raw("<!DOCTYPE html>").Raw("<html lang=\"en\">").Raw("<head>").Raw("<meta charset=\"utf-8\">")
            .Raw("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">")
            .Element("title", $"Marking out by hand: {job.Name}")
            .Raw("<style>").Raw(SheetStyle.Css).Raw(Css).Raw("</style>").Raw("</head>").Raw("<body>");
        page.Raw("<header>").Element("h1", job.Name).Element("p", $"Marking out by hand, from {job.FileName}.", "lead").Raw("</header>");
        page.List(false,
            [
                $"Every board is seen with its end at your right{(plan.Pieces.OfType<ProfilePiece>().Any(p => p.IsLeftHand) ? " (those for left-hand ends: at your left)" : "")} and its lower edge towards you. \"Along\" counts from where the curve leaves the lower edge, towards the tip; \"up\" counts square from the lower edge.",
                $"Sizes are given to the nearest {RuleText.Size(RuleText.Step(job.Unit), job.Unit)}, and exactly beside it where that is not the same.",
                "Paper patterns are in the folder profiles, full size: measure the bars of every sheet before you use it. Lay register mark on register mark and glue.",
            ]);
        ImmutableArray<ProfilePiece> pieces = [.. plan.Pieces.OfType<ProfilePiece>()];
        Overview(page, job, pieces);
        foreach (ProfilePiece piece in pieces)
        {
            Board(page, job, piece, HandLayout.Of(piece.Profile, job.Unit, step));
        }

        page.Raw("</body>").Raw("</html>");
        return page.ToString();
    }

    // What follows, so that the first page is of use by itself.
    private static void Overview(Html page, Job job, ImmutableArray<ProfilePiece> pieces) => page.Element("h3", "The boards").Table(
        ["Make", "Board", "Run", "Depth", "Width", "End cut", "Hand"],
        pieces.Select(p => (IReadOnlyList<string>)
        [
            p.Make.Id,
            p.Make.Board.Id,
            RuleText.Size(p.Profile.Run, job.Unit),
            RuleText.Size(p.Profile.Depth, job.Unit),
            RuleText.Size(p.Profile.Width, job.Unit),
            p.Profile.EndAngle == 0 ? "square" : string.Create(CultureInfo.InvariantCulture, $"{Math.Abs(p.Profile.EndAngle):0.##}°, {(p.Profile.EndAngle > 0 ? "top" : "nose")} long"),
            p.IsLeftHand ? "left" : p.Make is PatternMake { Fittings.Hands: PlateHands.Both } ? "both" : "right",
        ]));

    private static void Board(Html page, Job job, ProfilePiece piece, HandLayout layout)
    {
        LengthUnit unit = job.Unit;
        page.Raw("<section>").Element("h2", $"{piece.Make.Id}: end of a {piece.Make.Board.Id}")
            .Element("p", $"Run {Both(layout.Profile.Run, unit)}, depth {Both(layout.Profile.Depth, unit)}, board {Both(layout.Profile.Width, unit)} wide.{(piece.IsLeftHand ? " For left-hand ends: seen with the end at your left." : "")}", "lead")
            .Element("p", $"Saw line: saw {Both(layout.SawAllowance, unit)} outside the finished edge, and leave the pencil line; plane, rasp or bit takes the rest.");
        Drawing At(double scale) => PaperPattern.Of(piece, layout, unit, scale);
        double at = ScaleWithin(At, PictureWidth, PictureHeight);
        RunSheetPage.Picture(page, At(at), at, "Finished edge, saw line and ordinates.");
        page.Element("h3", "Ordinates").Table(
            ["Along", "Up", "Exactly, along", "Exactly, up", ""],
            layout.Ordinates.Select(o => (IReadOnlyList<string>)
            [
                RuleText.Size(o.Along, unit),
                string.Join(" and ", o.Heights.Select(h => RuleText.Size(h, unit))),
                Exactly(o.Along, unit),
                string.Join(" and ", o.Heights.Select(h => Exactly(h, unit))),
                o.IsCorner ? "an end, or parts meet" : "",
            ]));
        page.Raw("<div class=\"keep\">");
        foreach (EllipseStick stick in layout.Sticks)
        {
            Stick(page, stick, unit, piece.IsLeftHand);
        }

        Compass(page, layout, unit);
        page.Raw("</div>").Raw("</section>");
    }

    private static void Stick(Html page, EllipseStick stick, LengthUnit unit, bool left)
    {
        page.Raw("<div class=\"keep\">").Element("h3", "Ellipse stick");
        if (stick.Long - stick.Short < RuleText.Step(unit))
        {
            page.Element("p", "Both axes are the same on a rule: a compass does it.").Raw("</div>");
            return;
        }

        page.Element("p", $"The two edges that the guides run on cross {Both(stick.Center.X, unit)} along and {Both(stick.Center.Y, unit)} up. "
            + $"The longer axis lies {Lies(stick.LongAxis)}, the other square to it.");
        page.Table(
            ["", "Pencil to the guide on the shorter axis", "Pencil to the guide on the longer axis", "From guide to guide", "Stick, at least"],
            ((bool[])[true, false]).Select(between => (IReadOnlyList<string>)
            [
                between ? "Pencil between the guides" : "Pencil beyond the guides",
                Both(stick.Long, unit),
                Both(stick.Short, unit),
                Both(stick.GuidesApart(between), unit),
                ShopText.AtLeast(between ? stick.LengthBetween : stick.LengthBeyond, unit),
            ]));
        page.Raw("<div class=\"beside\">");
        foreach (bool between in (ReadOnlySpan<bool>)[true, false])
        {
            Drawing At(double scale) => left ? LeftView.Of(StickDrawing.Of(stick, between, unit, scale), scale) : StickDrawing.Of(stick, between, unit, scale);
            double at = ScaleWithin(At, StickWidth, StickHeight);
            RunSheetPage.Picture(page, At(at), at, $"Pencil {(between ? "between" : "beyond")} the guides; the stick in two places.");
        }

        page.Raw("</div>").Raw("</div>");
    }

    private static void Compass(Html page, HandLayout layout, LengthUnit unit)
    {
        if (layout.Arcs.IsEmpty)
        {
            return;
        }

        page.Raw("<div class=\"keep\">").Element("h3", "Beam compass");
        if (layout.Arcs.Any(a => !a.IsExact))
        {
            double off = layout.Arcs.Max(a => a.Departure);
            page.Element("p", $"The curve is not an arc: the sweeps marked \"about\" stand in for it and depart from it by {Exactly(off, unit)} at most. They run into each other without a corner.");
        }

        page.Table(
            ["Sweep", "Radius", "Center, along", "Center, up", "From: along; up", "To: along; up"],
            layout.Arcs.Select((a, i) => (IReadOnlyList<string>)
            [
                (i + 1).ToString(CultureInfo.InvariantCulture) + (a.IsExact ? "" : ", about"),
                RuleText.Size(a.Radius, unit),
                RuleText.Size(a.Center.X, unit),
                RuleText.Size(a.Center.Y, unit),
                At(a.From),
                At(a.To),
            ])).Raw("</div>");

        string At(Point2 p) => $"{RuleText.Size(p.X, unit)}; {RuleText.Size(p.Y, unit)}";
    }

    private static double ScaleWithin(Func<double, Drawing> drawing, double width, double height)
    {
        foreach (double scale in SheetPaper.CommonScales)
        {
            Box2 box = Draughting.BoxOf(Draughting.Marks(drawing(scale), scale));
            if (box.Width * scale <= width && box.Height * scale <= height)
            {
                return scale;
            }
        }

        return SheetPaper.CommonScales[^1];
    }

    private static string Lies(Point2 axis)
    {
        double degrees = axis.Angle * 180 / Math.PI;
        degrees -= 180 * Math.Floor((degrees / 180) + 1e-9);
        return degrees switch
        {
            < 0.005 or > 179.995 => "along the board",
            > 89.995 and < 90.005 => "square across the board",
            _ => string.Create(CultureInfo.InvariantCulture, $"{degrees:0.##}° from the lower edge, rising towards the {(degrees < 90 ? "tip" : "board")}"),
        };
    }

    private static string Both(double millimetres, LengthUnit unit)
    {
        string mark = RuleText.Size(millimetres, unit);
        return Math.Abs(RuleText.Nearest(millimetres, unit) - millimetres) < 0.005 ? mark : $"{mark} ({Exactly(millimetres, unit)})";
    }

    private static string Exactly(double millimetres, LengthUnit unit) => unit == LengthUnit.Inch
        ? string.Create(CultureInfo.InvariantCulture, $"{new Length(millimetres).Inches + 0.0:0.000} in")
        : string.Create(CultureInfo.InvariantCulture, $"{millimetres + 0.0:0.00} mm");
}
