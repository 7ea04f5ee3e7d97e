using System.Collections.Immutable;
using ToolpathForge.Catalogue;
using ToolpathForge.Clampings;
using ToolpathForge.Cutting;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;
using ToolpathForge.Measures;
using ToolpathForge.Pieces;
using ToolpathForge.Proof;
using ToolpathForge.Shapes;

namespace ToolpathForge.Planning;

/// <summary>Says in the proof's own terms what a program must make: from the exact outline and the job, not from the toolpath.</summary>
internal static class ProofTarget
{
    /// <summary>The target of one clamping's program.</summary>
    internal static Target For(Job job, CutPlan cut, Dialect dialect)
    {
        Clamping clamping = cut.Clamping;
        double deepest = clamping.Stock.Top - cut.Works.Max(w => w.Settings.Steps[^1]);
        double increment = (dialect.Unit == LengthUnit.Inch ? Length.MillimetresPerInch : 1) * Math.Pow(10, -dialect.Decimals);
        double clear = clamping.Stock.Top + clamping.Rise(job);
        return new Target
        {
            Pieces = [.. clamping.Pieces.Select(p => PieceOf(p, cut))],
            Stock = [.. clamping.Pieces.Select(p => p.Block).Distinct().Select(b => TargetStock.Box(b.MinX, b.MinY, b.MaxX, b.MaxY, clamping.Stock.Bottom, clamping.Stock.Top))],
            KeepOuts = [.. clamping.KeepOuts.Select(k => new TargetKeepOut(k.Name, [.. Contour.Rectangle(k.Box).Vertices.ToArray().Select(v => Point(v.Point))], k.Top))],
            Floor = deepest,

            // Heights are rounded when they are written; the proof allows one increment.
            ClearHeight = clear - increment,
            StartHeight = clamping.Stock.Top,
            Travel = new TargetTravel(
                new SpacePoint(clamping.Travel.MinX, clamping.Travel.MinY, deepest - increment),
                new SpacePoint(clamping.Travel.MaxX, clamping.Travel.MaxY, deepest + job.Machine.TravelZ)),
            MaxFeed = job.Machine.MaxFeed,
            MaxPlungeFeed = job.Machine.MaxPlunge,
            MinSpeed = job.Machine.MinSpeed,
            MaxSpeed = job.Machine.MaxSpeed,
            ProgramRunsSpindle = dialect.SpindleLines.Length > 0,
            SpeedByHand = cut.Works.Length == 1 ? cut.Settings.Speed : null,
            DwellAfterStart = dialect.SpindleLines.Length > 0 ? dialect.SpindleDwell : 0,
            ToolChange = dialect.ChangeOn(job.Machine) switch
            {
                BitChange.Command => ToolChangeStyle.ByCommand,

                // With one bit a pause is for the next board.
                BitChange.Pause when cut.Works.Length > 1 => ToolChangeStyle.ByPause,
                _ => ToolChangeStyle.None,
            },
            Tools = [.. cut.Works.Select((w, i) => ToolOf(w, i + 1))],
            Tolerance = job.Tolerance,
            Increment = increment,
            Axes = job.Axes == AxisErrors.None ? null : new TargetAxes(job.Axes.ScaleX, job.Axes.ScaleY, job.Axes.Skew),
        };
    }

    private static TargetTool ToolOf(BitWork work, int number)
    {
        Bit bit = work.Path.Bit;

        // Round the inside of an opening, and in the hollows of a finished edge, the axis is fed slower than the edge cuts.
        double leastChip = work.Settings.LeastChip * MoveList.LeastInnerShare;
        return new TargetTool
        {
            Number = number,
            Diameter = bit.Diameter,
            MayPlunge = bit.CanPlunge,

            // A ramp a fifth steeper than planned would still be no harm; a line lost from one shows at once.
            MaxRampAngle = Math.Min(90, Math.Max(work.Settings.RampAngle, work.Settings.TabAngle) * 1.2),
            MaxUncutDepth = work.Settings.DeepestStep,
            Flutes = bit.Flutes,
            MaxChipLoad = Math.Max(work.Settings.ChipMost, work.Settings.ChipLoad) * 1.01,
            MinChipLoad = leastChip * 0.9,
            MaxSpeed = bit.MaxSpeed,
            PointAngle = bit.TipAngle > 0 ? bit.TipAngle : null,
        };
    }

