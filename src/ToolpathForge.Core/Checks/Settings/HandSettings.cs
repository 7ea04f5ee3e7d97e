using System.Collections.Immutable;
using ToolpathForge.Catalogue;
using ToolpathForge.Checks.Hand;
using ToolpathForge.Cutting;
using ToolpathForge.Findings;

namespace ToolpathForge.Checks.Settings;

/// <summary>Holds a set-up of a hand router against its limits, and works out the depths to set.</summary>
public static class HandSettings
{
    // As fast as many routers run when nobody has turned them down, rev/min (from memory; some small ones idle at 30,000).
    private const double UsualTop = 24000;

    // A bushing must not touch the board below its pattern (common practice).
    private const double BushingRoom = 0.5;

    /// <summary>Looks at a set-up.</summary>
    /// <param name="q">The set-up.</param>
    public static SettingsAnswer Of(HandQuestion q)
    {
        ArgumentNullException.ThrowIfNull(q);
        if (Refuse(q) is { } refused)
        {
            return new SettingsAnswer("", [], [], null, [refused]);
        }

        var rows = new List<SettingRow>();
        var findings = new List<Finding>();
        HandSetUp setUp = SetUpOf(q);
        ImmutableArray<NamedWindow> windows = Windows(q, setUp, rows);
        rows.AddRange(Depths(q, windows));
        rows.AddRange(Guides(q, setUp));
        findings.AddRange(rows.Where(r => r.Finding is not null).Select(r => r.Finding!));

        // Where a more telling reason is known it has been told.
        if (windows.FirstOrDefault(w => !w.Window.IsOpen) is { Window: { } closed } && findings.TrueForAll(f => f.Kind.Severity != Severity.Stop))
        {
            findings.Add(Of(HandFindings.NoDepth, closed.Least, closed.Most, Arg.Of("lower", closed.Lower.Reason), Arg.Of("upper", closed.Upper.Reason)));
        }

        GrainClass? grain = q.Grain ?? (q.End is { } end ? HandFeed.ClassOf(end, q.Lean + q.GrainSlope) : null);
        if (grain == GrainClass.Against)
        {
            findings.Add(Finding.Of(HandFindings.AgainstGrain, Place.None));
        }

        return new SettingsAnswer(
            $"{q.Bit.Name}, by hand.", [.. rows], windows, HandFeed.Say(grain), [.. findings]);
    }

    /// <summary>The set-up that a question describes; a bushing stands in for a bearing without height.</summary>
    internal static HandSetUp SetUpOf(HandQuestion q)
    {
        Bearing guide = q.Bushing is { } across ? new Bearing(across, 0, 0) : q.Bit.Bearing!;
        return new HandSetUp(
            q.Bit.FluteLength, guide, q.Pattern ?? 0, q.Board, HandSetUp.ReachOf(q.Bit, q.ColletHeight), HandMargins.Usual(guide.Height));
    }

    private static Finding? Refuse(HandQuestion q) =>
        q.Bit.Kind is not (BitKind.TopBearing or BitKind.TipBearing) && !(q.Bushing is not null && q.Bit.CutsSquareWall)
            ? Finding.Of(HandFindings.NoGuide, Place.None, Arg.Of("bit", q.Bit.Name), Arg.Of("kind", BitKinds.WordOf(q.Bit.Kind)))
            : q.Pattern is null && (q.Machined is null || q.Bushing is not null || q.Bit.Kind == BitKind.TipBearing)
            ? Finding.Of(HandFindings.NothingToFollow, Place.None)
            : null;

