using System.Reflection;
using ToolpathForge.Service;
using ToolpathForge.Service.Host;

namespace ToolpathForge.Cli;

/// <summary>The command, from its arguments to its exit code.</summary>
internal static class CommandLine
{
    /// <summary>Runs the command. No exception leaves it, and no stack trace is ever printed.</summary>
    internal static int Run(string[] args, Terminal terminal, CancellationToken cancel)
    {
        try
        {
            // The service is asked for by programs, which wait for its first reply: it does not wait for the reading of options that it has none of.
            int code = Answer(args is ["host"] ? new Request.Host() : Arguments.Read(args), terminal, cancel);
            terminal.Out.Flush();
            terminal.Error.Flush();
            return code;
        }
        catch (OperationCanceledException) when (cancel.IsCancellationRequested)
        {
            return Last(terminal, ExitCodes.Interrupted, "Interrupted. Nothing was half written.");
        }
        catch (PrintFault fault)
        {
            return Last(terminal, ExitCodes.Fault, $"problem: What is printed cannot be written: {fault.Message.TrimEnd('.')}.\n    Print to a screen, or to a file on a disk with space.");
        }
        catch (Exception fault)
        {
            return Last(
                terminal,
                ExitCodes.Fault,
                $"ToolpathForge has come upon a fault of its own and stopped; nothing was half written.\n    Please report it with the job file: {fault.GetType().Name}: {fault.Message}");
        }
    }

    private static int Answer(Request request, Terminal terminal, CancellationToken cancel)
    {
        switch (request)
        {
            case Request.ShowHelp help:
                terminal.Out.Write(Help.Of(help.Command));
                return ExitCodes.Fine;
            case Request.ShowVersion:
                terminal.Out.WriteLine("toolpathforge " + Version(typeof(CommandLine).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion));
                return ExitCodes.Fine;
            case Request.Complete complete:
                foreach (string word in complete.Words)
                {
                    terminal.Out.WriteLine(word);
                }

                return ExitCodes.Fine;
            case Request.Host:
                return HostServer.Run(Console.OpenStandardInput(), Console.OpenStandardOutput(), cancel);
            case Request.Misread misread:
                terminal.Error.WriteLine("problem: " + misread.Says);
                terminal.Error.WriteLine("    " + misread.Advice);
                return ExitCodes.Unusable;
        }

        (bool json, bool timings) = request switch
        {
            Request.Check check => (check.Json, check.Timings),
            Request.CheckSettings settings => (settings.Json, false),
            Request.Cut cut => (cut.Json, cut.Timings),
            Request.Draw draw => (draw.Json, draw.Timings),
            Request.Trace trace => (trace.Json, trace.Timings),
            Request.Prove prove => (prove.Json, prove.Timings),
            Request.Trial trial => (false, trial.Timings),
            Request.List list => (list.Json, false),
            _ => (false, false),
        };
        using var stages = new Stages(terminal);
        Report report = request switch
        {
            Request.New r => NewJob.Run(r.Path, r.Unit, cancel),
            Request.Check r => CheckJob.Run(r.Job, stages.Begin, cancel),
            Request.CheckSettings r => CheckSettings.Run(r.Hand, r.Options, r.Job, r.Unit, cancel),
            Request.Cut r => CutJob.Run(r.Job, r.Folder, stages.Begin, cancel, r.Replace),
            Request.Draw r => DrawJob.Run(r.Job, r.Folder, r.Family, r.Step, stages.Begin, cancel, r.Replace),
            Request.Trace r => TraceDrawing.Run(r.Drawing, r.Options, stages.Begin, cancel),
            Request.Prove r => ProveProgram.Run(r.File, r.Job, r.Make, stages.Begin, cancel),
            Request.Trial r => TrialJob.Run(r.Job, r.Make, r.Folder, stages.Begin, cancel, r.Replace),
            Request.List r => ListCatalogue.Run(r.What, r.Job, r.Unit, r.Filter, cancel),
            _ => throw new InvalidOperationException($"{request.GetType().Name} is not a use case."),
        };
        stages.Dispose();

        // With --json everything that was found is in the result itself; a second telling would only have to be filtered out again.
        if (json && report.Json is not null)
        {
            terminal.Out.Write(report.Json());
        }
        else
        {
            Layout.Remarks(report.Remarks, terminal.Error, terminal.Colour);
            terminal.Error.Flush();
            Layout.Sections(report.Sections, terminal.Out);
        }

        if (timings)
        {
            stages.Print(terminal.Error);
        }

        return report.ExitCode;
    }

    /// <summary>Version and commit as a person reads them out: "0.1.0 (commit 0123456)"; without the commit where it is built from no checkout.</summary>
    internal static string Version(string? informational) =>
        informational?.Split('+', 2) is [var version, var commit] ? $"{version} (commit {commit[..Math.Min(commit.Length, 7)]})" : informational ?? "unknown";

    /// <summary>Says one last thing, even when the streams themselves are what failed.</summary>
    private static int Last(Terminal terminal, int code, string says)
    {
        try
        {
            terminal.Error.WriteLine(says);
            terminal.Error.Flush();
        }
        catch (Exception e) when (e is IOException or ObjectDisposedException)
        {
            // Nobody listens any more; the exit code still tells.
        }

        return code;
    }
}
