using System.Text;
using ToolpathForge.Exchange.Reading;
using ToolpathForge.Findings;
using ToolpathForge.Measures;
using ToolpathForge.Wording;

namespace ToolpathForge.Tests.Exchange.Reading;

/// <summary>Kinds of broken file: each is refused by the strict way in, and either refused or repaired by the other, with a finding that says so.</summary>
public class DxfBrokenTests
{
    private const string Good = "0 LINE 8 edge 10 0 20 0 11 10 21 0";

    private const string Loop = "0 BLOCK 8 0 2 A 70 0 10 0 20 0 0 LINE 8 0 10 0 20 0 11 1 21 1 0 INSERT 8 0 2 B 10 5 20 0 0 ENDBLK 0 BLOCK 8 0 2 B 70 0 10 0 20 0 0 INSERT 8 0 2 A 10 0 20 1 0 ENDBLK";

    /// <summary>Name, the file's entities (beside a good line), blocks, the code expected, and what its words must hold.</summary>
    public static TheoryData<string, string, string, string, string> Repaired => new()
    {
        { "line without an end", "0 LINE 8 edge 10 0 20 0", "", "drawing-value-missing", "LINE on layer 'edge' has no end" },
        { "line that is a point", "0 LINE 8 edge 10 4 20 5 11 4 21 5", "", "drawing-no-size", "has no size" },
        { "coordinate that is a word", "0 LINE 8 edge 10 here 20 0 11 1 21 0", "", "drawing-number-unreadable", "'here'" },
        { "coordinate that is not a number", "0 LINE 8 edge 10 nan 20 0 11 1 21 0", "", "drawing-number-unreadable", "'nan'" },
        { "coordinate without end", "0 LINE 8 edge 10 Infinity 20 0 11 1 21 0", "", "drawing-number-unreadable", "'Infinity'" },
        { "coordinate too large for a double", "0 LINE 8 edge 10 1e400 20 0 11 1 21 0", "", "drawing-number-unreadable", "'1e400'" },
        { "coordinate a light year away", "0 LINE 8 edge 10 9.4e18 20 0 11 1 21 0", "", "drawing-too-far", "reaches farther" },
        { "decimal comma", "0 LINE 8 edge 10 1,5 20 0 11 3 21 0", "", "drawing-number-comma", "decimal comma" },
        { "arc without a radius", "0 ARC 8 edge 10 0 20 0 50 0 51 90", "", "drawing-value-missing", "no radius" },
        { "arc without an angle", "0 ARC 8 edge 10 0 20 0 40 1 51 90", "", "drawing-value-missing", "no start angle" },
        { "circle of radius 0", "0 CIRCLE 8 edge 10 0 20 0 40 0", "", "drawing-value-unusable", "radius of 0" },
        { "circle of radius less than 0", "0 CIRCLE 8 edge 10 0 20 0 40 -3", "", "drawing-value-unusable", "radius of -3" },
        { "ellipse of ratio 0", "0 ELLIPSE 8 edge 10 0 20 0 11 5 21 0 40 0", "", "drawing-value-unusable", "ratio of axes of 0" },
        { "ellipse of no axis", "0 ELLIPSE 8 edge 10 0 20 0 11 0 21 0 40 0.5", "", "drawing-no-size", "no size" },
        { "extrusion in no direction", "0 CIRCLE 8 edge 10 0 20 0 40 1 210 0 220 0 230 0", "", "drawing-value-unusable", "extrusion" },
        { "circle on edge", "0 CIRCLE 8 edge 10 0 20 0 40 1 210 1 220 0 230 0", "", "drawing-out-of-plane", "flat" },
        { "polyline of one point", "0 LWPOLYLINE 8 edge 90 1 70 0 10 0 20 0", "", "drawing-value-missing", "two points" },
        { "polyline whose count is wrong", "0 LWPOLYLINE 8 edge 90 2000000000 70 0 10 0 20 0 10 1 20 0", "", "drawing-count-wrong", "holds 2" },
        { "polyline point without y", "0 LWPOLYLINE 8 edge 90 2 70 0 10 0 10 1 20 0", "", "drawing-value-missing", "y of a point" },
        { "polyline with a broken vertex", "0 POLYLINE 8 edge 66 1 70 0 0 VERTEX 8 0 10 0 20 0 0 VERTEX 8 0 10 x 20 0 0 VERTEX 8 0 10 3 20 0 0 SEQEND", "", "drawing-number-unreadable", "VERTEX" },
        { "bulge that is not a number", "0 LWPOLYLINE 8 edge 90 2 70 0 10 0 20 0 42 nan 10 1 20 0", "", "drawing-number-unreadable", "'nan'" },
        { "spline of too few knots", "0 SPLINE 8 edge 71 2 40 0 40 0 40 1 40 1 10 0 20 0 10 1 20 1 10 2 20 0", "", "drawing-spline-unusable", "need 6 knots" },
        { "spline whose knots fall", "0 SPLINE 8 edge 71 2 40 0 40 0 40 0 40 1 40 0.5 40 1 10 0 20 0 10 1 20 1 10 2 20 0", "", "drawing-spline-unusable", "fall" },
        { "spline of degree 40", "0 SPLINE 8 edge 71 40 40 0 10 0 20 0 10 1 20 1", "", "drawing-spline-unusable", "degree is 40" },
        { "spline with a weight of 0", "0 SPLINE 8 edge 71 2 40 0 40 0 40 0 40 1 40 1 40 1 10 0 20 0 41 1 10 1 20 1 41 0 10 2 20 0 41 1", "", "drawing-spline-unusable", "weights" },
        { "spline with a gap", "0 SPLINE 8 edge 71 1 40 0 40 0 40 1 40 1 40 2 40 2 10 0 20 0 10 1 20 1 10 2 20 0 10 3 20 0", "", "drawing-spline-unusable", "gap" },
        { "spline without a curve", "0 SPLINE 8 edge 71 1 40 1 40 1 40 1 40 1 10 0 20 0 10 1 20 1", "", "drawing-spline-unusable", "no curve" },
        { "spline of points to pass through", "0 SPLINE 8 edge 71 3 74 2 11 0 21 0 11 1 21 1", "", "drawing-spline-unusable", "pass through" },
        { "block that is not there", "0 INSERT 8 edge 2 GONE 10 0 20 0", "", "drawing-block-missing", "'GONE'" },
        { "block of another file", "0 INSERT 8 edge 2 X 10 0 20 0", "0 BLOCK 8 0 2 X 70 4 10 0 20 0 1 ../secret.dxf 0 ENDBLK", "drawing-block-missing", "'X'" },
        { "blocks within each other", "0 INSERT 8 edge 2 A 10 0 20 0", Loop, "drawing-block-recursive", "within itself" },
        { "block twice", "0 INSERT 8 edge 2 A 10 0 20 0", "0 BLOCK 8 0 2 A 70 0 0 LINE 8 0 10 0 20 0 11 1 21 1 0 ENDBLK 0 BLOCK 8 0 2 a 70 0 0 ENDBLK", "drawing-block-twice", "twice" },
        { "block that is not closed", "0 INSERT 8 edge 2 A 10 0 20 0", "0 BLOCK 8 0 2 A 70 0 0 LINE 8 0 10 0 20 0 11 1 21 1", "drawing-block-unclosed", "'A' is not closed" },
        { "insert without a name", "0 INSERT 8 edge 10 0 20 0", "", "drawing-value-missing", "name of a block" },
        { "insert of scale 0", "0 INSERT 8 edge 2 A 10 0 20 0 41 0", "0 BLOCK 8 0 2 A 70 0 0 LINE 8 0 10 0 20 0 11 1 21 1 0 ENDBLK", "drawing-value-unusable", "scale of 0" },
        { "section that is not closed", "0 LINE 8 edge 10 0 20 0 11 1 21 0 0 SECTION 2 OBJECTS", "", "drawing-section-unclosed", "ENTITIES is not closed" },
        { "lines that have changed places", "0 LINE 8 edge 10 0 20 0 11 1 21 0 left 0", "", "drawing-code-unreadable", "'left'" },
        { "something outside every section", "0 ENDSEC 0 LINE 8 0 10 1 20 1 11 2 21 2 0 SECTION 2 ENTITIES", "", "drawing-outside-section", "outside" },
        { "end in the middle", "0 LINE 8 edge 10 0 20 0 11 1 21 0 STOP", "", "drawing-cut-off", "the last LINE may be incomplete" },
        { "end in the middle of a polyline", "0 POLYLINE 8 edge 66 1 70 0 0 VERTEX 8 0 10 0 20 0 0 VERTEX 8 0 10 STOP", "", "drawing-cut-off", "POLYLINE is incomplete" },
    };

