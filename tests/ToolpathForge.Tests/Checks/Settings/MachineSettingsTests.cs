using CsCheck;
using ToolpathForge.Catalogue;
using ToolpathForge.Checks;
using ToolpathForge.Checks.Settings;
using ToolpathForge.Cutting;
using ToolpathForge.Findings;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Checks.Settings;

/// <summary>Settings of a machine before anything spins: cases worked by hand, one wrong thing at a time, and moments by statics.</summary>
public class MachineSettingsTests
{
    private static readonly Material s_fir = Catalogues.Shipped.Materials.Find("douglas-fir")!;
    private static readonly Material s_cedar = Catalogues.Shipped.Materials.Find("western-red-cedar")!;
    private static readonly Machine s_bed = Catalogues.Shipped.Machines.Find("desktop-400")!;
    private static readonly Bit s_long = Catalogues.Shipped.Bits.Find("upcut-1/4-long")!;

    // A 1 in cedar board cut through with 0.4 below it, on a spoilboard of 12: everything keeps its limits.
    private static MachineQuestion Right => new(s_long, s_cedar, s_bed with { Stiffness = 500 }, 25.8) { Overcut = 0.4, Spoilboard = 12, StickOut = 32 };

    private static SettingRow Row(SettingsAnswer answer, string setting) => answer.Rows.Single(r => r.Setting == setting);

    [Fact]
    public void A_right_set_up_has_no_findings()
    {
        SettingsAnswer answer = MachineSettings.Of(Right);
        Assert.Empty(answer.Findings);
        Assert.All(answer.Rows, r => Assert.Equal(Verdict.Fits, r.Verdict));
        Assert.Equal(6.2, Row(answer, "nut above stock").Is!.Value.Value, 9);
        Assert.Equal(11.6, Row(answer, "spoilboard left").Is!.Value.Value, 9);
    }

    // A 4x8 of fir, 3 1/2 in thick and half a millimetre more: a 1/4 in bit 76 long, 19 of it in the collet, sticks out 57.
    [Fact]
    public void A_bit_that_cannot_stick_out_far_enough_is_refused()
    {
        Bit bit = TestJobs.Bit(6.35, 28.6) with { OverallLength = 76 };
        SettingsAnswer answer = MachineSettings.Of(new MachineQuestion(bit, s_fir, s_bed, 89.4));
        SettingRow row = Row(answer, "stick-out");

        // The nut stays 3 mm above the stock (common practice).
        Assert.Equal((57.0, 92.4), (row.Is!.Value.Value, row.AtLeast!.Value.Value));
        Assert.Equal("stick-out-too-short", row.Finding!.Kind.Code);
        Assert.Equal(19, Row(answer, "grip").Is!.Value.Value, 9);
    }

    // A 2x12 of fir at 480 kg/m³, 16 ft, 0.4 m on the bed, in the rounded figures 38.1 x 286 x 4,880: m g (l/2 - 0.4) = 511 N·m; a machine of 30 kg on half a
    // footprint of 0.25 m stands against 74. A 2x10 of 12 ft (38.1 x 235 x 3,660): 221.
    [Theory]
    [InlineData(286, 4880, 511)]
    [InlineData(235, 3660, 221)]
    public void An_overhanging_board_turns_as_statics_say(double width, double length, double moment)
    {
        Assert.Equal(moment, Tipping.Moment(Tipping.Mass(480, 38.1, width, length), length, 400), 0.6);
        Assert.Equal(73.55, Tipping.Resists(30, 250), 0.01);
        SettingsAnswer answer = MachineSettings.Of(Right with
        {
            Material = s_cedar with { Density = 480 },
            Depth = 38.1,
            Overcut = 0,
            Overhang = new Overhang(length, width, 400, Stand: false) { Moisture = 12 },
        });
        Assert.Contains(answer.Findings, f => f.Kind.Code == "board-tips-machine");
        SettingRow row = Row(answer, "tipping");
        Assert.Equal(moment, row.Is!.Value.Value, 0.6);
        Assert.Equal(73.55 / 2, row.AtMost!.Value.Value, 0.01);
    }

