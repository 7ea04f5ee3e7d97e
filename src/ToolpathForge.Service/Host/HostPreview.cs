using System.Collections.Immutable;
using ToolpathForge.Clampings;
using ToolpathForge.Cutting;
using ToolpathForge.Geometry;
using ToolpathForge.Planning;
using ToolpathForge.Plugin.Contract;
using static ToolpathForge.Service.Wire.WireNumber;

namespace ToolpathForge.Service.Host;

/// <summary>The moves of a plan as entities, told page by page.</summary>
internal sealed class HostPreview
{
    private readonly Plan _plan;
    private readonly ImmutableArray<(int Program, int Pass, Run? Run, Move Move, Point3 From)> _moves;

    private HostPreview(Plan plan, ImmutableArray<(int, int, Run?, Move, Point3)> moves) => (_plan, _moves) = (plan, moves);

    /// <summary>How far the shown edge of a piece may be from its curves, mm: a hair's breadth of paint.</summary>
    private const double Shown = 0.02;

    /// <summary>Of a plan; the first move of each bit, from wherever it is, is not shown.</summary>
    internal static HostPreview Of(Plan plan)
    {
        var moves = ImmutableArray.CreateBuilder<(int, int, Run?, Move, Point3)>();
        for (int program = 0; program < plan.Programs.Length; program++)
        {
            int passes = 0;
            foreach (BitWork work in plan.Programs[program].Cut.Works)
            {
                Point3? at = null;
                foreach (Move move in work.Path.Moves)
                {
                    if (at is { } from)
                    {
                        Run? run = move.Run >= 0 && move.Run < work.Path.Runs.Length ? work.Path.Runs[move.Run] : null;
                        moves.Add((program, passes + Math.Max(0, move.Run), run, move, from));
                    }

                    at = move.End;
                }

                passes += work.Path.Runs.Length;
            }
        }

        return new HostPreview(plan, moves.ToImmutable());
    }

    /// <summary>One page.</summary>
    internal PreviewReply Page(int? program, int from, int count)
    {
        var wanted = program is { } p ? _moves.Where(m => m.Program == p).ToImmutableArray() : _moves;
        WirePathEntity[] page = [.. wanted.Skip(from).Take(count).Select(m => Entity(m.Program, m.Pass, m.Run, m.Move, m.From))];
        int next = from + page.Length;
        return new PreviewReply
        {
            Total = wanted.Length,
            Entities = page,
            Next = next < wanted.Length && page.Length > 0 ? next : null,
            Beds = from > 0 ? null : [.. Enumerable.Range(0, _plan.Programs.Length).Where(n => program is null || n == program).Select(Bed)],
        };
    }

    private WireBed Bed(int program)
    {
        Clamping clamping = _plan.Programs[program].Cut.Clamping;
        string layer = FormattableString.Invariant($"p{program + 1}-");
        (string Kind, Contour Edge)[] shapes =
        [
            ("stock", Contour.Rectangle(clamping.Stock.Box)),
            .. clamping.Pieces.SelectMany(p => p.Edges(Shown)).Select(e => ("piece", e)),
            .. clamping.KeepOuts.Select(k => ("keep-out", Contour.Rectangle(k.Box))),
        ];
        Box2 ways = _moves.Where(m => m.Program == program).Aggregate(Box2.Empty, (all, m) => m.From.Flat == m.Move.End.Flat ? all : all.Union(Flat(m.From, m.Move).Box));
        Box2 box = shapes.Aggregate(ways, (all, s) => all.Union(s.Edge.Box));
        return new WireBed
        {
            Program = program,
            Box = [Rounded(box.MinX), Rounded(box.MinY), Rounded(box.MaxX), Rounded(box.MaxY)],
            Shapes = [.. shapes.SelectMany(s => Enumerable.Range(0, s.Edge.SegmentCount).Select(i => Way(s.Edge[i], layer + s.Kind)))],
        };
    }

    private static Segment Flat(Point3 from, Move move) => new(from.Flat, move.End.Flat, move.Bulge);

    private static WirePathEntity Entity(int program, int pass, Run? run, Move move, Point3 from)
    {
        string purpose = Word(move.Purpose);
        bool cuts = move.Purpose is Purpose.Rough or Purpose.Finish or Purpose.LeadIn or Purpose.LeadOut or Purpose.OverTab or Purpose.Ramp && run is { Kind: not RunKind.Engraving };
        return new WirePathEntity
        {
            Program = program,
            Pass = pass,
            PassName = run?.Name ?? "",
            Purpose = purpose,
            Layer = FormattableString.Invariant($"p{program + 1}-{pass + 1}-{purpose}"),
            Way = from.Flat == move.End.Flat ? null : Way(Flat(from, move), null),
            At = [Rounded(from.X), Rounded(from.Y)],
            FromZ = Rounded(from.Z),
            ToZ = Rounded(move.End.Z),
            Cuts = cuts && run is not null ? run.Climb ? "climb" : "conventional" : null,
        };
    }

    private static WireEntity Way(Segment s, string? layer) => s.IsLine
        ? new WireEntity { Kind = "line", Layer = layer, From = [Rounded(s.Start.X), Rounded(s.Start.Y)], To = [Rounded(s.End.X), Rounded(s.End.Y)] }
        : new WireEntity
        {
            Kind = "arc",
            Layer = layer,
            Centre = [Rounded(s.Center.X), Rounded(s.Center.Y)],
            Radius = Rounded(s.Radius),
            Start = Rounded((s.Start - s.Center).Angle * 180 / Math.PI),
            Sweep = Rounded(s.Sweep * 180 / Math.PI),
        };

    private static string Word(Purpose purpose) => purpose switch
    {
        Purpose.Travel => "travel",
        Purpose.Descend => "descend",
        Purpose.Ramp => "ramp",
        Purpose.LeadIn => "lead-in",
        Purpose.Rough => "rough",
        Purpose.Finish => "finish",
        Purpose.Engrave => "engrave",
        Purpose.OverTab => "over-tab",
        Purpose.LeadOut => "lead-out",
        _ => "retract",
    };
}