    // What must be there before any depth serves, and the depths.
    private static ImmutableArray<NamedWindow> Windows(HandQuestion q, HandSetUp setUp, List<SettingRow> rows)
    {
        if (q.Bit.Kind == BitKind.TipBearing && q.Bushing is null)
        {
            double thinnest = TipBearing.LeastPattern(setUp, q.MayHang);
            rows.Add(Pattern(setUp, thinnest));
            rows.Add(Cutter(setUp, TopBearing.LeastCutter(setUp), mayBeShort: false));
            DepthWindow window = TipBearing.OnePass(setUp, q.MayHang);
            rows.Add(Reach(setUp, window));
            return [new("one pass, pattern below", window) { Section = SectionOf(q, setUp, HandGuide.PatternBelow) }];
        }

        if (q.Machined is { } edge && q.Bushing is null)
        {
            double least = TopBearing.LeastEdge(setUp);
            rows.Add(new("edge cut already", Quantity.Length(edge), Quantity.Length(least), null, "bearing, cutter", edge < least - 1e-9
                ? Of(HandFindings.EdgeShallow, edge, least)
                : null));
            DepthWindow window = TopBearing.AlongEdge(setUp, edge);
            rows.Add(Reach(setUp, window));
            return [new("along the cut edge, pattern off", window) { Section = SectionOf(q, setUp, HandGuide.CutEdge, edge) }];
        }

        bool bushing = q.Bushing is not null;
        rows.Add(Pattern(setUp, bushing ? BushingRoom : TopBearing.LeastPattern(setUp)));
        DepthWindow one = bushing ? GuideOffset.Bushing(setUp) : TopBearing.OnePass(setUp);
        bool cutterShort = setUp.Cutter < TopBearing.LeastCutter(setUp) - 1e-9;
        TwoPasses? two = cutterShort && !bushing ? TopBearing.InTwo(setUp, q.Depth) : null;
        rows.Add(Cutter(setUp, TopBearing.LeastCutter(setUp), !bushing && setUp.Board <= TopBearing.MostBoardInTwo(setUp) + 1e-9, !bushing));
        if (two is not null)
        {
            rows.Add(Reach(setUp, two.Second));
            return
            [
                new("first pass, along the pattern", two.First) { CutsThrough = false, Section = SectionOf(q, setUp, HandGuide.PatternAbove) },
                new("second pass, pattern off, on what the first has cut", two.Second) { Section = SectionOf(q, setUp, HandGuide.CutEdge, two.Edge) },
            ];
        }

        rows.Add(Reach(setUp, one));
        return
        [
            new(bushing ? "one pass, bushing" : "one pass, pattern on top", one)
            {
                Section = SectionOf(q, setUp, bushing ? HandGuide.Bushing : HandGuide.PatternAbove),
            },
        ];
    }

    private static HandSection SectionOf(HandQuestion q, HandSetUp setUp, HandGuide guide, double edge = 0) => new(
        guide, setUp, q.Bit, edge, q.ColletHeight, q.Bite ?? SawnWaste.UsualBite,
        guide == HandGuide.Bushing ? q.BushingLength ?? Math.Max(0, setUp.Pattern - BushingRoom) : 0);

    private static IEnumerable<SettingRow> Depths(HandQuestion q, ImmutableArray<NamedWindow> windows)
    {
        for (int i = 0; i < windows.Length; i++)
        {
            DepthWindow window = windows[i].Window;

            // A depth that is said is that of the first pass: the second follows from it.
            double? said = i == 0 ? q.Depth : null;
            Finding? wrong = said is { } depth && window.IsOpen && !window.Holds(depth)
                ? Finding.Of(
                    HandFindings.DepthOutside, Place.None, Quantity.Length(depth), Quantity.Length(window.Best(windows[i].CutsThrough, q.Unit)),
                    Arg.Of("least", Quantity.Length(window.Least)), Arg.Of("most", Quantity.Length(window.Most)))
                : null;
            if (window.IsOpen)
            {
                yield return new(
                    windows.Length == 1 ? "depth" : i == 0 ? "depth, first pass" : "depth, second pass",
                    said is { } s ? Quantity.Length(s) : null, Quantity.Length(window.Least), Quantity.Length(window.Most), windows[i].Pass, wrong);
            }
        }
    }

