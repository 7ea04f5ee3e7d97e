namespace ToolpathForge.Proof;

/// <summary>
/// One exact edge of a piece, with a direction: the material lies on its left. A <em>share</em> of an edge runs from 0 at its start to 1 at its end
/// in the edge's own parameter: length of a line, angle of an arc, eccentric angle of an ellipse, t of a cubic.
/// </summary>
/// <param name="MustBeCut">
/// Whether the program has to free this edge. False for an edge that is there already (the board's own faces): it is still protected against the bit.
/// </param>
public abstract record TargetEdge(bool MustBeCut)
{
    /// <summary>Where the edge begins.</summary>
    public PlanePoint Start => PointAt(0);

    /// <summary>Where the edge ends.</summary>
    public PlanePoint End => PointAt(1);

    /// <summary>The point at a share.</summary>
    /// <param name="share">0 to 1.</param>
    public abstract PlanePoint PointAt(double share);

    internal abstract bool IsFinite { get; }
}

/// <summary>A straight edge.</summary>
/// <param name="From">Where it begins.</param>
/// <param name="To">Where it ends; not the same point.</param>
/// <param name="MustBeCut">Whether the program has to free it.</param>
public sealed record LineEdge(PlanePoint From, PlanePoint To, bool MustBeCut = true) : TargetEdge(MustBeCut)
{
    internal override bool IsFinite => From.IsFinite && To.IsFinite && From != To;

    /// <inheritdoc/>
    public override PlanePoint PointAt(double share) =>
        share == 1 ? To : From.Plus(To.Minus(From).Times(share));
}

/// <summary>A circular edge.</summary>
/// <param name="Center">The centre.</param>
/// <param name="Radius">mm, more than 0.</param>
/// <param name="StartAngle">Radians counter-clockwise from X.</param>
/// <param name="Sweep">Signed radians, positive counter-clockwise, at most a full turn, not 0.</param>
/// <param name="MustBeCut">Whether the program has to free it.</param>
public sealed record ArcEdge(PlanePoint Center, double Radius, double StartAngle, double Sweep, bool MustBeCut = true) : TargetEdge(MustBeCut)
{
    internal override bool IsFinite =>
        Center.IsFinite && double.IsFinite(Radius) && Radius > 0 && double.IsFinite(StartAngle) && Math.Abs(Sweep) is > 0 and <= Math.Tau + 1e-12;

    /// <inheritdoc/>
    public override PlanePoint PointAt(double share) => Center.Plus(PlanePoint.Direction(StartAngle + (Sweep * share)).Times(Radius));
}

/// <summary>A piece of an ellipse: Center + Major·cos u + Minor·sin u, u from the start parameter through the sweep.</summary>
/// <param name="Center">The centre.</param>
/// <param name="Major">One semi-axis as a vector, mm.</param>
/// <param name="Minor">The other semi-axis as a vector, mm; it may be the longer one and may lie to either side.</param>
/// <param name="StartParameter">The eccentric angle u at the start, radians.</param>
/// <param name="Sweep">Signed radians of u, at most a full turn, not 0.</param>
/// <param name="MustBeCut">Whether the program has to free it.</param>
public sealed record EllipseEdge(PlanePoint Center, PlanePoint Major, PlanePoint Minor, double StartParameter, double Sweep, bool MustBeCut = true)
    : TargetEdge(MustBeCut)
{
    internal override bool IsFinite =>
        Center.IsFinite && Major.IsFinite && Minor.IsFinite && Math.Abs(Major.Cross(Minor)) > 0
        && double.IsFinite(StartParameter) && Math.Abs(Sweep) is > 0 and <= Math.Tau + 1e-12;

    /// <inheritdoc/>
    public override PlanePoint PointAt(double share)
    {
        (double sin, double cos) = Math.SinCos(StartParameter + (Sweep * share));
        return Center.Plus(Major.Times(cos)).Plus(Minor.Times(sin));
    }
}

/// <summary>A cubic Bézier edge, rational when its weights differ: Σ Bᵢ wᵢ Pᵢ / Σ Bᵢ wᵢ.</summary>
/// <param name="P0">The start.</param>
/// <param name="P1">Second control point.</param>
/// <param name="P2">Third control point.</param>
/// <param name="P3">The end.</param>
/// <param name="W0">Weight of the start, more than 0.</param>
/// <param name="W1">Weight of the second control point, more than 0.</param>
/// <param name="W2">Weight of the third control point, more than 0.</param>
/// <param name="W3">Weight of the end, more than 0.</param>
/// <param name="MustBeCut">Whether the program has to free it.</param>
public sealed record CubicEdge(
    PlanePoint P0, PlanePoint P1, PlanePoint P2, PlanePoint P3, double W0 = 1, double W1 = 1, double W2 = 1, double W3 = 1, bool MustBeCut = true)
    : TargetEdge(MustBeCut)
{
    internal override bool IsFinite =>
        P0.IsFinite && P1.IsFinite && P2.IsFinite && P3.IsFinite
        && IsWeight(W0) && IsWeight(W1) && IsWeight(W2) && IsWeight(W3) && !(P0 == P1 && P1 == P2 && P2 == P3);

    /// <inheritdoc/>
    public override PlanePoint PointAt(double share)
    {
        double s = 1 - share;
        double b0 = s * s * s * W0, b1 = 3 * s * s * share * W1, b2 = 3 * s * share * share * W2, b3 = share * share * share * W3;
        return P0.Times(b0).Plus(P1.Times(b1)).Plus(P2.Times(b2)).Plus(P3.Times(b3)).Times(1 / (b0 + b1 + b2 + b3));
    }

    private static bool IsWeight(double w) => double.IsFinite(w) && w > 0;
}
