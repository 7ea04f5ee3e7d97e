using System.Collections.Immutable;
using System.CommandLine;
using System.CommandLine.Parsing;
using ToolpathForge.Service;

namespace ToolpathForge.Cli;

/// <summary>
/// Reads the command line. The library takes the words apart; what is missing, doubled or mistyped is told in our own words, with the near one, so every
/// argument is declared looser than it is and judged here.
/// </summary>
internal static class Arguments
{
    private static readonly Option<bool> Json = Switch("--json");
    private static readonly Option<bool> Timings = Switch("--timings");
    private static readonly Option<bool> Family = Switch("--family");
    private static readonly Option<bool> Replace = Switch("--replace");
    private static readonly Option<string[]> Step = Text("--step");
    private static readonly Option<bool> WantsHelp = Switch("--help", "-h", "-?");
    private static readonly Option<bool> WantsVersion = Switch("--version");
    private static readonly Option<string[]> Out = Text("--out", "-o");
    private static readonly Option<string[]> Job = Text("--job");
    private static readonly Option<string[]> Make = Text("--make");
    private static readonly Option<string[]> Unit = Text("--unit");
    private static readonly Option<string[]> Kind = Text("--kind");
    private static readonly Option<string[]> Diameter = Text("--diameter");
    private static readonly Option<string[]> Thickness = Text("--thickness");
    private static readonly Option<string[]> Width = Text("--width");
    private static readonly Argument<string[]> Names = new("names") { Arity = ArgumentArity.ZeroOrMore };

    private static readonly Command New = Verb("new", Unit);
    private static readonly Command Check = Verb("check", [Json, Timings, Job, Unit, .. SettingsArguments.Options]);
    private static readonly Command Cut = Verb("cut", Out, Replace, Json, Timings);
    private static readonly Command Draw = Verb("draw", Out, Family, Step, Replace, Json, Timings);
    private static readonly Command Trace = TraceArguments.Verb(Verb, Unit, Json, Timings);
    private static readonly Command Prove = Verb("prove", Job, Make, Json, Timings);
    private static readonly Command Trial = Verb("trial", Out, Make, Replace, Timings);
    private static readonly Command List = Verb("list", Kind, Diameter, Thickness, Width, Job, Unit, Json);
    private static readonly Command Host = Verb("host");
    private static readonly Command[] Verbs = [New, Check, Cut, Draw, Trace, Prove, Trial, List, Host];
    private static readonly RootCommand Root = Tree();

    internal static Request Read(string[] args)
    {
        if (args.Length == 0)
        {
            return new Request.Misread("No command is given.", "toolpathforge --help shows them.");
        }

        if (Completion.Position(args) is { } position)
        {
            return new Request.Complete([.. Completion.For(Root, args[1], position)]);
        }

        if (args[0] == "help")
        {
            string? about = args.ElementAtOrDefault(1);
            return about is null || Array.Exists(Verbs, v => v.Name == about) ? new Request.ShowHelp(about) : UnknownCommand(about);
        }

        if (SplitSize(args) is { } split)
        {
            return split;
        }

        Option<bool>? assigned = Array.Find([Json, Timings, Family, Replace, WantsHelp, WantsVersion, .. SettingsArguments.Options.OfType<Option<bool>>()], o => Array.Exists(args, a => a.StartsWith(o.Name + "=", StringComparison.Ordinal)));
        if (assigned is not null)
        {
            return new Request.Misread($"{assigned.Name} takes no value.", "Write it alone.");
        }

        ParseResult parsed = Root.Parse(args, new ParserConfiguration { EnablePosixBundling = false, ResponseFileTokenReplacer = null });
        Command command = parsed.CommandResult.Command;
        bool isRoot = command == Root;
        if (parsed.GetValue(WantsHelp))
        {
            return new Request.ShowHelp(isRoot ? null : command.Name);
        }

        if (isRoot)
        {
            return parsed.UnmatchedTokens is [var first, ..] && !IsOption(first) ? UnknownCommand(first)
                : parsed.UnmatchedTokens is [var option, ..] ? UnknownOption(option, Root)
                : parsed.GetValue(WantsVersion) ? new Request.ShowVersion()
                : new Request.Misread("No command is given.", "toolpathforge --help shows them.");
        }

        // After "--" a name may look like an option.
        string[] names = parsed.GetValue(Names) ?? [];
        string? unknown = parsed.UnmatchedTokens.Concat(Array.IndexOf(args, "--") < 0 ? names : []).FirstOrDefault(IsOption);
        return unknown is not null ? UnknownOption(unknown, command) : Refuse(parsed, command, names) ?? Understand(parsed, command, names);
    }

    /// <summary>The options of a command, by name.</summary>
    internal static IEnumerable<string> OptionsOf(string command) => Verbs.First(v => v.Name == command).Options.Select(o => o.Name);

