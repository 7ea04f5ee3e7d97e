using System.Collections.Immutable;
using CsCheck;
using NetTopologySuite.Geometries;
using ToolpathForge.Findings;
using ToolpathForge.Geometry;
using ToolpathForge.Measures;
using ToolpathForge.Shapes;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Shapes;

/// <summary>Any answers within the ranges give a finding, or a simple curve within the board that begins and ends where it says.</summary>
public class ShapePropertyTests
{
    // Sizes a person might write, small and large alike, never outside the question's range.
    private static Gen<Answer> AnswerTo(Question q, double width) => q.Kind switch
    {
        AnswerKind.Size => Gen.OneOf(Gen.Double[0, 1.2], Gen.Double[0, 0.2]).Select(share =>
            new Answer(Measure.Fixed(Math.Clamp(share * width, q.Least, q.Most)), default, "", Place.None)),
        AnswerKind.Angle => Gen.Double[q.Least, q.Most].Select(a => new Answer(default, new Angle(a), "", Place.None)),
        AnswerKind.Number => Gen.Double[Math.Max(q.Least, -1), Math.Min(q.Most, 10)].Select(a => new Answer(Measure.Fixed(a), default, "", Place.None)),
        AnswerKind.Choice => Gen.Int[0, q.Choices.Length - 1].Select(i => new Answer(default, default, q.Choices[i], Place.None)),
        AnswerKind.Length => Gen.Double[q.Least, q.Most].Select(a => new Answer(Measure.Fixed(a), default, "", Place.None)),
        AnswerKind.Flag => Gen.Bool.Select(yes => new Answer(Measure.Fixed(yes ? 1 : 0), default, "", Place.None)),
        AnswerKind.Text => Gen.Const(new Answer(default, default, "layer", Place.None)),
        AnswerKind.Drawing => Gen.Select(LineAnyWay, Gen.Bool, (line, known) => new Answer(default, default, "@tail", Place.None) { Line = new LineOfDrawing(line, known) }),
        _ => Gen.Int[0, q.PartKinds.Length - 1].SelectMany(i => PartWith(q.PartKinds[i], width)).Array[1, 5]
            .Select(parts => new Answer(default, default, "", Place.None) { Parts = [.. parts] }),
    };

    // A line, a quarter of a tilted ellipse and a spline, or some of them, somewhere in a drawing.
    private static Gen<Outline> LineAnyWay => Gen.Select(Gen.Double[-1, 1].Array[8], Gen.Double[-1000, 1000], Gen.Int[1, 7], (v, far, which) =>
    {
        var at = new Point2(far, -far);
        var curves = ImmutableArray.CreateBuilder<Curve>();
        if ((which & 1) != 0)
        {
            curves.Add(new LineCurve(at, at + new Point2(0.01 + Math.Abs(v[0]), v[1])));
            at = curves[^1].End;
        }

        if ((which & 2) != 0)
        {
            Point2 major = new Point2(-0.3 - Math.Abs(v[2]), v[3]) * 3;
            curves.Add(new EllipseCurve(at - major, major, major.Right * 0.7, 0, Math.PI / 2));
            at = curves[^1].End;
        }

        if ((which & 4) != 0)
        {
            curves.Add(SplineCurve.Bezier(at, at + new Point2(v[4], Math.Abs(v[5])), at + new Point2(2, 1 + v[6]), at + new Point2(3, 2 + v[7])));
        }

        var line = new Outline(curves.ToImmutable(), false);
        return (which & 1) == 0 ? line : line.Reversed();
    });

    private static Gen<ImmutableDictionary<string, Answer>> AnswersTo(ImmutableArray<Question> questions, double width) =>
        questions.Aggregate(
            Gen.Const(ImmutableDictionary<string, Answer>.Empty),
            (all, q) => Gen.Select(all, AnswerTo(q, width), Gen.Bool, (answers, answer, silent) =>
                q.WithoutIt is not null && silent ? answers : q.Key == "round" ? answers.Add(q.Key, answer with { Size = default }) : answers.Add(q.Key, answer)));

    private static Gen<PartSpec> PartWith(ShapePart part, double width) =>
        AnswersTo(part.Questions, width).Select(answers => new PartSpec(part, answers, Place.None));

