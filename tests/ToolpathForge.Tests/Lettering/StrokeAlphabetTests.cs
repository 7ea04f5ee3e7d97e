using System.Text;
using CsCheck;
using ToolpathForge.Geometry;
using ToolpathForge.Lettering;

namespace ToolpathForge.Tests.Lettering;

public class StrokeAlphabetTests
{
    [Fact]
    public void Holds_every_character_of_plain_text_and_of_the_trade()
    {
        string wanted = string.Concat(Enumerable.Range(' ', '~' - ' ' + 1).Select(c => (char)c)) + "°×⌀–≤≥±←→↑↓↺↻½¼¾⅛⅜⅝⅞′″−µ²³…·’“”\u00A0";
        Assert.Empty(StrokeAlphabet.Write(wanted, 4, Point2.Origin).Unknown);
        Assert.All(StrokeAlphabet.Characters, c => Assert.Empty(StrokeAlphabet.Write(c.ToString(), 4, Point2.Origin).Unknown));
    }

    // Latin-1 and Latin Extended-A by Unicode's own decompositions; the letters that have none by how they are read.
    [Theory]
    [InlineData("Bootshäuschen", "Bootshauschen")]
    [InlineData("Łódź, Ære, Straße 3/8", "Lodz, AEre, Strasse 3/8")]
    [InlineData("木 ½ °", "木 ½ °")]
    public void Accents_fall_away_and_nothing_else_does(string written, string plain) => Assert.Equal(plain, Accents.Without(written));

    [Fact]
    public void An_unknown_character_becomes_a_box_and_is_told_once()
    {
        WrittenText written = StrokeAlphabet.Write("a木b木\U0001F332\n", 1, Point2.Origin);
        Assert.Equal([new Rune('木'), new Rune(0x1F332), new Rune('\n')], written.Unknown);
        Contour box = StrokeAlphabet.Write("木", 2, Point2.Origin).Strokes.Single();
        Assert.True(box.IsClosed);
        Assert.Equal(new Box2(0, 0, 1.12, 2), box.Box);
    }

    [Theory]
    [InlineData("3 1/2", 1)]
    [InlineData("3-1/2\"", 1)]
    [InlineData("1/2", 1)]
    [InlineData("½", 1)]
    [InlineData("11 15/32 and 3⁄4", 2)]
    [InlineData("(1/4)", 1)]
    [InlineData("1/4in, 1/2.", 2)]
    [InlineData("100/125", 1)]
    [InlineData("1/2/2031", 0)]
    [InlineData("2031/12", 0)]
    [InlineData("0.5/3", 0)]
    [InlineData("1/3.2", 0)]
    [InlineData("1/1000", 0)]
    [InlineData("and/or", 0)]
    [InlineData("M1/2", 0)]
    [InlineData("/2", 0)]
    [InlineData("1/", 0)]
    [InlineData("٣/٤", 0)]
    public void Fractions_are_found_where_a_reader_sees_one(string text, int fractions) =>
        Assert.Equal(fractions, Fractions.Split(text).Count(s => s.IsFraction));

    [Fact]
    public void A_fraction_is_numerator_bar_denominator_in_a_column()
    {
        Contour[] strokes = [.. StrokeAlphabet.Write("1/4", 10, Point2.Origin).Strokes];
        Assert.Equal(3, strokes.Length);
        Assert.InRange(strokes[0].Box.MinY, 6.3, 6.5);
        Assert.Equal(5, strokes[1].Start.Y, 9);
        Assert.Equal(5, strokes[1].End.Y, 9);
        Assert.InRange(strokes[2].Box.MaxY, 3.5, 3.7);
        Assert.Equal(strokes[1].Box.Center.X, strokes[0].Box.Center.X, 9);
        Assert.Equal(strokes[1].Box.Center.X, strokes[2].Box.Center.X, 9);
    }

    [Fact]
    public void Whole_number_and_fraction_stand_closer_than_two_words() =>
        Assert.True(StrokeAlphabet.WidthOf("3 1/2", 1) + 0.2 < StrokeAlphabet.WidthOf("a 1/2", 1) + StrokeAlphabet.WidthOf("3", 1) - StrokeAlphabet.WidthOf("a", 1));

    [Theory]
    [InlineData(TextAlign.Start, 20, 0)]
    [InlineData(TextAlign.Middle, 20, 0.5)]
    [InlineData(TextAlign.End, 20, 1)]
    public void Alignment_is_by_the_ink(TextAlign align, double x, double share)
    {
        WrittenText written = StrokeAlphabet.Write("HORN", 6, new Point2(x, -3), align);
        Assert.Equal(x - (share * written.Width), written.Box.MinX, 9);
        Assert.Equal(written.Width, written.Box.Width, 9);
        Assert.Equal(-3, written.Box.MinY, 9);
        Assert.Equal(3, written.Box.MaxY, 9);
    }

    [Fact]
    public void Blanks_are_air_but_not_ink()
    {
        Assert.Empty(StrokeAlphabet.Write("   ", 3, Point2.Origin).Strokes);
        Assert.Equal(0, StrokeAlphabet.WidthOf("", 3));
        Assert.Equal(StrokeAlphabet.WidthOf("A", 3), StrokeAlphabet.WidthOf("  A ", 3), 9);
        Assert.True(StrokeAlphabet.WidthOf("A A", 3) > (2 * StrokeAlphabet.WidthOf("A", 3)) + 1);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void A_height_that_is_none_is_refused(double height) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => StrokeAlphabet.Write("A", height, Point2.Origin));

    [Fact]
    public void Size_place_and_turn_move_the_strokes_and_change_nothing_else()
    {
        Gen<(string Text, double Height, double X, double Y, double Turn)> cases =
            Gen.Select(Gen.String[Gen.Char["AOgx3 1/2%é"], 1, 8], Gen.Double[0.5, 50], Gen.Double[-500, 500], Gen.Double[-500, 500], Gen.Double[-7, 7]);
        cases.Sample(c =>
        {
            WrittenText plain = StrokeAlphabet.Write(c.Text, 1, Point2.Origin);
            WrittenText placed = StrokeAlphabet.Write(c.Text, c.Height, new Point2(c.X, c.Y), TextAlign.Start, c.Turn);
            Assert.Equal(plain.Width * c.Height, placed.Width, 1e-9);
            Assert.Equal(plain.Strokes.Length, placed.Strokes.Length);
            for (int i = 0; i < plain.Strokes.Length; i++)
            {
                Assert.Equal(plain.Strokes[i].Length * c.Height, placed.Strokes[i].Length, 1e-7);
                Assert.Equal(plain.Strokes[i].IsClosed, placed.Strokes[i].IsClosed);
                Point2 expected = (plain.Strokes[i].Start * c.Height).Rotated(c.Turn) + new Point2(c.X, c.Y);
                Assert.InRange(placed.Strokes[i].Start.DistanceTo(expected), 0, 1e-9);
            }
        });
    }

    [Fact]
    public void Any_text_can_be_written() => Gen.Char['\0', '\uFFFF'].Array[0, 30].Sample(characters =>
    {
        WrittenText written = StrokeAlphabet.Write(new string(characters), 4, Point2.Origin);
        Assert.True(double.IsFinite(written.Width));
        Assert.Equal(written.Unknown.Length, written.Unknown.Distinct().Count());
    });

    [Theory]
    [InlineData("0 0 X 1 1")]
    [InlineData("0 0 L 1")]
    [InlineData("0 0 @ north L 1 1")]
    public void The_notation_refuses_what_is_no_pen_word(string notation) =>
        Assert.ThrowsAny<Exception>(() => PenNotation.Read(notation));
}
