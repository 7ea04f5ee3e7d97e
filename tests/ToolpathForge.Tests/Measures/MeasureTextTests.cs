using CsCheck;
using ToolpathForge.Measures;

namespace ToolpathForge.Tests.Measures;

public class MeasureTextTests
{
    private const double Inch = 25.4;

    [Theory]
    [InlineData("3 1/2", 3.5 * Inch)]
    [InlineData("3-1/2\"", 3.5 * Inch)]
    [InlineData("3 1/2 in", 3.5 * Inch)]
    [InlineData("2' 3-1/2\"", 27.5 * Inch)]
    [InlineData("6'", 72 * Inch)]
    [InlineData("7/8", 0.875 * Inch)]
    [InlineData("3½", 3.5 * Inch)]
    [InlineData("3½″", 3.5 * Inch)]
    [InlineData("2′ 3 1/2″", 27.5 * Inch)]
    [InlineData("89 mm", 89)]
    [InlineData("8.9cm", 89)]
    [InlineData("3.5", 3.5 * Inch)]
    [InlineData("  3 1/2  ", 3.5 * Inch)]
    [InlineData("-1 1/4", -1.25 * Inch)]
    [InlineData("7 1/2 in + 0.12 mm", (7.5 * Inch) + 0.12)]
    public void Sizes_as_people_write_them(string text, double millimetres)
    {
        Reading<Measure> read = MeasureText.ReadSize(text, LengthUnit.Inch);
        Assert.True(read.IsRead, read.Piece);
        Assert.False(read.Value.IsShare);
        Assert.Equal(millimetres, read.Value.Amount, 9);
    }

    [Theory]
    [InlineData("0.62 w", 0.62)]
    [InlineData("1 w", 1)]
    [InlineData("1/3 w", 1.0 / 3)]
    public void Shares_of_the_width(string text, double share)
    {
        Reading<Measure> read = MeasureText.ReadSize(text, null);
        Assert.True(read.IsRead && read.Value.IsShare);
        Assert.Equal(share * 200, read.Value.Resolve(200), 9);
    }

    [Theory]
    [InlineData("10 deg", 10)]
    [InlineData("10°", 10)]
    [InlineData("22.5", 22.5)]
    [InlineData("-10", -10)]
    [InlineData("3:12", 14.036243467926479)]
    [InlineData("1:8", 7.125016348901798)]
    public void Angles_in_degrees_or_as_rise_to_run(string text, double degrees)
    {
        Reading<Angle> read = MeasureText.ReadAngle(text);
        Assert.True(read.IsRead);
        Assert.Equal(degrees, read.Value.Degrees, 9);
    }

    // A unit that is not stated is never guessed.
    [Theory]
    [InlineData("3 1/2")]
    [InlineData("89")]
    public void Without_a_unit_there_is_no_length(string text) =>
        Assert.Equal(MeasureFindings.UnitMissing, MeasureText.ReadSize(text, null).Problem);

    [Theory]
    [InlineData("")]
    [InlineData("nine")]
    [InlineData("nan")]
    [InlineData("infinity")]
    [InlineData("3 1/0")]
    [InlineData("3 1/")]
    [InlineData("3,5")]
    [InlineData("3 furlongs")]
    [InlineData("3 in in")]
    [InlineData("1e300")]
    [InlineData("99999999999 mm")]
    [InlineData("3 1/2 1/4")]
    [InlineData("--3")]
    public void What_is_no_size_is_refused(string text) => Assert.False(MeasureText.ReadSize(text, LengthUnit.Inch).IsRead);

    [Fact]
    public void Lengths_written_are_read_back_in_either_unit() =>
        Gen.Select(Gen.Double[-3000, 3000], Gen.Bool).Sample((mm, inch) =>
        {
            LengthUnit unit = inch ? LengthUnit.Inch : LengthUnit.Millimetre;
            Reading<Length> read = MeasureText.ReadLength(LengthText.Write(mm, unit), unit);
            Assert.True(read.IsRead, LengthText.Write(mm, unit));

            // Half of the last digit: a thousandth of a millimetre beside a fraction, or the third digit of an inch below a 64th.
            Assert.Equal(mm, read.Value.Millimetres, Math.Abs(mm) < 25.4 / 64 ? 0.0013 : 0.0006);
        }, iter: 2000);

    [Fact]
    public void Any_text_is_read_or_refused_and_nothing_is_thrown() =>
        Gen.String[Gen.Char["0123456789 /-'\".:wmcindeg½″′,+e\0é"], 0, 14].Sample(text =>
        {
            Reading<Measure> size = MeasureText.ReadSize(text, LengthUnit.Millimetre);
            Assert.True(!size.IsRead || double.IsFinite(size.Value.Amount));
            Reading<Angle> angle = MeasureText.ReadAngle(text);
            Assert.True(!angle.IsRead || double.IsFinite(angle.Value.Degrees));
        }, iter: 5000);

    [Theory]
    [InlineData(190.5, "7 1/2 in")]
    [InlineData(4.7625, "3/16 in")]
    [InlineData(190.62, "7 1/2 in + 0.12 mm")]
    public void Written_back_as_fractions_with_the_remainder_told(double mm, string text) => Assert.Equal(text, LengthText.Write(mm, LengthUnit.Inch));

    [Theory]
    [InlineData(8, "2 3/8", -0.03125)]
    [InlineData(32, "2 11/32", 0)]
    public void A_rule_of_any_fineness(int denominator, string mark, double remainderInches)
    {
        InchFraction fraction = InchFraction.Nearest((2 + (11.0 / 32)) * Inch, denominator);
        Assert.Equal(mark, fraction.ToString());
        Assert.Equal(remainderInches * Inch, fraction.Remainder, 9);
    }

    [Theory]
    [InlineData(5.6, LengthUnit.Inch, "0.220 in")]
    [InlineData(5.6, LengthUnit.Millimetre, "5.6 mm")]
    [InlineData(38.1, LengthUnit.Inch, "1 1/2 in")]
    public void Sizes_of_the_shop(double mm, LengthUnit unit, string text) => Assert.Equal(text, ShopText.Size(mm, unit));

    [Fact]
    public void A_size_with_room_to_spare_never_comes_out_smaller() =>
        Gen.Select(Gen.Double[0, 3000], Gen.Bool).Sample((mm, inch) =>
        {
            LengthUnit unit = inch ? LengthUnit.Inch : LengthUnit.Millimetre;
            Assert.InRange(ShopText.Up(mm, unit), mm - 1e-4, mm + ShopText.Step(unit));
        }, iter: 500);
}
