using System.Collections.Immutable;
using System.Globalization;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;
using ToolpathForge.Measures;
using ToolpathForge.Shapes;

namespace ToolpathForge.Pieces;

/// <summary>
/// Works out what a plate has besides its edge: where the guide block and the stop lie and their screws go, where it hangs, where brads hold it. Holes become
/// openings of the plate, cut and proven like those that the job names.
/// </summary>
internal static class PlateFitting
{
    /// <summary>The strip leaves no room for two screws.</summary>
    internal static readonly FindingKind StripShort = new(
        "plate-strip-short",
        Severity.Stop,
        "The {strip} would be {found} long; {allowed} at least takes two screws.",
        "Lessen its set-back, or give the plate more hold.");

    /// <summary>The block stands out from under the plate.</summary>
    internal static readonly FindingKind BlockWide = new(
        "plate-block-wide",
        Severity.Stop,
        "The guide block is {found} wide; the seat that carries it {allowed}.",
        "Make it narrower, or the seat wider.");

    /// <summary>The strip stands out below the board.</summary>
    internal static readonly FindingKind StripThick = new(
        "plate-strip-thick",
        Severity.Warn,
        "The {strip} hangs {found} below the plate; the board is {allowed} thick.",
        "Let the board overhang the bench there, or make it thinner.");

    // Screws that split thin ends are kept this far from them, and a strip is at least three times as long, mm (common practice).
    private static double FromEnd(LengthUnit unit) => unit == LengthUnit.Inch ? 25.4 * 5 / 8 : 15;

    // One screw every 150 mm or so (common practice).
    private const double Spacing = 150;

    // Wood left round the hanging hole, mm (common practice).
    private const double HangRim = 15;

    /// <summary>The plate with its fittings.</summary>
    /// <param name="plate">The bare plate of a pattern.</param>
    /// <param name="unit">Strips and the places of their screws are so long that a rule of this unit shows it.</param>
    /// <param name="findings">Takes what is wrong.</param>
    internal static ProfilePiece Add(ProfilePiece plate, LengthUnit unit, ICollection<Finding> findings)
    {
        var make = (PatternMake)plate.Make;
        PlateFittings fittings = make.Fittings;
        if (fittings == PlateFittings.None)
        {
            return plate;
        }

        Profile profile = plate.Profile;
        var holes = new List<Opening>();
        var strips = ImmutableArray.CreateBuilder<PlateStrip>();
        Box2 box = CurveExtent.Box(plate.Exact);
        if (fittings.Hang is { } hang)
        {
            var at = new Point2(box.MaxX - HangRim - (hang.Width / 2), profile.Width / 2);
            holes.Add(new Opening("hanging hole", at, at, hang.Width, hang.Bit, hang.At));
        }

        if (fittings.Block is { } block)
        {
            double from = profile.End.X + block.SetBack;
            AddStrip("guide block", block, new Point2(from, 0), new Point2(1, 0), new Point2(0, -1), box.MaxX - from, block.Width ?? make.Seat);
            if (block.Width is { } wide && wide > make.Seat + 1e-9)
            {
                findings.Add(Finding.Of(BlockWide, block.At["width"].OfMake(make.Id), Quantity.Length(wide), Quantity.Length(make.Seat)));
            }
        }

        if (fittings.Stop is { } stop)
        {
            Point2 along = (profile.Nose - profile.End).Unit();
            AddStrip("end stop", stop, profile.End, along, along.Left, profile.End.DistanceTo(profile.Nose) - stop.SetBack, stop.Width!.Value);
        }

        ImmutableArray<Point2> brads = fittings.Brads is { } b ? PlateBrads.Place(plate, b, [.. make.Openings, .. holes], findings) : [];
        if (fittings.Brads is { Bit: { } bit } bored)
        {
            holes.AddRange(brads.Select((at, i) => new Opening(Numbered("brad", i), at, at, bored.Hole, bit, bored.At)));
        }

        return new ProfilePiece(
            make with { Openings = [.. make.Openings, .. holes] }, profile, plate.Exact, plate.Roles, plate.Thickness, plate.Guides)
        {
            Strips = strips.ToImmutable(),
            Brads = brads,
        };

        void AddStrip(string name, StripChoices choices, Point2 corner, Point2 along, Point2 across, double length, double width)
        {
            double fromEnd = FromEnd(unit);
            length = ShopText.Down(length, unit);
            if (length < 3 * fromEnd)
            {
                findings.Add(Finding.Of(
                    StripShort, choices.At["set-back"].OfMake(make.Id), Quantity.Length(Math.Max(0, length)), Quantity.Length(3 * fromEnd), Arg.Of("strip", name)));
                return;
            }

            double thinnest = make.Measured.IsEmpty ? make.Board.Thickness : make.Measured.Min(m => m.Thickness);
            if (choices.Thickness > thinnest + 1e-9)
            {
                findings.Add(Finding.Of(
                    StripThick, choices.At["thickness"].OfMake(make.Id), Quantity.Length(choices.Thickness), Quantity.Length(thinnest), Arg.Of("strip", name)));
            }

            int count = choices.Screws ?? Math.Max(2, 1 + (int)Math.Ceiling((length - (2 * fromEnd)) / Spacing));
            double between = (length - (2 * fromEnd)) / (count - 1);
            ImmutableArray<double> screws = [.. Enumerable.Range(0, count).Select(i => i == count - 1 ? length - fromEnd : fromEnd + ShopText.Down(i * between, unit))];
            var strip = new PlateStrip(name, corner, along, across, length, width, choices.Thickness, screws, choices.Pilot);
            strips.Add(strip);
            holes.AddRange(strip.ScrewPlaces.Select((at, i) => new Opening(Numbered($"{name} screw", i), at, at, choices.Hole, choices.Bit, choices.At)));
        }
    }

    private static string Numbered(string name, int index) => string.Create(CultureInfo.InvariantCulture, $"{name} {index + 1}");
}
