using System.Runtime.InteropServices;
using ToolpathForge.Cli;

using var interrupted = new CancellationTokenSource();
bool asked = false;

// The first signal asks the work to end; a second one ends the process at once, which leaves no half-written output either.
void Interrupt(PosixSignalContext context)
{
    if (!asked)
    {
        asked = true;
        context.Cancel = true;
        interrupted.Cancel();
    }
}

using PosixSignalRegistration keyboard = PosixSignalRegistration.Create(PosixSignal.SIGINT, Interrupt);
using PosixSignalRegistration ended = PosixSignalRegistration.Create(PosixSignal.SIGTERM, Interrupt);
return CommandLine.Run(args, Terminal.OfProcess(), interrupted.Token);
