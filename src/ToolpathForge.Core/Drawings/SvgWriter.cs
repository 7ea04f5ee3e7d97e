using System.Collections.Immutable;
using System.Text;
using ToolpathForge.Lettering;

namespace ToolpathForge.Drawings;

/// <summary>
/// A drawing as SVG (W3C SVG 1.1): physical size in millimetres, one user unit a millimetre of paper, no style sheet, no script, no font, no identifiers,
/// so that several pictures can stand in one page. Arcs and ellipses stay exact. Lettering is drawn as strokes and named for those who listen:
/// each line of text carries its words as a title, and the picture's description ends with all of them.
/// </summary>
public static class SvgWriter
{
    /// <summary>Writes a drawing at a scale on paper that just holds it.</summary>
    /// <param name="drawing">What to draw.</param>
    /// <param name="scale">mm of paper for a mm of the thing drawn, more than 0.</param>
    /// <param name="margin">Free space on every side, mm of paper.</param>
    public static string Write(Drawing drawing, double scale, double margin = 4)
    {
        ArgumentNullException.ThrowIfNull(drawing);
        ImmutableArray<Mark> marks = Draughting.Marks(drawing, scale);
        return Write(drawing, marks, SheetPaper.Around(marks, scale, margin));
    }

    /// <summary>Writes a drawing on given paper. What lies beyond the paper is written but not seen.</summary>
    /// <param name="drawing">What to draw.</param>
    /// <param name="paper">Size, scale and place.</param>
    public static string Write(Drawing drawing, SheetPaper paper)
    {
        ArgumentNullException.ThrowIfNull(drawing);
        ArgumentNullException.ThrowIfNull(paper);
        return Write(drawing, Draughting.Marks(drawing, paper.Scale), paper);
    }

    private static string Write(Drawing drawing, ImmutableArray<Mark> marks, SheetPaper paper)
    {
        string width = SvgNumber.Format(paper.Width);
        string height = SvgNumber.Format(paper.Height);
        var svg = new StringBuilder();
        svg.Append("<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"").Append(width).Append("mm\" height=\"").Append(height)
            .Append("mm\" viewBox=\"0 0 ").Append(width).Append(' ').Append(height)
            .Append("\" role=\"img\" aria-label=\"").Append(XmlText.Escape(drawing.Title)).Append("\">\n");
        svg.Append("<title>").Append(XmlText.Escape(drawing.Title)).Append("</title>\n");
        string description = Describe(drawing.Description, marks);
        if (description.Length > 0)
        {
            svg.Append("<desc>").Append(XmlText.Escape(description)).Append("</desc>\n");
        }

        svg.Append("<g fill=\"none\" stroke-linecap=\"round\" stroke-linejoin=\"round\">\n");
        new MarkWriter(svg, paper).Write(marks);
        svg.Append("</g>\n</svg>\n");
        return svg.ToString();
    }

    private static string Describe(string description, ImmutableArray<Mark> marks)
    {
        string words = string.Join("; ", marks.OfType<Lettered>().Select(l => l.Written.Text.Trim()).Where(t => t.Length > 0));
        return words.Length == 0 ? description
            : description.Length == 0 ? $"Lettering: {words}"
            : $"{description}\nLettering: {words}";
    }

    /// <summary>Marks in order; neighbours with the same pen share a group.</summary>
    private sealed class MarkWriter(StringBuilder svg, SheetPaper paper)
    {
        private string _open = "";

        internal void Write(ImmutableArray<Mark> marks)
        {
            foreach (Mark mark in marks)
            {
                var path = new SvgPath(paper);
                switch (mark)
                {
                    case Stroke stroke:
                        Group(LineGroup(stroke.Role));
                        path.Add(stroke.Path);
                        Path(path);
                        break;
                    case ExactStroke stroke:
                        Group(LineGroup(stroke.Role));
                        path.Add(stroke.Path);
                        Path(path);
                        break;
                    case Solid solid:
                        Group($"class=\"{DrawingStyle.NameOf(solid.Role)}\" fill=\"{DrawingStyle.PenOf(solid.Role).Ink.Hex}\"");
                        path.Add(solid.Ring);
                        Path(path);
                        break;
                    case Fill fill:
                        Group($"fill=\"{DrawingStyle.TintOf(fill.Tone).Hex}\" fill-rule=\"evenodd\"");
                        foreach (Geometry.Outline ring in fill.Rings)
                        {
                            path.Add(ring);
                        }

                        Path(path);
                        break;
                    case Lettered lettered:
                        WriteText(lettered, path);
                        break;
                }
            }

            Group("");
        }

        private static string LineGroup(LineRole role)
        {
            Pen pen = DrawingStyle.PenOf(role);

            // Round caps would eat into the gaps of a dashed line.
            string dashes = pen.Dashes.Length == 0 ? ""
                : $" stroke-dasharray=\"{string.Join(' ', pen.Dashes.Select(SvgNumber.Format))}\" stroke-linecap=\"butt\"";
            return $"class=\"{DrawingStyle.NameOf(role)}\" stroke=\"{pen.Ink.Hex}\" stroke-width=\"{SvgNumber.Format(pen.Width)}\"{dashes}";
        }

        private void WriteText(Lettered lettered, SvgPath path)
        {
            Group($"class=\"{DrawingStyle.NameOf(lettered.Role)}\" stroke=\"{DrawingStyle.PenOf(lettered.Role).Ink.Hex}\" stroke-width=\"{SvgNumber.Format(lettered.PenWidth)}\"");
            foreach (Geometry.Contour stroke in lettered.Written.Strokes)
            {
                path.Add(stroke);
            }

            svg.Append("<path d=\"").Append(path.Data).Append("\"><title>").Append(XmlText.Escape(lettered.Written.Text)).Append("</title></path>\n");
        }

        private void Path(SvgPath path) => svg.Append("<path d=\"").Append(path.Data).Append("\"/>\n");

        private void Group(string attributes)
        {
            if (attributes == _open)
            {
                return;
            }

            if (_open.Length > 0)
            {
                svg.Append("</g>\n");
            }

            if (attributes.Length > 0)
            {
                svg.Append("<g ").Append(attributes).Append(">\n");
            }

            _open = attributes;
        }
    }
}
