using ToolpathForge.Catalogue;
using ToolpathForge.Jobs;
using ToolpathForge.Pieces;
using ToolpathForge.Shapes;

namespace ToolpathForge.Tests.Support;

/// <summary>What makes and pieces of boards have, for tests that know that theirs are of that kind.</summary>
internal static class Profiled
{
    extension(Piece piece)
    {
        internal Profile Profile => ((ProfilePiece)piece).Profile;
    }

    extension(Make make)
    {
        internal Lumber Board => ((ProfileMake)make).Board;

        internal double DesignWidth => ((ProfileMake)make).DesignWidth;

        internal ShapeSpec Shape => ((ProfileMake)make).Shape;

        internal string? Family => ((ProfileMake)make).Family;
    }
}
