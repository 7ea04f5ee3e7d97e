using System.Text;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.DrawnMakes;

public sealed class BraceSampleTests
{
    [Fact]
    public void TheDrawingOfTheSampleIsOurs() =>
        Golden.SameFile(Repo.Path("samples", "boathouse", "brace.dxf"), Encoding.UTF8.GetBytes(BraceDrawing.Dxf));
}
