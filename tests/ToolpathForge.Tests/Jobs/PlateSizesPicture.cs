using System.Text;
using ToolpathForge.Drawings;
using ToolpathForge.Geometry;
using ToolpathForge.Jobs;
using ToolpathForge.Lettering;
using ToolpathForge.Pieces;
using ToolpathForge.Planning;
using ToolpathForge.Shapes;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Jobs;

/// <summary>The picture of the reference that shows what hold, seat and reach are: drawn from the sample's own rafter tail, and checked against its keys.</summary>
public class PlateSizesPicture
{
    private static ProfilePiece Plate()
    {
        string text = File.ReadAllText(Repo.Path("samples", "boathouse", "boathouse.toml"));
        Job job = JobReader.Read(text, "boathouse.toml", _ => null).Job!;
        return Planner.Plan(job, cancel: TestContext.Current.CancellationToken).Pieces.OfType<ProfilePiece>().First(p => p.Make.Id == "rafter-tail");
    }

    // As a right-hand piece lies: half a turn from the piece frame.
    private static Drawing Draw(ProfilePiece plate)
    {
        var laid = new Placement(Math.PI, default, false);
        Outline outline = plate.Exact.Placed(laid);
        Box2 box = ArcFit.Fit(outline, 0.01).Contour.Box;
        double width = plate.Profile.Width;
        double start = -plate.Profile.Start.X;
        var hidden = new[] { 0, -width }.Select(y => new Stroke(LineRole.HiddenEdge, Contour.Polyline(new Point2(box.MinX, y), new Point2(box.MaxX, y))));
        return new Drawing(
            "hold, seat and reach of a pattern",
            "A pattern seen from above. hold: how far it goes on along the board past the curve. seat: how far it reaches past the reference edge. reach: how far it reaches past the profile edge.",
            [
                new Fill(Tone.Panel, outline),
                .. hidden,
                new ExactStroke(LineRole.Edge, outline),
                new ExactStroke(LineRole.FinishedEdge, plate.Profile.Exact.Placed(laid)),
                new LinearDimension(new Point2(box.MinX, box.MinY), new Point2(start, -width), MeasuredAlong.Horizontal, "hold", -8, box.MinY),
                new LinearDimension(new Point2(box.MinX, 0), new Point2(box.MinX, box.MaxY), MeasuredAlong.Vertical, "seat", 8, box.MinX),
                new LinearDimension(new Point2(box.MinX, box.MinY), new Point2(box.MinX, -width), MeasuredAlong.Vertical, "reach", 8, box.MinX),
                new Text("reference edge of the board: the guide block runs along it", new Point2(box.MinX + 8, -9), TextAlign.Start),
                new Text("the guide block goes under here", new Point2(box.MinX + 60, 14), TextAlign.Start),
                new Text("profile edge of the board", new Point2(start + 25, -width + 4), TextAlign.Start),
                new Text("curve", new Point2(start + (plate.Profile.Run * 0.45), -width + (plate.Profile.Depth * 0.75) + 14), TextAlign.End),
                new Text("tip", new Point2(box.MaxX + 3, -width / 3), TextAlign.Start),
            ]);
    }

    [Fact]
    public void The_reference_shows_what_hold_seat_and_reach_are()
    {
        ProfilePiece plate = Plate();
        Drawing drawing = Draw(plate);
        LinearDimension[] sizes = [.. drawing.Elements.OfType<LinearDimension>()];
        double Length(string name) => sizes.Single(s => s.Value == name) is var d && d.Along == MeasuredAlong.Horizontal ? Math.Abs(d.To.X - d.From.X) : Math.Abs(sizes.Single(s => s.Value == name).To.Y - sizes.Single(s => s.Value == name).From.Y);

        // As the sample's file says: hold 4, seat 1 1/2, reach 1/2.
        Assert.Equal(4 * 25.4, Length("hold"), 1e-6);
        Assert.Equal(1.5 * 25.4, Length("seat"), 1e-6);
        Assert.Equal(0.5 * 25.4, Length("reach"), 1e-6);
        Golden.SameFile(Repo.Path("samples", "boathouse", "plate-sizes.svg"), Encoding.UTF8.GetBytes(SvgWriter.Write(drawing, 0.4)));
        Assert.Contains("(boathouse/plate-sizes.svg)", File.ReadAllText(Repo.Path("samples", "README.md")), StringComparison.Ordinal);
    }
}
