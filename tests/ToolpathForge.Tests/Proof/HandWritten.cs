using System.Globalization;
using ToolpathForge.Proof;

namespace ToolpathForge.Tests.Proof;

/// <summary>Programs written by hand for the proof's tests: a plate of hardboard 6 thick whose upper face is Z0, cut with a 6.35 bit down to 0.3 below it.</summary>
internal sealed class HandWritten
{
    internal const double R = 3.175;
    internal const double Thickness = 6;
    internal const double Clear = 10;
    internal const double Deep = -6.3;

    private readonly List<string> lines = [];
    private double x, y, z;

    internal int Decimals { get; init; } = 4;

    internal string Text => string.Join('\n', lines) + "\n";

    internal IReadOnlyList<string> Lines => lines;

    internal HandWritten Header(string spindle = "M3 S18000")
    {
        Say("%", "(plate)", "G21 G90 G17 G94", "T1 M6", spindle, "G4 P3", $"G0 Z{N(Clear)}");
        z = Clear;
        return this;
    }

    internal HandWritten Footer()
    {
        Say($"G0 Z{N(Clear)}", "M5", "M30", "%");
        return this;
    }

    internal HandWritten Say(params string[] text)
    {
        lines.AddRange(text);
        return this;
    }

    internal HandWritten Rapid(double toX, double toY)
    {
        Say($"G0 X{N(toX)} Y{N(toY)}");
        (x, y) = (toX, toY);
        return this;
    }

    internal HandWritten RapidZ(double toZ)
    {
        Say($"G0 Z{N(toZ)}");
        z = toZ;
        return this;
    }

    internal HandWritten Line(double toX, double toY, double? toZ = null, double? feed = null)
    {
        z = toZ ?? z;
        Say($"G1 X{N(toX)} Y{N(toY)}" + (toZ is { } h ? $" Z{N(h)}" : "") + (feed is { } f ? $" F{N(f)}" : ""));
        (x, y) = (toX, toY);
        return this;
    }

    internal HandWritten Arc(bool clockwise, double toX, double toY, double centerX, double centerY)
    {
        Say($"{(clockwise ? "G2" : "G3")} X{N(toX)} Y{N(toY)} I{N(centerX - Round(x))} J{N(centerY - Round(y))}");
        (x, y) = (toX, toY);
        return this;
    }

    internal string N(double v) => Round(v).ToString("0." + new string('#', Decimals), CultureInfo.InvariantCulture);

    internal double Round(double v) => Math.Round(v, Decimals) + 0.0;

    /// <summary>What the plates are held against.</summary>
    internal static Target Target(params TargetPiece[] pieces) => new()
    {
        Pieces = [.. pieces],
        Stock = [TargetStock.Box(-40, -40, 260, 180, -Thickness, 0)],
        Floor = Deep,
        ClearHeight = Clear,
        Travel = new TargetTravel(new(-50, -50, -20), new(400, 300, 40)),
        MaxFeed = 2000,
        MaxPlungeFeed = 400,
        MinSpeed = 8000,
        MaxSpeed = 24000,
        DwellAfterStart = 2,
        Tools = [new TargetTool { Number = 1, Diameter = 2 * R, MaxRampAngle = 5, Flutes = 2, MinChipLoad = 0.02, MaxChipLoad = 0.08 }],
        Tolerance = 0.01,
        Increment = 1e-4,
    };

    // ------------------------------------------------------------------ a rectangle, 120 x 80, from (0, 0)

    internal const double Wide = 120, High = 80;

    /// <summary>Tabs 4 wide, 1.5 high, with ramps, on the lower, right and upper edge.</summary>
    internal static TargetPiece Rectangle(bool tabs)
    {
        TargetEdge[] loop = [new LineEdge(new(0, 0), new(Wide, 0)), new LineEdge(new(Wide, 0), new(Wide, High)), new LineEdge(new(Wide, High), new(0, High)), new LineEdge(new(0, High), new(0, 0))];
        return new TargetPiece
        {
            Name = "rectangle",
            Loops = [[.. loop]],
            Bottom = -Thickness,
            Top = 0,
            Tabs = tabs ? [.. Enumerable.Range(0, 3).Select(e => Tab(e, loop[e].Start.DistanceTo(loop[e].End) / 2))] : [],
        };
    }

    /// <summary>1.8 mm of height over 22 mm: 4.7 degrees.</summary>
    internal const double TabTop = -4.5, TabHalf = 2, TabSlope = 22;

    private static TargetTab Tab(int edge, double at) =>
        new(0, edge, at - TabHalf, at + TabHalf, at - TabHalf - R - TabSlope - 1, at + TabHalf + R + TabSlope + 1, TabTop);

    /// <summary>
    /// Round the rectangle outside, part on the right of the travel (climb) or on its left: ramped down along the edge at X0, two depths.
    /// </summary>
    internal static HandWritten RectangleProgram(bool tabs, bool climb = false, int decimals = 4)
    {
        var p = new HandWritten { Decimals = decimals };
        p.Header().Rapid(P(6, climb).X, P(6, climb).Y).RapidZ(1);
        p.Say("G1 Z0 F300");
        p.z = 0;
        foreach (double depth in (double[])[-3, Deep])
        {
            // Down along the straight without a tab: 80 long, 3.3 at most: 2.4 degrees.
            p.Line(P(7, climb).X, P(7, climb).Y, depth, 1200);
            p.Round(climb, 0);
            for (int side = 0; side < 3; side++)
            {
                p.Side(side, climb, tabs && depth < TabTop, depth);
                p.Round(climb, side + 1);
            }
        }

        p.Side(3, climb, tab: false, Deep);
        return p.Footer();
    }

    /// <summary>Start of the straight along a side, 3.175 outside it; counter-clockwise, or clockwise for a climb cut outside.</summary>
    private static (double X, double Y) P(int corner, bool climb)
    {
        (double X, double Y)[] straight = [(0, -R), (Wide, -R), (Wide + R, 0), (Wide + R, High), (Wide, High + R), (0, High + R), (-R, High), (-R, 0)];
        return climb ? Mirror(straight[corner % 8]) : straight[corner % 8];
    }

    /// <summary>The same way round, seen in a mirror: x to 120 - x.</summary>
    private static (double X, double Y) Mirror((double X, double Y) p) => (Wide - p.X, p.Y);

    private void Round(bool climb, int corner)
    {
        (double X, double Y)[] corners = [(0, 0), (Wide, 0), (Wide, High), (0, High)];
        (double X, double Y) c = corners[corner % 4];
        c = climb ? Mirror(c) : c;
        (double X, double Y) to = P(corner * 2 % 8, climb);
        Arc(climb, to.X, to.Y, c.X, c.Y);
    }

    private void Side(int side, bool climb, bool tab, double depth)
    {
        (double X, double Y) a = P(side * 2, climb), b = P((side * 2) + 1, climb);
        double length = Math.Abs(a.X - b.X) + Math.Abs(a.Y - b.Y);
        if (tab)
        {
            foreach ((double at, double h) in (ReadOnlySpan<(double, double)>)[(-TabHalf - R - TabSlope, depth), (-TabHalf - R, TabTop), (TabHalf + R, TabTop), (TabHalf + R + TabSlope, depth)])
            {
                double s = ((length / 2) + at) / length;
                Line(a.X + ((b.X - a.X) * s), a.Y + ((b.Y - a.Y) * s), h);
            }
        }

        Line(b.X, b.Y);
    }
}
