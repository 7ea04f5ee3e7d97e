using System.Collections.Immutable;
using ToolpathForge.Catalogue;
using ToolpathForge.Jobs;
using ToolpathForge.Pieces;

namespace ToolpathForge.Planning;

/// <summary>
/// Which makes share panels, where the job wants that: those that come from the same panel, as thick and as flat, cut with the same bit and the same
/// numbers but for tabs and lead, and engraved with the same bit to the same depth, if at all.
/// </summary>
internal static class PanelGroups
{
    /// <summary>The pieces in groups, each in the job's order, the groups by their first piece; a group of one has its own clamping as ever.</summary>
    internal static IEnumerable<ImmutableArray<Piece>> Of(Job job, ImmutableArray<Piece> pieces)
    {
        if (!job.Panels.Together)
        {
            // What one drawing holds shares panels anyway.
            return pieces.GroupBy(p => (p.Make as OutlineMake)?.Block ?? p.Make.Id, StringComparer.Ordinal).Select(g => g.ToImmutableArray());
        }

        // What is not marked goes with whatever marks the others first have.
        var engraved = pieces.Where(p => p.Make.Marks is not null).GroupBy(p => Cutting.Of(p.Make)).ToDictionary(g => g.Key, g => Engraving.Of(g.First().Make));
        return pieces
            .GroupBy(p => (Alone: p.Make.Sheet is null ? p.Make.Id : null, Cutting.Of(p.Make), Engraving.Of(p.Make) ?? engraved.GetValueOrDefault(Cutting.Of(p.Make))))
            .Select(g => g.ToImmutableArray());
    }

    private sealed record Cutting(Panel? Panel, double? Flatness, double Thickness, Bit Bit, double Left, CutChoices Choices)
    {
        internal static Cutting Of(Make make) => new(
            make.Sheet?.Panel,
            make.Sheet?.Flatness,
            make.Thickness,
            make.Bit,
            make.LeftBelow,
            make.Cut with { Tabs = null, TabSpacing = null, TabPlaces = [], Lead = null });
    }

    private sealed record Engraving(Bit Bit, double Depth)
    {
        internal static Engraving? Of(Make make) => make.Marks is { } marks ? new(marks.Bit, marks.Depth) : null;
    }
}
