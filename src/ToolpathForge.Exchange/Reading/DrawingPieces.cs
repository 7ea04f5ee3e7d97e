using System.Collections.Immutable;
using ToolpathForge.Geometry;

namespace ToolpathForge.Exchange.Reading;

/// <summary>What a drawing holds as loose pieces of lines and arcs, ready to be made into outlines.</summary>
public static class DrawingPieces
{
    /// <summary>Largest distance between an exact curve of a drawing and the arcs that stand for it, mm: the finest increment that any dialect writes.</summary>
    public const double Tolerance = 1e-4;

    /// <summary>
    /// One piece for each thing drawn; <see cref="LoosePiece.Source"/> is its number in the file. Lines and arcs stay as they are, everything else is fitted. Curves of one thing
    /// that do not quite meet, by rounding, are joined at the beginning of the later one.
    /// </summary>
    /// <param name="entities">What was drawn.</param>
    /// <param name="tolerance">Largest distance between curves and arcs, mm, at least <see cref="ArcFit.FinestTolerance"/>.</param>
    public static ImmutableArray<LoosePiece> Of(IEnumerable<DrawnEntity> entities, double tolerance = Tolerance) => [.. Each(entities, tolerance, null)];

    /// <summary>The same, one after the other.</summary>
    /// <param name="entities">What was drawn.</param>
    /// <param name="tolerance">Largest distance between curves and arcs, mm.</param>
    /// <param name="fits">Told of every curve that arcs stand for; may be null.</param>
    internal static IEnumerable<LoosePiece> Each(IEnumerable<DrawnEntity> entities, double tolerance, FittedArcs? fits)
    {
        var pieces = new List<LoosePiece>();
        ImmutableArray<Vertex>.Builder row = ImmutableArray.CreateBuilder<Vertex>();
        foreach (DrawnEntity entity in entities)
        {
            pieces.Clear();
            row.Clear();
            Add(entity, tolerance, row, pieces, fits);
            foreach (LoosePiece piece in pieces)
            {
                yield return piece;
            }
        }
    }

    private static void Add(DrawnEntity entity, double tolerance, ImmutableArray<Vertex>.Builder row, List<LoosePiece> pieces, FittedArcs? fits)
    {
        ImmutableArray<Curve> curves = entity.Path.Curves;
        Point2? end = null;
        bool whole = true;
        foreach (Curve curve in curves)
        {
            if (DrawnCurves.IsNothing(curve))
            {
                continue;
            }

            // The reader's chains meet to rounding; should one ever not, a gap is for the cleaner to judge.
            if (end is { } before && before.DistanceTo(curve.Start) > ContourCleaner.SameEnd)
            {
                row.Add(new Vertex(before));
                pieces.Add(new LoosePiece(row.ToImmutable(), false, entity.Order));
                row.Clear();
                whole = false;
            }

            Append(curve, tolerance, row, fits);
            end = curve.End;
        }

        if (end is not { } last)
        {
            return;
        }

        bool closed = whole && entity.Path.IsClosed && last.DistanceTo(row[0].Point) <= ContourCleaner.SameEnd;
        if (!closed)
        {
            row.Add(new Vertex(last));
        }

        pieces.Add(new LoosePiece(row.ToImmutable(), closed, entity.Order));
    }

    /// <summary>The vertices of a curve but its last one.</summary>
    private static void Append(Curve curve, double tolerance, ImmutableArray<Vertex>.Builder row, FittedArcs? fits)
    {
        if (curve is LineCurve line)
        {
            row.Add(new Vertex(line.From));
            return;
        }

        if (curve is ArcCurve { AsSegment: { } segment })
        {
            row.Add(new Vertex(segment.Start, segment.Bulge));
            return;
        }

        Contour fitted = ArcFit.Fit(new Outline([curve], false), tolerance).Contour;
        fits?.Add(curve, fitted);
        row.AddRange(fitted.Vertices[..^1]);
    }
}
