using System.Collections.Immutable;
using ToolpathForge.Geometry;

namespace ToolpathForge.Drawings;

/// <summary>
/// Puts the dimensions of a body into rows beside it, as a draughtsman does: short measures near the body, long ones farther out, so that no dimension line
/// crosses another's extension lines; measures that do not overlap share a row, and a chain of measures stands in one line.
/// </summary>
public static class DimensionRows
{
    /// <summary>Gives every horizontal and vertical dimension its row; aligned ones come back as they are.</summary>
    /// <param name="body">What the rows must keep clear of, mm of the drawing.</param>
    /// <param name="scale">mm of paper for a mm of the thing drawn, more than 0.</param>
    /// <param name="dimensions">The sign of their offset chooses the side (above or left when positive); size of the offset and reference are replaced.</param>
    /// <returns>The dimensions in the order given.</returns>
    public static ImmutableArray<LinearDimension> Arrange(Box2 body, double scale, params ImmutableArray<LinearDimension> dimensions)
    {
        var placed = dimensions.ToArray();
        foreach (var side in dimensions.Select((d, i) => (Dimension: d, Index: i)).Where(d => d.Dimension.Along != MeasuredAlong.Aligned)
            .GroupBy(d => (d.Dimension.Along, IsNegative: d.Dimension.Offset < 0)))
        {
            var rows = new List<List<(double From, double To)>>();

            // Shortest first; order of appearance settles ties.
            foreach ((LinearDimension dimension, int index) in side.OrderBy(d => Span(d.Dimension).Length).ThenBy(d => d.Index))
            {
                (double from, double to) = Taken(dimension, scale);
                int row = rows.FindIndex(r => r.TrueForAll(t => to <= t.From + Accuracy.SamePoint || from >= t.To - Accuracy.SamePoint));
                if (row < 0)
                {
                    row = rows.Count;
                    rows.Add([]);
                }

                rows[row].Add((from, to));
                placed[index] = InRow(dimension, body, row);
            }
        }

        return [.. placed];
    }

    private static LinearDimension InRow(LinearDimension dimension, Box2 body, int row)
    {
        bool horizontal = dimension.Along == MeasuredAlong.Horizontal;
        bool negative = dimension.Offset < 0;
        double offset = DrawingStyle.FirstRow + (row * DrawingStyle.RowStep);
        double edge = horizontal ? (negative ? body.MinY : body.MaxY) : (negative ? body.MaxX : body.MinX);
        return dimension with { Reference = edge, Offset = negative ? -offset : offset };
    }

    private static (double From, double Length) Span(LinearDimension d)
    {
        (double a, double b) = d.Along == MeasuredAlong.Horizontal ? (d.From.X, d.To.X) : (d.From.Y, d.To.Y);
        return (Math.Min(a, b), Math.Abs(b - a));
    }

    private static (double From, double To) Taken(LinearDimension dimension, double scale)
    {
        (double from, double length) = Span(dimension);
        LineFit fit = DimensionDraughting.Fit(dimension, length, 1 / scale);
        return (from - fit.Before, from + length + fit.After);
    }
}
