using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using ToolpathForge.Catalogue;

namespace ToolpathForge.Tests.Planning;

/// <summary>Writes job files of every kind from a number: the same number, the same job. Most make sense; some ask for what cannot be.</summary>
internal sealed class RandomJobs
{
    private readonly Random _random;
    private readonly StringBuilder _text = new();

    private RandomJobs(int number) => _random = new Random(number);

    internal static string Write(int number)
    {
        var job = new RandomJobs(number);
        job.Head(number);
        int makes = job.Chance(0.8) ? 1 : 2;
        for (int i = 0; i < makes; i++)
        {
            if (job.Chance(0.65))
            {
                job.Pattern(i);
            }
            else
            {
                job.BoardEnd(i);
            }
        }

        return job._text.ToString();
    }

    private void Head(int number)
    {
        Line($"format = 1\nname = \"Random job {number}\"\nunit = \"mm\"");
        Line($"tolerance = {Number(0.06, 0.3)}");
        Line($"machine = \"{One("desktop-400", "desktop-600", "bench-800", "bench-900x600", "table-1250", "table-1250")}\"");
        Line($"dialect = \"{Any(Catalogues.Shipped.Dialects.All).Id}\"");
        Line($"zero = \"{One("bed", "top")}\"");
        Line($"clearance = {Number(3, 20)}");
    }

    private void Pattern(int index)
    {
        Panel panel = Any([.. Catalogues.Shipped.Panels.All.Where(p => p.Thickest < 14 || Chance(0.2))]);
        Lumber board = Board();
        double thickness = panel.Thinnest + ((panel.Thickest - panel.Thinnest) * _random.NextDouble());
        Line($"\n[[make]]\nid = \"make-{index}\"\nkind = \"pattern\"\ncount = {_random.Next(1, 4)}\nboard = \"{board.Id}\"");
        Line($"stock = {{ panel = \"{panel.Id}\", thickness = {Text(thickness)}{(Chance(0.4) ? $", flatness = {Number(0.05, 0.3)}" : "")} }}");
        Line($"bit = \"{Bit()}\"");
        Shape(board.Width);
        Line($"plate = {{ hold = {Number(40, 160)}, seat = {Number(15, 60)}, reach = {Number(3, 25)}{Fittings()} }}");
        if (Chance(0.5))
        {
            Line($"marks = {{ bit = \"{One("v-60", "v-60", "v-90")}\", height = {Number(4, 7)}, depth = {Number(0.15, 0.4)}, labels = {(Chance(0.7) ? "true" : "false")}, text = [\"No. {index + 1}: 3/8 × 10°\"] }}");
        }

        if (Chance(0.05))
        {
            Line($"lead = {{ x = {Number(0, 250)}, y = {Number(-40, 150)} }}");
        }

        Cut(plate: true);
        Openings(board.Width);
        if (Chance(0.04))
        {
            for (int i = 0; i < 3; i++)
            {
                Line($"\n[[make.tab]]\nx = {Number(20, 250)}\ny = {Number(-40, -20)}");
            }
        }
    }

    private string Fittings()
    {
        string keys = Chance(0.15) ? $", hands = \"{One("left", "left", "both")}\"" : "";
        keys += Chance(0.1) ? $", block = {{ set-back = {Number(15, 25)} }}" : "";
        keys += Chance(0.1) ? $", stop = {{ width = {Number(30, 45)} }}" : "";
        keys += Chance(0.1) ? $", brads = {{ count = {_random.Next(1, 4)} }}" : "";
        return keys + (Chance(0.05) ? ", hang = {}" : "");
    }

    private void BoardEnd(int index)
    {
        Lumber board = Board();
        Line($"\n[[make]]\nid = \"make-{index}\"\nkind = \"board-end\"\nboard = \"{board.Id}\"");
        double thickness = Chance(0.15) ? board.Thickness : 10 + (16 * _random.NextDouble());
        Line($"stock = {{ material = \"{One("douglas-fir", "western-red-cedar", "spruce", "white-oak")}\", thickness = {Text(thickness)}, length = 900, on-bed = {Number(200, 380)}, grain-slope = {Number(-10, 10)} }}");
        Line($"bit = \"{(Chance(0.7) ? One("upcut-1/4-long", "upcut-1/2-long", "upcut-1/2", "compression-1/2") : Bit())}\"");
        Shape(board.Width);
        Line($"end = {{ allowance = {Number(1, 8)}, fence-room = {Number(12, 60)}{Batch()} }}");
        Line($"ends = \"{One("one", "both")}\"");
        if (Chance(0.3))
        {
            Line($"measured = [ {{ width = {Text(board.Width + 1.5)}, count = {_random.Next(1, 4)} }}, {{ name = \"dry\", width = {Text(board.Width - 2)}, thickness = {Text(thickness * 0.98)} }} ]");
        }
        else
        {
            Line($"count = {_random.Next(1, 6)}");
        }

        Cut(plate: false);
        if (Chance(0.3))
        {
            Openings(board.Width);
        }

        if (Chance(0.1))
        {
            Line($"\n[[make.clamp]]\nx = {Number(-380, -60)}\ny = {Number(-200, -40)}\nlength = {Number(20, 60)}\nwidth = {Number(15, 40)}\nheight = {Number(20, 45)}");
        }
    }