    // The same moment from thin slices of the board, each with its own lever about the edge of the bed.
    [Fact]
    public void A_moment_is_the_sum_over_slices() => Gen.Select(Gen.Double[1, 40], Gen.Double[500, 6000], Gen.Double[0, 0.49]).Sample((mass, length, share) =>
    {
        const int Slices = 2000;
        double onBed = share * length;
        double sum = Enumerable.Range(0, Slices).Sum(i => mass / Slices * Tipping.Gravity * (((i + 0.5) / Slices * length) - onBed) / 1000);

        // The midpoint rule is exact for a lever that grows evenly; 2,000 sums of at most 40 kg, 6 m round to far less than this.
        Assert.Equal(sum, Tipping.Moment(mass, length, onBed), 1e-6);
    });

    public static TheoryData<string, string> Wrong => new()
    {
        { "edges too short", "bit-too-short shank-in-cut" },
        { "edges short, shank thin", "edges-shorter-than-cut" },
        { "shank too thick", "shank-too-thick" },
        { "grip", "grip-too-short" },
        { "stick-out", "stick-out-too-short" },
        { "nut", "nut-too-low" },
        { "flutes", "flutes-in-collet" },
        { "too far out", "stick-out-long" },
        { "pass", "pass-too-deep" },
        { "ramp only", "bit-only-ramps" },
        { "no way down", "bit-cannot-plunge" },
        { "opening", "opening-too-low" },
        { "spoilboard", "spoilboard-thin" },
        { "too slow", "speed-outside-machine chip-too-thick" },
        { "marking", "speed-above-bit" },
        { "rim", "speed-too-high-for-size" },
        { "feed", "feed-outside-machine" },
        { "plunge", "plunge-outside-machine" },
        { "thin chip", "chip-too-thin" },
        { "thick chip", "chip-too-thick" },
        { "light finish", "finish-chip-thin" },
        { "frame", "finish-pushed-aside" },
        { "tips", "board-tips-machine" },
        { "moving bed", "moving-bed-overhang" },
        { "form", "bit-wrong-form" },
    };

    [Theory]
    [MemberData(nameof(Wrong))]
    public void One_wrong_thing_is_told_and_nothing_else(string what, string codes)
    {
        MachineQuestion q = Right;
        Machine machine = q.Machine;
        q = what switch
        {
            "edges too short" => q with { Bit = s_long with { FluteLength = 25 } },
            "edges short, shank thin" => q with { Bit = s_long with { FluteLength = 25, Shank = 5.9 } },
            "shank too thick" => q with { Bit = s_long with { Shank = 8 } },
            "grip" => q with { Bit = s_long with { OverallLength = 50 } },
            "stick-out" => q with { StickOut = 25 },
            "nut" => q with { StickOut = 28 },
            "flutes" => q with { StickOut = 31.5 },
            "too far out" => q with { StickOut = 50, Clearance = 5, Machine = machine with { Opening = 37.4 + 5 + 5 + 25.8 + 48 } },
            "pass" => q with { PassDepth = 4 },
            "ramp only" => q with { Bit = s_long with { CanPlunge = false } },
            "no way down" => q with { Bit = s_long with { CanPlunge = false, RampAngle = 0 } },
            "opening" => q with { Machine = machine with { Opening = 37 } },
            "spoilboard" => q with { Spoilboard = 6.3 },
            "too slow" => q with { Speed = 6000, Feed = 3900 },
            "marking" => q with { Bit = s_long with { MaxSpeed = 15000 }, Speed = 16000 },
            "rim" => q with { Bit = s_long with { Diameter = 50, MaxSpeed = 30000 }, Speed = 24000, PassDepth = 3 },
            "feed" => q with { Machine = machine with { MaxFeed = 1500 }, Feed = 1890, Plunge = 400 },
            "plunge" => q with { Plunge = 1300 },
            "thin chip" => q with { Feed = 1000 },
            "thick chip" => q with { Speed = 8000, Feed = 3900, Machine = machine with { Stiffness = 1e4 } },
            "light finish" => q with { Allowance = 0.1 },
            "frame" => q with { Machine = s_bed },
            "tips" => q with { Overhang = new Overhang(3000, 140, 400, Stand: false) },
            "moving bed" => q with { Machine = machine with { MovingBed = true }, Overhang = new Overhang(600, 140, 400, Stand: false) },
            "form" => q with { Bit = s_long with { Kind = BitKind.Ball } },
            _ => throw new ArgumentException(what, nameof(what)),
        };
        SettingsAnswer answer = MachineSettings.Of(q);
        Assert.Equal(codes, string.Join(' ', answer.Findings.Select(f => f.Kind.Code)
            .Where(c => what is not ("rim" or "too slow") || c is not ("finish-pushed-aside" or "chip-too-thin" or "finish-chip-thin"))));
    }

