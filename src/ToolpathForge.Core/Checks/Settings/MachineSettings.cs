using System.Collections.Immutable;
using ToolpathForge.Catalogue;
using ToolpathForge.Cutting;
using ToolpathForge.Findings;

namespace ToolpathForge.Checks.Settings;

/// <summary>Holds a cut on a machine against every limit that bit, material and machine set, one row each.</summary>
public static class MachineSettings
{
    // A shank this much thinner than the cut, on each side, does not touch the wall (common practice).
    private const double ShankRoom = 0.2;

    /// <summary>Looks at a cut.</summary>
    /// <param name="q">The cut.</param>
    public static SettingsAnswer Of(MachineQuestion q)
    {
        ArgumentNullException.ThrowIfNull(q);
        List<SettingRow> rows = [.. Reach(q), .. Depths(q), .. Speeds(q, out Feeds feeds), .. Pushed(q, feeds), .. Boards(q)];
        List<Finding> findings = [.. rows.Where(r => r.Finding is not null).Select(r => r.Finding!)];
        if (!q.Bit.CutsSquareWall)
        {
            findings.Insert(0, Finding.Of(BitReach.WrongForm, Place.None, Arg.Of("bit", q.Bit.Name), Arg.Of("kind", BitKinds.WordOf(q.Bit.Kind))));
        }

        return new SettingsAnswer($"{q.Bit.Name} in {q.Material.Name}, on: {q.Machine.Name}.", [.. rows], [], null, [.. findings]);
    }

    // How far the bit reaches, and how well it is held.
    private static IEnumerable<SettingRow> Reach(MachineQuestion q)
    {
        Bit bit = q.Bit;
        bool deeper = q.Depth > bit.FluteLength + 1e-9;
        double thinnest = bit.Diameter - (2 * ShankRoom);
        bool thin = bit.Shank <= thinnest + 1e-9;
        yield return Row("flute length", Length(bit.FluteLength), q.Depth, null, "depth of the cut", !deeper ? null : thin && !q.WholeWall
            ? Lengths(SettingFindings.EdgesShort, bit.FluteLength, q.Depth)
            : Lengths(BitReach.TooShort, bit.FluteLength, q.Depth, Arg.Of("bit", bit.Name)));
        yield return Row("shank", Length(bit.Shank), null, deeper ? Math.Min(thinnest, q.Machine.Collet) : Finite(q.Machine.Collet), deeper ? "or it rubs above the edges" : "collet",
            bit.Shank > q.Machine.Collet + 1e-9 ? Lengths(SettingFindings.ColletSmall, bit.Shank, q.Machine.Collet, Arg.Of("machine", q.Machine.Name))
            : deeper && !thin ? Lengths(SettingFindings.ShankInCut, bit.Shank, thinnest)
            : null);

        double least = Grip.Least(bit.Shank);
        var limits = StickOut.For(bit, q.Depth, q.Stock + (q.Spoilboard ?? 0), q.Machine.Opening, q.Clearance);
        double stickOut = q.StickOut ?? Math.Min(limits.ByGrip, Math.Max(limits.Most, limits.Least));
        double grip = bit.OverallLength - stickOut;
        yield return Row("grip", Length(grip), least, null, "two shanks or 19 mm", grip < least - 1e-9 ? Lengths(SettingFindings.GripShort, grip, least) : null);
        yield return Row("stick-out", Length(stickOut), limits.Least, limits.Most, limits.AllowsDryRun ? "flutes, nut; grip, gantry, dry run" : "flutes, nut; grip, gantry",
            stickOut < q.Depth - 1e-9 ? Lengths(SettingFindings.StickOutShort, stickOut, q.Depth)
            : stickOut < StickOut.Flutes(bit) - 1e-9 && stickOut - q.Depth >= CutSettings.Nut - 1e-9 ? Lengths(SettingFindings.FlutesInCollet, stickOut, StickOut.Flutes(bit))
            : q.StickOut > limits.Most + 1e-9 && q.StickOut <= limits.ByGrip + 1e-9 ? Lengths(SettingFindings.StickOutLong, stickOut, limits.Most)
            : null);

        double nut = stickOut - q.Depth;
        bool told = stickOut < q.Depth - 1e-9;
        yield return Row("nut above stock", Length(nut), CutSettings.Nut, null, "common practice",
            nut < CutSettings.Nut - 1e-9 && !told ? Lengths(SettingFindings.NutLow, nut, CutSettings.Nut) : null);
    }