    private static Request Understand(ParseResult parsed, Command command, string[] names)
    {
        bool json = parsed.GetValue(Json);
        bool timings = parsed.GetValue(Timings);
        return command.Name switch
        {
            "new" => new Request.New(names[0], One(parsed, Unit) ?? "in"),
            "check" when SettingsArguments.AreUsed(parsed) => SettingsArguments.Understand(parsed, names, One(parsed, Job), One(parsed, Unit), json),
            "check" => One(parsed, Job) is null && One(parsed, Unit) is null
                ? new Request.Check(names[0], json, timings)
                : new Request.Misread("--job and --unit are for a check of settings, without a job of its own.", $"Write toolpathforge check {names[0]}."),
            "cut" => new Request.Cut(names[0], One(parsed, Out) ?? "out", parsed.GetValue(Replace), json, timings),
            "draw" => new Request.Draw(names[0], One(parsed, Out) ?? "drawings", parsed.GetValue(Family), One(parsed, Step), parsed.GetValue(Replace), json, timings),
            "trace" => TraceArguments.Understand(parsed, names[0], One(parsed, Unit), json, timings),
            "host" => new Request.Host(),
            "trial" => new Request.Trial(names[0], One(parsed, Make), One(parsed, Out) ?? "trial", parsed.GetValue(Replace), timings),
            "prove" => One(parsed, Job) is { } job
                ? new Request.Prove(names[0], job, One(parsed, Make), json, timings)
                : new Request.Misread("prove needs to know the job that the program is meant for.", $"Write toolpathforge prove {names[0]} --job porch.toml."),
            _ => ListCatalogue.Kinds.Contains(names[0], StringComparer.Ordinal)
                ? UnderstandList(parsed, names[0], json)
                : new Request.Misread($"There is no list of '{names[0]}'.", Near(names[0], ListCatalogue.Kinds) ?? KindsAdvice),
        };
    }

    private static Request UnderstandList(ParseResult parsed, string list, bool json)
    {
        var filter = new ListFilter(One(parsed, Kind), One(parsed, Diameter), One(parsed, Thickness), One(parsed, Width));
        ImmutableArray<string> may = ListFilter.OptionsOf(list);
        foreach ((string option, string value) in filter.Set)
        {
            if (!may.Contains(option, StringComparer.Ordinal))
            {
                return new Request.Misread(
                    $"list {list} cannot be filtered by --{option}.",
                    may.IsEmpty ? "Leave it out." : $"Use --{string.Join(" or --", may)}, or leave it out.");
            }

            if (option == "kind" && !ListFilter.KindsOf(list).Contains(value, StringComparer.Ordinal))
            {
                return new Request.Misread(
                    $"There are no {list} of kind '{value}'.", Near(value, ListFilter.KindsOf(list)) ?? $"Use one of {string.Join(", ", ListFilter.KindsOf(list))}.");
            }
        }

        return new Request.List(list, One(parsed, Job), One(parsed, Unit), filter, json);
    }

    /// <summary>What is wrong with the words, if anything.</summary>
    private static Request.Misread? Refuse(ParseResult parsed, Command command, string[] names)
    {
        foreach (Option<string[]> option in command.Options.OfType<Option<string[]>>())
        {
            if (parsed.GetResult(option) is { Implicit: false } result && result.Tokens.Count != 1)
            {
                return result.Tokens.Count == 0
                    ? new Request.Misread($"{option.Name} needs a value.", $"Write {ValueExample(option.Name)}.")
                    : new Request.Misread($"{option.Name} is given {result.Tokens.Count} times.", "Give it once.");
            }
        }

        if (parsed.GetValue(Unit) is [not ("in" or "mm"), ..] and [var unit, ..] && command.Options.Contains(Unit) && command != Trace)
        {
            return new Request.Misread($"--unit knows in and mm, not '{unit}'.", "Write --unit in or --unit mm.");
        }

        if (command == Check && SettingsArguments.AreUsed(parsed))
        {
            return null;
        }

        if (command == Host)
        {
            return names.Length == 0 ? null : new Request.Misread($"host takes no name; '{names[0]}' is one too many.", "Jobs and drawings come in requests.");
        }

        if (names.Length == 0)
        {
            return command.Name switch
            {
                "new" => new Request.Misread("new needs the name of the file to write.", "Write toolpathforge new porch.toml."),
                "trace" => new Request.Misread("trace needs the name of a drawing.", "Write toolpathforge trace bracket.dxf."),
                "prove" => new Request.Misread("prove needs the name of a program.", "Write toolpathforge prove out/rafter-tail.nc --job porch.toml."),
                "list" => new Request.Misread("list needs to know what to show.", KindsAdvice),
                _ => new Request.Misread($"{command.Name} needs the name of a job file.", $"Write toolpathforge {command.Name} porch.toml."),
            };
        }

        if (names.Length > 1)
        {
            return new Request.Misread($"{command.Name} takes one name; '{names[1]}' is one too many.", "A name with spaces goes in quotes.");
        }

        if (names[0].Length == 0)
        {
            return new Request.Misread("The name given is empty.", $"toolpathforge {command.Name} --help shows how it is written.");
        }

        // Whatever else the library objects to, such as a value after a switch that takes none.
        return parsed.Errors is [var error, ..]
            ? new Request.Misread($"This command line cannot be read: {error.Message}", $"toolpathforge {command.Name} --help shows how it is written.")
            : null;
    }

