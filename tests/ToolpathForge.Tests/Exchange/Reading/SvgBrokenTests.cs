using System.Text;
using ToolpathForge.Exchange.Reading;
using ToolpathForge.Findings;
using ToolpathForge.Measures;
using ToolpathForge.Wording;

namespace ToolpathForge.Tests.Exchange.Reading;

/// <summary>Kinds of broken or hostile SVG: each is refused by the strict way in, and either refused or repaired by the other, with a finding that says so.</summary>
public class SvgBrokenTests
{
    private const string Good = "<rect width=\"10\" height=\"10\"/>";

    public static TheoryData<string, string, string, string> Repaired => new()
    {
        { "path that breaks off", "<path id=\"p\" d=\"M0 0 L5 5 L7\"/>", "drawing-path-broken", "path 'p' cannot be followed" },
        { "path that begins in the middle", "<path d=\"L5 5\"/>", "drawing-path-broken", "character 1" },
        { "path with NaN", "<path d=\"M0 0 L5 5 LNaN 3\"/>", "drawing-path-broken", "'NaN 3'" },
        { "path with a number beyond all", "<path d=\"M0 0 L5 5 L1e999 3\"/>", "drawing-path-broken", "'1e999 3'" },
        { "path that goes to the stars", "<path d=\"M0 0 L1e300 3\"/>", "drawing-too-far", "reaches farther" },
        { "arc that goes to the stars", "<path d=\"M0 0 A1e200 1e200 0 1 1 5 5\"/>", "drawing-too-far", "reaches farther" },
        { "points of an odd number", "<polygon points=\"0,0 5,0 5\"/>", "drawing-path-broken", "where '5' stands" },
        { "circle of radius less than 0", "<circle r=\"-3\"/>", "drawing-value-unusable", "'-3'" },
        { "size in letters", "<circle r=\"2em\"/>", "drawing-value-unusable", "'2em'" },
        { "size that is a word", "<rect width=\"wide\" height=\"3\"/>", "drawing-value-unusable", "'wide'" },
        { "size that is infinite", "<rect width=\"Infinity\" height=\"3\"/>", "drawing-value-unusable", "'Infinity'" },
        { "transform that is none", "<g transform=\"turn(30)\"><circle r=\"3\"/></g>", "drawing-value-unusable", "'turn(30)'" },
        { "transform with too few numbers", "<circle r=\"3\" transform=\"matrix(1 2 3)\"/>", "drawing-value-unusable", "transform" },
        { "transform with NaN", "<circle r=\"3\" transform=\"rotate(NaN)\"/>", "drawing-value-unusable", "'rotate(NaN)'" },
        { "use of itself", "<g id=\"a\"><use id=\"u\" href=\"#a\"/></g>", "drawing-block-recursive", "within itself" },
        { "uses in a ring", "<defs><g id=\"a\"><use href=\"#b\"/></g><g id=\"b\"><use href=\"#a\"/></g></defs><use href=\"#a\"/>", "drawing-block-recursive", "within itself" },
        { "use that uses itself", "<use id=\"u\" href=\"#u\"/>", "drawing-block-recursive", "'#u'" },
        { "use of nothing", "<use/>", "drawing-value-missing", "no href" },
        { "use of what is not there", "<use href=\"#gone\"/>", "drawing-block-missing", "'#gone'" },
        { "use of another file", "<use href=\"../secret.svg#a\"/>", "drawing-use-elsewhere", "never opened" },
        { "use of a file of the system", "<use xlink:href=\"file:///etc/passwd\"/>", "drawing-use-elsewhere", "file:///etc/passwd" },
        { "use of the network", "<use href=\"http://localhost/a.svg#a\"/>", "drawing-use-elsewhere", "http://localhost/a.svg#a" },
        { "two of one id", "<defs><circle id=\"a\" r=\"1\"/><circle id=\"a\" r=\"2\"/></defs><use href=\"#a\"/>", "drawing-block-twice", "'a' is there twice" },
        { "nested view without a size", "<svg viewBox=\"0 0 0 10\"><circle r=\"3\"/></svg>", "drawing-value-unusable", "'0 0 0 10'" },
        { "a hundred thousand groups deep", string.Concat(Enumerable.Repeat("<g>", 100_000)) + string.Concat(Enumerable.Repeat("</g>", 100_000)), "drawing-too-deep", "more than 32 levels" },
        { "end in the middle", "<circle r=\"3\"/><path d=\"M0 0STOP", "drawing-xml-broken", "ends too early" },
        { "end without the last tag", "<circle r=\"3\"/>STOP", "drawing-xml-broken", "ends too early" },
        { "tags that cross", "<g><a></g></a>", "drawing-xml-broken", "rules of XML" },
        { "entity that nobody declared", "<text>&bomb;</text>", "drawing-xml-broken", "rules of XML" },
        { "characters that XML has not", "<text>\u0001</text>", "drawing-xml-broken", "rules of XML" },
    };