    private static Gen<(ShapeSpec Spec, double Width)> SpecOf(Shape shape) =>
        Gen.Double[40, 300].SelectMany(width => AnswersTo(shape.Questions, width).Select(answers => (new ShapeSpec(shape, answers, Place.None), width)));

    public static TheoryData<string> Ids() => [.. ShapeList.All.Select(s => s.Id)];

    [Theory]
    [MemberData(nameof(Ids))]
    public void A_finding_or_a_simple_curve_within_the_board(string id)
    {
        Shape shape = ShapeList.All.Single(s => s.Id == id);
        int made = 0;
        SpecOf(shape).Sample(
            c =>
            {
                var findings = new List<Finding>();
                if (c.Spec.Shape.Scale(c.Spec, c.Width, findings) is not { } profile)
                {
                    Assert.Contains(findings, f => f.Kind.Severity == Severity.Stop);
                    return;
                }

                made++;
                Assert.DoesNotContain(findings, f => f.Kind.Severity == Severity.Stop);
                Check(profile, c.Width);
            },

            // Most lines that are drawn at random are rightly refused.
            iter: LongRun.Iterations(id is "drawn" or "composed" ? 2000 : 200, 5000),
            threads: 1);

        // A test that only ever saw refusals would say nothing.
        Assert.True(made > 0, $"No answers made a {id}.");
    }

    private static void Check(Profile p, double width)
    {
        // Ends: on the lower edge and on the reference edge, curves end to end.
        const double Same = 1e-8;
        Assert.Equal(width, p.Start.Y, 9);
        Assert.Equal(0, p.End.Y, 9);
        Assert.Equal(p.Roles.Length, p.Exact.Curves.Length);
        Assert.Equal(EdgeRole.EndCut, p.Roles[^1]);
        for (int i = 0; i + 1 < p.Exact.Curves.Length; i++)
        {
            Assert.True(p.Exact.Curves[i].End.DistanceTo(p.Exact.Curves[i + 1].Start) <= Same);
        }

        // Inside the board, nothing past the tip, which is at X = 0; simple by the polygon library, on chords.
        ImmutableArray<Point2> points = [.. p.Exact.Curves.SelectMany(Dense)];
        Assert.All(points, q => Assert.InRange(q.Y, -Same, width + Same));
        Assert.All(points, q => Assert.True(q.X >= -1e-6));
        Assert.InRange(p.Exact.Curves.Min(LeastX), -1e-6, 1e-6);
        IEnumerable<Point2> apart = points.Where((q, i) => i == 0 || q.DistanceTo(points[i - 1]) > 1e-6);
        Assert.True(new LineString([.. apart.Select(q => new Coordinate(q.X, q.Y))]).IsSimple);

        // A sound end: at least an eighth of the board beyond the curve everywhere.
        Assert.All(p.Exact.Curves.SkipLast(1).SelectMany(Dense), q => Assert.True(q.Y >= (width / 8) - 1e-6));
    }

    // Samples alone can miss the tip of a bend that is passed quickly: from the least of them on it is narrowed down by thirds.
    private static double LeastX(Curve curve)
    {
        const int Samples = 2000;
        int best = Enumerable.Range(0, Samples + 1).MinBy(i => curve.PointAt((double)i / Samples).X);
        double low = Math.Max(0, best - 1.0) / Samples;
        double high = Math.Min(Samples, best + 1.0) / Samples;
        for (int i = 0; i < 100; i++)
        {
            double first = low + ((high - low) / 3);
            double second = high - ((high - low) / 3);
            (low, high) = curve.PointAt(first).X < curve.PointAt(second).X ? (low, second) : (first, high);
        }

        return Math.Min(curve.PointAt((low + high) / 2).X, Math.Min(curve.Start.X, curve.End.X));
    }

    private static IEnumerable<Point2> Dense(Curve curve)
    {
        int count = curve is LineCurve ? 1 : Math.Clamp((int)(curve.Length / 0.5), 16, 2000);
        return Enumerable.Range(0, count).Select(i => curve.PointAt(i / (double)count)).Append(curve.End);
    }
}
