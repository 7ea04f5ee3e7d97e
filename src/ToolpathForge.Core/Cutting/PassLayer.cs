using System.Collections.Immutable;
using System.Globalization;
using ToolpathForge.Drawings;

namespace ToolpathForge.Cutting;

/// <summary>A move with where it begins.</summary>
/// <param name="From">Where it begins.</param>
/// <param name="To">Where it ends.</param>
/// <param name="Bulge">Shape seen from above, tan(sweep/4); 0 for a straight one.</param>
public readonly record struct PathPart(Point3 From, Point3 To, double Bulge);

/// <summary>What one pass does, to be drawn on a layer of its own.</summary>
/// <param name="Name">Letters, digits and hyphens; unique in its plan.</param>
/// <param name="Role">What its lines mean.</param>
/// <param name="Parts">Its moves, in order.</param>
public sealed record PassLayer(string Name, LineRole Role, ImmutableArray<PathPart> Parts)
{
    /// <summary>
    /// The passes of a plan. Level ones are numbered from the top down, one number for each height; what climbs or sinks has layers of its own: <c>travel</c> above the
    /// work and up from it, <c>descend</c>, <c>ramp</c>, <c>over-tab</c>. Where several bits are used, each has its own layers, <c>bit-1-</c> before their names.
    /// The way of each bit to where it begins is left out, up and across: nobody knows where it stands.
    /// </summary>
    /// <param name="plan">The plan.</param>
    public static ImmutableArray<PassLayer> Of(CutPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return [.. plan.Works.SelectMany((work, i) => Of(work.Path, plan.Works.Length == 1 ? "" : string.Create(CultureInfo.InvariantCulture, $"bit-{i + 1}-")))];
    }

    private static IEnumerable<PassLayer> Of(Toolpath path, string prefix)
    {
        var parts = new List<(string Kind, LineRole Role, double? Level, PathPart Part)>();
        Point3? at = null;
        foreach (Move move in path.Moves)
        {
            if (at is { } from)
            {
                (string kind, LineRole role, bool numbered) = KindOf(move, from, path);
                parts.Add((kind, role, numbered ? Math.Round(move.End.Z, 6) : null, new PathPart(from, move.End, move.Bulge)));
            }

            at = at is null && move.Purpose != Purpose.Travel ? null : move.End;
        }

        foreach (var kind in parts.GroupBy(p => (p.Kind, p.Role)))
        {
            double[] levels = [.. kind.Where(p => p.Level is not null).Select(p => p.Level!.Value).Distinct().OrderDescending()];
            foreach (var layer in kind.GroupBy(p => p.Level).OrderByDescending(g => g.Key))
            {
                string number = layer.Key is { } level ? string.Create(CultureInfo.InvariantCulture, $"-{Array.IndexOf(levels, level) + 1}") : "";
                yield return new PassLayer(prefix + kind.Key.Kind + number, kind.Key.Role, [.. layer.Select(p => p.Part)]);
            }
        }
    }

    private static (string Kind, LineRole Role, bool Numbered) KindOf(Move move, Point3 from, Toolpath path) => move.Purpose switch
    {
        Purpose.Travel or Purpose.Retract => ("travel", LineRole.RapidPath, false),
        Purpose.Descend => ("descend", LineRole.RapidPath, false),
        Purpose.Engrave => ("engrave", LineRole.Engraving, false),
        Purpose.OverTab => ("over-tab", LineRole.RampPath, false),
        Purpose.Ramp => ("ramp", LineRole.RampPath, false),
        _ when from.Z != move.End.Z => ("ramp", LineRole.RampPath, false),
        Purpose.LeadIn or Purpose.LeadOut => ("lead", LineRole.RampPath, false),
        _ when move.Run >= 0 && path.Runs[move.Run].Kind == RunKind.Opening => ("opening", LineRole.CutPath, true),
        Purpose.Rough => ("rough", LineRole.CutPath, true),
        _ => ("finish", LineRole.CutPath, true),
    };
}
