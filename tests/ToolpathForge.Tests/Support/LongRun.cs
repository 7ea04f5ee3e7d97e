namespace ToolpathForge.Tests.Support;

/// <summary>How much fuzzing to do: little in the normal run, much when TOOLPATHFORGE_LONG=1.</summary>
internal static class LongRun
{
    public static bool IsOn { get; } = Environment.GetEnvironmentVariable("TOOLPATHFORGE_LONG") == "1";

    public static int Iterations(int normally, int when) => IsOn ? when : normally;
}
