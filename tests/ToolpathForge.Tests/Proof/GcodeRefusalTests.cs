using ToolpathForge.Proof;

namespace ToolpathForge.Tests.Proof;

/// <summary>What the reader refuses, with its line: error cases of NISTIR 6556 (section beside each group), and refusals of our own.</summary>
public class GcodeRefusalTests
{
    private const string Ready = "g21 g17 g90 g94\nf100 g0 x0 y0 z0\n";

    [Theory]

    // 3.3: lines, characters, comments
    [InlineData("g1 x1 (open", "comment-not-closed")]
    [InlineData("g1 x1 (a (b) c)", "comment-nested")]
    [InlineData("g1 x1 )", "character-not-allowed")]
    [InlineData("g1 x1 $", "character-not-allowed")]
    [InlineData("g1 x1 (bell \u0007)", "character-not-allowed")]
    [InlineData("g1 \u212a1", "character-not-allowed")] // the Kelvin sign is no K
    [InlineData("g1 x1\u0660", "character-not-allowed")] // nor is a digit of another script
    [InlineData("5 g1 x1", "character-not-allowed")]
    [InlineData("g1 % x1", "character-not-allowed")]
    [InlineData("g1 x1 /", "character-not-allowed")]
    [InlineData("n000009 g1 x1", "line-number-malformed")]
    [InlineData("n1.5 g1 x1", "line-number-malformed")]
    [InlineData("n-1 g1 x1", "line-number-malformed")]
    [InlineData("g1 n1 x1", "line-number-malformed")]
    [InlineData("(note) n1 g1 x1", "line-number-malformed")]

    // 3.3.2: numbers and expressions
    [InlineData("g1 x", "number-malformed")]
    [InlineData("g1 x-", "number-malformed")]
    [InlineData("g1 x.", "number-malformed")]
    [InlineData("g1 x y1", "number-malformed")]
    [InlineData("g1 x1.2.3", "character-not-allowed")]
    [InlineData("g1 x1e3", "word-unknown")]
    [InlineData("g1 x(note)1", "number-malformed")]
    [InlineData("g1 x1000001", "number-too-large")]
    [InlineData("g1 x[10**300]", "number-too-large")]
    [InlineData("g1 x[1", "expression-malformed")]
    [InlineData("g1 x[1+]", "expression-malformed")]
    [InlineData("g1 x[]", "expression-malformed")]
    [InlineData("g1 x[1 2", "expression-malformed")]
    [InlineData("g1 x[atan[1]]", "expression-malformed")]
    [InlineData("g1 xsin30", "expression-malformed")]
    [InlineData("g1 x[foo[1]]", "expression-malformed")]
    [InlineData("g1 x[1/0]", "expression-undefined")]
    [InlineData("g1 x[1 mod 0]", "expression-undefined")]
    [InlineData("g1 xsqrt[-1]", "expression-undefined")]
    [InlineData("g1 xln[0]", "expression-undefined")]
    [InlineData("g1 xacos[2]", "expression-undefined")]
    [InlineData("g1 x[[-8]**[1/3]]", "expression-undefined")]
    [InlineData("g1 x[10**400]", "expression-undefined")]
    [InlineData("g1 x#1", "parameter-refused")]
    [InlineData("g1 x[1+#2]", "parameter-refused")]
    [InlineData("#1=5", "parameter-refused")]

    // 3.3.3 to 3.4: words and groups
    [InlineData("g1 x1 w2", "word-unknown")]
    [InlineData("g1 x1 a2", "word-unknown")]
    [InlineData("o100 sub", "word-unknown")]
    [InlineData("g1 x1 x2", "word-repeated")]
    [InlineData("f10 f10", "word-repeated")]
    [InlineData("g0 g1 x1", "group-repeated")]
    [InlineData("g90 g91", "group-repeated")]
    [InlineData("g20 g21", "group-repeated")]
    [InlineData("m3 m5", "group-repeated")]
    [InlineData("m0 m2", "group-repeated")]
    [InlineData("m7 m8", "group-repeated")]
    [InlineData("m3 m6 m7 m0 m5", "too-many-m-words")]
    [InlineData("g5 x1", "code-unknown")]
    [InlineData("g1.5 x1", "code-unknown")]
    [InlineData("g1.55 x1", "value-not-whole")]
    [InlineData("g-1", "code-unknown")]
    [InlineData("m98", "code-unknown")]
    [InlineData("m3.5", "value-not-whole")]
    [InlineData("g1 x1 p2", "word-unused")]
    [InlineData("g1 x1 i2", "word-unused")]
    [InlineData("g1 x1 r2", "word-unused")]
    [InlineData("g2 x1 y1 i1 k1", "word-unused")]
    [InlineData("h1", "word-unused")]
    [InlineData("g4", "word-missing")]
    [InlineData("g4 p-1", "value-negative")]
    [InlineData("f-1", "value-negative")]
    [InlineData("s-1", "value-negative")]
    [InlineData("t-1", "value-negative")]
    [InlineData("t1.5", "value-not-whole")]

