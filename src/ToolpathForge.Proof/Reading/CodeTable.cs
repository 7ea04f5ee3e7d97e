using System.Collections.Frozen;

namespace ToolpathForge.Proof;

/// <summary>Modal groups: at most one code of a group may stand on a line (NISTIR 6556, table 4).</summary>
internal enum CodeGroup
{
    Motion,
    Plane,
    Distance,
    FeedMode,
    Unit,
    CutterRadius,
    ToolLength,
    ReturnMode,
    WorkOffset,
    PathMode,
    NonModal,
    Stop,
    Change,
    Spindle,
    Coolant,
    Override,
}

/// <summary>Which G and M codes there are, to which group each belongs, and which of them this reader takes.</summary>
internal static class CodeTable
{
    /// <summary>G codes by ten times their number.</summary>
    private static readonly FrozenDictionary<int, (CodeGroup Group, bool IsRead)> G = new Dictionary<int, (CodeGroup, bool)>
    {
        [0] = (CodeGroup.Motion, true),
        [10] = (CodeGroup.Motion, true),
        [20] = (CodeGroup.Motion, true),
        [30] = (CodeGroup.Motion, true),
        [382] = (CodeGroup.Motion, false),
        [800] = (CodeGroup.Motion, true),
        [810] = (CodeGroup.Motion, false),
        [820] = (CodeGroup.Motion, false),
        [830] = (CodeGroup.Motion, false),
        [840] = (CodeGroup.Motion, false),
        [850] = (CodeGroup.Motion, false),
        [860] = (CodeGroup.Motion, false),
        [870] = (CodeGroup.Motion, false),
        [880] = (CodeGroup.Motion, false),
        [890] = (CodeGroup.Motion, false),
        [170] = (CodeGroup.Plane, true),
        [180] = (CodeGroup.Plane, true),
        [190] = (CodeGroup.Plane, true),
        [900] = (CodeGroup.Distance, true),
        [910] = (CodeGroup.Distance, true),
        [930] = (CodeGroup.FeedMode, false),
        [940] = (CodeGroup.FeedMode, true),
        [200] = (CodeGroup.Unit, true),
        [210] = (CodeGroup.Unit, true),
        [700] = (CodeGroup.Unit, true),
        [710] = (CodeGroup.Unit, true),
        [400] = (CodeGroup.CutterRadius, true),
        [410] = (CodeGroup.CutterRadius, false),
        [420] = (CodeGroup.CutterRadius, false),
        [430] = (CodeGroup.ToolLength, false),
        [490] = (CodeGroup.ToolLength, true),
        [980] = (CodeGroup.ReturnMode, false),
        [990] = (CodeGroup.ReturnMode, false),
        [540] = (CodeGroup.WorkOffset, true),
        [550] = (CodeGroup.WorkOffset, true),
        [560] = (CodeGroup.WorkOffset, true),
        [570] = (CodeGroup.WorkOffset, true),
        [580] = (CodeGroup.WorkOffset, true),
        [590] = (CodeGroup.WorkOffset, true),
        [591] = (CodeGroup.WorkOffset, false),
        [592] = (CodeGroup.WorkOffset, false),
        [593] = (CodeGroup.WorkOffset, false),
        [610] = (CodeGroup.PathMode, true),
        [611] = (CodeGroup.PathMode, true),
        [640] = (CodeGroup.PathMode, true),
        [40] = (CodeGroup.NonModal, true),
        [100] = (CodeGroup.NonModal, false),
        [280] = (CodeGroup.NonModal, false),
        [300] = (CodeGroup.NonModal, false),
        [530] = (CodeGroup.NonModal, false),
        [920] = (CodeGroup.NonModal, false),
        [921] = (CodeGroup.NonModal, false),
        [922] = (CodeGroup.NonModal, false),
        [923] = (CodeGroup.NonModal, false),
    }.ToFrozenDictionary();

    private static readonly FrozenDictionary<int, (CodeGroup Group, bool IsRead)> M = new Dictionary<int, (CodeGroup, bool)>
    {
        [0] = (CodeGroup.Stop, true),
        [1] = (CodeGroup.Stop, true),
        [2] = (CodeGroup.Stop, true),
        [30] = (CodeGroup.Stop, true),
        [60] = (CodeGroup.Stop, false),
        [6] = (CodeGroup.Change, true),
        [3] = (CodeGroup.Spindle, true),
        [4] = (CodeGroup.Spindle, false),
        [5] = (CodeGroup.Spindle, true),
        [7] = (CodeGroup.Coolant, true),
        [8] = (CodeGroup.Coolant, true),
        [9] = (CodeGroup.Coolant, true),
        [48] = (CodeGroup.Override, false),
        [49] = (CodeGroup.Override, false),
    }.ToFrozenDictionary();

    /// <summary>Looks a word up.</summary>
    /// <param name="word">A G or M word.</param>
    /// <param name="code">Ten times the number for G, the number for M.</param>
    /// <param name="group">Its modal group.</param>
    /// <returns>What is wrong with it, or null.</returns>
    internal static FaultCode? Find(Word word, out int code, out CodeGroup group)
    {
        group = default;
        double scaled = word.Letter == 'g' ? word.Value * 10 : word.Value;
        code = (int)Math.Round(scaled);
        if (Math.Abs(scaled - code) > ProofAccuracy.WholeNumber)
        {
            return FaultCodes.ValueNotWhole;
        }

        if (!(word.Letter == 'g' ? G : M).TryGetValue(code, out (CodeGroup Group, bool IsRead) entry))
        {
            return FaultCodes.CodeUnknown;
        }

        group = entry.Group;
        return entry.IsRead ? null : FaultCodes.CodeRefused;
    }
}