    [Theory]
    [MemberData(nameof(Repaired))]
    public void Each_kind_is_refused_strictly_and_repaired_with_a_report(string name, string inner, string code, string says)
    {
        Assert.NotEqual("", name);
        string text = SvgDrawn.File(Good + inner);
        text = text.Contains("STOP", StringComparison.Ordinal) ? text[..text.IndexOf("STOP", StringComparison.Ordinal)] : text;
        ReadDrawing strict = SvgDrawn.Strict(text);
        Assert.False(strict.IsUsable);
        Assert.Empty(strict.Entities);

        ReadDrawing read = SvgDrawn.Repairing(text);
        Assert.True(read.IsUsable, Drawn.Codes(read.Findings));
        Finding repair = Assert.Single(read.Repairs.DistinctBy(r => r.Kind.Code), r => r.Kind.Code == code);
        string worded = FindingText.Word(repair, LengthUnit.Millimetre).ToString();
        Assert.Contains(says, worded, StringComparison.Ordinal);
        Assert.DoesNotContain("{", worded, StringComparison.Ordinal);
        Assert.StartsWith("drawing.svg", worded, StringComparison.Ordinal);
    }

    private const string Laughs =
        "<!DOCTYPE svg [<!ENTITY a \"ha\"><!ENTITY b \"&a;&a;&a;&a;&a;&a;&a;&a;&a;&a;\"><!ENTITY c \"&b;&b;&b;&b;&b;&b;&b;&b;&b;&b;\">]>";

    public static TheoryData<string, string, string> Refused => new()
    {
        { "bomb of entities", Laughs + SvgDrawn.File("<text>&c;</text>"), "drawing-xml-entities" },
        { "entity from a file", "<?xml version=\"1.0\"?><!DOCTYPE svg [<!ENTITY x SYSTEM \"file:///etc/passwd\">]>" + SvgDrawn.File("<path d=\"&x;\"/>"), "drawing-xml-entities" },
        { "entity after a bracket in quotes", "<!DOCTYPE svg SYSTEM \"]>\" [<!ENTITY % x SYSTEM \"file:///etc/passwd\"> %x;]>" + SvgDrawn.File(Good), "drawing-xml-entities" },
        { "page of another kind", "<html><body><svg/></body></html>", "drawing-not-recognised" },
        { "svg of another kind", "<svg xmlns=\"urn:other\"><rect width=\"3\" height=\"3\"/></svg>", "drawing-not-recognised" },
        { "nothing but a comment", "<!-- svg -->", "drawing-not-recognised" },
        { "comment that does not end", "<!-- svg", "drawing-not-recognised" },
        { "DOCTYPE that does not end", "<!DOCTYPE svg", "drawing-not-recognised" },
        { "nothing drawn", SvgDrawn.File("<text/>"), "drawing-empty" },
        { "picture that is hidden", SvgDrawn.File(Good, "display=\"none\""), "drawing-empty" },
        { "uses by the million", SvgDrawn.File(Tower(12)), "drawing-over-curves" },
        { "DOCTYPE twice", "<!DOCTYPE svg><!DOCTYPE svg [<!ENTITY x \"y\">]>" + SvgDrawn.File(Good), "drawing-not-recognised" },
    };

