namespace ToolpathForge.Lettering;

/// <summary>a to z: characters, pen strokes (see <see cref="PenNotation"/>), form of the left and right side. Small l has a foot so that it is neither I nor 1.</summary>
internal static class SmallLetters
{
    internal static readonly (string Characters, string Pen, string Air)[] Table =
    [
        ("a", "50 48 @ 115 C 25 66 w C 0 33 s C 25 0 e C 50 18 65 | 50 66 L 50 0", "on"),
        ("b", "0 100 L 0 0 | 0 48 @ 65 C 25 66 e C 50 33 s C 25 0 w C 0 18 115", "no"),
        ("c", "45 53 @ 125 C 25 66 w C 0 33 s C 25 0 e C 45 13 55", "ov"),
        ("d", "50 48 @ 115 C 25 66 w C 0 33 s C 25 0 e C 50 18 65 | 50 100 L 50 0", "on"),
        ("e", "0 34 L 50 34 @ n C 25 66 w C 0 33 s C 26 0 e C 47 13 52", "oo"),
        ("f", "37 96 @ 150 C 28 100 w C 12 82 s L 12 0 | 0 66 L 31 66", "vv"),
        ("g", "50 48 @ 115 C 25 66 w C 0 33 s C 25 0 e C 50 18 65 | 50 66 L 50 -5 @ s C 26 -28 w C 5 -18 125", "on"),
        ("h", "0 100 L 0 0 | 0 44 @ 62 C 27 66 e C 48 42 s L 48 0", "nn"),
        ("i", "0 66 L 0 0 | 0 89 L 0 93", "nn"),
        ("j", "14 66 L 14 -10 @ s C 0 -28 w | 14 89 L 14 93", "vn"),
        ("k", "0 100 L 0 0 | 43 66 L 0 25 | 14.7 39 L 47 0", "nv"),
        ("l", "0 100 L 0 15 @ s C 15 0 e", "nv"),
        ("m", "0 66 L 0 0 | 0 46 @ 62 C 23 66 e C 41 44 s L 41 0 | 41 46 @ 62 C 64 66 e C 82 44 s L 82 0", "nn"),
        ("n", "0 66 L 0 0 | 0 44 @ 62 C 27 66 e C 48 42 s L 48 0", "nn"),
        ("o", "26 66 @ w C 0 33 s C 26 0 e C 52 33 n C 26 66 w Z", "oo"),
        ("p", "0 66 L 0 -28 | 0 48 @ 65 C 25 66 e C 50 33 s C 25 0 w C 0 18 115", "no"),
        ("q", "50 48 @ 115 C 25 66 w C 0 33 s C 25 0 e C 50 18 65 | 50 66 L 50 -28", "on"),
        ("r", "0 66 L 0 0 | 0 43 @ 62 C 24 66 e C 32 64 -28", "nv"),
        ("s", "39 54 @ 125 C 22 66 w C 3 50 s C 22 34 -15 C 42 17 s C 21 0 w C 0 12 125", "oo"),
        ("t", "12 92 L 12 17 @ s C 27 0 e C 35 3 25 | 0 66 L 32 66", "vv"),
        ("u", "0 66 L 0 24 @ s C 21 0 e C 48 22 62 | 48 66 L 48 0", "nn"),
        ("v", "0 66 L 24 0 L 48 66", "vv"),
        ("w", "0 66 L 19 0 L 37 58 L 55 0 L 74 66", "vv"),
        ("x", "0 0 L 45 66 | 1 66 L 46 0", "vv"),
        ("y", "0 66 L 24.1 0 | 48 66 L 14 -28", "vv"),
        ("z", "1 66 L 42 66 L 0 0 L 43 0", "vv"),
    ];
}
