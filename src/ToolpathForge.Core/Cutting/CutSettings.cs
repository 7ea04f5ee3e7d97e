using System.Collections.Immutable;
using ToolpathForge.Catalogue;
using ToolpathForge.Jobs;

namespace ToolpathForge.Cutting;

/// <summary>Every number one make is cut with, after catalogue, rules and the job's own wishes are put together.</summary>
/// <param name="Speed">Spindle speed, rev/min.</param>
/// <param name="Feed">In the plane, mm/min.</param>
/// <param name="Plunge">Straight down, mm/min.</param>
/// <param name="ChipLoad">What a tooth takes at that feed and speed, mm.</param>
/// <param name="ChipLeast">Below this the tooth rubs on this machine, mm.</param>
/// <param name="ChipMost">Above this it is overloaded, mm.</param>
/// <param name="Steps">Depths below the stock's upper face, each pass deeper than the one before, mm; evenly spaced.</param>
/// <param name="FinishSteps">Depths of the finishing passes, mm: as many that the side force moves bit and frame by less than a third of the allowance.</param>
/// <param name="GivesWay">How far the side force of a finishing pass moves them, mm.</param>
/// <param name="CleanUp">Whether the finish is gone over once more at full depth, for what bit and frame gave way.</param>
/// <param name="PassLimit">Deepest that one pass may go, mm.</param>
/// <param name="RampAngle">Of the descent along the contour, degrees below horizontal.</param>
/// <param name="Allowance">What roughing leaves on the finished edge, mm.</param>
/// <param name="Overcut">How far below the stock the last pass goes, mm; negative when a skin of that thickness stays.</param>
/// <param name="TabCount">How many tabs are wanted; 0 for a piece that stays held.</param>
/// <param name="TabLength">mm, at the tab's top.</param>
/// <param name="TabHeight">mm above the stock's lower face.</param>
public sealed record CutSettings(
    double Speed,
    double Feed,
    double Plunge,
    double ChipLoad,
    double ChipLeast,
    double ChipMost,
    ImmutableArray<double> Steps,
    ImmutableArray<double> FinishSteps,
    double GivesWay,
    bool CleanUp,
    double PassLimit,
    double RampAngle,
    double Allowance,
    double Overcut,
    int TabCount,
    double TabLength,
    double TabHeight)
{
    /// <summary>The collet nut stays this far above the stock at the deepest pass, mm (common practice).</summary>
    internal const double Nut = 3;

    /// <summary>Room beside the widest track, mm (common practice).</summary>
    internal const double TrackSpare = 2;

    /// <summary>What a hand feels on an edge, mm (judgment): more than this is worth another pass.</summary>
    private const double Felt = 0.03;

    /// <summary>More finishing steps than this would only rub (judgment); the clean-up pass takes the rest.</summary>
    private const int MostFinishSteps = 12;

    /// <summary>A slot up to this many diameters deep is fed as it is (common practice).</summary>
    private const double ShallowSlot = 1;

    /// <summary>A slot deeper than this many diameters is widened (common practice).</summary>
    internal const double DeepSlot = 3;

    /// <summary>Slope of a tab's sides for a bit that plunges, degrees (judgment: short, and still no jolt for a light frame as a vertical side would be).</summary>
    internal const double SteepTab = 30;

    /// <summary>Share of the feed in a slot as narrow as the bit that is neither shallow nor widened (common practice).</summary>
    internal const double SlotShare = 0.75;

    /// <summary>Last pass below a panel, and below a board, whose unevenness is larger, mm (common practice).</summary>
    internal const double PanelOvercut = 0.3;

    /// <summary>See <see cref="PanelOvercut"/>.</summary>
    internal const double BoardOvercut = 0.4;

    /// <summary>What roughing leaves on the finished edge, mm (common practice).</summary>
    internal const double UsualAllowance = 0.5;

    /// <summary>Share of the allowance by which a finishing pass may push bit and frame aside (judgment).</summary>
    internal const double PushShare = 1.0 / 3;

    /// <summary>Length of a tab at its top, mm (common practice).</summary>
    internal const double UsualTabLength = 8;

    /// <summary>Height of a tab as a share of the thickness, from 1 to 3 mm (judgment).</summary>
    internal const double TabHeightShare = 0.35;

    /// <summary>Most between tabs along the outline, mm (common practice).</summary>
    internal const double TabSpacing = 250;

    /// <summary>Shear strength of a tab, N/mm² (from memory: low for fiberboard, so that it is safe for the others).</summary>
    internal const double TabStrength = 2;

    /// <summary>How many times the force of a full-width pass all tabs hold together (judgment).</summary>
    internal const double TabSafety = 4;

    /// <summary>How much a widened slot is wider than the bit, as a share of the diameter (common practice).</summary>
    private const double Widening = 0.25;

    /// <summary>Feed where the bit cuts over its whole width, mm/min.</summary>
    public double SlotFeed { get; init; } = Feed;

    /// <summary>
    /// Slope of the sides of a tab, degrees. A bit that plunges may go down as steeply as it likes so long as its downward part keeps to the plunge feed, so the tab takes little of the
    /// edge; any other keeps to its ramp.
    /// </summary>
    public double TabAngle { get; init; } = RampAngle;

    /// <summary>Feed along the sides of a tab, so that its downward part stays within the plunge feed, mm/min.</summary>
    public double TabFeed => Math.Min(Feed, Plunge / Math.Sin(TabAngle * Math.PI / 180));

    /// <summary>How far each side of a ramped tab goes on along the edge below its top, down to a depth, mm.</summary>
    /// <param name="height">From that depth to the tab's top, mm.</param>
    internal double TabSide(double height) => height / Math.Tan(TabAngle * Math.PI / 180);

    /// <summary>By how much roughing slots are made wider than the bit, by a track of their own at each depth, mm; 0 for not at all.</summary>
    public double Widen { get; init; }

    /// <summary>Thickness of the skin that stays under the whole cut, mm; 0 for none.</summary>
    public double Skin => Math.Max(0, -Overcut);

    /// <summary>Least chip that the plan takes on the level, mm.</summary>
    public double LeastChip => ChipLoad * Math.Min(1, SlotFeed / Feed);

    /// <summary>Deepest that one pass goes through what no pass before has opened, mm: a roughing step.</summary>
    public double DeepestStep => Steps.Zip(Steps.Prepend(0), (to, from) => to - from).Max();

    /// <summary>Room that the bit's track takes beside a piece, mm: its own width, what roughing leaves, a widened slot, and a little.</summary>
    /// <param name="bit">The bit.</param>
    internal double TrackRoom(Bit bit) => bit.Diameter + Allowance + Widen + TrackSpare;

    /// <summary>Depths of everything that is cut along the finished edge, in order: the finishing steps, then the clean-up pass if there is one, mm.</summary>
    public IEnumerable<double> FinishDepths => CleanUp ? FinishSteps.Append(FinishSteps[^1]) : FinishSteps;

    /// <summary>Feed along a ramp, so that its downward part stays within the plunge feed, mm/min.</summary>
    public double RampFeed => Math.Min(Feed, Plunge / Math.Sin(RampAngle * Math.PI / 180));

    /// <summary>Settings for the outline of a make on a machine.</summary>
    /// <param name="make">What is cut.</param>
    /// <param name="machine">On what.</param>
    /// <param name="perimeter">Length of the edge that is cut, mm: decides the number of tabs.</param>
    /// <param name="skin">Thickness that is left under the cut instead of tabs, mm; 0 for none.</param>
    public static CutSettings For(Make make, Machine machine, double perimeter, double skin = 0)
    {
        bool plate = make.Sheet is not null;
        CutSettings s = Through(make, make.Bit, make.Cut, machine, skin);
        int tabs = TabsFor(make, s, perimeter);
        return s with { TabCount = plate && skin == 0 ? tabs : 0 };
    }

    /// <summary>Settings for openings of a make cut with a bit: the job's own figures count for the bit of the make alone.</summary>
    /// <param name="make">What is cut.</param>
    /// <param name="bit">With what.</param>
    /// <param name="machine">On what.</param>
    /// <param name="skin">Thickness that is left under the cut, mm; 0 for none.</param>
    public static CutSettings ForOpenings(Make make, Bit bit, Machine machine, double skin = 0) =>
        Through(make, bit, Said(make, bit), machine, skin) with { TabCount = 0, Widen = 0 };

    /// <summary>Settings for the marks of a make: one light pass.</summary>
    /// <param name="make">What is marked.</param>
    /// <param name="marks">How.</param>
    /// <param name="machine">On what.</param>
    public static CutSettings ForMarks(Make make, Marking marks, Machine machine)
    {
        Bit bit = marks.Bit;
        CutChoices said = Said(make, bit);

        // A point takes a chip like a bit as thin as its stroke, not like one as thick as its shank.
        Bit point = bit with { Diameter = Math.Min(bit.Diameter, Math.Max(marks.StrokeWidth, 1)) };
        var feeds = Feeds.For(point, make.Material, machine, Math.Min(marks.Depth, point.Diameter), said.Speed, said.Feed);
        return new CutSettings(
            feeds.Speed, feeds.Feed, said.Plunge ?? feeds.Plunge(machine), feeds.ChipLoad(bit.Flutes), feeds.Band.Least * machine.ChipShare, feeds.Band.Most,
            [marks.Depth], [marks.Depth], 0, false, marks.Depth, Math.Min(bit.RampAngle, make.Material.RampAngle), 0, 0, 0, 0, 0);
    }

    private static CutChoices Said(Make make, Bit bit) => bit == make.Bit
        ? make.Cut
        : new CutChoices(null, null, null, null, make.Cut.Allowance, make.Cut.Overcut, make.Cut.Direction, null, null, null) { Slot = make.Cut.Slot };

    private static CutSettings Through(Make make, Bit bit, CutChoices said, Machine machine, double skin)
    {
        double overcut = skin > 0 ? -skin : said.Overcut ?? (make.Sheet is not null ? PanelOvercut : BoardOvercut);
        double passLimit = said.PassDepth ?? Feeds.UsualPass(bit, make.Material, machine);
        double total = make.Thickness + overcut;
        ImmutableArray<double> steps = Steepened(EvenSteps(total, passLimit), total, bit);
        var feeds = Feeds.For(bit, make.Material, machine, total / steps.Length, said.Speed, said.Feed);
        (double speed, double feed, ChipBand band) = feeds;
        double allowance = said.Allowance ?? UsualAllowance;
        double chip = feeds.ChipLoad(bit.Flutes);
        (ImmutableArray<double> finish, double givesWay) = FinishPasses(make, bit, machine, total, allowance, chip);
        double height = said.TabHeight ?? Math.Clamp(make.Thickness * TabHeightShare, 1, 3);
        double least = band.Least * machine.ChipShare;
        double deep = total / bit.Diameter;
        bool wide = said.Slot == SlotChoice.Wide || (said.Slot == SlotChoice.ByDepth && deep > DeepSlot);
        bool slow = said.Slot == SlotChoice.Slow || wide || deep > ShallowSlot;
        return new CutSettings(
            speed,
            feed,
            said.Plunge ?? feeds.Plunge(machine),
            chip,
            least,
            band.Most,
            steps,
            finish,
            givesWay,
            finish.Length > 1 || givesWay > Felt,
            passLimit,
            Math.Min(bit.RampAngle, make.Material.RampAngle),
            allowance,
            overcut,
            0,
            said.TabLength ?? UsualTabLength,
            height)
        {
            // Slowed no further than where the tooth would begin to rub.
            SlotFeed = slow ? Math.Min(feed, Math.Max(Feeds.Down(feed * SlotShare, 10), Feeds.Up(least * speed * bit.Flutes, 10))) : feed,
            Widen = wide ? Widening * bit.Diameter : 0,
            TabAngle = bit.CanPlunge ? SteepTab : Math.Min(bit.RampAngle, make.Material.RampAngle),
        };
    }

    // As the job says; else by spacing, and as many as hold four times the force with which a full-width pass pushes. A tab is sheared across its
    // length and height.
    private static int TabsFor(Make make, CutSettings s, double perimeter)
    {
        if (make.Cut.TabPlaces.Length > 0)
        {
            return make.Cut.TabPlaces.Length;
        }

        double push = SideLoad.Force(make.Material.CuttingForce, s.Steps[0], s.ChipLoad);
        int byForce = (int)Math.Ceiling(TabSafety * push / (TabStrength * s.TabLength * s.TabHeight));
        int bySpacing = (int)Math.Ceiling(perimeter / (make.Cut.TabSpacing ?? TabSpacing));
        return make.Cut.Tabs ?? Math.Max(3, Math.Max(bySpacing, byForce));
    }

    /// <summary>The fewest equal steps that reach a depth with none above a limit.</summary>
    /// <param name="total">Depth to reach, mm.</param>
    /// <param name="limit">Deepest step, mm.</param>
    internal static ImmutableArray<double> EvenSteps(double total, double limit)
    {
        // A step over by a rounding is not a step over.
        int count = Math.Max(1, (int)Math.Ceiling((total / limit) - 1e-9));
        return [.. Enumerable.Range(1, count).Select(i => i == count ? total : total * i / count)];
    }

    // A compression bit cuts clean only where its down-cut part is in the face: its first pass goes at least as deep as its up-cut part is long.
    private static ImmutableArray<double> Steepened(ImmutableArray<double> steps, double total, Bit bit) =>
        bit.Kind == BitKind.Compression && steps[0] < bit.UpCutLength ? EvenSteps(total, total / Math.Max(1, Math.Floor(total / bit.UpCutLength))) : steps;

    // Even steps, the fewest that keep the side force's push below a third of what roughing left.
    private static (ImmutableArray<double> Steps, double GivesWay) FinishPasses(
        Make make, Bit bit, Machine machine, double total, double allowance, double chipLoad)
    {
        double stickOut = total + Nut;
        double chip = SideLoad.ThickestChip(chipLoad, allowance, bit.Diameter);
        double Push(int count) => SideLoad.GivingWay(
            SideLoad.Force(make.Material.CuttingForce, total / count, chip), stickOut, bit, machine.Stiffness);
        int count = 1;
        while (count < MostFinishSteps && Push(count) >= allowance * PushShare)
        {
            count++;
        }

        return (EvenSteps(total, total / count), Push(count));
    }
}