    [Theory]
    [MemberData(nameof(Repaired))]
    public void Each_kind_is_refused_strictly_and_repaired_with_a_report(string name, string entities, string blocks, string code, string says)
    {
        Assert.NotEqual("", name);
        string text = Drawn.File(Good + " " + entities, blocks);
        text = text.Contains("STOP", StringComparison.Ordinal) ? text[..text.IndexOf("STOP", StringComparison.Ordinal)] : text;

        ReadDrawing strict = Drawn.Strict(text);
        Assert.False(strict.IsUsable);
        Assert.Empty(strict.Entities);
        Assert.Contains("drawing-needs-repair", Drawn.Codes(strict.Findings), StringComparison.Ordinal);

        ReadDrawing read = Drawn.Repairing(text);
        Assert.True(read.IsUsable, Drawn.Codes(read.Findings));
        Finding repair = Assert.Single(read.Repairs.DistinctBy(r => r.Kind.Code), r => r.Kind.Code == code);
        string worded = FindingText.Word(repair, LengthUnit.Millimetre).ToString();
        Assert.Contains(says, worded, StringComparison.Ordinal);
        Assert.DoesNotContain("{", worded, StringComparison.Ordinal);
        Assert.StartsWith("drawing.dxf", worded, StringComparison.Ordinal);

        // What is sound is still there.
        Assert.Equal(10, read.Entities[0].Path.Curves[0].Length, 1e-12);
    }

