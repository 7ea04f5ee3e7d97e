using System.Collections.Immutable;
using ToolpathForge.Service;

namespace ToolpathForge.Cli;

/// <summary>What the command line asks for.</summary>
internal abstract record Request
{
    /// <summary>A starter job.</summary>
    internal sealed record New(string Path, string Unit) : Request;

    /// <summary>A check.</summary>
    internal sealed record Check(string Job, bool Json, bool Timings) : Request;

    /// <summary>A check of settings, without a job.</summary>
    internal sealed record CheckSettings(bool Hand, ImmutableArray<(string Name, string? Text)> Options, string? Job, string? Unit, bool Json) : Request;

    /// <summary>Programs.</summary>
    internal sealed record Cut(string Job, string Folder, bool Replace, bool Json, bool Timings) : Request;

    /// <summary>Drawings.</summary>
    internal sealed record Draw(string Job, string Folder, bool Family, string? Step, bool Replace, bool Json, bool Timings) : Request;

    /// <summary>The outlines of a drawing.</summary>
    internal sealed record Trace(string Drawing, TraceOptions Options, bool Json, bool Timings) : Request;

    /// <summary>A proof of a program.</summary>
    internal sealed record Prove(string File, string Job, string? Make, bool Json, bool Timings) : Request;

    /// <summary>A trial piece.</summary>
    internal sealed record Trial(string Job, string? Make, string Folder, bool Replace, bool Timings) : Request;

    /// <summary>A catalogue.</summary>
    internal sealed record List(string What, string? Job, string? Unit, ListFilter Filter, bool Json) : Request;

    /// <summary>The service for other programs, on standard input and output.</summary>
    internal sealed record Host : Request;

    /// <summary>Words that a shell may complete a line with.</summary>
    internal sealed record Complete(ImmutableArray<string> Words) : Request;

    /// <summary>Help, about one command or all.</summary>
    internal sealed record ShowHelp(string? Command) : Request;

    /// <summary>The version.</summary>
    internal sealed record ShowVersion : Request;

    /// <summary>The command line cannot be understood.</summary>
    /// <param name="Says">What is wrong.</param>
    /// <param name="Advice">What to type instead.</param>
    internal sealed record Misread(string Says, string Advice) : Request;
}
