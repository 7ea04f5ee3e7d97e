using ToolpathForge.Findings;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;
using ToolpathForge.Shapes;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Shapes;

/// <summary>Jobs of one make with a shape as a person would write it, read by the job reader.</summary>
internal static class ShapeJobs
{
    /// <summary>The three widths that every shape is tried on: dressed 3 1/2, 5 1/2 and 9 1/4 in.</summary>
    internal static readonly string[] Boards = ["2x4", "2x6", "2x10"];

    /// <summary>Every shape, each as scoop and belly where it comes both ways, by shares of the width, so that one answer serves every board.</summary>
    internal static readonly string[] Shares =
    [
        "kind = 'arc', form = 'scoop', run = '0.7 w', depth = '0.4 w'",
        "kind = 'arc', form = 'belly', run = '0.7 w', depth = '0.4 w'",
        "kind = 'arc', form = 'scoop', run = '0.6 w', depth = '0.5 w', radius = '1.1 w', end-cut = '10 deg'",
        "kind = 'arc', form = 'belly', run = '0.4 w', depth = '0.6 w', end-cut = '10 deg', long-side = 'bottom'",
        "kind = 'cove', form = 'scoop', radius = '0.45 w'",
        "kind = 'cove', form = 'belly', radius = '0.5 w', end-cut = '12 deg'",
        "kind = 'straight', run = '0.6 w', depth = '0.4 w', end-cut = '5 deg'",
        "kind = 'splay', length = '0.7 w', angle = '40 deg'",
        "kind = 'ogee', form = 'scoop', run = '0.8 w', depth = '0.5 w'",
        "kind = 'ogee', form = 'belly', run = '0.8 w', depth = '0.5 w', first-share = 0.4, end-cut = '10 deg'",
        "kind = 'ogee', form = 'scoop', run = '0.7 w', depth = '0.6 w', turn = '80 deg'",
        "kind = 'ellipse-ogee', form = 'scoop', run = '0.9 w', depth = '0.6 w'",
        "kind = 'ellipse-ogee', form = 'belly', run = '0.9 w', depth = '0.6 w', first-share = 0.6",
        "kind = 'step', run = '0.5 w', depth = '0.4 w', fillet = '0.1 w'",
        "kind = 'shouldered', form = 'scoop', shoulder = '0.15 w', run = '0.6 w', depth = '0.5 w', end-cut = '10 deg'",
        "kind = 'shouldered', form = 'belly', shoulder = '0.15 w', run = '0.6 w', depth = '0.6 w', fillet = '0.08 w'",
        "kind = 'scallop', form = 'scoop', run = '0.8 w', depth = '0.6 w'",
        "kind = 'scallop', form = 'belly', run = '0.8 w', depth = '0.6 w', fillet = '0.06 w'",
        "kind = 'eased-bevel', form = 'scoop', run = '0.7 w', depth = '0.5 w', radius = '0.2 w'",
        "kind = 'eased-bevel', form = 'belly', run = '0.7 w', depth = '0.5 w', radius = '0.2 w', end-cut = '10 deg'",
        """
        kind = 'composed', part = [
            { kind = 'straight', depth = '0.12 w' }, { kind = 'fillet', radius = '0.06 w' },
            { kind = 'ellipse', form = 'belly', run = '0.4 w', depth = '0.2 w' },
            { kind = 'arc', form = 'scoop', run = '0.2 w', depth = '0.2 w' },
            { kind = 'straight', length = '0.1 w' },
            { kind = 'fillet', radius = '0.04 w' },
        ]
        """,
        """
        kind = 'drawn', depth = '0.5 w', curve = [
            { kind = 'line', x = 0, y = 10 },
            { kind = 'bezier', x1 = 0, y1 = 30, x2 = 40, y2 = 20, x = 60, y = 40 },
            { kind = 'arc', x = 80, y = 60, radius = 25, form = 'scoop' },
        ]
        """,
        """
        kind = 'drawn', run = '0.8 w', depth = '0.5 w', end-cut = '10 deg', curve = [
            { kind = 'arc', x = 3, y = 2, radius = 4, form = 'scoop' },
            { kind = 'ellipse', x = 6, y = 4, radius-x = 3, radius-y = 2, tilt = '20 deg', form = 'belly' },
        ]
        """,
        "kind = 'drawing', file = '@tail', depth = '0.5 w'",
        "kind = 'drawing', file = '@tail', run = '0.8 w', depth = '0.5 w', end-cut = '10 deg'",
    ];

    /// <summary>The text of a job.</summary>
    internal static string Text(string shape, string board = "2x6", string kind = "pattern") => kind == "pattern"
        ? $$"""
            format = 1
            name = "Shapes"
            unit = "in"
            machine = "desktop-400"
            dialect = "metric-centre"
            [[make]]
            id = "tail"
            kind = "pattern"
            board = "{{board}}"
            stock = { panel = "hardboard-1/4", thickness = "5.6 mm" }
            bit = "downcut-1/4"
            plate = { hold = "{{(board == "2x4" ? "5 1/2" : "3 1/2")}}", seat = "1 1/2", reach = "1/2" }
            cut = { tabs = 3 }
            shape = { {{shape}} }
            """
        : $$"""
            format = 1
            name = "Shapes"
            unit = "in"
            machine = "desktop-400"
            dialect = "metric-centre"
            [[make]]
            id = "tail"
            kind = "board-end"
            board = "{{board}}"
            stock = { material = "western-red-cedar", thickness = "18 mm", length = "30", on-bed = "14" }
            bit = "upcut-1/4-long"
            end = { waste = "chips" }
            shape = { {{shape}} }
            """;

    /// <summary>Holds one drawing, of a line and a spline, in some unit.</summary>
    private sealed class Tail : IDrawings
    {
        public DrawingAnswer Find(DrawingRequest request) => new(
            new DrawingContents(
                false,
                ["0"],
                [],
                [new Outline([SplineCurve.BSpline(3, [new(9, 7), new(6, 7), new(5, 3), new(2, 4), new(2, 2)], [0, 0, 0, 0, 1, 2, 2, 2, 2]), new LineCurve(new(2, 2), new(2, 1))], false)]),
            []);
    }

    /// <summary>The job, which must be read without a word.</summary>
    internal static Job Read(string shape, string board = "2x6", string kind = "pattern")
    {
        JobReading reading = JobReader.Read(Text(shape, board, kind), "shapes.toml", _ => null, new Tail());
        Assert.Empty(reading.Findings.Select(f => ToolpathForge.Wording.FindingText.Word(f, ToolpathForge.Measures.LengthUnit.Inch).ToString()));
        return reading.Job!;
    }

    /// <summary>The profile, or what is said instead.</summary>
    internal static (Profile? Profile, IReadOnlyList<Finding> Findings) Scale(string shape, string board = "2x6")
    {
        Make make = Read(shape, board).Makes[0];
        var findings = new List<Finding>();
        return (make.Shape.Shape.Scale(make.Shape, make.DesignWidth, findings), findings);
    }

    /// <summary>The profile, which must be made without a word.</summary>
    internal static Profile Made(string shape, string board = "2x6")
    {
        (Profile? profile, IReadOnlyList<Finding> findings) = Scale(shape, board);
        Assert.Empty(findings);
        return profile!;
    }
}
