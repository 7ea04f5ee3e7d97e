namespace ToolpathForge.Proof;

/// <summary>
/// How the machine's axes differ from what a program says, as measured on a trial piece: a commanded (x, y) comes to lie at
/// (ScaleX·x + ScaleY·y·sin Skew, ScaleY·y·cos Skew). Everything else of a target is in true lengths.
/// </summary>
/// <param name="ScaleX">True length for a commanded one along X, 0.9 to 1.1.</param>
/// <param name="ScaleY">True length for a commanded one along Y, 0.9 to 1.1.</param>
/// <param name="Skew">How far the Y axis leans towards plus X, radians, at most 0.1.</param>
public sealed record TargetAxes(double ScaleX, double ScaleY, double Skew);