    private static IEnumerable<SettingRow> Depths(MachineQuestion q)
    {
        double usual = Feeds.UsualPass(q.Bit, q.Material, q.Machine);
        double pass = q.PassDepth ?? Step(q);
        yield return Row("depth a pass", Length(pass), null, usual, "bit, material, frame", pass > usual * 1.001
            ? Lengths(PassDepth.TooDeep, pass, usual, Arg.Of("material", q.Material.Name), Arg.Of("machine", q.Machine.Name))
            : null);

        double ramp = Math.Min(q.Bit.RampAngle, q.Material.RampAngle);
        yield return Row("steepest ramp", Quantity.Angle(ramp), null, null, q.Bit.CanPlunge ? "plunges too" : "does not plunge", q.Bit.CanPlunge ? null
            : ramp > 0 ? Finding.Of(SettingFindings.OnlyRamps, Place.None, Quantity.Angle(90), Quantity.Angle(ramp), Arg.Of("bit", q.Bit.Name))
            : Finding.Of(PassDepth.CannotEnter, Place.None, Arg.Of("bit", q.Bit.Name)));

        double high = q.Stock + (q.Spoilboard ?? 0);
        yield return Row("height under gantry", Length(high), null, q.Machine.Opening, "machine", high > q.Machine.Opening + 1e-9
            ? Lengths(SettingFindings.OpeningLow, high, q.Machine.Opening, Arg.Of("machine", q.Machine.Name))
            : null);
        if (q.Clearance is { } clearance)
        {
            // Raised over the stock, tip and stick-out still fit between bed and collet; where no stick-out is said, what the cut needs is counted.
            double raised = high + clearance + (q.StickOut ?? (q.Depth + CutSettings.Nut));
            bool told = high > q.Machine.Opening + 1e-9;
            yield return Row("height of raised collet", Length(raised), null, q.Machine.Opening, "machine", raised > q.Machine.Opening + 1e-9 && !told
                ? Lengths(SettingFindings.RaisedLow, raised, q.Machine.Opening, Arg.Of("machine", q.Machine.Name))
                : null);
        }

        if (q.Spoilboard is { } spoilboard)
        {
            double left = spoilboard - q.Overcut;
            yield return Row("spoilboard left", Length(left), StockAndBed.LeastSpoilboard, null, "common practice",
                left < StockAndBed.LeastSpoilboard - 1e-9 ? Lengths(StockAndBed.SpoilboardThin, left, StockAndBed.LeastSpoilboard) : null);
        }
    }

    private static ImmutableArray<SettingRow> Speeds(MachineQuestion q, out Feeds feeds)
    {
        Machine on = q.Machine;
        feeds = Feeds.For(q.Bit, q.Material, on, q.PassDepth ?? Step(q), q.Speed, q.Feed);
        double chip = feeds.ChipLoad(q.Bit.Flutes);
        double plunge = q.Plunge ?? feeds.Plunge(on);
        var figures = new FeedFigures(feeds.Speed, feeds.Feed, plunge, chip, feeds.Band.Least * on.ChipShare, feeds.Band.Most);
        Finding[] found = [.. FeedsAndSpeeds.Find(figures, q.Bit, q.Material, on, _ => Place.None)];
        Finding? Of(params FindingKind[] kinds) => Array.Find(found, f => kinds.Contains(f.Kind));
        double stickOut = q.StickOut ?? StickOut.For(q.Bit, q.Depth, 0, 0, null).Least;
        double most = SpeedByDiameter.Most(q.Bit.Diameter, stickOut, q.Bit.Shank);
        return
        [
            new("spindle speed", Quantity.Speed(feeds.Speed), Quantity.Speed(on.MinSpeed), Quantity.Speed(on.MaxSpeed), "machine", Of(FeedsAndSpeeds.SpeedOutsideMachine)),
            new("speed of the bit", Quantity.Speed(feeds.Speed), null, Quantity.Speed(q.Bit.MaxSpeed), q.Bit.Source.Kind == SourceKind.User ? "marking, as you read it" : "its row; the marking wins", Of(FeedsAndSpeeds.SpeedAboveBit)),
            new("speed for its size", Quantity.Speed(feeds.Speed), null, Quantity.Speed(most), most < SpeedByDiameter.Most(q.Bit.Diameter) ? "diameter, long bit (practice)" : "diameter (practice)", feeds.Speed > most + 1e-9 && Of(FeedsAndSpeeds.SpeedOutsideMachine, FeedsAndSpeeds.SpeedAboveBit) is null
                ? Finding.Of(SettingFindings.TooFastForSize, Place.None, Quantity.Speed(feeds.Speed), Quantity.Speed(most))
                : null),
            new("feed", Quantity.Feed(feeds.Feed), null, Quantity.Feed(on.MaxFeed), "machine", Of(FeedsAndSpeeds.FeedOutsideMachine)),
            new("plunge feed", Quantity.Feed(plunge), null, Quantity.Feed(on.MaxPlunge), "machine", Of(FeedsAndSpeeds.PlungeOutsideMachine)),
            new("chip load", Length(chip), Length(figures.ChipLeast), Length(figures.ChipMost), "material, frame's share", Of(FeedsAndSpeeds.ChipTooThin, FeedsAndSpeeds.ChipTooThick)),
        ];
    }