    [Fact]
    public void A_stand_carries_the_board() =>
        Assert.Empty(MachineSettings.Of(Right with { Overhang = new Overhang(3000, 140, 400, Stand: true) }).Findings);

    // Finishing passes as deep as the advice says push bit and frame aside by just a third of what roughing leaves.
    [Fact]
    public void The_advised_finishing_pass_pushes_by_a_third_of_the_allowance()
    {
        MachineQuestion q = Right with { Machine = s_bed };
        Finding finding = MachineSettings.Of(q).Findings.Single(f => f.Kind.Code == "finish-pushed-aside");
        double step = finding.Args.Single(a => a.Name == "step").Quantity!.Value.Value;
        var feeds = Feeds.For(q.Bit, q.Material, q.Machine, 25.8 / 9, null, null);
        double chip = SideLoad.ThickestChip(feeds.ChipLoad(2), 0.5, 6.35);
        double force = SideLoad.Force(q.Material.CuttingForce, step, chip);
        Assert.Equal(0.5 / 3, SideLoad.GivingWay(force, 25.8 + 3, q.Bit, q.Machine.Stiffness), 1e-9);
    }

    // A quarter-inch bit that takes 0.1 mm engages over x = 0.1/6.35 of its width: h = 2·fz·√(x(1 - x)), a quarter of the feed a tooth (any machining handbook; 0.249 worked by hand).
    // The feed a tooth is 1,890/(16,000 x 2) = 0.0591 mm, so the chip 0.0147 mm: less than an edge in use is round (10 to 20 µm, from memory), though the chip load is right.
    [Fact]
    public void A_light_finish_rubs_though_its_chip_load_is_right()
    {
        SettingsAnswer answer = MachineSettings.Of(Right with { Allowance = 0.1 });
        Assert.Null(Row(answer, "chip load").Finding);
        SettingRow row = Row(answer, "chip, finish");
        Assert.Equal(0.0147, row.Is!.Value.Value, 1e-4);
        Assert.Equal("finish-chip-thin", row.Finding!.Kind.Code);
        Assert.Null(Row(MachineSettings.Of(Right with { Allowance = 0.3 }), "chip, finish").Finding);
    }

    // What a check says without a job is what a job is cut with.
    [Fact]
    public void Speeds_and_feeds_are_those_of_a_job() => Gen.Select(Gen.Double[3, 13], Gen.Double[4, 60], Gen.Double[0.05, 1], Gen.Double[500, 8000]).Sample((diameter, thickness, share, fastest) =>
    {
        Machine machine = TestJobs.Machine with { ChipShare = share, MaxFeed = fastest };
        Bit bit = TestJobs.Bit(diameter, 80);
        CutSettings cut = CutSettings.For(TestJobs.BoardEnd(TestJobs.Belly(), thickness: thickness, bit: bit), machine, 0);
        var feeds = Feeds.For(bit, TestJobs.Cedar, machine, cut.Steps[^1] / cut.Steps.Length, null, null);
        Assert.Equal((cut.Speed, cut.Feed, cut.Plunge), (feeds.Speed, feeds.Feed, feeds.Plunge(machine)));
        Assert.Equal(cut.ChipLoad, feeds.ChipLoad(bit.Flutes), 1e-12);
    });
}
