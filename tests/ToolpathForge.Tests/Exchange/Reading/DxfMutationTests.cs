using System.Buffers.Binary;
using System.Diagnostics;
using System.Text;
using ToolpathForge.Exchange.Reading;
using ToolpathForge.Geometry;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Exchange.Reading;

/// <summary>Files damaged at random: never an exception, never a hang, and never a curve that is not one.</summary>
public class DxfMutationTests
{
    private static readonly DrawingLimits s_limits = new(1 << 20, 20_000, 8, TimeSpan.FromSeconds(10));

    private const int MostTraced = 200;

    /// <summary>Far more than any of them takes, on a machine that does ten other things.</summary>
    private static readonly TimeSpan s_longest = TimeSpan.FromSeconds(60);

    private static byte[][] Seeds { get; } = [Encoding.UTF8.GetBytes(Seed), Binary(Seed, true), Binary(Seed, false)];

    private static readonly string[] s_words =
        ["0", "-1", "1e308", "nan", "inf", "SECTION", "ENDSEC", "EOF", "2147483648", "INSERT", "B", "A", "POLYLINE", "VERTEX", "SEQEND", "10", "1,5", "SPLINE", "32767", "*Model_Space", ""];

    private static string Seed => Drawn.File(
        "0 LINE 8 edge 10 0 20 0 11 10 21 0 0 ARC 8 0 10 1 20 2 40 3 50 10 51 200 210 0 220 0 230 -1 0 ELLIPSE 8 0 10 0 20 0 11 5 21 1 40 0.5 41 0 42 3 "
        + "0 LWPOLYLINE 8 edge 90 3 70 1 10 0 20 0 42 1 10 1 20 0 10 2 20 5 0 POLYLINE 8 0 66 1 70 1 0 VERTEX 8 0 10 0 20 0 42 -0.5 0 VERTEX 8 0 10 4 20 4 0 SEQEND "
        + "0 SPLINE 8 0 71 2 72 6 73 3 40 0 40 0 40 0 40 1 40 1 40 1 10 0 20 0 41 1 10 1 20 1 41 2 10 2 20 0 41 1 0 INSERT 8 off 2 A 10 1 20 1 41 2 42 -1 50 30 70 3 71 2 44 5 45 6 0 TEXT 8 0 1 word",
        "0 BLOCK 8 0 2 B 70 0 10 1 20 1 0 CIRCLE 8 0 10 0 20 0 40 2 0 ENDBLK 0 BLOCK 8 0 2 A 70 0 10 0 20 0 0 INSERT 8 0 2 B 10 3 20 3 0 LINE 8 0 10 0 20 0 11 1 21 1 0 ENDBLK",
        "0 LAYER 2 off 70 0 62 -3");

    [Fact]
    public void Damaged_files_are_answered()
    {
        int seed = Random.Shared.Next();
        var random = new Random(seed);
        int most = LongRun.Iterations(40_000, 100_000);
        var clock = Stopwatch.StartNew();
        for (int i = 0; i < most && (LongRun.IsOn || clock.Elapsed < TimeSpan.FromSeconds(5)); i++)
        {
            byte[] damaged = Damaged(random, Seeds[random.Next(Seeds.Length)]);
            string about = $"seed {seed}, case {i}";
            try
            {
                ReadDrawing read = Drawn.Repairing(damaged, limits: s_limits);
                Assert.True(read.IsUsable == read.Entities.Length > 0, about);
                Assert.DoesNotContain("drawing-over-time", Drawn.Codes(read.Findings), StringComparison.Ordinal);
                foreach (Curve curve in read.Entities.SelectMany(e => e.Path.Curves))
                {
                    Point2 middle = curve.PointAt(0.5);
                    Assert.True(Math.Abs(middle.X) <= Accuracy.LargestCoordinate * 1.001 && Math.Abs(middle.Y) <= Accuracy.LargestCoordinate * 1.001, $"{about}: {curve}");
                }

                // Reading is nothing to making outlines: one in ten, unless a block was put in a thousand times.
                if (i % 10 == 0 && read.Entities.Length <= MostTraced)
                {
                    var one = Stopwatch.StartNew();
                    Traced(read, about);
                    Assert.True(one.Elapsed < s_longest, $"{about} took {one.Elapsed.TotalSeconds:0} s to trace");
                }
            }
            catch (Exception e) when (e is not Xunit.Sdk.XunitException)
            {
                Assert.Fail($"{about}: {e}");
            }
        }
    }

