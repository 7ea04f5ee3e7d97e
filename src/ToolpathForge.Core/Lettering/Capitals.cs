namespace ToolpathForge.Lettering;

/// <summary>A to Z: characters, pen strokes (see <see cref="PenNotation"/>), form of the left and right side.</summary>
internal static class Capitals
{
    internal static readonly (string Characters, string Pen, string Air)[] Table =
    [
        ("A", "0 0 L 35 100 L 70 0 | 11.9 34 L 58.1 34", "vv"),
        ("B", "0 0 L 0 100 L 27 100 @ e C 50 77 s C 27 54 w L 0 54 | 27 54 @ e C 56 27 s C 29 0 w L 0 0", "no"),
        ("C", "68 79 @ 123 C 38 100 w C 0 50 s C 38 0 e C 68 21 57", "ov"),
        ("D", "0 0 L 0 100 L 24 100 @ e C 67 50 s C 24 0 w Z", "no"),
        ("E", "50 100 L 0 100 L 0 0 L 50 0 | 0 53 L 42 53", "nv"),
        ("F", "50 100 L 0 100 L 0 0 | 0 52 L 41 52", "nv"),
        ("G", "68 79 @ 123 C 38 100 w C 0 50 s C 38 0 e C 70 25 n L 70 46 L 44 46", "on"),
        ("H", "0 0 L 0 100 | 64 0 L 64 100 | 0 52 L 64 52", "nn"),
        ("I", "0 0 L 0 100", "nn"),
        ("J", "38 100 L 38 25 @ s C 18 0 w C 0 15 112", "vn"),
        ("K", "0 0 L 0 100 | 56 100 L 0 38 | 20 60.1 L 60 0", "nv"),
        ("L", "0 100 L 0 0 L 48 0", "nv"),
        ("M", "0 0 L 0 100 L 39 28 L 78 100 L 78 0", "nn"),
        ("N", "0 0 L 0 100 L 64 0 L 64 100", "nn"),
        ("O", "39 100 @ w C 0 50 s C 39 0 e C 78 50 n C 39 100 w Z", "oo"),
        ("P", "0 0 L 0 100 L 28 100 @ e C 54 73 s C 28 46 w L 0 46", "no"),
        ("Q", "39 100 @ w C 0 50 s C 39 0 e C 78 50 n C 39 100 w Z | 48 24 L 78 -9", "oo"),
        ("R", "0 0 L 0 100 L 28 100 @ e C 54 73 s C 28 46 w L 0 46 | 30 46 L 58 0", "nv"),
        ("S", "54 82 @ 122 C 30 100 w C 4 75 s C 30 52 -18 C 58 26 s C 29 0 w C 0 19 118", "oo"),
        ("T", "0 100 L 62 100 | 31 100 L 31 0", "vv"),
        ("U", "0 100 L 0 34 @ s C 31 0 e C 62 34 n L 62 100", "nn"),
        ("V", "0 100 L 34 0 L 68 100", "vv"),
        ("W", "0 100 L 26 0 L 50 86 L 74 0 L 100 100", "vv"),
        ("X", "0 0 L 62 100 | 2 100 L 64 0", "vv"),
        ("Y", "0 100 L 32 47 L 64 100 | 32 47 L 32 0", "vv"),
        ("Z", "2 100 L 58 100 L 0 0 L 60 0", "vv"),
    ];
}
