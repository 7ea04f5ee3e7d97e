using System.Text;

namespace ToolpathForge.Cli;

/// <summary>Where the command prints.</summary>
/// <param name="Out">Results.</param>
/// <param name="Error">Findings and progress.</param>
/// <param name="ErrorIsScreen">Whether a person watches <paramref name="Error"/>, so that progress is of use.</param>
/// <param name="Colour">Whether findings may be coloured.</param>
internal sealed record Terminal(TextWriter Out, TextWriter Error, bool ErrorIsScreen, bool Colour)
{
    /// <summary>
    /// The streams of the process, always in UTF-8 and with plain line feeds, so that what is piped has the same bytes everywhere.
    /// Colour is left out when piped and when NO_COLOR is set to anything (common practice of terminal programs).
    /// </summary>
    internal static Terminal OfProcess()
    {
        bool screen = !Console.IsErrorRedirected;
        bool plain = !string.IsNullOrEmpty(Environment.GetEnvironmentVariable("NO_COLOR")) || Environment.GetEnvironmentVariable("TERM") == "dumb";
        return new Terminal(Writer(Console.OpenStandardOutput()), Writer(Console.OpenStandardError()), screen, screen && !plain);
    }

    private static StreamWriter Writer(Stream stream) => new(new PrintedStream(stream), new UTF8Encoding(false)) { NewLine = "\n" };
}
