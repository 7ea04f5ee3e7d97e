using System.Collections.Immutable;
using ToolpathForge.Checks.Hand;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;
using ToolpathForge.Shapes;

namespace ToolpathForge.Checks.Settings;

/// <summary>Asks of a job's hand work what a check without a job asks of options, so that both answer alike.</summary>
public static class JobHand
{
    /// <summary>Sawing leaves wood where the bearing is to run.</summary>
    internal static readonly FindingKind SawOutsideSlot = new(
        "hand-saw-outside-slot",
        Severity.Stop,
        "The saw is to leave {found} outside the line, but the machine's slot is {allowed} wide: what stands beyond it would be in the bearing's way.",
        "Saw inside the slot, closer to the line; or cut with a wider bit.");

    // How closely the curve is followed when its hollows are looked for, mm: a bearing's radius is known no better.
    private const double Closely = 0.01;

    // At which key each finding is told; the others speak of the bit.
    private static readonly ImmutableArray<(FindingKind Kind, string Key)> s_keys =
    [
        (HandFindings.PatternThin, "stock.thickness"), (HandFindings.EdgeShallow, "hand.machined"), (HandFindings.BoardThick, "hand.board"),
        (HandFindings.BushingLong, "hand.bushing-length"), (HandFindings.BiteLarge, "hand.bite"), (SawOutsideSlot, "hand.bite"),
    ];

    /// <summary>What the hand router's settings are and may be; null for a make without hand work.</summary>
    /// <param name="make">What is made.</param>
    /// <param name="profile">Its profile, scaled to its board.</param>
    public static SettingsAnswer? Of(ProfileMake make, Profile profile)
    {
        ArgumentNullException.ThrowIfNull(make);
        ArgumentNullException.ThrowIfNull(profile);
        if (make.Hand is not { } hand)
        {
            return null;
        }

        SettingsAnswer answer = HandSettings.Of(new HandQuestion(hand.Bit, hand.Board)
        {
            Pattern = make is PatternMake ? make.Thickness : null,
            Machined = hand.Machined - Shallower(make),
            Bushing = hand.Bushing,
            BushingLength = hand.BushingLength,
            PatternInset = make is PatternMake ? hand.PatternInset : 0,

            // The pattern of a larger guide lies within the work, so that its hollows are the larger by as much; a sharp corner's becomes an arc of that radius.
            InsideRadius = Tightest(profile) + (make is PatternMake ? hand.PatternInset : 0),
            Bite = SawnBefore(make) is null ? hand.Bite : Bite(make),
            ColletHeight = hand.ColletHeight,
            MayHang = hand.MayHang,

            // Face up, the profile edge towards you, the end lies at your right, whatever is cut; at your left for a pattern of left-hand ends alone.
            End = make is PatternMake { Fittings.Hands: PlateHands.Left } ? EndSide.Left : EndSide.Right,
            Grain = HandGrain.Of(profile, make is BoardEndMake sloping ? sloping.GrainSlope : 0, make is PatternMake { Fittings.Hands: PlateHands.Left }),
        });
        double bite = Bite(make);
        double slot = make.Bit.Diameter;
        return hand.Machined is null || answer.Rows.IsEmpty
            ? answer
            : bite <= slot + 1e-9
            ? answer with { Rows = answer.Rows.Add(Slot(bite, slot, null)) }
            : WithSlot(answer, bite, slot);
    }

    /// <summary>
    /// What the saw leaves for the hand router outside the finished edge, mm: as the job says; where the waste is sawn off before the machine cuts, what that leaves, if it goes
    /// in one bite; else what is usual.
    /// </summary>
    /// <param name="make">A make with hand work.</param>
    internal static double Bite(ProfileMake make) =>
        make.Hand?.Bite ?? (SawnBefore(make) is { } left && left <= SawnWaste.MostBite ? left : SawnWaste.UsualBite);

    /// <summary>What stands outside the finished edge below what the machine has cut, where the waste was sawn off beforehand, mm; null where it wasn't.</summary>
    /// <param name="make">A make with hand work.</param>
    internal static double? SawnBefore(ProfileMake make) => make is BoardEndMake { Batch: { Waste: Waste.Sawn } batch } ? batch.SawMargin : null;

    /// <summary>What is wrong with a make's hand work, told at its keys.</summary>
    internal static IEnumerable<Finding> Find(ProfileMake make, Profile profile) => (Of(make, profile)?.Findings ?? []).Select(f =>
    {
        string key = s_keys.FirstOrDefault(k => k.Kind == f.Kind).Key ?? "hand.bit";
        return f with { Place = (make.At.Keys.ContainsKey(key) ? make.At[key] : make.At["hand"]).OfMake(make.Id) };
    });

    private static SettingsAnswer WithSlot(SettingsAnswer answer, double bite, double slot)
    {
        var finding = Finding.Of(SawOutsideSlot, Place.None, Quantity.Length(bite), Quantity.Length(slot));
        return answer with { Rows = answer.Rows.Add(Slot(bite, slot, finding)), Findings = answer.Findings.Add(finding) };
    }

    private static SettingRow Slot(double bite, double slot, Finding? finding) =>
        new("saw inside the slot", Quantity.Length(bite), null, Quantity.Length(slot), "the machine's bit", finding);

    // Boards of a batch lie on one bed: where they are thinner than the thickest, the machine cuts that much less deep into them.
    private static double Shallower(Make make) => make is BoardEndMake end ? Math.Max(0, end.Thickness - end.Batch.Boards.Min(b => b.Thickness)) : 0;

    // The board lies on the left of its profile, so the bearing runs on the right; null where nothing is hollow.
    private static double? Tightest(Profile profile) => InsideRadius.Tightest(ArcFit.Fit(profile.Exact, Closely).Contour, Side.Right)?.Radius;
}
