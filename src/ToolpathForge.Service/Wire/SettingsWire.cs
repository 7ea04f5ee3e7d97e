using ToolpathForge.Checks.Hand;
using ToolpathForge.Checks.Settings;
using ToolpathForge.Plugin.Contract;
using static ToolpathForge.Service.Wire.WireNumber;

namespace ToolpathForge.Service.Wire;

/// <summary>Answers about settings in the contract's form.</summary>
internal static class SettingsWire
{
    internal static SettingsReply Of(SettingsAnswer? answer, bool hand, int exit, WireFinding[] findings) => new()
    {
        ExitCode = exit,
        About = hand ? "hand" : "machine",
        Findings = findings,
        Settings = [.. (answer?.Rows ?? []).Select(Of)],
        Depths = [.. (answer?.Windows ?? []).Select(Of)],
        Feed = answer?.Feed,
    };

    internal static WireMakeSettings Of(string make, SettingsAnswer answer) => new()
    {
        Make = make,
        About = answer.About,
        Settings = [.. answer.Rows.Select(Of)],
        Depths = [.. answer.Windows.Select(Of)],
        Feed = answer.Feed,
    };

    private static WireSetting Of(SettingRow row) => new()
    {
        Name = row.Setting,
        Is = WireNumber.Of(row.Is),
        AtLeast = WireNumber.Of(row.AtLeast),
        AtMost = WireNumber.Of(row.AtMost),
        Because = row.Because,
        Verdict = row.Verdict switch
        {
            Verdict.Fits => "fits",
            Verdict.SetIt => "set-it",
            Verdict.Doubtful => "doubtful",
            _ => "broken",
        },
        Finding = row.Finding?.Kind.Code,
    };

    private static WireDepthWindow Of(NamedWindow named) => new()
    {
        Pass = named.Pass,
        Open = named.Window.IsOpen,
        Least = Rounded(named.Window.Least),
        Most = Rounded(named.Window.Most),
        Limits = [.. named.Window.Limits.Select(Of)],
    };

    private static WireLimit Of(Limit limit) => new()
    {
        Sense = limit.Sense == Sense.AtLeast ? "at-least" : "at-most",
        Value = Rounded(limit.Value),
        Reason = limit.Reason,
        Terms = [.. limit.Terms.Select(t => new WireTerm { Name = t.Name, Value = Rounded(t.Millimetres) })],
    };
}
