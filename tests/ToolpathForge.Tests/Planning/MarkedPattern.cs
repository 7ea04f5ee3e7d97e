using ToolpathForge.Jobs;

namespace ToolpathForge.Tests.Planning;

/// <summary>A pattern with everything that a pattern can have: three bits, holes, a slot, marks.</summary>
internal static class MarkedPattern
{
    internal static string Text { get; } = """
        format = 1
        name = "Boathouse porch"
        unit = "in"
        tolerance = "0.1 mm"
        machine = "desktop-400"
        dialect = "metric-centre"

        [[make]]
        id = "plate"
        kind = "pattern"
        board = "2x8"
        stock = { panel = "hardboard-1/4", thickness = "5.6 mm" }
        bit = "downcut-1/4"
        shape = { kind = "quarter-ellipse", form = "scoop", run = "7 1/2", depth = "4 1/4", end-cut = "10 deg", long-side = "top" }
        plate = { hold = "4", seat = "1 1/2", reach = "1/2" }
        cut = { tabs = 4 }
        marks = { bit = "v-60", height = "1/4", text = ["North side"] }

        [[make.opening]]
        name = "hanging"
        x = "10 1/2"
        y = "5"
        width = "5/8"

        [[make.opening]]
        name = "screw"
        x = "2"
        y = "-3/4"
        width = "1/4"

        [[make.opening]]
        name = "adjust"
        x = "6"
        y = "-3/4"
        to-x = "8"
        width = "3/8"

        [[make.opening]]
        name = "pin"
        x = "10"
        y = "-3/4"
        width = "1/8"
        bit = "upcut-1/8"
        """;

    internal static Job Job(string dialect = "metric-centre") => Read(Text.Replace("metric-centre", dialect, StringComparison.Ordinal));

    internal static Job Read(string text)
    {
        JobReading reading = JobReader.Read(text, "plate.toml", _ => null);
        Assert.Empty(reading.Findings);
        return reading.Job!;
    }
}
