using ToolpathForge.Drawings;
using ToolpathForge.Tests.Lettering;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Drawings;

public class LookTests
{
    [Fact]
    public void Specimen_of_the_lettering() => Golden.Same("lettering-specimen.svg", SvgWriter.Write(Specimen.Sheet(), 1));

    [Fact]
    public void Scoop_plate() => Golden.Same("scoop-plate.svg", SvgWriter.Write(ScoopPlate.Sheet(0.5), 0.5));
}
