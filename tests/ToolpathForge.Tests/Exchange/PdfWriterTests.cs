using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using CsCheck;
using ToolpathForge.Drawings;
using ToolpathForge.Exchange.Pdf;
using ToolpathForge.Geometry;
using ToolpathForge.Tests.Drawings;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Exchange;

/// <summary>What we write is read, measured and rendered by poppler.</summary>
public class PdfWriterTests
{
    private const double PointsPerMillimetre = 72 / 25.4;

    // Sizes of paper: A4 by ISO 216, Letter by ANSI/ASME Y14.1; poppler tells them in points with three decimals.
    [Theory]
    [InlineData("a4", 595.276, 841.890, "A4")]
    [InlineData("letter", 612, 792, "letter")]
    public void Poppler_finds_the_page_box_and_no_fault(string id, double shorter, double longer, string known)
    {
        PrintPaper paper = PrintPaper.All.Single(p => p.Id == id);
        using var scratch = new Scratch();
        ImmutableArray<PrintPage> pages = TiledPages.Of(ScoopPlate.Sheet(1), "A job", paper);
        string path = Write(scratch, PdfWriter.Write("Träger (1) \\ 2", pages));
        (int exit, string output, string error) = OutsideTool.Program("pdfinfo", "poppler-utils", path);
        Assert.Equal((0, ""), (exit, error));
        string Line(string key) => output.Split('\n').Single(l => l.StartsWith(key + ":", StringComparison.Ordinal))[(key.Length + 1)..].Trim();
        Assert.Equal("Träger (1) \\ 2", Line("Title"));
        Assert.Equal(pages.Length.ToString(CultureInfo.InvariantCulture), Line("Pages"));
        Assert.True(pages.Length > 1);
        Assert.DoesNotContain("CreationDate", output, StringComparison.Ordinal);
        bool lying = pages[0].Width > pages[0].Height;
        double[] size = [.. Line("Page size").Split(' ').Where((_, i) => i is 0 or 2).Select(n => double.Parse(n, CultureInfo.InvariantCulture))];
        Assert.Equal(lying ? [longer, shorter] : [shorter, longer], size);
        Assert.Contains(known, Line("Page size"), StringComparison.OrdinalIgnoreCase);
    }

    // Rendered at 20 pixels a millimetre and measured from the first dark column to the last; the border's pen of 0.18 mm stands half outside at either end.
    [Theory]
    [InlineData("a4")]
    [InlineData("letter")]
    public void Both_check_bars_measure_true_on_every_sheet(string id)
    {
        PrintPaper paper = PrintPaper.All.Single(p => p.Id == id);
        using var scratch = new Scratch();
        ImmutableArray<PrintPage> pages = TiledPages.Of(ScoopPlate.Sheet(1), "A job", paper);
        string path = Write(scratch, PdfWriter.Write("Bars", pages));
        double pen = DrawingStyle.PenOf(LineRole.Dimension).Width;
        for (int page = 1; page <= pages.Length; page++)
        {
            foreach ((Point2 at, double length) in ((Point2, double)[])[(SheetFurniture.MetricBarAt, 100.0), (SheetFurniture.InchBarAt, 101.6)])
            {
                Assert.Equal(length + pen, Raster.DarkWidth(scratch, path, page, pages[page - 1].Height, at + new Point2(-3, 0.2), length + 6, 0.6), 0.1);
            }
        }
    }

    [Fact]
    public void A_thing_drawn_is_full_size_wherever_it_lies_on_its_sheets()
    {
        // A block of 60 by 40 mm in a drawing that takes several sheets, and the sheet that holds all of it.
        Contour block = Contour.Polygon(new(0, 0), new(60, 0), new(60, 40), new(0, 40));
        var drawing = new Drawing("Block", "", [new Solid(LineRole.Edge, block), new Stroke(LineRole.Edge, Contour.Polyline(new(-250, -20), new(-250, 60)))]);
        using var scratch = new Scratch();
        ImmutableArray<PrintPage> pages = TiledPages.Of(drawing, "A job", PrintPaper.A4);
        string path = Write(scratch, PdfWriter.Write("Block", pages));
        int page = Enumerable.Range(0, pages.Length).First(i => pages[i].Views[0] is var v && v.Origin.X > v.Window!.Value.MinX && v.Origin.X + 60 < v.Window!.Value.MaxX);
        Point2 origin = pages[page].Views[0].Origin;
        Assert.Equal(60, Raster.DarkWidth(scratch, path, page + 1, pages[page].Height, origin + new Point2(-5, 10), 70, 5), 0.1);
    }

