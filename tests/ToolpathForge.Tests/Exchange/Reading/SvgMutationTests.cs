using System.Diagnostics;
using System.Text;
using ToolpathForge.Exchange.Reading;
using ToolpathForge.Geometry;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Exchange.Reading;

/// <summary>SVG damaged at random: never an exception, never a hang, never another file, and never a curve that is not one.</summary>
public class SvgMutationTests
{
    private static readonly DrawingLimits s_limits = new(1 << 20, 20_000, 8, TimeSpan.FromSeconds(10));

    private static readonly string[] s_words =
    [
        "0", "-1", "1e308", "1e-308", "NaN", "\"", "'", "<", ">", "/>", "</g>", "<g>", "&#0;", "&amp;", "&x;", "<!DOCTYPE svg [<!ENTITY x SYSTEM \"FILE\">]>", "<![CDATA[", "]]>", "<!--", "-->", "%", "mm",
        "href=\"#a\"", "href=\"FILE\"", "xlink:href=\"#b\"", "transform=\"scale(0)\"", "transform=\"matrix(1e200 0 0 1 0 0)\"", "A", "a1 1 0 01", "z", "M", "C", "viewBox=\"0 0 1 1\"", "id=\"a\"", "<use href=\"#b\"/>", "<image href=\"FILE\"/>",
        "<style>", "</style>", "{", "}", "/*", "*/", "!important", "@import url(FILE);", "@media{", "<?xml-stylesheet href=\"FILE\"?>", "class=\"k\"", "display:none",
    ];

    private const string Seed =
        "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<svg xmlns=\"http://www.w3.org/2000/svg\" xmlns:xlink=\"http://www.w3.org/1999/xlink\" width=\"100mm\" height=\"80mm\" viewBox=\"0 0 100 80\">\n"
        + "<style>.k, rect#a { display: inline; visibility: visible !important } g > .k { display: none } @media print { .k { width: 3px } } /* x */</style>"
        + "<defs><g id=\"a\"><circle cx=\"3\" cy=\"4\" r=\"2\"/></g><symbol id=\"b\" viewBox=\"0 0 4 4\"><use href=\"#a\"/><rect width=\"2\" height=\"3\" rx=\"1\"/></symbol></defs>\n"
        + "<g id=\"edge\" transform=\"translate(3,4) rotate(30 1 2) skewX(10)\" style=\"fill:none;display:inline\"><path d=\"M1 2h3v4c1 2 3 4 5 6s7 8 9 10q1 2 3 4t5 6a5 4 30 01 9 8A1 1 0 1 0 3 3z\"/>\n"
        + "<ellipse cx=\"5\" cy=\"6\" rx=\"7\" ry=\"8\" transform=\"matrix(1 .5 -.25 2 3 4)\"/><polygon points=\"1,2 3,4 5 6\"/><polyline points=\"1 2 3 4\"/><line class=\"k\" x1=\"1\" x2=\"50%\"/></g>\n"
        + "<use xlink:href=\"#b\" x=\"5\" y=\"10%\" width=\"8\" height=\"8\"/><svg x=\"1\" width=\"20\" height=\"20\" viewBox=\"0 0 5 5\" preserveAspectRatio=\"xMinYMax slice\"><rect width=\"1mm\" height=\"1\"/></svg><text>word</text></svg>";

    [Fact]
    public void Damaged_files_are_answered()
    {
        using var folder = new Scratch();
        const string Secret = "M0 0L77.77 33.33";
        string trap = folder.Write("secret.txt", Secret);
        byte[] from = Encoding.UTF8.GetBytes(Seed);
        string[] words = [.. s_words.Select(w => w.Replace("FILE", trap, StringComparison.Ordinal))];
        DateTime seen = File.GetLastAccessTimeUtc(trap);
        int seed = Random.Shared.Next();
        var random = new Random(seed);
        int most = LongRun.Iterations(40_000, 100_000), usable = 0;
        var clock = Stopwatch.StartNew();
        for (int i = 0; i < most && (LongRun.IsOn || clock.Elapsed < TimeSpan.FromSeconds(5)); i++)
        {
            byte[] damaged = Damaged(random, from, words);
            string about = $"seed {seed}, case {i}";
            try
            {
                ReadDrawing read = SvgDrawn.Repairing(damaged, limits: s_limits);
                Assert.True(read.IsUsable == read.Entities.Length > 0, about);
                Assert.DoesNotContain("drawing-over-time", Drawn.Codes(read.Findings), StringComparison.Ordinal);
                usable += read.IsUsable ? 1 : 0;
                foreach (Curve curve in read.Entities.SelectMany(e => e.Path.Curves))
                {
                    Point2 middle = curve.PointAt(0.5);
                    Assert.True(Math.Abs(middle.X) <= Accuracy.LargestCoordinate * 1.001 && Math.Abs(middle.Y) <= Accuracy.LargestCoordinate * 1.001, $"{about}: {curve}");
                    Assert.True(curve.End.DistanceTo(new Point2(77.77, 80 - 33.33)) > 1e-9, about);
                }

                if (read.Entities.Length is > 0 and < 100)
                {
                    _ = DrawingTrace.Of(read, "drawing.svg");
                }
            }
            catch (Exception e) when (e is not Xunit.Sdk.XunitException)
            {
                Assert.Fail($"{about}: {e}\n{Encoding.UTF8.GetString(damaged)}");
            }
        }

        Assert.True(usable > 0);
        Assert.Equal(seen, File.GetLastAccessTimeUtc(trap));
    }

    private static byte[] Damaged(Random random, byte[] from, string[] words)
    {
        List<byte> bytes = [.. from];
        for (int n = random.Next(1, 6); n > 0 && bytes.Count > 0; n--)
        {
            int at = random.Next(bytes.Count);
            switch (random.Next(6))
            {
                case 0:
                    bytes[at] = (byte)random.Next(256);
                    break;
                case 1:
                    bytes.RemoveRange(at, Math.Min(bytes.Count - at, random.Next(1, 12)));
                    break;
                case 2:
                    bytes.InsertRange(at, Encoding.UTF8.GetBytes(words[random.Next(words.Length)]));
                    break;
                case 3:
                    bytes.InsertRange(random.Next(bytes.Count), bytes.GetRange(at, Math.Min(bytes.Count - at, random.Next(1, 200))));
                    break;
                case 4:
                    // What is a number becomes another: most files stay files by that.
                    int digit = bytes.FindIndex(at, b => char.IsAsciiDigit((char)b));
                    if (digit >= 0)
                    {
                        bytes.RemoveAt(digit);
                        bytes.InsertRange(digit, Encoding.UTF8.GetBytes(random.Next(3) switch { 0 => "0", 1 => "-3e5", _ => random.Next(-2000, 2000).ToString(System.Globalization.CultureInfo.InvariantCulture) }));
                    }

                    break;
                default:
                    if (random.Next(8) == 0)
                    {
                        bytes.RemoveRange(at, bytes.Count - at);
                    }

                    break;
            }
        }

        return [.. bytes];
    }
}
