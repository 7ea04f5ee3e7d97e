using System.Collections.Immutable;

namespace ToolpathForge.Proof;

/// <summary>Whether a target can be measured against at all. A target comes from a program, not from a person: what is wrong here is an error in that program.</summary>
internal sealed class TargetCheck
{
    private string? wrong;

    /// <summary>The first thing that is wrong: a number that is none or out of its range, a loop that does not close, an index that leads nowhere. Null if nothing is.</summary>
    internal static string? FindWrong(Target target)
    {
        var check = new TargetCheck();
        check.Check(target);
        return check.wrong;
    }

    private void Check(Target target)
    {
        Require(target.Tolerance > 0 && double.IsFinite(target.Tolerance), "The tolerance has to be more than 0.");
        Require(target.Increment > 0 && double.IsFinite(target.Increment), "The increment has to be more than 0.");
        Require(double.IsFinite(target.Floor) && double.IsFinite(target.ClearHeight) && double.IsFinite(target.StartsAtOrAbove), "Heights have to be numbers.");
        Require(target.Floor < target.ClearHeight, "The floor has to be below the clear height.");
        Require(target.DwellAfterStart >= 0, "The dwell cannot be negative.");
        Require(target.Tools.Length > 0, "There has to be a bit.");
        Require(target.Tools.Select(t => t.Number).Distinct().Count() == target.Tools.Length, "Two bits have one number.");
        Require(target.Tools.All(t => t.Number >= 0 && t.Diameter > 0 && double.IsFinite(t.Diameter) && t.Flutes > 0 && t.MaxRampAngle >= 0), "A bit's numbers are out of range.");
        Require(
            target.Axes is not { } axes || (axes.ScaleX is >= 0.9 and <= 1.1 && axes.ScaleY is >= 0.9 and <= 1.1 && Math.Abs(axes.Skew) <= 0.1), "The axes are off by more than can be.");
        foreach (TargetStock stock in target.Stock)
        {
            CheckPolygon(stock.Corners, "stock");
            Require(stock.Bottom < stock.Top, "Stock has to have a thickness.");
        }

        foreach (TargetKeepOut keepOut in target.KeepOuts)
        {
            CheckPolygon(keepOut.Corners, keepOut.Name);
            Require(!double.IsNaN(keepOut.Top), "A keep-out has to have a height.");
        }

        foreach (TargetFloor floor in target.Floors)
        {
            CheckPolygon(floor.Corners, floor.Name);
            Require(!double.IsNaN(floor.Lowest), "A floor has to have a height.");
        }

        foreach (TargetPiece piece in target.Pieces)
        {
            CheckPiece(piece);
        }
    }

    private void CheckPiece(TargetPiece piece)
    {
        Require(double.IsFinite(piece.Bottom) && double.IsFinite(piece.Top) && piece.Bottom < piece.Top, $"Piece {piece.Name} has to have a thickness.");
        Require(piece.Loops.Length > 0, $"Piece {piece.Name} has no loop.");
        foreach (ImmutableArray<TargetEdge> loop in piece.Loops)
        {
            Require(loop.Length > 0, $"Piece {piece.Name} has an empty loop.");
            for (int i = 0; i < loop.Length; i++)
            {
                Require(loop[i].IsFinite, $"Piece {piece.Name} has an edge without extent or number.");
                double gap = loop[i].End.DistanceTo(loop[(i + 1) % loop.Length].Start);
                Require(gap <= ProofAccuracy.LoopGap, $"Piece {piece.Name} has a loop that does not close.");
            }
        }

        foreach (TargetTab tab in piece.Tabs)
        {
            var edge = Edge(piece, tab.Loop, tab.Edge) as LineEdge;
            Require(edge is not null, $"A tab of piece {piece.Name} is not on a straight edge.");
            double length = edge?.From.DistanceTo(edge.To) ?? 0;
            Require(
                tab.OuterFrom <= tab.CoreFrom && tab.CoreFrom < tab.CoreTo && tab.CoreTo <= tab.OuterTo && tab.CoreFrom >= 0 && tab.CoreTo <= length,
                $"A tab of piece {piece.Name} has its limits out of order or beyond its edge.");
            Require(tab.Top > piece.Bottom && tab.Top <= piece.Top, $"A tab of piece {piece.Name} ends outside the piece's thickness.");
        }

        foreach (TargetAllowance a in piece.Allowances)
        {
            Require(Edge(piece, a.Loop, a.Edge) is not null && a.FromShare < a.ToShare && !double.IsNaN(a.Below), $"An allowance of piece {piece.Name} leads nowhere.");
        }

        foreach (TargetMark mark in piece.Marks)
        {
            Require(
                mark.Strokes.Length > 0 && mark.Strokes.All(s => s.IsFinite) && mark.Depth < piece.Top && mark.HalfWidth > 0,
                $"Mark {mark.Name} of piece {piece.Name} has no stroke, depth or width.");
        }
    }

    private static TargetEdge? Edge(TargetPiece piece, int loop, int edge) =>
        loop >= 0 && loop < piece.Loops.Length && edge >= 0 && edge < piece.Loops[loop].Length ? piece.Loops[loop][edge] : null;

    /// <summary>Convex, with an area, either way round.</summary>
    private void CheckPolygon(ImmutableArray<PlanePoint> corners, string name)
    {
        Require(corners.Length >= 3 && corners.All(c => c.IsFinite), $"The polygon of {name} has too few corners.");
        bool turnsLeft = false, turnsRight = false;
        for (int i = 0; i < corners.Length; i++)
        {
            PlanePoint a = corners[i], b = corners[(i + 1) % corners.Length], c = corners[(i + 2) % corners.Length];
            double turn = b.Minus(a).Cross(c.Minus(b));
            turnsLeft |= turn > 0;
            turnsRight |= turn < 0;
        }

        Require(turnsLeft != turnsRight, $"The polygon of {name} is not convex or has no area.");
    }

    private void Require(bool holds, string message) => wrong ??= holds ? null : message;
}
