namespace ToolpathForge.Proof;

/// <summary>What lies on the bed, ready to be measured against, and what a motion does there.</summary>
internal sealed class Bed
{
    private readonly Target target;
    private readonly (TargetStock Stock, Region Region)[] stock;
    private readonly (TargetKeepOut KeepOut, Region Region)[] keepOuts;
    private readonly (TargetFloor Floor, Region Region)[] floors;
    private readonly List<PathPart> parts = [];

    internal Bed(Target target)
    {
        this.target = target;
        stock = [.. target.Stock.Select(s => (s, Region.Of(s.Corners)))];
        keepOuts = [.. target.KeepOuts.Select(k => (k, Region.Of(k.Corners)))];
        HighestTop = stock.Length == 0 ? double.PositiveInfinity : stock.Max(s => s.Stock.Top);
        floors = [.. target.Floors.Select(f => (f, Region.Of(f.Corners)))];
    }

    /// <summary>Whether the bit is in stock somewhere along a motion, beyond the tolerance.</summary>
    internal bool Cuts(CutMotion cut)
    {
        if (stock.Length == 0)
        {
            return true;
        }

        foreach ((TargetStock solid, Region region) in stock)
        {
            if (Meets(cut, region, solid.Top - target.Increment, out _))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Highest top of all stock; infinite when none is known.</summary>
    internal double HighestTop { get; }

    /// <summary>Highest top of the stock under the bit at a place; negative infinity over none.</summary>
    internal double TopUnder(PlanePoint p, double radius)
    {
        double top = stock.Length == 0 ? double.PositiveInfinity : double.NegativeInfinity;
        var point = PathPart.Line(p, p, 0, 0, 0, 1);
        foreach ((TargetStock solid, Region region) in stock)
        {
            if (solid.Top > top && region.DepthOf(point, Reach(radius), target.Tolerance, out _) > target.Tolerance)
            {
                top = solid.Top;
            }
        }

        return top;
    }

    /// <summary>A feed motion: keep-outs and floors.</summary>
    internal void CheckFeed(CutMotion cut, FaultBook faults)
    {
        CheckKeepOuts(cut, FaultCodes.CutInKeepOut, faults);
        CheckFloors(cut, faults);
    }

    /// <summary>A rapid: material, keep-outs, clear height, floors.</summary>
    /// <param name="cut">The rapid.</param>
    /// <param name="clearedTo">Lowest tip of earlier cuts at the very place, for a rapid straight down; infinite if there is none.</param>
    /// <param name="faults">Takes what is wrong.</param>
    internal void CheckRapid(CutMotion cut, double clearedTo, FaultBook faults)
    {
        Motion motion = cut.Motion;
        bool isUp = motion.IsVertical && motion.End.Z >= motion.Start.Z;
        bool isInMaterial = false;
        foreach ((TargetStock solid, Region region) in stock)
        {
            double limit = motion.IsVertical ? Math.Min(solid.Top, clearedTo) : solid.Top;
            if (!isUp && Meets(cut, region, limit - target.Increment, out SpacePoint at))
            {
                faults.Add(FaultCodes.RapidInMaterial, motion.Line, cut.LowestZ, limit, at);
                isInMaterial = true;
            }
        }

        bool hits = CheckKeepOuts(cut, FaultCodes.RapidInKeepOut, faults);
        if (!motion.IsVertical && !isInMaterial && !hits)
        {
            CheckClearHeight(cut, faults);
        }

        CheckFloors(cut, faults);
    }

    private void CheckClearHeight(CutMotion cut, FaultBook faults)
    {
        foreach (Region region in stock.Select(s => s.Region).Concat(keepOuts.Select(k => k.Region)))
        {
            if (Meets(cut, region, target.ClearHeight - target.Increment, out SpacePoint at))
            {
                faults.Add(FaultCodes.RapidTooLow, cut.Motion.Line, cut.LowestZ, target.ClearHeight, at);
                return;
            }
        }
    }

    private bool CheckKeepOuts(CutMotion cut, FaultCode code, FaultBook faults)
    {
        bool hits = false;
        foreach ((TargetKeepOut keepOut, Region region) in keepOuts)
        {
            if (Meets(cut, region, keepOut.Top - target.Increment, out SpacePoint at))
            {
                faults.Add(code, cut.Motion.Line, cut.LowestZ, keepOut.Top, at, keepOut.Name);
                hits = true;
            }
        }

        return hits;
    }

    private void CheckFloors(CutMotion cut, FaultBook faults)
    {
        if (cut.LowestZ < target.Floor - target.Increment)
        {
            SpacePoint at = cut.Motion.Start.Z < cut.Motion.End.Z ? cut.Motion.Start : cut.Motion.End;
            faults.Add(FaultCodes.BelowFloor, cut.Motion.Line, cut.LowestZ, target.Floor, at);
        }

        foreach ((TargetFloor floor, Region region) in floors)
        {
            if (Meets(cut, region, floor.Lowest - target.Increment, out SpacePoint at))
            {
                faults.Add(FaultCodes.BelowFloor, cut.Motion.Line, cut.LowestZ, floor.Lowest, at, floor.Name);
            }
        }
    }

    /// <summary>A bit of no known size is still something that must not be there.</summary>
    private double Reach(double radius) => Math.Max(radius, 2 * target.Tolerance);

    /// <summary>Whether the bit, where its tip is below a height, reaches into a region by more than the tolerance.</summary>
    private bool Meets(CutMotion cut, Region region, double below, out SpacePoint at)
    {
        at = default;
        if (cut.LowestZ >= below)
        {
            return false;
        }

        parts.Clear();
        cut.AddAtOrBelow(parts, below);
        foreach (PathPart part in parts)
        {
            if (region.DepthOf(part, Reach(cut.Radius), target.Tolerance, out PlanePoint where) > target.Tolerance)
            {
                at = new SpacePoint(where.X, where.Y, cut.HeightAt(part.From + ((part.To - part.From) * part.ShareAt(where))));
                return true;
            }
        }

        return false;
    }
}
