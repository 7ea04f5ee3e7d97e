namespace ToolpathForge.Lettering;

/// <summary>0 to 9: characters, pen strokes (see <see cref="PenNotation"/>), form of the left and right side. The nought is narrower than the letter O.</summary>
internal static class Figures
{
    internal static readonly (string Characters, string Pen, string Air)[] Table =
    [
        ("0", "28 100 @ w C 0 50 s C 28 0 e C 56 50 n C 28 100 w Z", "oo"),
        ("1", "0 79 L 20 100 L 20 0", "on"),
        ("2", "2 77 @ 78 C 28 100 e C 54 72 s C 43 45 -131 L 0 0 L 56 0", "oo"),
        ("3", "3 83 @ 55 C 27 100 e C 51 77 s C 25 54 w @ e C 56 28 s C 27 0 w C 0 18 118", "oo"),
        ("4", "43 0 L 43 100 L 0 28 L 58 28", "oo"),
        ("5", "50 100 L 9 100 L 5 54 @ 42 C 28 64 e C 56 32 s C 27 0 w C 0 17 118", "oo"),
        ("6", "45 100 @ 218 C 0 32 s C 28 0 e C 56 31 n C 28 61 w C 0 32 s", "oo"),
        ("7", "0 100 L 56 100 L 20 0", "ov"),
        ("8", "28 54 @ w C 4 77 n C 28 100 e C 52 77 s C 28 54 w Z | 28 54 @ w C 0 27 s C 28 0 e C 56 27 n C 28 54 w Z", "oo"),
        ("9", "11 0 @ 38 C 56 68 n C 28 100 w C 0 69 s C 28 39 e C 56 68 n", "oo"),
    ];
}
