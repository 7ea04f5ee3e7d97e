using ToolpathForge.Clampings;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;

namespace ToolpathForge.Cutting;

/// <summary>The bit's way beside an open profile at one distance, with what leads on past its two ends until the bit is clear of the stock.</summary>
internal sealed class EndTrack
{
    /// <summary>The track beside the profile is in several parts.</summary>
    internal static readonly FindingKind NotOneTrack = new(
        "profile-not-one-track",
        Severity.Stop,
        "The bit's track along the profile falls into {found} parts; {allowed} is expected.",
        "Use a smaller bit, or an easier curve.");

    private readonly PathRuler _profile;
    private readonly double _distance;
    private readonly Segment[] _before;
    private readonly Segment[] _after;

    private EndTrack(Contour profile, Contour piece, Contour beside, double distance, Box2 stock, double clear)
    {
        _profile = new PathRuler(profile);
        _distance = distance;
        Path = new PathRuler(beside);
        _before = [.. OpenLead.Leaving(beside.Reversed(), boardOnLeft: false, stock, clear, piece, distance).Select(s => s.Reversed).Reverse()];
        _after = [.. OpenLead.Leaving(beside, boardOnLeft: true, stock, clear, piece, distance)];
    }

    /// <summary>The track itself, in the profile's direction, without its leads.</summary>
    internal PathRuler Path { get; }

    /// <summary>How far the bit's axis goes in +Y, leads and all, mm.</summary>
    internal double MaxY => Math.Max(Path.Contour.Box.MaxY, _before.Concat(_after).Max(s => s.Box.MaxY));

    /// <summary>The track at a distance from a profile that has the board on its left; null with a finding when it is not one piece.</summary>
    internal static EndTrack? Beside(PlacedContour placed, Contour profile, double distance, StockOnBed stock, ICollection<Finding> findings)
    {
        OffsetResult offset = Offsetter.OneSide(profile, -distance);
        if (offset.Unproven is { } unproven)
        {
            findings.Add(unproven);
            return null;
        }

        if (offset.Loops.Length != 1)
        {
            Place where = placed.Placed.Piece.Make.At["shape"].OfMake(placed.Placed.Piece.Make.Id);
            findings.Add(Finding.Of(NotOneTrack, where, Quantity.Number(offset.Loops.Length), Quantity.Number(1)));
            return null;
        }

        return new EndTrack(profile, placed.Contour, offset.Loops[0].Contour, distance, stock.Box, placed.Placed.Piece.Make.Bit.Radius + 2);
    }

    /// <summary>
    /// The way along a part of the profile: from one distance along it to another, in its direction or against it. Where the part reaches an end of the
    /// profile the way goes on clear of the stock; elsewhere it begins or ends on the track, with the leads that are given.
    /// </summary>
    /// <param name="from">Distance along the profile, mm.</param>
    /// <param name="to">A greater distance.</param>
    /// <param name="climb">Against the profile's direction.</param>
    /// <param name="slotGap">How far an arc comes off the track at an end within the profile; 0 for none.</param>
    /// <param name="diameter">Of the bit, for the radius of such an arc.</param>
    internal List<(Segment Segment, Purpose Purpose)> Way(double from, double to, bool climb, double slotGap, double diameter)
    {
        var way = new List<(Segment Segment, Purpose Purpose)>();
        double a = from <= 0 ? 0 : Matching(from);
        double b = to >= _profile.Length ? Path.Length : Matching(to);
        if (from <= 0)
        {
            way.AddRange(_before.Select(s => (s, Purpose.LeadIn)));
        }
        else if (slotGap > 0)
        {
            way.Add((SlotLead.Leaving(Path, a, forward: false, wasteOnRight: false, slotGap, diameter, (_profile.Contour, _distance)).Reversed, Purpose.LeadIn));
        }

        way.AddRange(Path.Between(a, b).Select(s => (s, Purpose.Finish)));
        if (to >= _profile.Length)
        {
            way.AddRange(_after.Select(s => (s, Purpose.LeadOut)));
        }
        else if (slotGap > 0)
        {
            way.Add((SlotLead.Leaving(Path, b, forward: true, wasteOnRight: true, slotGap, diameter, (_profile.Contour, _distance)), Purpose.LeadOut));
        }

        if (!climb)
        {
            return way;
        }

        way.Reverse();
        return
        [
            .. way.Select(w => (w.Segment.Reversed, w.Purpose switch
            {
                Purpose.LeadIn => Purpose.LeadOut,
                Purpose.LeadOut => Purpose.LeadIn,
                _ => w.Purpose,
            })),
        ];
    }

    private double Matching(double along) => Path.Nearest(_profile.PointAt(along) + (_profile.DirectionAt(along).Right * _distance));
}
