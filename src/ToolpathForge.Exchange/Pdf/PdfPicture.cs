using System.Collections.Immutable;
using System.Text;
using ToolpathForge.Drawings;

namespace ToolpathForge.Exchange.Pdf;

/// <summary>Marks of a drawing as PDF operators, in points of paper from the drawing's origin.</summary>
internal static class PdfPicture
{
    private const double Unit = PdfNumber.PointsPerMillimetre;

    /// <summary>The operators that draw marks.</summary>
    /// <param name="marks">From the bottom to the top.</param>
    /// <param name="scale">mm of paper for a mm of the drawing.</param>
    internal static string Content(ImmutableArray<Mark> marks, double scale)
    {
        // Round caps and joins, as everywhere in our drawings.
        var content = new StringBuilder("1 J 1 j\n");
        var path = new PdfPath(content, scale * Unit);
        string state = "";
        foreach (Mark mark in marks)
        {
            string wanted = StateOf(mark);
            if (wanted != state)
            {
                content.Append(wanted);
                state = wanted;
            }

            switch (mark)
            {
                case Stroke stroke:
                    path.Add(stroke.Path);
                    content.Append("S\n");
                    break;
                case ExactStroke stroke:
                    path.Add(stroke.Path);
                    content.Append("S\n");
                    break;
                case Solid solid:
                    path.Add(solid.Ring);
                    content.Append("f\n");
                    break;
                case Fill fill:
                    foreach (Geometry.Outline ring in fill.Rings)
                    {
                        path.Add(ring);
                    }

                    content.Append("f*\n");
                    break;
                case Lettered lettered:
                    foreach (Geometry.Contour letter in lettered.Written.Strokes)
                    {
                        path.Add(letter);
                    }

                    content.Append("S\n");
                    break;
            }
        }

        return content.ToString();
    }

    private static string StateOf(Mark mark) => mark switch
    {
        Stroke s => Line(DrawingStyle.PenOf(s.Role)),
        ExactStroke s => Line(DrawingStyle.PenOf(s.Role)),
        Lettered l => Line(new Pen(l.PenWidth, DrawingStyle.PenOf(l.Role).Ink, [])),
        Solid s => Colour(DrawingStyle.PenOf(s.Role).Ink, "rg\n"),
        Fill f => Colour(DrawingStyle.TintOf(f.Tone), "rg\n"),
        _ => "",
    };

    private static string Line(Pen pen)
    {
        var text = new StringBuilder();
        text.AppendNumber(pen.Width * Unit).Append("w ").Append(Colour(pen.Ink, "RG ")).Append('[');
        foreach (double dash in pen.Dashes)
        {
            text.AppendNumber(dash * Unit);
        }

        // Round caps would eat into the gaps of a dashed line.
        return text.Append(pen.Dashes.Length == 0 ? "] 0 d 1 J\n" : "] 0 d 0 J\n").ToString();
    }

    private static string Colour(Ink ink, string operation) =>
        new StringBuilder().AppendNumber(ink.Red / 255.0).AppendNumber(ink.Green / 255.0).AppendNumber(ink.Blue / 255.0).Append(operation).ToString();
}
