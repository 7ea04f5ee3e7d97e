namespace ToolpathForge.Proof;

/// <summary>A motion with the bit that makes it, its place fully known.</summary>
/// <param name="Index">Position among all motions: their order in time.</param>
/// <param name="Motion">The motion.</param>
/// <param name="Tool">The bit in the spindle; null if none is known.</param>
internal readonly record struct CutMotion(int Index, Motion Motion, TargetTool? Tool)
{
    internal double Radius => Tool?.Radius ?? 0;

    internal double LowestZ => Math.Min(Motion.Start.Z, Motion.End.Z);

    /// <summary>Height of the tip at a share of the motion.</summary>
    internal double HeightAt(double share) => Motion.Start.Z + ((Motion.End.Z - Motion.Start.Z) * share);

    /// <summary>Adds the stretch of the path, seen from above, where the tip is at or below a height. Z is linear in the share, so the cut is exact.</summary>
    /// <param name="parts">Takes the parts; their owner is <see cref="Index"/>, their shares those of the motion.</param>
    /// <param name="height">mm; positive infinity for all of it.</param>
    internal void AddAtOrBelow(List<PathPart> parts, double height)
    {
        double z0 = Motion.Start.Z, z1 = Motion.End.Z;
        if (Math.Min(z0, z1) > height)
        {
            return;
        }

        double from = z0 > height ? (height - z0) / (z1 - z0) : 0;
        double to = z1 > height ? (height - z0) / (z1 - z0) : 1;
        if (Motion.Kind == MotionKind.Arc)
        {
            PlanePoint arrow = Motion.Start.Plane.Minus(Motion.Center);
            double angle = Math.Atan2(arrow.Y, arrow.X);
            PathPart.AddArc(
                parts, Motion.Center, Motion.Radius, angle + (Motion.Sweep * from), Motion.Sweep * (to - from), Motion.RadiusError, Index, from, to);
            return;
        }

        PlanePoint start = Motion.Start.Plane, end = Motion.End.Plane;
        PlanePoint along = end.Minus(start);
        parts.Add(PathPart.Line(start.Plus(along.Times(from)), to == 1 ? end : start.Plus(along.Times(to)), 0, Index, from, to));
    }
}
