using System.Collections.Immutable;
using ToolpathForge.Geometry;
using ToolpathForge.Measures;

namespace ToolpathForge.MarkingOut;

/// <summary>A sweep of a beam compass.</summary>
/// <param name="Center">Where its point stands, X from where the profile begins towards the tip, Y up from the lower edge, mm; it may lie off the board.</param>
/// <param name="Radius">mm.</param>
/// <param name="From">Where the sweep begins.</param>
/// <param name="To">Where it ends.</param>
/// <param name="Departure">How far it may lie from the exact curve, mm; 0 where the curve is this arc.</param>
public sealed record CompassArc(Point2 Center, double Radius, Point2 From, Point2 To, double Departure)
{
    /// <summary>Whether the sweep is the curve itself and no approximation.</summary>
    public bool IsExact => Departure == 0;

    /// <summary>Departure that arcs in place of another curve may have, mm: about the width of a pencil line, a 64th of an inch or 0.4 mm (common practice).</summary>
    /// <param name="unit">The unit of the shop.</param>
    public static double Allowed(LengthUnit unit) => unit == LengthUnit.Inch ? Length.MillimetresPerInch / 64 : 0.4;

    /// <summary>The sweeps for a curve: its own arcs as they are, arcs within a pencil's line in place of ellipses and other curves. Straight parts have none.</summary>
    /// <param name="curves">The curve, in order.</param>
    /// <param name="allowed">Largest departure of an approximation, mm.</param>
    public static ImmutableArray<CompassArc> Of(ImmutableArray<Curve> curves, double allowed)
    {
        var arcs = ImmutableArray.CreateBuilder<CompassArc>();
        foreach (Curve curve in curves)
        {
            if (curve is ArcCurve arc)
            {
                arcs.Add(new CompassArc(arc.Center, arc.Radius, arc.Start, arc.End, 0));
            }
            else if (curve is not LineCurve)
            {
                FittedContour fitted = ArcFit.Fit(new Outline([curve], false), allowed);
                for (int i = 0; i < fitted.Contour.SegmentCount; i++)
                {
                    Segment s = fitted.Contour[i];
                    if (!s.IsLine)
                    {
                        arcs.Add(new CompassArc(s.Center, s.Radius, s.Start, s.End, fitted.Bound));
                    }
                }
            }
        }

        return arcs.ToImmutable();
    }
}