    private static IEnumerable<SettingRow> Guides(HandQuestion q, HandSetUp setUp)
    {
        var offset = new GuideOffset(setUp.Bearing.Diameter, q.Bit.Diameter);
        string name = q.Bushing is null ? "bearing" : "bushing";
        yield return new(name, Quantity.Length(offset.Guide), Quantity.Length(offset.Cutter), null, "the cutter's diameter",
            offset.Offset < -1e-9 ? Of(HandFindings.GuideSmall, offset.Guide, offset.Cutter)
            : offset.Offset > q.PatternInset + 1e-9 ? Of(HandFindings.GuideLarge, offset.Guide, offset.Cutter, Arg.Of("offset", Quantity.Length(offset.Offset)))
            : null);
        if (q is { Bushing: not null, BushingLength: { } length })
        {
            double most = setUp.Pattern - BushingRoom;
            yield return new("bushing stands out", Quantity.Length(length), null, Quantity.Length(most), "the pattern", length > most + 1e-9
                ? Of(HandFindings.BushingLong, length, most)
                : null);
        }

        if (q.InsideRadius is { } radius)
        {
            yield return new("smallest inside radius", Quantity.Length(radius), Quantity.Length(offset.LeastInside), null, $"half the {name}", radius < offset.LeastInside - 1e-9
                ? Of(HandFindings.CurveTight, radius, offset.LeastInside)
                : null);
        }

        double fastest = Math.Min(q.Bit.MaxSpeed, SpeedByDiameter.Most(q.Bit.Diameter));
        yield return new("speed", q.Speed is { } speed ? Quantity.Speed(speed) : null, null, Quantity.Speed(fastest), "diameter (practice); the bit's row", q.Speed > fastest + 1e-9
            ? Finding.Of(HandFindings.SpeedHigh, Place.None, Quantity.Speed(q.Speed!.Value), Quantity.Speed(fastest))
            : q.Speed is null && fastest < UsualTop ? Finding.Of(HandFindings.SlowDown, Place.None, Quantity.Speed(UsualTop), Quantity.Speed(fastest)) : null);
        double bite = q.Bite ?? SawnWaste.UsualBite;
        yield return new("left by the saw", q.Bite is null ? null : Quantity.Length(bite), null, Quantity.Length(SawnWaste.MostBite), "common practice",
            bite > SawnWaste.MostBite + 1e-9 ? Of(HandFindings.BiteLarge, bite, SawnWaste.MostBite) : null);
    }

    private static SettingRow Pattern(HandSetUp setUp, double least) =>
        new("pattern", Quantity.Length(setUp.Pattern), Quantity.Length(least), null, "guide and margins", setUp.Pattern < least - 1e-9
            ? Of(HandFindings.PatternThin, setUp.Pattern, least)
            : null);

    private static SettingRow Cutter(HandSetUp setUp, double least, bool mayBeShort, bool twice = false) =>
        new("cutter", Quantity.Length(setUp.Cutter), Quantity.Length(least), null, "board and margins", setUp.Cutter >= least - 1e-9 ? null
            : mayBeShort ? Of(HandFindings.TwoPasses, setUp.Cutter, least)
            : Of(HandFindings.BoardThick, setUp.Board, twice ? TopBearing.MostBoardInTwo(setUp) : setUp.Cutter - setUp.Margins.Overcut - setUp.Margins.Margin));

    private static SettingRow Reach(HandSetUp setUp, DepthWindow window) =>
        new("router's reach", Quantity.Length(setUp.Reach), Quantity.Length(window.Least), null, "shank fully gripped", setUp.Reach < window.Least - 1e-9
            ? Of(HandFindings.OutOfReach, setUp.Reach, window.Least)
            : null);

    private static Finding Of(FindingKind kind, double found, double allowed, params ImmutableArray<Arg> args) =>
        Finding.Of(kind, Place.None, Quantity.Length(found), Quantity.Length(allowed), args);
}
