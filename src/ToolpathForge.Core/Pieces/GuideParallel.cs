using System.Collections.Immutable;
using ToolpathForge.Drawings;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;
using ToolpathForge.Shapes;

namespace ToolpathForge.Pieces;

/// <summary>
/// Makes a plate for a guide that is larger than the cutter: a bearing of another size, or a bushing. The guide's axis runs half its diameter outside the
/// working edge and the cutter's edge half the cutter's inside of that, so the working edge must lie (guide - cutter)/2 inside the finished one, everywhere
/// square to it. The parallel of an ellipse is no ellipse: the plate's edge is that of arcs laid within a small share of the tolerance, whose parallels are arcs.
/// </summary>
internal static class GuideParallel
{
    /// <summary>What the plate is made for.</summary>
    internal static readonly FindingKind MadeForGuide = new(
        "plate-made-for-guide",
        Severity.Note,
        "The working edge lies {offset} inside the finished edge, for a guide of {found} and a cutter of {allowed}.",
        "Use the pattern with that guide and that cutter only.");

    /// <summary>What guides rolls round an outside corner, and so does the cut.</summary>
    internal static readonly FindingKind CornersRound = new(
        "plate-corners-round",
        Severity.Warn,
        "An outside corner of the finished edge comes out rounded to a radius of {found}: what guides rolls round it.",
        "Round it by as much in the shape, leave it proud of the line and finish it by hand, or take a bearing of the cutter's own diameter.");

    /// <summary>There is no parallel, or not one of one piece.</summary>
    internal static readonly FindingKind NoRoom = new(
        "plate-guide-no-room",
        Severity.Stop,
        "Made {found} smaller for its guide, the plate falls apart.",
        "Take a guide nearer to the cutter's diameter.");

    // Of the tolerance, for the arcs that stand for the exact curve: too little to need a share of its own; and no coarser than this, mm.
    private const double Share = 0.02;
    private const double Coarsest = 0.001;

    /// <summary>The plate made smaller all round; null, with a finding, when nothing or more than one piece is left.</summary>
    /// <param name="plate">The plate as it would be for a guide of the cutter's size, its margins larger by the inset.</param>
    /// <param name="hand">Says guide and cutter; the guide is the larger.</param>
    /// <param name="tolerance">The job's, mm.</param>
    /// <param name="findings">Takes what is to be known.</param>
    internal static ProfilePiece? Shrink(ProfilePiece plate, HandWork hand, double tolerance, ICollection<Finding> findings)
    {
        double inset = hand.PatternInset;
        Place at = plate.Make.At[hand.Bushing is null ? "hand.bit" : "hand.bushing"].OfMake(plate.Make.Id);
        double fit = Math.Min(Coarsest, tolerance * Share);
        FittedContour fitted = ArcFit.Fit(plate.Exact, fit);
        if (Offsetter.Closed(fitted.Contour, -inset).Loops is not [{ Contour.IsClosed: true } loop])
        {
            findings.Add(Finding.Of(NoRoom, at, Quantity.Length(inset), Quantity.Length(0)));
            return null;
        }

        findings.Add(Finding.Of(
            MadeForGuide, at, Quantity.Length(hand.Guide), Quantity.Length(hand.Bit.Diameter), Arg.Of("offset", Quantity.Length(inset))));

        // The board lies on the left of its profile: a bend that is hollow from there is an outside corner. Over an end that is sawn first the guide runs straight on.
        bool sawn = plate.Make is PatternMake { Fittings.Stop: not null };
        Contour profile = ArcFit.Fit(sawn ? new Outline([.. plate.Profile.Exact.Curves.SkipLast(1)], false) : plate.Profile.Exact, fit).Contour;
        if (InsideRadius.Tightest(profile, Side.Left) is { } sharpest && sharpest.Radius < inset - fit)
        {
            findings.Add(Finding.Of(CornersRound, at.AtPoint(sharpest.At.X, sharpest.At.Y), Quantity.Length(inset), Quantity.Length(sharpest.Radius)));
        }

        ImmutableArray<EdgeRole> roles = [.. loop.Origins.Select(o => plate.Roles[fitted.CurveOf[o.Segment]])];
        return plate with { Exact = Outlines.Of(loop.Contour), Roles = roles };
    }
}