    public static TheoryData<string, string, string> Refused => new()
    {
        { "nothing at all", "", "drawing-not-recognised" },
        { "a letter to somebody", "Dear sir,\nI should like a porch.\n", "drawing-not-recognised" },
        { "numbers", "1\n2\n3\n4\n", "drawing-not-recognised" },
        { "only an end", "0\nEOF\n", "drawing-empty" },
        { "only text", Drawn.File("0 TEXT 8 0 1 word"), "drawing-empty" },
        { "nothing that can be read", Drawn.File("0 CIRCLE 8 0 40 -1 10 0 20 0"), "drawing-empty" },
        { "a sentinel without more", "AutoCAD Binary DXF\r\n\u001a\0", "drawing-empty" },
    };

    [Theory]
    [MemberData(nameof(Refused))]
    public void Each_of_these_is_refused(string name, string text, string code)
    {
        Assert.NotEqual("", name);
        ReadDrawing read = Drawn.Repairing(text);
        Assert.False(read.IsUsable);
        Assert.Empty(read.Entities);
        Assert.Contains(code, Drawn.Codes(read.Findings), StringComparison.Ordinal);
        Assert.True(read.Findings.Single(f => f.Kind.Severity == Severity.Stop).Kind.Unusable);
    }

    [Fact]
    public void Blocks_that_double_each_time_are_refused_before_they_fill_the_memory()
    {
        // Thirty levels of two: 2³⁰ lines if it were followed.
        string blocks = "0 BLOCK 8 0 2 B0 70 0 0 LINE 8 0 10 0 20 0 11 1 21 1 0 ENDBLK ";
        for (int i = 1; i <= 30; i++)
        {
            blocks += $"0 BLOCK 8 0 2 B{i} 70 0 0 INSERT 8 0 2 B{i - 1} 10 0 20 0 0 INSERT 8 0 2 B{i - 1} 10 1 20 0 0 ENDBLK ";
        }

        ReadDrawing read = Drawn.Repairing(Drawn.File("0 INSERT 8 0 2 B30 10 0 20 0", blocks));
        Assert.Equal("drawing-over-curves", Drawn.Codes(read.Findings));
        Assert.Empty(read.Entities);
    }

