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
/// <param name="Overcut">How far below the stock the last pass goes, mm.</param>
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

    /// <summary>What a hand feels on an edge, mm (common practice): more than this is worth another pass.</summary>
    private const double Felt = 0.03;

    /// <summary>More finishing steps than this would only rub; the clean-up pass takes the rest.</summary>
    private const int MostFinishSteps = 8;

    /// <summary>Depths of everything that is cut along the finished edge, in order: the finishing steps, then the clean-up pass if there is one, mm.</summary>
    public IEnumerable<double> FinishDepths => CleanUp ? FinishSteps.Append(FinishSteps[^1]) : FinishSteps;

    /// <summary>Feed along a ramp, so that its downward part stays within the plunge feed, mm/min.</summary>
    public double RampFeed => Math.Min(Feed, Plunge / Math.Sin(RampAngle * Math.PI / 180));

    /// <summary>Settings for a make on a machine.</summary>
    /// <param name="make">What is cut.</param>
    /// <param name="machine">On what.</param>
    /// <param name="perimeter">Length of the edge that is cut, mm: decides the number of tabs.</param>
    public static CutSettings For(Make make, Machine machine, double perimeter)
    {
        Bit bit = make.Bit;
        CutChoices said = make.Cut;
        bool plate = make is PatternMake;

        // Common practice: 0.3 mm clears a panel's own unevenness, a board's is larger.
        double overcut = said.Overcut ?? (plate ? 0.3 : 0.4);
        double passLimit = said.PassDepth ?? (Math.Min(make.Material.PassDepth, machine.PassDepth) * bit.Diameter);
        double total = make.Thickness + overcut;
        ImmutableArray<double> steps = Steepened(EvenSteps(total, passLimit), total, bit);
        (double speed, double feed, ChipBand band) = SpeedAndFeed(make, machine, total / steps.Length);

        double plunge = said.Plunge ?? Math.Min(machine.MaxPlunge, Down(feed * 0.3, 10));
        double allowance = said.Allowance ?? 0.5;
        double chip = feed / (speed * bit.Flutes);
        (ImmutableArray<double> finish, double givesWay) = FinishPasses(make, machine, total, allowance, chip);
        double height = said.TabHeight ?? Math.Clamp(make.Thickness * 0.35, 1, 3);
        return new CutSettings(
            speed,
            feed,
            plunge,
            chip,
            band.Least * machine.ChipShare,
            band.Most,
            steps,
            finish,
            givesWay,
            finish.Length > 1 || givesWay > Felt,
            passLimit,
            Math.Min(bit.RampAngle, make.Material.RampAngle),
            allowance,
            overcut,
            plate ? said.Tabs ?? Math.Max(3, (int)Math.Ceiling(perimeter / 250)) : 0,
            said.TabLength ?? 8,
            height);
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
    private static (ImmutableArray<double> Steps, double GivesWay) FinishPasses(Make make, Machine machine, double total, double allowance, double chipLoad)
    {
        double stickOut = total + Nut;
        double chip = SideLoad.ThickestChip(chipLoad, allowance, make.Bit.Diameter);
        double Push(int count) => SideLoad.GivingWay(
            SideLoad.Force(make.Material.CuttingForce, total / count, chip), stickOut, make.Bit, machine.Stiffness);
        int count = 1;
        while (count < MostFinishSteps && Push(count) >= allowance / 3)
        {
            count++;
        }

        return (EvenSteps(total, total / count), Push(count));
    }

    // The spindle speed n and feed F meet at the chip load: F = n·z·fz (any machining handbook). A small frame takes a share of a production
    // machine's chip; where its feed cannot keep up, the speed comes down rather than the chip below its band.
    private static (double Speed, double Feed, ChipBand Band) SpeedAndFeed(Make make, Machine machine, double step)
    {
        const double UsualSpeed = 16000;
        Bit bit = make.Bit;
        ChipBand band = make.Material.ChipAt(bit.Diameter);
        double deep = step / bit.Diameter;

        // Common practice: a quarter less at two diameters deep, half at three.
        double depthShare = deep <= 1 ? 1 : Math.Max(0.5, 1 - (0.25 * (deep - 1)));
        double chip = (band.Least + band.Most) / 2 * machine.ChipShare * depthShare;
        double fastest = Math.Min(machine.MaxSpeed, bit.MaxSpeed);
        double speed = make.Cut.Speed ?? Math.Max(machine.MinSpeed, Math.Min(fastest, UsualSpeed));
        double feed = make.Cut.Feed ?? speed * bit.Flutes * chip;
        if (make.Cut.Feed is null && feed > machine.MaxFeed)
        {
            feed = machine.MaxFeed;
            if (make.Cut.Speed is null)
            {
                speed = Math.Clamp(feed / (bit.Flutes * chip), machine.MinSpeed, Math.Max(machine.MinSpeed, speed));
            }
        }

        return (make.Cut.Speed ?? Down(speed, 100), make.Cut.Feed ?? Down(feed, 10), band);
    }

    private static double Down(double value, double multiple) => Math.Max(multiple, Math.Floor((value / multiple) + 1e-9) * multiple);
}