    // A finish at full depth, and how deep a finishing pass may be before it moves bit and frame by a third of what roughing leaves.
    private static IEnumerable<SettingRow> Pushed(MachineQuestion q, Feeds feeds)
    {
        double chip = SideLoad.ThickestChip(feeds.ChipLoad(q.Bit.Flutes), q.Allowance, q.Bit.Diameter);
        double force = SideLoad.Force(q.Material.CuttingForce, q.FinishStep ?? q.Depth, chip);
        double most = q.Allowance * CutSettings.PushShare / SideLoad.GivingWay(1, q.Depth + CutSettings.Nut, q.Bit, q.Machine.Stiffness);
        double step = most / SideLoad.Force(q.Material.CuttingForce, 1, chip);
        yield return new SettingRow("side force, finish", new(force, QuantityKind.Force), null, new(most, QuantityKind.Force), "frame and bit, estimated", force > most + 1e-9
            ? Finding.Of(
                SettingFindings.FinishPushed, Place.None, new Quantity(force, QuantityKind.Force), new Quantity(most, QuantityKind.Force),
                Arg.Of("step", Length(step)))
            : null);
        double rubs = feeds.Band.Least * q.Machine.ChipShare;
        yield return Row(
            "chip, finish", Length(chip), FinishChip.Least(rubs), null, "the edge's rounding",
            FinishChip.Find(feeds.ChipLoad(q.Bit.Flutes), rubs, q.Allowance, q.Bit.Diameter));
    }

    private static IEnumerable<SettingRow> Boards(MachineQuestion q)
    {
        if (q.Overhang is not { } board)
        {
            yield break;
        }

        double over = Math.Max(0, board.Length - board.OnBed);
        Arg machine = Arg.Of("machine", q.Machine.Name);
        if (q.Machine.MovingBed)
        {
            yield return Row("board over the bed", Length(over), null, 0, "the bed moves", over > 0 ? Lengths(SettingFindings.MovingBed, over, 0, machine) : null);
        }

        double own = Tipping.Resists(q.Machine.Mass, q.Machine.HalfFootprint);
        double most = Tipping.Share * own;
        double moment = board.Stand ? 0 : Tipping.Moment(Tipping.Mass(q.Material.DensityAt(board.Moisture), q.Stock, board.Width, board.Length), board.Length, board.OnBed);
        yield return new SettingRow("tipping", new(moment, QuantityKind.Moment), null, new(most, QuantityKind.Moment), board.Stand ? "a stand carries it" : "half the machine's own", moment > most + 1e-9
            ? Finding.Of(
                SettingFindings.Tips, Place.None, new Quantity(moment, QuantityKind.Moment), new Quantity(most, QuantityKind.Moment), machine,
                Arg.Of("own", new Quantity(own, QuantityKind.Moment)))
            : null);
    }

    // Even passes within what is usual.
    private static double Step(MachineQuestion q) =>
        q.Depth / CutSettings.EvenSteps(q.Depth, Feeds.UsualPass(q.Bit, q.Material, q.Machine)).Length;

    private static SettingRow Row(string setting, Quantity value, double? least, double? most, string because, Finding? finding) =>
        new(setting, value, least is { } l ? Length(l) : null, most is { } m ? Length(m) : null, because, finding);

    private static double? Finite(double value) => double.IsFinite(value) ? value : null;

    private static Quantity Length(double millimetres) => Quantity.Length(millimetres);

    private static Finding Lengths(FindingKind kind, double found, double allowed, params ImmutableArray<Arg> args) =>
        Finding.Of(kind, Place.None, Length(found), Length(allowed), args);
}