    private static TargetPiece PieceOf(Placed placed, CutPlan cut)
    {
        ImmutableArray<Opening> cutHere = [.. cut.Works.SelectMany(w => w.Openings)];
        bool outline = cut.Works.Any(w => w.Outline);
        ImmutableArray<TargetEdge> edges =
        [
            .. placed.Exact.Curves.Zip(placed.Piece.Roles, (curve, role) => EdgesOf(curve, outline && role != EdgeRole.Existing)).SelectMany(e => e),
        ];
        return new TargetPiece
        {
            Name = placed.Name,
            Loops =
            [
                edges,
                .. placed.Piece.Openings.Select(o => OpeningOutline.Exact(o, placed.Placement).Curves
                    .SelectMany(c => EdgesOf(c, cutHere.Contains(o))).ToImmutableArray()),
            ],
            Bottom = cut.Clamping.Stock.Bottom + cut.Works.Max(w => w.Settings.Skin),
            Top = cut.Clamping.Stock.Top,
            Tabs = [.. cut.Tabs.Where(t => t.Piece == placed.Number).Select(t => TabOf(placed, t.Tab))],
            Marks = cut.Works.Any(w => w.Marks) ? [.. placed.Piece.Marks.Select(m => MarkOf(m, placed, cut.Clamping))] : [],
        };
    }

    private static TargetMark MarkOf(EngravedMark mark, Placed placed, Clamping clamping)
    {
        Marking marks = placed.Piece.Make.Marks!;
        return new TargetMark
        {
            Name = mark.Name,
            Strokes = [.. mark.Strokes.Select(s => s.Placed(placed.Placement)).SelectMany(StrokeEdges)],
            Depth = clamping.Stock.Top - marks.Depth,
            HalfWidth = marks.StrokeWidth / 2,
        };
    }

    private static IEnumerable<TargetEdge> StrokeEdges(Contour stroke) => Enumerable.Range(0, stroke.SegmentCount).Select(i => stroke[i]).Select<Segment, TargetEdge>(s => s.IsLine
        ? new LineEdge(Point(s.Start), Point(s.End), true)
        : new ArcEdge(Point(s.Center), s.Radius, (s.Start - s.Center).Angle, s.Sweep, true));

    private static ImmutableArray<TargetEdge> EdgesOf(Curve curve, bool cut) => curve switch
    {
        LineCurve line => [new LineEdge(Point(line.From), Point(line.To), cut)],
        ArcCurve arc => [ArcEdges.Of(arc, cut)],
        EllipseCurve e => [new EllipseEdge(Point(e.Center), Point(e.Major), Point(e.Minor), e.StartParameter, e.Sweep, cut)],
        SplineCurve spline => [.. SplineEdges.Of(spline, cut)],
        _ => throw new InvalidOperationException($"The proof has no edge for a {curve.GetType().Name}."),
    };

    private static TargetTab TabOf(Placed placed, Tab tab)
    {
        // The loop of the outline, or of the opening whose waste it holds.
        int loop = tab.Opening is null ? 0 : 1 + placed.Piece.Openings.IndexOf(placed.Piece.Openings.Single(o => o.Held && o.Name == tab.Opening));
        ImmutableArray<Curve> curves = loop == 0 ? placed.Exact.Curves : OpeningOutline.Exact(placed.Piece.Openings[loop - 1], placed.Placement).Curves;

        // The straight edge that carries the tab; a spline before it counts as many edges as it has pieces.
        int edge = 0;
        for (int i = 0; i < curves.Length; edge += curves[i] is SplineCurve spline ? spline.Pieces.Length : 1, i++)
        {
            if (curves[i] is LineCurve line && new Segment(line.From, line.To).Distance(tab.Center) < 1e-6)
            {
                double middle = line.From.DistanceTo(tab.Center);
                return new TargetTab(
                    loop, edge, middle - (tab.Length / 2), middle + (tab.Length / 2), middle - tab.Reach, middle + tab.Reach, tab.Top);
            }
        }

        throw new InvalidOperationException("A tab lies on no straight edge of its piece.");
    }

    private static PlanePoint Point(Point2 p) => new(p.X, p.Y);
}
