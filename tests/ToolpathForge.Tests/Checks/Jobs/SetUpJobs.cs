using ToolpathForge.Findings;
using ToolpathForge.Jobs;
using ToolpathForge.Planning;

namespace ToolpathForge.Tests.Checks.Jobs;

/// <summary>Jobs of one make as a person writes them, with rows of their own beside the shipped ones.</summary>
internal static class SetUpJobs
{
    /// <summary>A cedar bracket straight into the board: nothing wrong with it.</summary>
    internal const string Board = """
        format = 1
        name = "Set-up"
        unit = "in"
        machine = "desktop-400"
        dialect = "metric-centre"
        spoilboard = "12 mm"
        catalogues = ["mine.toml"]
        [[make]]
        id = "bracket"
        kind = "board-end"
        board = "1x6"
        bit = "upcut-1/4-long"
        stock = { material = "western-red-cedar", thickness = "25.4 mm", length = "30", on-bed = "14" }
        shape = { kind = "quarter-ellipse", form = "belly", run = "3 1/4", depth = "2 1/2" }
        cut = { overcut = "0.4 mm" }
        end = { allowance = "1/8", waste = "screwed" }
        """;

    /// <summary>A hardboard pattern for a rafter tail: nothing wrong with it.</summary>
    internal const string Plate = """
        format = 1
        name = "Set-up"
        unit = "in"
        machine = "desktop-400"
        dialect = "metric-centre"
        catalogues = ["mine.toml"]
        [[make]]
        id = "tail"
        kind = "pattern"
        board = "2x8"
        stock = { panel = "hardboard-1/4", thickness = "5.6 mm" }
        bit = "downcut-1/4"
        shape = { kind = "quarter-ellipse", form = "scoop", run = "7 1/2", depth = "4 1/4", end-cut = "10 deg", long-side = "top" }
        plate = { hold = "4", seat = "1 1/2", reach = "1/2" }
        cut = { tabs = 4, overcut = "0.3 mm" }
        """;

    /// <summary>Bits and machines that only these tests have; every figure is made up to be wrong in one way, or right.</summary>
    private static readonly string s_rows = string.Join('\n', (string[])
    [
        "format = 1", "unit = \"mm\"",
        BitRow("thin-76", 6.35, 32, 6.35, 76),
        BitRow("long-80", 6.35, 42, 6.35, 80),
        BitRow("short-shank", 6.35, 26, 6.35, 45.5),
        BitRow("stub", 6.35, 22, 6.35, 44),
        BitRow("thin-3", 3, 12, 3, 50),
        BitRow("thick-shank", 4, 20, 6.35, 76),
        BitRow("thin-shank", 12.7, 20, 6.35, 76),
        BitRow("edge-only", 6.35, 28, 6.35, 76, plunges: false),
        BitRow("wheel", 50, 28, 12.7, 90),
        MachineRow("tall", opening: 260, travelZ: 250),
        MachineRow("low", opening: 30, travelZ: 80),
        MachineRow("snug", opening: 70, travelZ: 80),
        MachineRow("lost", homing: false),
        MachineRow("sliding", movingBed: true),
        MachineRow("short-z", travelZ: 20, opening: 200),
        MachineRow("limp", stiffness: 2),
    ]);

    /// <summary>Reads and plans a job; what the reader says comes first.</summary>
    internal static (Plan? Plan, Finding[] Findings) Plan(string text)
    {
        JobReading reading = JobReader.Read(text, "set-up.toml", _ => s_rows);
        Plan? plan = reading.Job is { } job ? Planner.Plan(job, cancel: CancellationToken.None) : null;
        return (plan, [.. reading.Findings, .. plan?.Findings ?? []]);
    }

    /// <summary>A job with some of its text replaced; each piece must be there.</summary>
    internal static string With(string text, params (string From, string To)[] changes)
    {
        foreach ((string from, string to) in changes)
        {
            Assert.Contains(from, text, StringComparison.Ordinal);
            text = text.Replace(from, to, StringComparison.Ordinal);
        }

        return text;
    }

    private static string BitRow(string id, double diameter, double flutes, double shank, double overall, bool plunges = true) => FormattableString.Invariant($"""
        [[bit]]
        id = "{id}"
        name = "a {id} bit"
        kind = "straight"
        substance = "carbide"
        diameter = {diameter}
        flute-length = {flutes}
        flutes = 2
        shank = {shank}
        overall-length = {overall}
        max-speed = 24000
        can-plunge = {(plunges ? "true" : "false")}
        ramp-angle = "{(plunges ? 5 : 0)} deg"
        basis = "user"
        source = "made up for a test"
        """);

    private static string MachineRow(
        string id, double opening = 120, double travelZ = 110, bool homing = true, bool movingBed = false, double stiffness = 80) => FormattableString.Invariant($"""
        [[machine]]
        id = "{id}"
        name = "a {id} machine"
        travel-x = 800
        travel-y = 800
        travel-z = {travelZ}
        min-speed = 8000
        max-speed = 24000
        max-feed = 6000
        max-plunge = 2000
        acceleration = 500
        pass-depth = 0.5
        chip-share = "1/3"
        stiffness = {stiffness}
        mass = 60
        half-footprint = 450
        opening = {opening}
        collet = 12.7
        homing = {(homing ? "true" : "false")}
        moving-bed = {(movingBed ? "true" : "false")}
        switched-by-hand = false
        basis = "user"
        source = "made up for a test"
        """);
}
