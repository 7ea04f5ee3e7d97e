using System.CommandLine;
using System.CommandLine.Parsing;
using ToolpathForge.Service;

namespace ToolpathForge.Cli;

/// <summary>The options of <c>trace</c>.</summary>
internal static class TraceArguments
{
    private static readonly Option<string[]> s_layer = Text("--layer");
    private static readonly Option<string[]> s_gap = Text("--gap");
    private static readonly Option<string[]> s_bit = Text("--bit");
    private static readonly Option<string[]> s_offset = Text("--offset");
    private static readonly Option<string[]> s_dxf = Text("--dxf");

    /// <summary>The command with its options.</summary>
    /// <param name="make">Makes a command of its name and options.</param>
    /// <param name="shared">Options that other commands have as well.</param>
    internal static Command Verb(Func<string, Option[], Command> make, params Option[] shared) => make("trace", [s_layer, s_gap, s_bit, s_offset, s_dxf, .. shared]);

    /// <summary>What is asked, once the words are known to be sound.</summary>
    internal static Request Understand(ParseResult parsed, string drawing, string? unit, bool json, bool timings)
    {
        var options = new TraceOptions(One(parsed, s_layer), unit, One(parsed, s_gap), One(parsed, s_offset), One(parsed, s_dxf), One(parsed, s_bit));
        return (options.Offset, options.Dxf) switch
        {
            (not null, null) => new Request.Misread("--offset needs a file to write the parallel to.", "Add --dxf parallel.dxf."),
            (null, not null) => new Request.Misread("--dxf writes a parallel outline, and no distance is given.", "Add --offset 3mm."),
            _ => new Request.Trace(drawing, options, json, timings),
        };
    }

    private static string? One(ParseResult parsed, Option<string[]> option) => parsed.GetValue(option) is [var value, ..] ? value : null;

    private static Option<string[]> Text(string name) => new(name) { Arity = ArgumentArity.ZeroOrMore, AllowMultipleArgumentsPerToken = false };
}
