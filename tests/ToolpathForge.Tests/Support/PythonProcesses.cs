using System.Collections.Concurrent;
using System.Diagnostics;
using System.Text;
using System.Text.Json;

namespace ToolpathForge.Tests.Support;

/// <summary>
/// Interpreters that answer one question after another (tests/outside/ask.py): a library such as ezdxf takes longer to load than most questions take to answer.
/// There are as many as tests that ask at the same time; they end with the test process, whose end closes their input.
/// </summary>
internal static class PythonProcesses
{
    private static readonly ConcurrentBag<Process> s_idle = [];

    /// <summary>Runs a script with text as its input. A missing module is named instead.</summary>
    internal static (int Exit, string Output, string Error, string? Missing) Ask(string interpreter, string script, string input, string[] modules)
    {
        if (!s_idle.TryTake(out Process? process))
        {
            var start = new ProcessStartInfo(interpreter, [Repo.Path("tests", "outside", "ask.py")])
            {
                RedirectStandardInput = true,
                RedirectStandardOutput = true,
                StandardOutputEncoding = new UTF8Encoding(false),
            };
            process = Process.Start(start)!;
        }

        byte[] text = Encoding.UTF8.GetBytes(input);
        Stream pipe = process.StandardInput.BaseStream;
        pipe.Write(Encoding.UTF8.GetBytes(JsonSerializer.Serialize(new { script, modules, bytes = text.Length }) + "\n"));
        pipe.Write(text);
        pipe.Flush();
        string line = process.StandardOutput.ReadLine() ?? throw new InvalidOperationException($"The interpreter has ended in the middle of {script}.");
        s_idle.Add(process);
        using JsonDocument said = JsonDocument.Parse(line);
        return said.RootElement.TryGetProperty("missing", out JsonElement missing)
            ? (1, "", "", missing.GetString())
            : (said.RootElement.GetProperty("exit").GetInt32(), said.RootElement.GetProperty("output").GetString()!, said.RootElement.GetProperty("error").GetString()!, null);
    }
}