    private static void Traced(ReadDrawing read, string about)
    {
        var trace = DrawingTrace.Of(read, "drawing.dxf");
        Assert.True(double.IsFinite(trace.Area) && trace.Area >= 0, $"{about}: an area of {trace.Area}");
        foreach (TracedRegion region in trace.Regions)
        {
            Assert.True(region.Area >= 0 && double.IsFinite(region.Length) && region.Tightest is null or { Radius: >= 0 } && region.Slot is null or { Width: >= 0 }, $"{about}: {region}");
        }
    }

    private static byte[] Damaged(Random random, byte[] from)
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
                    bytes.InsertRange(at, Encoding.ASCII.GetBytes(s_words[random.Next(s_words.Length)]));
                    break;
                case 3:
                    int length = Math.Min(bytes.Count - at, random.Next(1, 200));
                    bytes.InsertRange(random.Next(bytes.Count), bytes.GetRange(at, length));
                    break;
                case 4:
                    // A whole line becomes another word.
                    int start = bytes.LastIndexOf((byte)'\n', at) + 1;
                    int end = bytes.IndexOf((byte)'\n', start);
                    if (end > start)
                    {
                        bytes.RemoveRange(start, end - start);
                        bytes.InsertRange(start, Encoding.ASCII.GetBytes(s_words[random.Next(s_words.Length)]));
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

    /// <summary>A text file as a binary one, group codes in one byte or in two.</summary>
    private static byte[] Binary(string text, bool oneByte)
    {
        List<byte> bytes = [.. Encoding.ASCII.GetBytes("AutoCAD Binary DXF\r\n\u001a\0")];
        string[] lines = text.Split('\n');
        for (int i = 0; i + 1 < lines.Length; i += 2)
        {
            int code = int.Parse(lines[i]);
            bytes.Add((byte)code);
            if (!oneByte)
            {
                bytes.Add((byte)(code >> 8));
            }

            byte[] eight = new byte[8];
            switch (code)
            {
                case >= 10 and <= 59 or >= 210 and <= 239:
                    BinaryPrimitives.WriteDoubleLittleEndian(eight, double.Parse(lines[i + 1]));
                    bytes.AddRange(eight);
                    break;
                case >= 60 and <= 79:
                    BinaryPrimitives.WriteInt16LittleEndian(eight, short.Parse(lines[i + 1]));
                    bytes.AddRange(eight[..2]);
                    break;
                case >= 90 and <= 99:
                    BinaryPrimitives.WriteInt32LittleEndian(eight, int.Parse(lines[i + 1]));
                    bytes.AddRange(eight[..4]);
                    break;
                default:
                    bytes.AddRange(Encoding.ASCII.GetBytes(lines[i + 1] + "\0"));
                    break;
            }
        }

        return [.. bytes];
    }

    [Fact]
    public void Both_binary_forms_hold_what_the_text_holds()
    {
        ReadDrawing text = Drawn.Strict(Seed);
        Assert.True(text.IsUsable);
        foreach (bool oneByte in (bool[])[true, false])
        {
            ReadDrawing binary = Drawn.Strict(Binary(Seed, oneByte));
            Assert.Equal("DXF AC1015, binary", binary.Format);
            Assert.Equal(text.Entities.Select(e => string.Join(' ', e.Path.Curves)), binary.Entities.Select(e => string.Join(' ', e.Path.Curves)));
        }
    }
}
