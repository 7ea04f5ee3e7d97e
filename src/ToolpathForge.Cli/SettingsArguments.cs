using System.Collections.Immutable;
using System.CommandLine;
using System.CommandLine.Parsing;
using ToolpathForge.Service;

namespace ToolpathForge.Cli;

/// <summary>The options of <c>check</c> without a job. They come from the use case, so that help, command line and reading cannot differ.</summary>
internal static class SettingsArguments
{
    internal static readonly Option<bool> Hand = new("--hand") { Arity = ArgumentArity.Zero };

    private static readonly ImmutableArray<SettingOption> s_all =
        [.. CheckSettings.MachineOptions.Concat(CheckSettings.HandOptions).DistinctBy(o => o.Name, StringComparer.Ordinal)];

    /// <summary>The options, declared looser than they are, as all others.</summary>
    internal static ImmutableArray<Option> Options { get; } =
    [
        Hand,
        .. s_all.Select(o => o.IsSwitch
            ? (Option)new Option<bool>(o.Name) { Arity = ArgumentArity.Zero }
            : new Option<string[]>(o.Name) { Arity = ArgumentArity.ZeroOrMore, AllowMultipleArgumentsPerToken = false }),
    ];

    /// <summary>Whether any of them is written.</summary>
    internal static bool AreUsed(ParseResult parsed) => Options.Any(o => IsWritten(parsed, o));

    /// <summary>What is asked, once the words are known to be sound.</summary>
    internal static Request Understand(ParseResult parsed, string[] names, string? job, string? unit, bool json)
    {
        if (names.Length > 0)
        {
            return new Request.Misread(
                $"check looks at the job '{names[0]}' or at settings, not at both.",
                "Leave the job out, or the options of settings; --job names a job whose machine, unit and own catalogues are to be used.");
        }

        bool hand = parsed.GetValue(Hand);
        ImmutableArray<SettingOption> may = hand ? CheckSettings.HandOptions : CheckSettings.MachineOptions;
        var options = ImmutableArray.CreateBuilder<(string Name, string? Text)>();
        foreach (Option option in Options.Where(o => o != Hand && IsWritten(parsed, o)))
        {
            if (!may.Any(o => o.Name == option.Name))
            {
                return new Request.Misread(
                    hand ? $"{option.Name} is for a machine, not for a hand router." : $"{option.Name} is for a hand router.",
                    hand ? "Leave it out, or leave --hand out." : "Add --hand, or leave it out.");
            }

            options.Add((option.Name, option is Option<string[]> text ? parsed.GetValue(text)![0] : null));
        }

        return new Request.CheckSettings(hand, options.ToImmutable(), job, unit, json);
    }

    /// <summary>The lines of help for some options.</summary>
    internal static string HelpOf(ImmutableArray<SettingOption> options) =>
        string.Concat(options.Select(o => $"  {(o.IsSwitch ? o.Name : o.Name + " …"),-20} {o.Says}\n"));

    /// <summary>Whether an option could be meant by a mistyped one: there are many of settings, and short ones are near to anything, so they must begin alike.</summary>
    internal static bool MayBeMeant(Option option, string typed) =>
        !Options.Contains(option) || (typed.Length > 2 && option.Name.StartsWith(typed[..3], StringComparison.Ordinal));

    private static bool IsWritten(ParseResult parsed, Option option) => parsed.GetResult(option) is { Implicit: false };
}
