using System.Globalization;
using System.Text;

namespace ToolpathForge.Geometry;

/// <summary>The input of a result that could not be vouched for as text: numbers that read back to the same bits.</summary>
internal static class Reproducer
{
    /// <summary>What was asked, then every contour as "closed" or "open" and its vertices as x, y, bulge.</summary>
    internal static string Of(string asked, ReadOnlySpan<Contour> loops)
    {
        var text = new StringBuilder(asked);
        foreach (Contour loop in loops)
        {
            text.Append(loop.IsClosed ? "; closed" : "; open");
            foreach (ref readonly Vertex v in loop.Vertices)
            {
                text.Append(CultureInfo.InvariantCulture, $" {v.X:R} {v.Y:R} {v.Bulge:R}");
            }
        }

        return text.ToString();
    }
}
