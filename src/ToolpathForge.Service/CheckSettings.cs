using System.Collections.Immutable;
using ToolpathForge.Checks.Settings;
using ToolpathForge.Drawings;
using ToolpathForge.Findings;
using ToolpathForge.Measures;
using ToolpathForge.Plugin.Contract;
using ToolpathForge.Service.Files;
using ToolpathForge.Service.Telling;
using ToolpathForge.Service.Wire;

namespace ToolpathForge.Service;

/// <summary>An option of a check without a job.</summary>
/// <param name="Name">With its dashes.</param>
/// <param name="Says">What it means, a sentence.</param>
/// <param name="IsSwitch">Whether it stands alone, without a value.</param>
public sealed record SettingOption(string Name, string Says, bool IsSwitch);

/// <summary>
/// Says what the settings of a machine or a hand router may be, before anything spins. It needs no job, and writes nothing but a drawing that is asked for.
/// </summary>
public static class CheckSettings
{
    /// <summary>Options for a machine.</summary>
    public static ImmutableArray<SettingOption> MachineOptions { get; } = [.. SettingsReader.MachineOptions.Select(o => new SettingOption(o.Name, o.Says, o.IsSwitch))];

    /// <summary>Options for a hand router.</summary>
    public static ImmutableArray<SettingOption> HandOptions { get; } = [.. SettingsReader.HandOptions.Select(o => new SettingOption(o.Name, o.Says, o.IsSwitch))];

    /// <summary>Looks at settings.</summary>
    /// <param name="hand">Whether they are those of a hand router.</param>
    /// <param name="options">As written: the name with its dashes, and the value, or null for a switch; each once.</param>
    /// <param name="job">A job whose machine, unit and own catalogue files are to be used; null for none.</param>
    /// <param name="unit"><c>in</c> or <c>mm</c>, for bare numbers and for the answer; null for the job's, or inches.</param>
    /// <param name="cancel">Asked between files.</param>
    /// <exception cref="OperationCanceledException">Cancelled.</exception>
    public static Report Run(bool hand, ImmutableArray<(string Name, string? Text)> options, string? job, string? unit, CancellationToken cancel)
    {
        Loaded loaded = job is null ? new Loaded(null, [], []) : JobFile.Load(job, cancel);
        LengthUnit told = unit switch
        {
            "mm" => LengthUnit.Millimetre,
            "in" => LengthUnit.Inch,
            _ => loaded.Job?.Unit ?? LengthUnit.Inch,
        };
        List<Finding> findings = [.. loaded.Findings];
        IEnumerable<WrittenOption> written = options.Select(o => new WrittenOption(o.Name, o.Text));
        SettingsAnswer? answer = null;
        if (hand)
        {
            answer = SettingsReader.ReadHand(written, loaded.Catalogues, told, findings) is { } question ? HandSettings.Of(question) : null;
        }
        else
        {
            answer = SettingsReader.ReadMachine(written, loaded.Catalogues, loaded.Job?.Machine, told, findings) is { } question ? MachineSettings.Of(question) : null;
        }

        findings.AddRange(answer?.Findings ?? []);
        string? drawn = null;
        if (options.FirstOrDefault(o => o.Name == SettingsReader.Drawing).Text is { } file && answer is not null && HandDrawing.Of(answer, told) is { } drawing)
        {
            Finding? fault = NewFile.Write(file, SvgWriter.Write(drawing.Drawing, drawing.Scale), t => t.Contains($"<title>{drawing.Drawing.Title}</title>", StringComparison.Ordinal));
            drawn = fault is null ? file : null;
            findings.AddRange(fault is null ? [] : [fault]);
        }

        int exit = Teller.ExitCode(findings);
        var teller = new Teller(told);
        return new Report(
            exit,
            teller.Remarks(findings),
            [
                .. answer is null ? [] : SettingsTables.Of(answer, told),
                .. drawn is null ? (ImmutableArray<Section>)[] : [Section.Of($"Drawn to scale: {drawn}")],
            ],
            () => WireJson.Text(SettingsWire.Of(answer, hand, exit, teller.Wire(findings))));
    }
}
