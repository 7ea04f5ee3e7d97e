using ToolpathForge.Catalogue;
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
        "The spindle would turn at {found}; the row of {bit} states {allowed} at most.",
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
        "The chip load would be {found}; below {allowed} the bit rubs, heats and dulls.",
        "Lower the speed, or use a bit with one flute; do not simply feed faster.");

    /// <summary>The tooth is overloaded.</summary>
    internal static readonly FindingKind ChipTooThick = new(
        "chip-too-thick",
        Severity.Stop,
        "The chip load would be {found}; {material} and this bit stand {allowed} at most.",
        "Feed slower.");

    internal static IEnumerable<Finding> Find(CheckInput input) => Find(
        new FeedFigures(input.Settings.Speed, input.Settings.Feed, input.Settings.Plunge, input.Settings.ChipLoad, input.Settings.ChipLeast, input.Settings.ChipMost),
        input.Bit,
        input.Make.Material,
        input.Machine,
        input.At);

    /// <summary>The same for figures that belong to no job.</summary>
    /// <param name="s">The figures.</param>
    /// <param name="bit">What cuts.</param>
    /// <param name="material">What is cut.</param>
    /// <param name="on">On what.</param>
    /// <param name="at">Where a figure stands.</param>
    internal static IEnumerable<Finding> Find(FeedFigures s, Bit bit, Material material, Machine on, Func<string, Place> at)
    {
        Arg machine = Arg.Of("machine", on.Name);
        if (s.Speed < on.MinSpeed || s.Speed > on.MaxSpeed)
        {
            yield return Finding.Of(
                SpeedOutsideMachine,
                at("cut.speed"),
                Quantity.Speed(s.Speed),
                Quantity.Speed(s.Speed < on.MinSpeed ? on.MinSpeed : on.MaxSpeed),
                machine,
                Arg.Of("slowest", Quantity.Speed(on.MinSpeed)),
                Arg.Of("fastest", Quantity.Speed(on.MaxSpeed)));
        }

        if (s.Speed > bit.MaxSpeed)
        {
            yield return Finding.Of(
                SpeedAboveBit, at("cut.speed"), Quantity.Speed(s.Speed), Quantity.Speed(bit.MaxSpeed), Arg.Of("bit", bit.Name));
        }

        if (s.Feed > on.MaxFeed)
        {
            yield return Finding.Of(FeedOutsideMachine, at("cut.feed"), Quantity.Feed(s.Feed), Quantity.Feed(on.MaxFeed), machine);
        }

        if (s.Plunge > on.MaxPlunge)
        {
            yield return Finding.Of(
                PlungeOutsideMachine, at("cut.plunge"), Quantity.Feed(s.Plunge), Quantity.Feed(on.MaxPlunge), machine);
        }

        if (s.ChipLoad < s.ChipLeast * 0.999)
        {
            yield return Finding.Of(ChipTooThin, at("cut.feed"), Quantity.Length(s.ChipLoad), Quantity.Length(s.ChipLeast));
        }

        if (s.ChipLoad > s.ChipMost * 1.001)
        {
            yield return Finding.Of(
                ChipTooThick,
                at("cut.feed"),
                Quantity.Length(s.ChipLoad),
                Quantity.Length(s.ChipMost),
                Arg.Of("material", material.Name));
        }
    }
}

/// <summary>The figures of a cut that are held against machine, bit and material.</summary>
/// <param name="Speed">Spindle speed, rev/min.</param>
/// <param name="Feed">In the plane, mm/min.</param>
/// <param name="Plunge">Downwards, mm/min.</param>
/// <param name="ChipLoad">What a tooth takes, mm.</param>
/// <param name="ChipLeast">Below this it rubs, mm.</param>
/// <param name="ChipMost">Above this it is overloaded, mm.</param>
internal readonly record struct FeedFigures(double Speed, double Feed, double Plunge, double ChipLoad, double ChipLeast, double ChipMost);
