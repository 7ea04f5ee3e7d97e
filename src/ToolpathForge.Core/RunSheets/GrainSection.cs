using System.Collections.Immutable;
using System.Globalization;
using ToolpathForge.Clampings;
using ToolpathForge.Cutting;
using ToolpathForge.Drawings;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;
using ToolpathForge.Lettering;
using ToolpathForge.Measures;

namespace ToolpathForge.RunSheets;

/// <summary>What the sheet says about the grain of a board end: the classes along its edge, and how else the board could lie.</summary>
internal static class GrainSection
{
    // Fine enough for words and a picture; the cut itself is fitted to the job's tolerance.
    private const double Fit = 0.01;

    /// <summary>The profile on the bed with its classes; empty for a panel.</summary>
    internal static ImmutableArray<GrainStretch> Stretches(CutPlan cut, out Contour profile)
    {
        PlacedContour placed = PlacedContour.Fit(cut.Clamping.Pieces[0], Fit);
        profile = placed.Contour;
        if (placed.Placed.Piece.IsCutAllRound || EndCut.Fibres(placed) is not [double fibre, ..])
        {
            return [];
        }

        profile = EndCut.Profile(placed);
        return Grain.Along(profile, fibre);
    }

    /// <summary>Names the classes beside the edge, on the waste side.</summary>
    internal static IEnumerable<DrawingElement> Labels(CutPlan cut)
    {
        ImmutableArray<GrainStretch> stretches = Stretches(cut, out Contour profile);
        var ruler = new PathRuler(profile);
        double away = cut.Path.Bit.Diameter + 4;
        foreach (GrainStretch stretch in stretches)
        {
            double middle = (stretch.From + stretch.To) / 2;
            Point2 at = ruler.PointAt(middle) + (ruler.DirectionAt(middle).Right * away);
            if (stretch.Length > 12)
            {
                yield return new Text(NameOf(stretch.Class), at, TextAlign.Start, 2.2);
            }
        }
    }

    internal static void Write(Html page, Job job, CutPlan cut)
    {
        ImmutableArray<GrainStretch> stretches = Stretches(cut, out Contour profile);
        if (stretches.IsEmpty || cut.Clamping.Make is not BoardEndMake make)
        {
            return;
        }

        page.Element("h3", "The grain along the edge, from the lower edge to the tip").Table(
            ["Stretch", "Length", "Grain angle", "Class", ""],
            stretches.Select((s, i) => (IReadOnlyList<string>)
            [
                (i + 1).ToString(CultureInfo.InvariantCulture),
                ShopText.Size(s.Length, job.Unit),
                Angles(s),
                NameOf(s.Class),
                s.Close ? "within 1° of the limit: look at the board" : Means(s.Class),
            ]));

        if (make.Batch.BothEnds && make.GrainSlope != 0)
        {
            page.Element("p", "At the second end the slope of the grain comes from the other side. Program and directions serve both: what is against the grain at either end is climbed.");
        }

        double slope = make.GrainSlope * Math.PI / 180;
        double fibre = cut.Clamping.Pieces[0].Placement.Direction(new Point2(1, 0)).Angle;
        page.Element("h3", "How the board may lie").Table(
            ["How it lies", "End at the bed", "Reference edge", "Face up", "Against the grain", ""],
            LieComparison.Of(profile, fibre, slope).Select(l => (IReadOnlyList<string>)
            [
                NameOf(l.Lie),
                l.OtherEnd ? "the other" : "this",
                l.ReferenceAtFence ? "at the fence" : "away from it",
                l.OtherFaceUp ? "the other" : "this",
                ShopText.Size(l.Against, job.Unit),
                l.Proposed ? (l.OtherEnd ? "best for the other end" : "best for this end") : "",
            ]));
        page.Raw("<figure>").Raw(SvgWriter.Write(BoardTurnDrawing.Of(), 1))
            .Element("figcaption", "Seen from above, you at the lower edge. Heavy: the end that is cut, A. Dashed: what is cut next. Chain line or cross: about what the board was turned. Not to scale.").Raw("</figure>");
    }

    private static string NameOf(GrainClass kind) => kind switch
    {
        GrainClass.Along => "along",
        GrainClass.With => "with",
        GrainClass.Against => "against",
        _ => "end grain",
    };

    private static string Means(GrainClass kind) => kind switch
    {
        GrainClass.With => "splits run into the waste",
        GrainClass.Against => "splits would run into the piece: climb, light",
        GrainClass.EndGrain => "fibers stand across the edge",
        _ => "either way serves",
    };

    /// <summary>What a way of laying the board is called.</summary>
    internal static string NameOf(Lie lie) => lie switch
    {
        Lie.AsLaid => "as laid",
        Lie.TurnedFlat => "turned flat",
        Lie.RolledOver => "rolled over",
        _ => "end over end",
    };

    private static string Angles(GrainStretch s)
    {
        string Degrees(double value) => Math.Round(value).ToString("0", CultureInfo.InvariantCulture) + "°";
        return Math.Round(s.Least) == Math.Round(s.Most) ? Degrees(s.Least) : $"{Degrees(s.Least)} to {Degrees(s.Most)}";
    }
}