    // Every cubic is worked out and held against the circle; half a micrometre is asked, a nanometre goes to the four decimals of a point.
    [Fact]
    public void Arcs_stay_within_half_a_micrometre_of_the_circle()
    {
        Gen<(double Radius, double Start, double Sweep)> arcs =
            from radius in Gen.Double[0.05, 3000]
            from start in Gen.Double[-4, 4]
            from sweep in Gen.OneOf(Gen.Double[0.01, 2 * Math.PI], Gen.Double[-2 * Math.PI, -0.01])
            select (radius, start, sweep);
        arcs.Sample(
            a =>
            {
                var content = new StringBuilder();
                new PdfPath(content, PointsPerMillimetre).Add(new Outline([new ArcCurve(default, a.Radius, a.Start, a.Sweep)], false));
                foreach (Point2 p in Cubics(content.ToString()))
                {
                    Assert.InRange(Math.Abs(p.Length - a.Radius), 0, 0.00055);
                }
            },
            iter: 200);
    }

    [Theory]
    [InlineData(0.0, "0")]
    [InlineData(-0.00001, "0")]
    [InlineData(1.5, "1.5")]
    [InlineData(-12.34567, "-12.3457")]
    [InlineData(0.0001, "0.0001")]
    [InlineData(123456.05, "123456.05")]
    public void Numbers_have_neither_exponent_nor_minus_zero(double value, string expected) => Assert.Equal(expected, PdfNumber.Format(value));

    [Fact]
    public void Same_bytes_in_any_culture_and_no_byte_beyond_ascii()
    {
        byte[] first = PdfWriter.Write("Bräcket", TiledPages.Of(ScoopPlate.Sheet(1), "A job", PrintPaper.A4));
        Assert.All(first, b => Assert.InRange(b, (byte)10, (byte)126));
        var foreign = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        foreign.NumberFormat.NumberDecimalSeparator = ",";
        foreign.NumberFormat.NegativeSign = "−";
        CultureInfo before = CultureInfo.CurrentCulture;
        CultureInfo.CurrentCulture = foreign;
        try
        {
            Assert.Equal(first, PdfWriter.Write("Bräcket", TiledPages.Of(ScoopPlate.Sheet(1), "A job", PrintPaper.A4)));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void A_document_without_a_page_is_refused() => Assert.Throws<ArgumentException>(() => PdfWriter.Write("", []));

    private static string Write(Scratch scratch, byte[] bytes)
    {
        string path = scratch.Path("drawing.pdf");
        File.WriteAllBytes(path, bytes);
        return path;
    }

    // Points along the cubics of a path, mm.
    private static IEnumerable<Point2> Cubics(string content)
    {
        var at = default(Point2);
        var numbers = new List<double>();
        foreach (string word in content.Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries))
        {
            if (word is "m" or "c")
            {
                Point2 P(int i) => new Point2(numbers[i], numbers[i + 1]) / PointsPerMillimetre;
                for (int i = 1; word == "c" && i <= 16; i++)
                {
                    double t = i / 16.0;
                    double s = 1 - t;
                    yield return (at * (s * s * s)) + (P(0) * (3 * s * s * t)) + (P(2) * (3 * s * t * t)) + (P(4) * (t * t * t));
                }

                at = P(numbers.Count - 2);
                numbers.Clear();
            }
            else
            {
                numbers.Add(double.Parse(word, CultureInfo.InvariantCulture));
            }
        }
    }
}
