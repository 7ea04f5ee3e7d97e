using System.Text;

namespace ToolpathForge.Lettering;

/// <summary>The few pairs whose shapes open a hole between them. Everything else is left to the air beside each letter.</summary>
internal static class Kerning
{
    private static readonly (string Left, string Right, double Shift)[] s_pairs =
    [
        ("A", "TVWY", -0.13),
        ("TVWY", "A", -0.13),
        ("AL", "'\"’”°", -0.12),
        ("L", "TVWY", -0.16),
        ("FPTVWY", ".,", -0.20),
        ("TVWY", "aceogqs", -0.13),
        ("TVWY", "nmrupvwxyz", -0.08),
        ("F", "Aaoe", -0.08),
        ("P", "A", -0.12),
        ("rvwy", ".,", -0.12),
        ("7", ".,4", -0.14),
        ("f", "aceo", -0.03),
    ];

    /// <summary>What to add between two letters, cap heights; mostly 0.</summary>
    internal static double Between(Rune left, Rune right)
    {
        if (!left.IsBmp || !right.IsBmp)
        {
            return 0;
        }

        foreach ((string l, string r, double shift) in s_pairs)
        {
            if (l.Contains((char)left.Value, StringComparison.Ordinal) && r.Contains((char)right.Value, StringComparison.Ordinal))
            {
                return shift;
            }
        }

        return 0;
    }
}
