using ToolpathForge.Exchange.Reading;
using ToolpathForge.Findings;
using ToolpathForge.Measures;
using ToolpathForge.Tests.Support;
using ToolpathForge.Wording;

namespace ToolpathForge.Tests.Exchange.Reading;

/// <summary>Style sheets, clip-paths and masks: what of them hides something is applied, or told as not applied.</summary>
public class SvgStyleTests
{
    /// <summary>A square of 9 mm², which bears an id and two classes, and one of 1 mm² which has none.</summary>
    private const string Squares = "<rect id=\"big\" class=\"a  b\" width=\"3\" height=\"3\"/><g><rect x=\"20\" width=\"1\" height=\"1\"/></g>";

    private static ReadDrawing Read(string sheet, string inner = Squares, string attributes = "")
    {
        ReadDrawing read = SvgDrawn.Strict(SvgDrawn.File($"<style{attributes}>{sheet}</style>{inner}"));
        Assert.Empty(read.Repairs);
        return read;
    }

    private static double Area(ReadDrawing read) => Math.Round(DrawingTrace.Of(read, "drawing.svg").Area, 6);

    // What is left says which rule counted: specificity before order, importance before both (CSS 2.2, 6.4.1 to 6.4.3).
    [Theory]
    [InlineData(".a { display: none }", 1)]
    [InlineData(".b{display:none;}", 1)]
    [InlineData("#big { stroke: red; DISPLAY : None }", 1)]
    [InlineData("rect#big, .nothing { display: none }", 1)]
    [InlineData("rect.b { display: none }", 1)]
    [InlineData("circle.b { display: none }", 10)]
    [InlineData(".big, #a { display: none }", 10)]
    [InlineData("*.a { visibility: hidden }", 1)]
    [InlineData("g { display: none }", 9)]
    [InlineData("g { visibility: collapse }", 9)]
    [InlineData("g { visibility: hidden } g rect2, rect { visibility: visible }", 10)]
    [InlineData("rect { display: none } .a { display: inline }", 9)]
    [InlineData(".a { display: inline } rect { display: none }", 9)]
    [InlineData(".a { display: none } .b { display: inline }", 10)]
    [InlineData(".b { display: none } .a { display: none } .b { display: inline }", 10)]
    [InlineData("#big { display: inline } .a { display: none !important }", 1)]
    [InlineData(".a { display: none } #big { display: inline !important } #big { display: none }", 10)]
    [InlineData("/* .a { display: inline */ .a /* } */ { display/**/: none }", 1)]
    [InlineData(".x { content: '} .a { display: inline }' } .a { display: none }", 1)]
    [InlineData("<![CDATA[ .a { display: none } ]]>", 1)]
    [InlineData("/* .a { display: none }", 10)]
    [InlineData(".a { display: none", 1)]
    [InlineData("@charset \"utf-8\"; @font-face { font-family: x; src: url(a) } .a { display: none }", 1)]
    [InlineData(".a { fill: none; stroke: #000; stroke-width: 0.1 } text { font: 3px serif }", 10)]
    public void Simple_rules_that_hide_something_are_applied(string sheet, double area)
    {
        ReadDrawing read = Read(sheet);
        Assert.Equal(sheet.Contains("rect2", StringComparison.Ordinal) ? "drawing-style-not-applied" : "", Drawn.Codes(read.Findings));
        Assert.Equal(area, Area(read));
        Assert.DoesNotContain(read.Ignored, i => i.Kind == "style");
    }

    [Theory]
    [InlineData("display=\"none\"", "inline", 9)]
    [InlineData("style=\"display:none\"", "inline", 0)]
    [InlineData("style=\"display:none\"", "inline !important", 9)]
    [InlineData("style=\"display:inline\"", "none", 9)]
    [InlineData("display=\"inline\"", "none", 0)]
    public void A_sheet_counts_before_an_attribute_and_after_the_style_attribute(string attribute, string says, double area)
    {
        ReadDrawing read = Read($".c {{ display: {says} }}", $"<rect class=\"c\" {attribute} width=\"3\" height=\"3\"/><path d=\"M50 50h9\"/>");
        Assert.Equal(area, Area(read));
    }

    [Fact]
    public void A_sheet_holds_for_what_stands_before_it_and_within_what_is_used() => Assert.Equal(9, Area(SvgDrawn.Strict(SvgDrawn.File(
        "<defs><g id=\"g\"><rect class=\"a\" width=\"5\" height=\"5\"/><rect width=\"3\" height=\"3\"/></g></defs><use href=\"#g\"/><defs><style>.a{display:none}</style></defs>"))));

