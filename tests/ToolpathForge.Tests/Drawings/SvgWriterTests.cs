using System.Globalization;
using System.Xml.Linq;
using CsCheck;
using ToolpathForge.Drawings;
using ToolpathForge.Geometry;

namespace ToolpathForge.Tests.Drawings;

public class SvgWriterTests
{
    private static readonly SheetPaper s_paper = new(100, 50, 1, new Point2(10, 20));

    [Theory]
    [InlineData(0, "0")]
    [InlineData(-0.0004, "0")]
    [InlineData(-0.0, "0")]
    [InlineData(1.5, "1.5")]
    [InlineData(-12.3456, "-12.346")]
    [InlineData(0.05, "0.05")]
    [InlineData(0.005, "0.005")]
    [InlineData(1000000, "1000000")]
    public void Numbers_have_at_most_three_decimals_and_no_minus_zero(double value, string expected) =>
        Assert.Equal(expected, SvgNumber.Format(value));

    [Fact]
    public void Y_is_turned_over_and_a_counter_clockwise_arc_gets_sweep_flag_0()
    {
        // From (0,0) to (10,0) with the bulge of a semicircle, counter-clockwise: it runs below the chord, through (5,-5).
        string d = PathOf(new Stroke(LineRole.Edge, new Contour([new Vertex(0, 0, 1), new Vertex(10, 0, 0)], false)));
        Assert.Equal("M10 30A5 5 0 0 0 15 35A5 5 0 0 0 20 30", d);
    }

    [Fact]
    public void A_tilted_ellipse_keeps_its_axes_and_turns_the_other_way_on_paper()
    {
        Point2 major = Point2.Direction(Math.PI / 6) * 20;
        var quarter = new EllipseCurve(new Point2(30, 5), major, major.Left / 2, 0, Math.PI / 2);
        string d = PathOf(new ExactStroke(LineRole.Edge, new Outline([quarter], false)));
        Assert.Equal("M57.321 15A20 10 -30 0 0 35 16.34", d);

        // Mirrored in x the same curve runs clockwise and its axis points to the upper left.
        string mirrored = PathOf(new ExactStroke(LineRole.Edge, new Outline([quarter.Placed(new Placement(0, new Point2(60, 0), true))], false)));
        Assert.Equal("M22.679 15A20 10 -150 0 1 45 16.34", mirrored);
    }

    [Fact]
    public void A_whole_circle_is_written_in_pieces_below_half_a_turn()
    {
        string d = PathOf(new ExactStroke(LineRole.Edge, new Outline([new ArcCurve(new Point2(0, 0), 6, 0, 2 * Math.PI)], true)));
        Assert.Equal(3, d.Count(c => c == 'A'));
        Assert.EndsWith("16 30Z", d, StringComparison.Ordinal);
    }

    [Fact]
    public void Paper_has_physical_size_and_a_view_box_in_millimetres()
    {
        XElement svg = XDocument.Parse(SvgWriter.Write(Drawing(new Stroke(LineRole.Edge, Contour.Polyline(new(0, 0), new(30, 10)))), s_paper)).Root!;
        Assert.Equal("100mm", svg.Attribute("width")!.Value);
        Assert.Equal("50mm", svg.Attribute("height")!.Value);
        Assert.Equal("0 0 100 50", svg.Attribute("viewBox")!.Value);
        Assert.Equal("img", svg.Attribute("role")!.Value);
    }

    [Fact]
    public void Any_text_gives_well_formed_xml_that_says_the_same()
    {
        // Half of the characters from all of UTF-16, lone surrogates and controls included, half from those that mean something to XML.
        Gen<char> character = Gen.OneOf(Gen.Char['\0', '\uFFFF'], Gen.Char["<>&\"' \t\r\n]-;1/2"]);
        character.Array[0, 20].Select(characters => new string(characters)).Sample(text =>
        {
            Drawing drawing = new(text, text, [new Text(text, Point2.Origin), new Leader(Point2.Origin, new Point2(5, 5), text)]);
            XElement svg = XDocument.Parse(SvgWriter.Write(drawing, 1), LoadOptions.PreserveWhitespace).Root!;
            string title = svg.Elements().First(e => e.Name.LocalName == "title").Value;
            Assert.Equal(Readable(text), title);
        }, iter: 2000);
    }

    [Fact]
    public void Culture_makes_no_difference()
    {
        string expected = SvgWriter.Write(ScoopPlate.Sheet(0.37), 0.37);
        var foreign = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        foreign.NumberFormat.NumberDecimalSeparator = ",";
        foreign.NumberFormat.NegativeSign = "−";
        CultureInfo before = CultureInfo.CurrentCulture;
        CultureInfo.CurrentCulture = foreign;
        try
        {
            Assert.Equal(expected, SvgWriter.Write(ScoopPlate.Sheet(0.37), 0.37));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void Every_line_of_text_is_named_and_told_in_the_description()
    {
        XElement svg = XDocument.Parse(SvgWriter.Write(Drawing(new Text("first\nsecond <b>", Point2.Origin)), 1)).Root!;
        string[] titles = [.. svg.Descendants().Where(e => e.Name.LocalName == "title").Select(e => e.Value)];
        Assert.Equal(["Test", "first", "second <b>"], titles);
        Assert.Equal("Lettering: first; second <b>", svg.Elements().First(e => e.Name.LocalName == "desc").Value);
    }

    [Fact]
    public void Every_line_has_a_pen_a_tint_and_a_name_of_its_own()
    {
        LineRole[] roles = Enum.GetValues<LineRole>();
        Assert.Equal(roles.Length, roles.Select(DrawingStyle.NameOf).Distinct(StringComparer.Ordinal).Count());
        Assert.All(roles, r => Assert.InRange(DrawingStyle.PenOf(r).Width, 0.13, 1.0));
        Assert.All(Enum.GetValues<Tone>(), t => Assert.True(DrawingStyle.TintOf(t).Green > 0xC0, "A tint must leave lines readable on it."));
    }

    private static string Readable(string text) => new([.. text.EnumerateRunes().SelectMany(r =>
        r.Value is (< ' ' and not ('\t' or '\n' or '\r')) or 0xFFFE or 0xFFFF ? "\uFFFD" : r.ToString())]);

    private static Drawing Drawing(params DrawingElement[] elements) => new("Test", "", [.. elements]);

    private static string PathOf(Mark mark)
    {
        XElement svg = XDocument.Parse(SvgWriter.Write(Drawing(mark), s_paper)).Root!;
        return svg.Descendants().Single(e => e.Name.LocalName == "path").Attribute("d")!.Value;
    }
}
