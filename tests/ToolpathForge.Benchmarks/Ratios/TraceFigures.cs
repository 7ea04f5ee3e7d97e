using System.Diagnostics;
using System.Globalization;
using System.Text;
using ToolpathForge.Exchange.Reading;
using ToolpathForge.Service;

namespace ToolpathForge.Benchmarks.Ratios;

/// <summary>A drawing of 100,000 segments traced: its time against reading the file's numbers and doing nothing with them, and the memory that it takes.</summary>
internal static class TraceFigures
{
    /// <summary>The word by which this program is called to trace one file and print its largest memory, bytes.</summary>
    internal const string Alone = "trace-alone";

    private const int Segments = 100_000;
    private const double GoalTimes = 8;
    private const double GoalBase = 80 << 20;
    private const double GoalTimesFile = 6;

    internal static IEnumerable<Func<Figure>> All()
    {
        yield return () => Time("trace 100,000 lines and arcs", Pieces());
        yield return () => Time("trace polylines of 100,000 lines and arcs", Polylines());
        yield return () => Memory("memory of tracing 100,000 lines and arcs", Pieces());
        yield return () => Memory("memory of tracing polylines of 100,000", Polylines());
    }

    /// <summary>Traces one file as the command does.</summary>
    internal static int TraceAlone(string file)
    {
        Report report = TraceDrawing.Run(file, new Service.TraceOptions(null, null, null, null, null, null), null, CancellationToken.None);
        using Process self = Process.GetCurrentProcess();
        Console.WriteLine(self.PeakWorkingSet64.ToString(CultureInfo.InvariantCulture));
        return report.ExitCode;
    }

    private static Figure Time(string name, string text)
    {
        byte[] bytes = Encoding.ASCII.GetBytes(text);
        string file = Path.GetTempFileName();
        try
        {
            File.WriteAllBytes(file, bytes);
            Figure figure = Pairs.Ratio(name, "", 1, () => Traced(File.ReadAllBytes(file)), () => Bare(file));
            return figure with { Value = 1 / figure.Value, Baseline = "read, split and parse the numbers", Goal = GoalTimes, AtLeast = false };
        }
        finally
        {
            File.Delete(file);
        }
    }

    private static DrawingTrace Traced(byte[] bytes)
    {
        ReadDrawing drawing = DrawingReader.ReadRepairing(bytes, "drawing.dxf");
        var trace = DrawingTrace.Of(drawing, "drawing.dxf");
        return trace.Regions.Sum(r => r.Region.Loops.Sum(l => l.SegmentCount)) == Segments
            ? trace
            : throw new InvalidOperationException("The drawing of the figures was not traced whole.");
    }

    // What whoever reads the format has to do, with the means of the language and nothing else: all lines, every group code and every real.
    private static double Bare(string file)
    {
        string[] lines = File.ReadAllText(file).Split('\n');
        double sum = 0;
        for (int i = 0; i + 1 < lines.Length; i += 2)
        {
            int code = int.Parse(lines[i], CultureInfo.InvariantCulture);
            if (code is >= 10 and <= 59)
            {
                sum += double.Parse(lines[i + 1], CultureInfo.InvariantCulture);
            }
        }

        return sum;
    }

    private static Figure Memory(string name, string text)
    {
        string file = Path.GetTempFileName();
        try
        {
            File.WriteAllText(file, text);
            var start = new ProcessStartInfo(Environment.ProcessPath!, [.. Itself(), Alone, file]) { RedirectStandardOutput = true };

            // The heap of the command, not that of a program which only measures.
            start.Environment["DOTNET_gcConcurrent"] = "1";
            start.Environment["DOTNET_GCConserveMemory"] = "9";
            using Process process = Process.Start(start)!;
            string said = process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            double most = process.ExitCode == 0 ? double.Parse(said, CultureInfo.InvariantCulture) : throw new InvalidOperationException("The drawing of the figures could not be traced: " + said);
            double goal = GoalBase + (GoalTimesFile * text.Length);
            return new Figure(
                name, most / (1 << 20), "MB", "80 MB and 6 times the file", goal / (1 << 20), false, string.Create(CultureInfo.InvariantCulture, $"file of {text.Length / (double)(1 << 20):0.0} MB"));
        }
        finally
        {
            File.Delete(file);
        }
    }

    // Run by the shared host, the assembly comes first; an executable of its own needs nothing.
    private static string[] Itself() =>
        Path.GetFileNameWithoutExtension(Environment.ProcessPath) == "dotnet" ? [typeof(TraceFigures).Assembly.Location] : [];

    /// <summary>Rings of 200 lines and arcs each, every one an entity of its own, in an order without sense.</summary>
    private static string Pieces()
    {
        string[] entities = [.. Rings().SelectMany(ring => Enumerable.Range(0, ring.Length).Select(i => Piece(ring, i)))];
        new Random(1).Shuffle(entities);
        return Whole(string.Concat(entities));
    }

    private static string Piece((double X, double Y)[] ring, int i)
    {
        (double x0, double y0) = ring[i];
        (double x1, double y1) = ring[(i + 1) % ring.Length];
        return i % 4 == 0
            ? HalfCircle(x0, y0, x1, y1)
            : string.Create(CultureInfo.InvariantCulture, $"0\nLINE\n8\nedge\n10\n{x0:F6}\n20\n{y0:F6}\n30\n0.0\n11\n{x1:F6}\n21\n{y1:F6}\n31\n0.0\n");
    }

    private static string HalfCircle(double x0, double y0, double x1, double y1)
    {
        double from = Math.Atan2(y0 - y1, x0 - x1) * 180 / Math.PI;
        double radius = double.Hypot(x1 - x0, y1 - y0) / 2;
        return string.Create(
            CultureInfo.InvariantCulture, $"0\nARC\n8\nedge\n10\n{(x0 + x1) / 2:F6}\n20\n{(y0 + y1) / 2:F6}\n30\n0.0\n40\n{radius:F6}\n50\n{from:F9}\n51\n{from + 180:F9}\n");
    }

    private static string Polylines()
    {
        var text = new StringBuilder();
        foreach ((double X, double Y)[] ring in Rings())
        {
            text.Append(CultureInfo.InvariantCulture, $"0\nLWPOLYLINE\n8\nedge\n90\n{ring.Length}\n70\n1\n");
            for (int i = 0; i < ring.Length; i++)
            {
                text.Append(CultureInfo.InvariantCulture, $"10\n{ring[i].X:F6}\n20\n{ring[i].Y:F6}\n").Append(i % 4 == 0 ? "42\n1.0\n" : "");
            }
        }

        return Whole(text.ToString());
    }

    private static IEnumerable<(double X, double Y)[]> Rings()
    {
        const int Corners = 200;
        for (int k = 0; k < Segments / Corners; k++)
        {
            (double cx, double cy) = (k % 25 * 130.0, k / 25 * 130.0);
            yield return [.. Enumerable.Range(0, Corners).Select(i => (cx + (Radius(i) * Math.Cos(i * 2 * Math.PI / Corners)), cy + (Radius(i) * Math.Sin(i * 2 * Math.PI / Corners))))];
        }

        static double Radius(int corner) => corner / 4 % 2 == 0 ? 60 : 55;
    }

    private static string Whole(string entities) =>
        "0\nSECTION\n2\nHEADER\n9\n$ACADVER\n1\nAC1015\n9\n$INSUNITS\n70\n4\n0\nENDSEC\n0\nSECTION\n2\nENTITIES\n" + entities + "0\nENDSEC\n0\nEOF\n";
}
