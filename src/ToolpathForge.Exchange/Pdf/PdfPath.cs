using System.Text;
using ToolpathForge.Drawings;
using ToolpathForge.Geometry;

namespace ToolpathForge.Exchange.Pdf;

/// <summary>
/// Paths in points. PDF has lines and cubic Bézier curves only. An arc becomes cubics whose handles of 4/3·tan(θ/4) keep ends and middle on the circle; what
/// lies between reaches 2/27·sin⁶(θ/4)/cos²(θ/4) of the radius beyond it (worked out; a test measures it), and as many are taken as keep that below
/// half a micrometre of paper. An ellipse is a circle seen from the side: its cubics depart no more than those of its longer axis.
/// </summary>
/// <param name="content">Takes the operators.</param>
/// <param name="scale">Points for a mm of the drawing.</param>
internal sealed class PdfPath(StringBuilder content, double scale)
{
    private const double LongestPiece = Math.PI / 2;

    /// <summary>Largest departure of an arc, points: 0.5 µm.</summary>
    private const double Departure = 0.0005 * PdfNumber.PointsPerMillimetre;

    /// <summary>Cubics that a curve of any other kind becomes, each with its ends' directions and speeds: the error falls with the fourth power of their number.</summary>
    private const int PiecesOfOtherCurves = 64;

    internal void Add(Contour contour) => Add(Outlines.Of(contour));

    internal void Add(Outline outline)
    {
        Point(outline.Curves[0].Start).Append("m\n");
        foreach (Curve curve in outline.Curves)
        {
            switch (curve)
            {
                case LineCurve line:
                    Point(line.To).Append("l\n");
                    break;
                case ArcCurve arc:
                    AddTurning(arc, arc.Sweep, arc.Radius);
                    break;
                case EllipseCurve ellipse:
                    AddTurning(ellipse, ellipse.Sweep, Math.Max(ellipse.Major.Length, ellipse.Minor.Length));
                    break;
                default:
                    AddPieces(curve, PiecesOfOtherCurves, 1.0 / (3 * PiecesOfOtherCurves));
                    break;
            }
        }

        if (outline.IsClosed)
        {
            content.Append("h\n");
        }
    }

    /// <summary>How many cubics an arc takes.</summary>
    /// <param name="sweep">Radians, either sign.</param>
    /// <param name="radius">Points.</param>
    internal static int PiecesFor(double sweep, double radius)
    {
        int pieces = Math.Max(1, (int)Math.Ceiling((Math.Abs(sweep) / LongestPiece) - 1e-9));
        while (DepartureOf(Math.Abs(sweep) / pieces) * radius > Departure)
        {
            pieces++;
        }

        return pieces;
    }

    private static double DepartureOf(double angle) => 2.0 / 27 * Math.Pow(Math.Sin(angle / 4), 6) / Math.Pow(Math.Cos(angle / 4), 2);

    private void AddTurning(Curve curve, double sweep, double radius)
    {
        int pieces = PiecesFor(sweep, radius * scale);

        // The derivative is taken by a parameter that runs from 0 to 1 over the whole sweep.
        AddPieces(curve, pieces, 4.0 / 3 * Math.Tan(sweep / pieces / 4) / sweep);
    }

    private void AddPieces(Curve curve, int pieces, double handle)
    {
        for (int i = 0; i < pieces; i++)
        {
            double from = (double)i / pieces;
            double to = (double)(i + 1) / pieces;
            Point2 end = curve.PointAt(to);
            Point(curve.PointAt(from) + (curve.FirstDerivative(from) * handle));
            Point(end - (curve.FirstDerivative(to) * handle));
            Point(end).Append("c\n");
        }
    }

    private StringBuilder Point(Point2 p) => content.AppendNumber(p.X * scale).AppendNumber(p.Y * scale);
}
