using System.Globalization;
using ToolpathForge.Geometry;

namespace ToolpathForge.Lettering;

/// <summary>
/// The notation that the letters are written down in: what the pen does, in hundredths of the cap height, so that a letter can be read and corrected as text.
/// <code>
/// x y          set the pen down          L x y     draw a straight line
/// @ d          look in direction d       A x y     an arc that leaves in the direction looked in
/// C x y d      a smooth curve that leaves in the direction looked in and arrives in direction d (two arcs)
/// Z            close the stroke          |         next stroke
/// </code>
/// A direction is n, e, s, w or degrees counter-clockwise from east.
/// </summary>
internal static class PenNotation
{
    private const double Hundredth = 0.01;

    /// <summary>Reads the strokes of one letter; coordinates come out in cap heights.</summary>
    internal static Contour[] Read(string notation) =>
        [.. notation.Split('|').Select(stroke => ReadStroke(stroke.Split(' ', StringSplitOptions.RemoveEmptyEntries), notation))];

    private static Contour ReadStroke(string[] words, string notation)
    {
        var vertices = new List<Vertex>();
        var at = new Point2(Number(words[0]), Number(words[1]));
        Point2 heading = default;
        bool closed = false;
        for (int i = 2; i < words.Length;)
        {
            switch (words[i])
            {
                case "@":
                    heading = Direction(words[i + 1]);
                    i += 2;
                    break;
                case "L":
                    var corner = new Point2(Number(words[i + 1]), Number(words[i + 2]));
                    vertices.Add(new Vertex(at));
                    heading = (corner - at).Unit();
                    at = corner;
                    i += 3;
                    break;
                case "A":
                    AddArc(vertices, ref at, ref heading, new Point2(Number(words[i + 1]), Number(words[i + 2])));
                    i += 3;
                    break;
                case "C":
                    Point2 arrival = Direction(words[i + 3]);
                    var target = new Point2(Number(words[i + 1]), Number(words[i + 2]));
                    AddArc(vertices, ref at, ref heading, Joint(at, heading, target, arrival));
                    AddArc(vertices, ref at, ref heading, target);
                    heading = arrival;
                    i += 4;
                    break;
                case "Z":
                    closed = true;
                    i++;
                    break;
                default:
                    throw new FormatException($"'{words[i]}' is no pen word, in '{notation}'.");
            }
        }

        // A ring is told by its Z; its last point may have been drawn or not.
        if (!closed || at.DistanceTo(vertices[0].Point) > 1e-9)
        {
            vertices.Add(new Vertex(at));
        }

        return new Contour(System.Runtime.InteropServices.CollectionsMarshal.AsSpan(vertices), closed);
    }

    private static void AddArc(List<Vertex> vertices, ref Point2 at, ref Point2 heading, Point2 end)
    {
        // The angle between tangent and chord is half the sweep.
        Point2 chord = (end - at).Unit();
        double half = Math.Atan2(heading.Cross(chord), heading.Dot(chord));
        vertices.Add(new Vertex(at, Math.Tan(half / 2)));
        heading = heading.Rotated(2 * half);
        at = end;
    }

    /// <summary>
    /// Where two arcs with given end tangents join when both tangent lengths are equal: d solves |(to - d·arrival) - (from + d·heading)| = 2d,
    /// and the joint is the middle of that line.
    /// </summary>
    private static Point2 Joint(Point2 from, Point2 heading, Point2 to, Point2 arrival)
    {
        Point2 v = to - from;
        double b = v.Dot(heading + arrival);
        double a = 2 * (1 - heading.Dot(arrival));
        double d = a < 1e-9 ? v.LengthSquared / (2 * b) : (Math.Sqrt((b * b) + (a * v.LengthSquared)) - b) / a;
        return (from + (heading * d)).Towards(to - (arrival * d), 0.5);
    }

    private static Point2 Direction(string word) => word switch
    {
        "e" => new Point2(1, 0),
        "n" => new Point2(0, 1),
        "w" => new Point2(-1, 0),
        "s" => new Point2(0, -1),
        _ => Point2.Direction(double.Parse(word, CultureInfo.InvariantCulture) * Math.PI / 180),
    };

    private static double Number(string word) => double.Parse(word, CultureInfo.InvariantCulture) * Hundredth;
}
