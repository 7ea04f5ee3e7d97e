using ToolpathForge.Findings;

namespace ToolpathForge.Checks;

/// <summary>Whether speed and feeds lie within what machine and bit stand, and the chip within its band.</summary>
internal static class FeedsAndSpeeds
{
    /// <summary>The spindle cannot turn that slowly or that fast.</summary>
    internal static readonly FindingKind SpeedOutsideMachine = new(
        "speed-outside-machine",
        Severity.Stop,
        "The spindle would turn at {found}; {machine} turns between {slowest} and {fastest}.",
        "State a speed within the machine's range, or choose another bit.");

    /// <summary>Faster than the bit's marking.</summary>
    internal static readonly FindingKind SpeedAboveBit = new(
        "speed-above-bit",
        Severity.Stop,
        "The spindle would turn at {found}; {bit} is marked for {allowed} at most.",
        "Turn slower. The marking on the bit always wins.");

    /// <summary>The machine cannot move that fast in the plane.</summary>
    internal static readonly FindingKind FeedOutsideMachine = new(
        "feed-outside-machine",
        Severity.Stop,
        "The feed would be {found}; {machine} moves at {allowed} at most.",
        "State a lower feed; lower the speed with it, so that the chip stays thick enough.");

    /// <summary>The machine cannot move down that fast.</summary>
    internal static readonly FindingKind PlungeOutsideMachine = new(
        "plunge-outside-machine",
        Severity.Stop,
        "The plunge feed would be {found}; {machine} moves down at {allowed} at most.",
        "State a lower plunge feed.");

    /// <summary>The tooth rubs instead of cutting.</summary>
    internal static readonly FindingKind ChipTooThin = new(
        "chip-too-thin",
        Severity.Warn,
        "Each tooth would take {found}; below {allowed} it rubs, heats and dulls.",
        "Lower the speed, or use a bit with one flute; do not simply feed faster.");

    /// <summary>The tooth is overloaded.</summary>
    internal static readonly FindingKind ChipTooThick = new(
        "chip-too-thick",
        Severity.Stop,
        "Each tooth would take {found}; {material} and this bit stand {allowed} at most.",
        "Feed slower.");

    internal static IEnumerable<Finding> Find(CheckInput input)
    {
        Cutting.CutSettings s = input.Settings;
        Arg machine = Arg.Of("machine", input.Machine.Name);
        if (s.Speed < input.Machine.MinSpeed || s.Speed > input.Machine.MaxSpeed)
        {
            yield return Finding.Of(
                SpeedOutsideMachine,
                input.At("cut.speed"),
                Quantity.Speed(s.Speed),
                Quantity.Speed(s.Speed < input.Machine.MinSpeed ? input.Machine.MinSpeed : input.Machine.MaxSpeed),
                machine,
                Arg.Of("slowest", Quantity.Speed(input.Machine.MinSpeed)),
                Arg.Of("fastest", Quantity.Speed(input.Machine.MaxSpeed)));
        }

        if (s.Speed > input.Bit.MaxSpeed)
        {
            yield return Finding.Of(
                SpeedAboveBit, input.At("cut.speed"), Quantity.Speed(s.Speed), Quantity.Speed(input.Bit.MaxSpeed), Arg.Of("bit", input.Bit.Name));
        }

        if (s.Feed > input.Machine.MaxFeed)
        {
            yield return Finding.Of(FeedOutsideMachine, input.At("cut.feed"), Quantity.Feed(s.Feed), Quantity.Feed(input.Machine.MaxFeed), machine);
        }

        if (s.Plunge > input.Machine.MaxPlunge)
        {
            yield return Finding.Of(
                PlungeOutsideMachine, input.At("cut.plunge"), Quantity.Feed(s.Plunge), Quantity.Feed(input.Machine.MaxPlunge), machine);
        }

        if (s.ChipLoad < s.ChipLeast * 0.999)
        {
            yield return Finding.Of(ChipTooThin, input.At("cut.feed"), Quantity.Length(s.ChipLoad), Quantity.Length(s.ChipLeast));
        }

        if (s.ChipLoad > s.ChipMost * 1.001)
        {
            yield return Finding.Of(
                ChipTooThick,
                input.At("cut.feed"),
                Quantity.Length(s.ChipLoad),
                Quantity.Length(s.ChipMost),
                Arg.Of("material", input.Make.Material.Name));
        }
    }
}