    [Theory]
    [InlineData("g > .a { display: none }", 1)]
    [InlineData("g .a { display: none } .b:first-child { visibility: hidden } rect[width] { display: none }", 3)]
    [InlineData(".a { transform: scale(2) }", 1)]
    [InlineData(".a { width: 20mm; fill: red }", 1)]
    [InlineData("@import 'other.css'; .x { fill: red }", 1)]
    [InlineData("@media (min-width: 3px) { .a { display: none } } @media print { .a { fill: red } }", 1)]
    [InlineData("@media screen{@supports (x:y){.a{r:3}}}", 1)]
    [InlineData("\\.a { display: none }", 1)]
    public void What_is_not_applied_and_bears_on_the_cut_is_told(string sheet, int count)
    {
        ReadDrawing read = Read(sheet);
        Finding told = Assert.Single(read.Findings);
        Assert.Equal(("drawing-style-not-applied", 2), (told.Kind.Code, told.Place.Line));
        Assert.Equal(count, told.Args.Single(a => a.Name == "count").Quantity!.Value.Value);
        Assert.Contains("would be cut", FindingText.Word(told, LengthUnit.Millimetre).Message, StringComparison.Ordinal);
        Assert.Equal(10, Area(read));
    }

    [Theory]
    [InlineData(" type=\"text/css\" media=\"screen\"", "", 1)]
    [InlineData(" media=\"print\"", "drawing-style-not-applied", 10)]
    [InlineData(" type=\"text/other\"", "drawing-style-not-applied", 10)]
    public void A_sheet_in_another_language_or_for_other_media_is_told(string attributes, string codes, double area)
    {
        ReadDrawing read = Read(".a { display: none }", attributes: attributes);
        Assert.Equal(codes, Drawn.Codes(read.Findings));
        Assert.Equal(area, Area(read));
    }

    [Fact]
    public void A_sheet_in_a_file_of_its_own_is_not_opened_and_told()
    {
        using var scratch = new Scratch();
        string css = scratch.Write("s.css", ".a{display:none}");
        ReadDrawing read = SvgDrawn.Strict($"<?xml-stylesheet href=\"{css}\" type=\"text/css\"?>\n" + SvgDrawn.File(Squares));
        Assert.Equal(("drawing-style-not-applied", 1), (Drawn.Codes(read.Findings), read.Findings[0].Place.Line));
        Assert.Equal(10, Area(read));
    }

    [Theory]
    [InlineData("<g clip-path=\"url(#c)\">{0}</g>", 1, "g")]
    [InlineData("<g style=\"mask: url(#m)\">{0}</g><g id=\"leaf\" clip-path=\"url(#c)\"/>", 2, "g")]
    [InlineData("<style>.k { clip-path: url(#c) }</style><g class=\"k\" id=\"leaf\">{0}</g>", 1, "g 'leaf'")]
    [InlineData("{0}<g clip-path=\"none\" mask=\" \"/><circle r=\"1\" visibility=\"hidden\" mask=\"url(#m)\"/>", 0, "")]
    public void What_is_seen_through_a_clip_or_a_mask_is_taken_whole_and_told(string inner, int count, string first)
    {
        ReadDrawing read = SvgDrawn.Strict(SvgDrawn.File(inner.Replace("{0}", Squares, StringComparison.Ordinal) + "<clipPath id=\"c\"><rect width=\"1\" height=\"1\"/></clipPath>"));
        Assert.Equal(10, Area(read));
        Assert.Equal(count == 0 ? "" : "drawing-clip-not-applied", Drawn.Codes(read.Findings));
        if (count > 0)
        {
            Finding told = read.Findings[0];
            Assert.Equal((count, first), ((int)told.Args.Single(a => a.Name == "count").Quantity!.Value.Value, told.Args.Single(a => a.Name == "what").Text));
        }
    }

    [Fact]
    public void Very_many_rules_and_classes_take_little_time()
    {
        string rules = string.Concat(Enumerable.Range(0, 50_000).Select(i => $".c{i}{{display:inline}}"));
        string classes = string.Join(' ', Enumerable.Range(0, 50_000).Select(i => "c" + i));
        string uses = string.Concat(Enumerable.Repeat("<use href=\"#s\"/>", 5_000));
        var clock = System.Diagnostics.Stopwatch.StartNew();
        ReadDrawing read = Read(rules, $"<rect id=\"s\" class=\"{classes}\" width=\"3\" height=\"3\"/>{uses}");
        Assert.Equal(5_001, read.Entities.Length);

        // Rules times classes, or classes times uses, would be a thousand times this.
        Assert.InRange(clock.Elapsed.TotalSeconds, 0, 10);
    }
}