    [Fact]
    public void Blocks_deeper_than_allowed_are_left_out()
    {
        string blocks = "0 BLOCK 8 0 2 B0 70 0 0 LINE 8 0 10 0 20 0 11 1 21 1 0 ENDBLK ";
        for (int i = 1; i <= 40; i++)
        {
            blocks += $"0 BLOCK 8 0 2 B{i} 70 0 0 INSERT 8 0 2 B{i - 1} 10 0 20 0 0 ENDBLK ";
        }

        ReadDrawing read = Drawn.Repairing(Drawn.File(Good + " 0 INSERT 8 0 2 B40 10 0 20 0", blocks));
        Assert.Equal("drawing-too-deep", Drawn.Codes(read.Repairs));
        Assert.Single(read.Entities);
    }

    [Fact]
    public void An_empty_block_in_countless_rows_is_refused()
    {
        ReadDrawing read = Drawn.Repairing(Drawn.File(Good + " 0 INSERT 8 0 2 E 10 0 20 0 70 30000 71 30000 44 1 45 1", "0 BLOCK 8 0 2 E 70 0 0 ENDBLK"));
        Assert.Equal("drawing-over-curves", Drawn.Codes(read.Findings));
    }

    [Fact]
    public void Size_number_and_time_are_limited_as_asked()
    {
        byte[] bytes = Encoding.UTF8.GetBytes(Drawn.File(string.Join(' ', Enumerable.Repeat(Good, 6000))));
        Assert.Equal("drawing-over-size", Drawn.Codes(Drawn.Repairing(bytes, limits: DrawingLimits.Default with { Bytes = 1000 }).Findings));
        Assert.Equal("drawing-over-curves", Drawn.Codes(Drawn.Repairing(bytes, limits: DrawingLimits.Default with { Curves = 5999 }).Findings));
        Assert.Equal("drawing-over-time", Drawn.Codes(Drawn.Repairing(bytes, limits: DrawingLimits.Default with { Time = TimeSpan.Zero }).Findings));
        Assert.Equal(6000, Drawn.Repairing(bytes, limits: DrawingLimits.Default with { Curves = 6000 }).Entities.Length);
    }

    [Fact]
    public void Many_repairs_of_a_kind_are_told_shortly_with_their_number()
    {
        ReadDrawing read = Drawn.Repairing(Drawn.File(Good + string.Concat(Enumerable.Repeat(" 0 CIRCLE 8 0 10 0 20 0 40 0", 500))));
        Assert.Equal(21, read.Repairs.Length);
        Assert.Equal(480, read.Repairs[^1].Args.Single().Quantity!.Value.Value);
    }

    [Fact]
    public void Cut_off_anywhere_it_is_a_repair_or_a_refusal()
    {
        string text = Drawn.File(Good + " 0 LWPOLYLINE 8 edge 90 3 70 1 10 0 20 0 42 1 10 1 20 0 10 2 20 5 0 INSERT 8 0 2 B 10 1 20 1", "0 BLOCK 8 0 2 B 70 0 0 LINE 8 0 10 0 20 0 11 1 21 1 0 ENDBLK");
        int whole = text.IndexOf("EOF", StringComparison.Ordinal) + 3;
        for (int length = 0; length < whole; length++)
        {
            ReadDrawing read = Drawn.Repairing(text[..length]);
            Assert.True(read.Repairs.Length > 0 || !read.IsUsable, $"{length} characters");
            Assert.False(Drawn.Strict(text[..length]).IsUsable);
        }
    }

    [Fact]
    public void A_caller_may_stop_it()
    {
        using var source = new CancellationTokenSource();
        source.Cancel();
        byte[] bytes = Encoding.UTF8.GetBytes(Drawn.File(Good));
        Assert.Throws<OperationCanceledException>(() => DrawingReader.ReadStrict(bytes, "drawing.dxf", cancel: source.Token));
    }
}