    private string Batch()
    {
        string keys = $", waste = \"{One("screwed", "screwed", "chips", "sawn", "loose")}\"";
        keys += Chance(0.3) ? FormattableString.Invariant($", abreast = {_random.Next(2, 4)}") : "";
        keys += Chance(0.1) ? $", gap = {Number(8, 60)}" : "";
        keys += Chance(0.1) ? ", sawn-first = true" : "";
        keys += Chance(0.2) ? ", finished-length = 850" : "";
        keys += Chance(0.2) ? ", program = \"width\"" : "";
        return keys + (Chance(0.3) ? ", runs = \"waiting\"" : "");
    }

    private void Shape(double width)
    {
        Line($"shape = {{ kind = \"quarter-ellipse\", form = \"{One("scoop", "belly")}\", run = {Text(width * (0.2 + (1.2 * _random.NextDouble())))}, "
            + $"depth = {Text(width * (0.15 + (0.7 * _random.NextDouble())))}, end-cut = {Number(0, 25)}, long-side = \"{One("top", "bottom")}\" }}");
    }

    private void Cut(bool plate)
    {
        var keys = new List<string>();
        void Maybe(double chance, string key, string value)
        {
            if (Chance(chance))
            {
                keys.Add($"{key} = {value}");
            }
        }

        Maybe(0.4, "direction", $"\"{One("by-grain", "climb", "conventional")}\"");
        Maybe(0.3, "allowance", Number(0, 1.2));
        Maybe(0.2, "overcut", Number(0.1, 0.8));
        Maybe(0.2, "pass-depth", Number(0.8, 6));
        Maybe(0.3, "slot", $"\"{One("slow", "wide", "by-depth")}\"");
        if (plate)
        {
            Maybe(0.3, "tabs", _random.Next(3, 8).ToString(CultureInfo.InvariantCulture));
            Maybe(0.3, "tab-length", Number(4, 12));
            Maybe(0.3, "tab-height", Number(0.8, 3));
            Maybe(0.3, "tab-form", $"\"{One("square", "ramped")}\"");
            Maybe(0.2, "tab-spacing", Number(80, 300));
            Maybe(0.1, "skin", Number(0.3, 1));
        }

        if (keys.Count > 0)
        {
            Line($"cut = {{ {string.Join(", ", keys)} }}");
        }
    }

    private void Openings(double width)
    {
        int count = Chance(0.5) ? 0 : _random.Next(1, 3);
        for (int i = 0; i < count; i++)
        {
            string bit = One("", "", "upcut-1/8", "upcut-6mm");
            Line($"\n[[make.opening]]\nx = {Text(50 + (i * 70) + (40 * _random.NextDouble()))}\ny = {Text(width * (0.05 + (0.2 * _random.NextDouble())))}\nwidth = {(Chance(0.3) ? "6.35" : Number(7, 18))}");
            if (bit.Length > 0)
            {
                Line($"bit = \"{bit}\"");
            }

            if (Chance(0.3))
            {
                Line($"to-x = {Number(60, 140)}");
            }

            if (Chance(0.1))
            {
                Line($"to-y = {Number(10, 40)}");
            }
        }
    }

    private Lumber Board() => Any([.. Catalogues.Shipped.Lumber.All.Where(l => l.Width > 60)]);

    private string Bit() => One("downcut-1/4", "upcut-1/4", "straight-1/4", "downcut-1/8", "upcut-6mm", "compression-1/4", "upcut-1/2", "upcut-1/4-one-flute");

    private bool Chance(double share) => _random.NextDouble() < share;

    private T Any<T>(ImmutableArray<T> all) => all[_random.Next(all.Length)];

    private string One(params string[] words) => words[_random.Next(words.Length)];

    private string Number(double least, double most) => Text(least + ((most - least) * _random.NextDouble()));

    private static string Text(double value) => value.ToString("0.###", CultureInfo.InvariantCulture);

    private void Line(FormattableString line) => _text.Append(FormattableString.Invariant(line)).Append('\n');

    private void Line(string line) => _text.Append(line).Append('\n');
}
