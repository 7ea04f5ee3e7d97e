using System.Collections.Immutable;
using ToolpathForge.Geometry;
using ToolpathForge.Measures;
using ToolpathForge.Shapes;

namespace ToolpathForge.MarkingOut;

/// <summary>
/// A profile as it is marked out by hand, seen as a right-hand piece lies: X from where the curve leaves the lower edge towards the tip, Y up the board from the
/// lower edge, mm. Everything is taken from the exact curve.
/// </summary>
/// <param name="Profile">The profile, in the piece frame.</param>
/// <param name="Curves">The shaped part, without the end cut.</param>
/// <param name="EndCut">The straight cut at the end, from the nose up.</param>
/// <param name="Step">What the ordinates stand apart, mm.</param>
/// <param name="Ordinates">Heights of the curve.</param>
/// <param name="Sticks">An ellipse stick for every piece of an ellipse.</param>
/// <param name="Arcs">Sweeps of a beam compass.</param>
/// <param name="SawAllowance">How far outside the finished edge to saw, mm.</param>
/// <param name="SawLine">Where to saw; more than one part where the curve is too narrow for it.</param>
public sealed record HandLayout(
    Profile Profile,
    ImmutableArray<Curve> Curves,
    LineCurve EndCut,
    double Step,
    ImmutableArray<Ordinate> Ordinates,
    ImmutableArray<EllipseStick> Sticks,
    ImmutableArray<CompassArc> Arcs,
    double SawAllowance,
    ImmutableArray<Contour> SawLine)
{
    /// <summary>How near the saw line's own curve is followed, mm: it is a line to saw by.</summary>
    private const double SawFit = 0.02;

    /// <summary>What the saw leaves for the bit, mm: a sixteenth of an inch or 1.5 mm (common practice).</summary>
    /// <param name="unit">The unit of the shop.</param>
    public static double UsualAllowance(LengthUnit unit) => unit == LengthUnit.Inch ? Length.MillimetresPerInch / 16 : 1.5;

    /// <summary>Works out how a profile is marked.</summary>
    /// <param name="profile">The profile.</param>
    /// <param name="unit">The unit of the shop.</param>
    /// <param name="step">What the ordinates are to stand apart, mm, at least <see cref="MarkingOut.Ordinates.LeastStep"/>; null for a usual step.</param>
    public static HandLayout Of(Profile profile, LengthUnit unit, double? step = null)
    {
        ArgumentNullException.ThrowIfNull(profile);

        // Half a turn leads from the piece frame to the view of a right-hand piece.
        Outline seen = profile.Exact.Placed(new Placement(Math.PI, new Point2(profile.Start.X, profile.Width), false));
        ImmutableArray<Curve> curves = [.. seen.Curves.SkipLast(1)];
        double apart = step ?? MarkingOut.Ordinates.UsualStep(profile.Run, unit);
        double allowance = UsualAllowance(unit);

        // The board is on the left of the profile, the waste on its right.
        OffsetResult saw = Offsetter.OneSide(ArcFit.Fit(seen, SawFit).Contour, -allowance);
        return new HandLayout(
            profile,
            curves,
            new LineCurve(seen.Curves[^1].Start, seen.Curves[^1].End),
            apart,
            MarkingOut.Ordinates.Of(curves, apart),
            [.. curves.OfType<EllipseCurve>().Select(EllipseStick.Of)],
            CompassArc.Of(curves, CompassArc.Allowed(unit)),
            allowance,
            [.. saw.Loops.SelectMany(l => InWood(l.Contour))]);
    }

    // A belly leaves the lower edge along it, and what is outside of it there has no wood to saw.
    private static IEnumerable<Contour> InWood(Contour line)
    {
        var part = new List<Segment>();
        for (int i = 0; i < line.SegmentCount; i++)
        {
            double from = 0;
            foreach (double to in Crossings(line[i]).Append(1))
            {
                if (line[i].PointAt((from + to) / 2).Y > 0)
                {
                    part.Add(line[i].Part(from, to));
                }
                else if (part.Count > 0)
                {
                    yield return Contour.FromSegments([.. part], false);
                    part.Clear();
                }

                from = to;
            }
        }

        if (part.Count > 0)
        {
            yield return Contour.FromSegments([.. part], false);
        }
    }

    // Where a segment goes through the lower edge, by halving: an arc does so twice at most.
    private static IEnumerable<double> Crossings(Segment segment)
    {
        const int Parts = 8;
        for (int i = 0; i < Parts; i++)
        {
            (double low, double high) = ((double)i / Parts, (double)(i + 1) / Parts);
            bool above = segment.PointAt(low).Y > 0;
            if (above == segment.PointAt(high).Y > 0)
            {
                continue;
            }

            for (int k = 0; k < 50; k++)
            {
                double middle = (low + high) / 2;
                (low, high) = segment.PointAt(middle).Y > 0 == above ? (middle, high) : (low, middle);
            }

            if (low > 1e-9 && low < 1 - 1e-9)
            {
                yield return low;
            }
        }
    }
}