    // 3.5: codes
    [InlineData("g1", "axes-missing")]
    [InlineData("g0", "axes-missing")]
    [InlineData("g2 i1", "axes-missing")]
    [InlineData("g80 x1", "axes-without-motion")]
    [InlineData("f0 g1 x1", "feed-missing")]
    [InlineData("g3 z1 i1", "arc-end-missing")]
    [InlineData("g2 x1 y1", "arc-center-missing")]
    [InlineData("g2 x1 y1 r1 i1", "arc-forms-mixed")]
    [InlineData("g2 x0 y0 r1", "arc-end-is-start")]
    [InlineData("g2 x10 y0 r4.99", "arc-radius-too-small")]
    [InlineData("g2 x1 y1 r0", "arc-radius-zero")]
    [InlineData("g2 x0 y0 i0 j0", "arc-radius-zero")]
    [InlineData("g2 x10.0041 y0 i5", "arc-radius-mismatch")]
    [InlineData("g18 g2 x1 z1 r5", "plane-not-read")]
    [InlineData("g19 g3 y1 r5", "plane-not-read")]
    [InlineData("g18 g2 x1 z1 i1 k1", "word-unused")]
    [InlineData("g10 l2 p1 x0", "code-refused")]
    [InlineData("g28", "code-refused")]
    [InlineData("g30", "code-refused")]
    [InlineData("g38.2 z-1", "code-refused")]
    [InlineData("g41 d1", "code-refused")]
    [InlineData("g42", "code-refused")]
    [InlineData("g43 h1", "code-refused")]
    [InlineData("g53 g0 z0", "code-refused")]
    [InlineData("g59.1", "code-refused")]
    [InlineData("g81 x1 y1 z-1 r1", "code-refused")]
    [InlineData("g92 x0", "code-refused")]
    [InlineData("g93", "code-refused")]
    [InlineData("g98", "code-refused")]
    [InlineData("m4", "code-refused")]
    [InlineData("m48", "code-refused")]
    [InlineData("m60", "code-refused")]
    [InlineData("g71", "code-refused")]

    // Of our own: what would be read by one machine so and by another otherwise
    [InlineData("g20", "unit-changed")]
    [InlineData("g20 f200", "unit-changed")]
    [InlineData("g54\ng55", "work-offset-changed")]
    [InlineData("%", "percent-not-paired")]
    public void Is_refused(string line, string code)
    {
        Refusal? refusal = GcodeReader.Read(Ready + line + "\nm2\n").Refusal;
        Assert.NotNull(refusal);
        Assert.Equal(code, refusal.Code.Name);
        Assert.Equal(3 + line.Count(c => c == '\n'), refusal.Line);
    }

    [Theory]
    [InlineData("g21 g0 z5\ng1 x1 y1 f10\n", "position-unknown", 2)]
    [InlineData("g21 g91 g0 z5\n", "position-unknown", 1)]
    [InlineData("g21 g0 x1 y1\nf10 g2 x2 y2 i1\n", "position-unknown", 2)]
    [InlineData("g21 x1\n", "axes-without-motion", 1)]
    [InlineData("g21 g0 x0 y0 z0\ng1 x1\n", "feed-missing", 2)]
    [InlineData("%\ng21\nm2\n", "percent-not-paired", 3)]
    [InlineData("g0 x1\ng20\n", "unit-changed", 2)]
    [InlineData("f10\ng20\n", "unit-changed", 2)]
    [InlineData("g20 f10\n", "unit-changed", 1)]
    public void Is_refused_from_the_start(string text, string code, int line)
    {
        Refusal? refusal = GcodeReader.Read(text).Refusal;
        Assert.NotNull(refusal);
        Assert.Equal((code, line), (refusal.Code.Name, refusal.Line));
    }

    /// <summary>Section 3.3: 256 characters at most, whatever they are.</summary>
    [Theory]
    [InlineData(256, true)]
    [InlineData(257, false)]
    public void Lines_have_a_length(int length, bool isRead)
    {
        string comment = "(" + new string('c', length - 2) + ")";
        Refusal? refusal = GcodeReader.Read("g21\n" + comment + "\r\nm2\r\n").Refusal;
        Assert.Equal(isRead ? null : "line-too-long", refusal?.Code.Name);
        string spaces = "m5" + new string(' ', length - 2);
        Assert.Equal(isRead, GcodeReader.Read(spaces).Refusal is null);
    }

    /// <summary>Section 3.5.3: 0.002 mm or 0.0002 in, no more. The limit itself is allowed.</summary>
    [Theory]
    [InlineData("g21", "10.002", true)]
    [InlineData("g21", "10.0021", false)]
    [InlineData("g21", "9.998", true)]
    [InlineData("g20", "10.0002", true)]
    [InlineData("g20", "10.00021", false)]
    public void Radii_of_an_arc_may_differ_by_so_much(string unit, string endX, bool isRead)
    {
        GcodeProgram program = GcodeReader.Read($"{unit} g17 g90\nf10\ng0 x0 y0 z0\ng2 x{endX} y0 i5 j0\n");
        Assert.Equal(isRead ? null : "arc-radius-mismatch", program.Refusal?.Code.Name);
    }

    [Fact]
    public void A_refusal_quotes_the_words_and_gives_what_was_measured()
    {
        Refusal refusal = GcodeReader.Read(Ready + "g2 x10.01 y0 i5 j0").Refusal!;
        Assert.Equal("X10.01 Y0 I5 J0", refusal.Words);
        Assert.Equal(0.01, refusal.Found!.Value, 9);
        Assert.Equal(0.002, refusal.Allowed);
        Assert.Equal("G41", GcodeReader.Read("g 41").Refusal!.Words);
    }
}
