using System.Globalization;
using System.Text;
using ToolpathForge.Geometry;

namespace ToolpathForge.Tests.Support;

/// <summary>Prints rendered by poppler and measured.</summary>
internal static class Raster
{
    /// <summary>Pixels a millimetre: 508 dots an inch.</summary>
    private const int Fine = 20;

    /// <summary>From the first dark column to the last within a box of a page, mm: halves of grey count as half a pixel.</summary>
    /// <param name="scratch">Takes the picture.</param>
    /// <param name="pdf">The document.</param>
    /// <param name="page">1 the first.</param>
    /// <param name="pageHeight">mm.</param>
    /// <param name="at">Lower left corner of the box, mm from that of the page.</param>
    /// <param name="width">mm.</param>
    /// <param name="height">mm.</param>
    internal static double DarkWidth(Scratch scratch, string pdf, int page, double pageHeight, Point2 at, double width, double height)
    {
        string target = scratch.Path("crop");
        string Whole(double value) => ((int)Math.Round(value)).ToString(CultureInfo.InvariantCulture);
        (int exit, _, string error) = OutsideTool.Program(
            "pdftoppm", "poppler-utils", "-gray", "-r", Whole(Fine * 25.4), "-f", Whole(page), "-l", Whole(page), "-singlefile",
            "-x", Whole(at.X * Fine), "-y", Whole((pageHeight - at.Y - height) * Fine), "-W", Whole(width * Fine), "-H", Whole(height * Fine), pdf, target);
        Assert.Equal((0, ""), (exit, error));
        (int columns, int rows, byte[] grey) = ReadPgm(File.ReadAllBytes(target + ".pgm"));
        bool Dark(int column) => Enumerable.Range(0, rows).Any(row => grey[(row * columns) + column] < 128);
        int[] dark = [.. Enumerable.Range(0, columns).Where(Dark)];
        Assert.NotEmpty(dark);
        Assert.True(dark[0] > 0 && dark[^1] < columns - 1, "The box cuts what is to be measured.");
        return (dark[^1] - dark[0] + 1) / (double)Fine;
    }

    // P5, width, height, 255, then a byte a pixel (Netpbm, PGM format).
    private static (int Columns, int Rows, byte[] Grey) ReadPgm(byte[] file)
    {
        var words = new List<string>();
        int at = 0;
        while (words.Count < 4)
        {
            int end = Array.FindIndex(file, at, b => b is (byte)' ' or (byte)'\n');
            words.Add(Encoding.ASCII.GetString(file, at, end - at));
            at = end + 1;
        }

        Assert.Equal(("P5", "255"), (words[0], words[3]));
        return (int.Parse(words[1], CultureInfo.InvariantCulture), int.Parse(words[2], CultureInfo.InvariantCulture), file[at..]);
    }
}
