using ToolpathForge.Measures;
using ToolpathForge.RunSheets;

namespace ToolpathForge.Tests.RunSheets;

/// <summary>Figures that are only estimated are not printed finer than they are known.</summary>
public class EstimatedWordsTests
{
    [Theory]
    [InlineData(0.31467, LengthUnit.Millimetre, "about 0.31 mm")]
    [InlineData(0.03149, LengthUnit.Millimetre, "about 0.031 mm")]
    [InlineData(0.0023, LengthUnit.Millimetre, "about 0.002 mm")]
    [InlineData(1.2345, LengthUnit.Millimetre, "about 1.2 mm")]
    [InlineData(0.0004, LengthUnit.Millimetre, "less than 0.001 mm")]
    [InlineData(0, LengthUnit.Millimetre, "less than 0.001 mm")]
    [InlineData(0.31467, LengthUnit.Inch, "about 0.012 in")]
    [InlineData(0.0254, LengthUnit.Inch, "about 0.001 in")]
    [InlineData(0.0962, LengthUnit.Inch, "about 0.0038 in")]
    [InlineData(0.001, LengthUnit.Inch, "less than 0.0001 in")]
    public void An_estimate_has_two_digits(double millimetres, LengthUnit unit, string words) => Assert.Equal(words, SheetWords.Estimated(millimetres, unit));
}