    private static string KindsAdvice => $"Write toolpathforge list, then one of {string.Join(", ", ListCatalogue.Kinds)}.";

    private static string? One(ParseResult parsed, Option<string[]> option) => parsed.GetValue(option) is [var value, ..] ? value : null;

    // --board 1 1/2 comes as three words: the fraction would be taken for a name.
    private static Request.Misread? SplitSize(string[] args)
    {
        for (int i = 0; i + 2 < args.Length; i++)
        {
            string[] parts = args[i + 2].Split('/');
            if (args[i].StartsWith("--", StringComparison.Ordinal) && IsWhole(args[i + 1]) && parts.Length == 2 && Array.TrueForAll(parts, IsWhole))
            {
                return new Request.Misread($"{args[i]} {args[i + 1]} {args[i + 2]} comes as two sizes.", $"Put it in quotes: {args[i]} \"{args[i + 1]} {args[i + 2]}\".");
            }
        }

        return null;
    }

    private static bool IsWhole(string word) => word.Length > 0 && word.All(char.IsAsciiDigit);

    private static Request.Misread UnknownCommand(string word) =>
        new($"There is no command '{word}'.", Near(word, Verbs.Select(v => v.Name)) ?? "toolpathforge --help shows the commands.");

    private static Request.Misread UnknownOption(string word, Command command)
    {
        string name = word.Split('=', ':')[0];
        IEnumerable<Command> owners = command == Root ? Verbs : [command];
        if (owners.SelectMany(v => v.Options).Any(o => o.Name == name))
        {
            return new Request.Misread($"{name} stands before the command.", "Write it after the command and its file.");
        }

        return command == Root
            ? new Request.Misread($"There is no option '{name}'.", Near(name, Root.Options.Select(o => o.Name)) ?? "toolpathforge --help shows how it is used.")
            : new Request.Misread(
                $"{command.Name} has no option '{name}'.",
                Near(name, command.Options.Where(o => SettingsArguments.MayBeMeant(o, name)).Concat(Root.Options).Select(o => o.Name)) ?? $"toolpathforge {command.Name} --help shows them.");
    }

    private static string? Near(string word, IEnumerable<string> words) => Words.Nearest(word, words) is { } near ? $"Did you mean {near}?" : null;

    private static string ValueExample(string option) => option switch
    {
        "--out" => "--out out",
        "--job" => "--job porch.toml",
        "--unit" => "--unit in or --unit mm",
        "--kind" => "--kind down-cut",
        "--step" => "--step 1/2",
        "--diameter" => "--diameter 1/4",
        "--thickness" => "--thickness \"1 1/2\"",
        "--width" => "--width \"7 1/4\"",
        "--make" => "--make, then the id of a make of the job",
        "--layer" => "--layer outline",
        "--gap" or "--offset" => $"{option} 3mm",
        "--dxf" => "--dxf parallel.dxf",
        "--bit" => "--bit upcut-1/4",
        "--depth" or "--board" => $"{option} 38mm",
        _ => $"{option} and what it is to be",
    };

    private static bool IsOption(string word) => word.Length > 1 && word[0] == '-';

    private static Option<bool> Switch(string name, params string[] aliases) => new(name, aliases) { Arity = ArgumentArity.Zero };

    private static Option<string[]> Text(string name, params string[] aliases) => new(name, aliases) { Arity = ArgumentArity.ZeroOrMore, AllowMultipleArgumentsPerToken = false };

    private static Command Verb(string name, params Option[] options)
    {
        var command = new Command(name) { Names };
        command.TreatUnmatchedTokensAsErrors = false;
        foreach (Option option in options)
        {
            command.Options.Add(option);
        }

        return command;
    }

    private static RootCommand Tree()
    {
        var root = new RootCommand { TreatUnmatchedTokensAsErrors = false };
        root.Options.Clear();
        root.Directives.Clear();
        WantsHelp.Recursive = true;
        root.Options.Add(WantsHelp);
        root.Options.Add(WantsVersion);
        foreach (Command verb in Verbs)
        {
            root.Subcommands.Add(verb);
        }

        return root;
    }
}