    /// <summary>Groups that each use the one before ten times.</summary>
    private static string Tower(int floors)
    {
        var text = new StringBuilder("<defs><g id=\"f0\"><rect width=\"1\" height=\"1\"/></g>");
        for (int i = 1; i <= floors; i++)
        {
            text.Append($"<g id=\"f{i}\">").Insert(text.Length, $"<use href=\"#f{i - 1}\"/>", 10).Append("</g>");
        }

        return text.Append($"</defs><use href=\"#f{floors}\"/>").ToString();
    }

    [Theory]
    [MemberData(nameof(Refused))]
    public void Each_kind_is_refused(string name, string text, string code)
    {
        Assert.NotEqual("", name);
        foreach (ReadDrawing read in (ReadDrawing[])[SvgDrawn.Strict(text), SvgDrawn.Repairing(text)])
        {
            Assert.False(read.IsUsable);
            Assert.Empty(read.Entities);
            Assert.Contains(code, Drawn.Codes(read.Findings), StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_plain_doctype_a_wide_encoding_and_an_old_one_are_read()
    {
        string plain = "<?xml version=\"1.0\" encoding=\"ENC\"?>\n<!DOCTYPE svg PUBLIC \"-//W3C//DTD SVG 1.1//EN\"\n \"http://www.w3.org/Graphics/SVG/1.1/DTD/svg11.dtd\" [ ]>\n" + SvgDrawn.File("<g id=\"Säge\">" + Good + "</g>");
        (string Name, Encoding As, byte[] Mark)[] ways =
        [
            ("utf-8", Encoding.UTF8, []), ("utf-8", Encoding.UTF8, [0xef, 0xbb, 0xbf]), ("iso-8859-1", Encoding.Latin1, []),
            ("utf-16", Encoding.Unicode, [0xff, 0xfe]), ("UTF-16", Encoding.BigEndianUnicode, [0xfe, 0xff]),
        ];
        foreach ((string name, Encoding encoding, byte[] mark) in ways)
        {
            ReadDrawing read = SvgDrawn.Repairing([.. mark, .. encoding.GetBytes(plain.Replace("ENC", name, StringComparison.Ordinal))]);
            Assert.True(read.IsUsable && read.Repairs.IsEmpty, $"{name}: {Drawn.Codes([.. read.Findings, .. read.Repairs])}");
            Assert.Equal(("Säge", 5), (read.Entities[0].Layer, read.Entities[0].Line));
            Assert.Equal("DOCTYPE", Assert.Single(read.Ignored).Kind);
        }
    }

    [Fact]
    public void A_drawing_that_does_not_say_what_it_is_or_has_sizes_of_two_kinds_is_told()
    {
        ReadDrawing bare = SvgDrawn.Repairing("<svg width=\"10mm\" height=\"10mm\" viewBox=\"0 0 10 10\"><rect width=\"1\" height=\"1\"/></svg>");
        Assert.Equal("drawing-no-namespace", Drawn.Codes(bare.Repairs));
        ReadDrawing own = SvgDrawn.Strict(SvgDrawn.File("<rect width=\"1in\" height=\"1\"/>"));
        Assert.Equal("drawing-own-unit", Drawn.Codes(own.Findings));
        Assert.Equal(96, own.Entities[0].Path.Curves[0].Length, 1e-9);
        ReadDrawing pixels = SvgDrawn.Strict(SvgDrawn.File("<rect width=\"1in\" height=\"1\"/>", "width=\"3in\" height=\"3in\""));
        Assert.Empty(pixels.Findings);
        Assert.Equal(25.4, pixels.Entities[0].Path.Curves[0].Length, 1e-9);
    }
}
