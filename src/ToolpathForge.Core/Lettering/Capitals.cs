namespace ToolpathForge.Lettering;

/// <summary>A to Z: characters, pen strokes (see <see cref="PenNotation"/>), form of the left and right side.</summary>
internal static class Capitals
{
    internal static readonly (string Characters, string Pen, string Air)[] Table =
    [
        ("A", "0 0 L 37 100 L 74 0 | 12.58 34 L 61.42 34", "vv"),
        ("B", "0 0 L 0 100 L 27 100 @ e C 50 77 s C 27 54 w L 0 54 | 27 54 @ e C 56 27 s C 29 0 w L 0 0", "no"),
        ("C", "74 80 @ 126 C 42 100 w C 0 50 s C 42 0 e C 74 20 54", "ov"),
        ("D", "0 0 L 0 100 L 27 100 @ e C 72 50 s C 27 0 w Z", "no"),
        ("E", "50 100 L 0 100 L 0 0 L 50 0 | 0 53 L 42 53", "nv"),
        ("F", "50 100 L 0 100 L 0 0 | 0 52 L 41 52", "nv"),
        ("G", "74 80 @ 126 C 42 100 w C 0 50 s C 42 0 e C 76 27 n L 76 47 L 48 47", "on"),
        ("H", "0 0 L 0 100 | 67 0 L 67 100 | 0 52 L 67 52", "nn"),
        ("I", "0 0 L 0 100", "nn"),
        ("J", "38 100 L 38 25 @ s C 18 0 w C 0 15 112", "vn"),
        ("K", "0 0 L 0 100 | 56 100 L 0 38 | 20 60.1 L 60 0", "nv"),
        ("L", "0 100 L 0 0 L 48 0", "nv"),
        ("M", "0 0 L 0 100 L 41 30 L 82 100 L 82 0", "nn"),
        ("N", "0 0 L 0 100 L 67 0 L 67 100", "nn"),
        ("O", "43 100 @ w C 0 50 s C 43 0 e C 86 50 n C 43 100 w Z", "oo"),
        ("P", "0 0 L 0 100 L 28 100 @ e C 54 73 s C 28 46 w L 0 46", "no"),
        ("Q", "43 100 @ w C 0 50 s C 43 0 e C 86 50 n C 43 100 w Z | 54 25 L 84 -8", "oo"),
        ("R", "0 0 L 0 100 L 28 100 @ e C 54 73 s C 28 46 w L 0 46 | 30 46 L 58 0", "nv"),
        ("S", "56 83 @ 125 C 31 100 w C 4 75 s C 31 52 -17 C 60 26 s C 30 0 w C 0 18 122", "oo"),
        ("T", "0 100 L 62 100 | 31 100 L 31 0", "vv"),
        ("U", "0 100 L 0 35 @ s C 33 0 e C 66 35 n L 66 100", "nn"),
        ("V", "0 100 L 36 0 L 72 100", "vv"),
        ("W", "0 100 L 26 0 L 50 86 L 74 0 L 100 100", "vv"),
        ("X", "0 0 L 62 100 | 2 100 L 64 0", "vv"),
        ("Y", "0 100 L 32 47 L 64 100 | 32 47 L 32 0", "vv"),
        ("Z", "2 100 L 58 100 L 0 0 L 60 0", "vv"),
    ];
}
