using System.Collections.Immutable;

namespace ToolpathForge.Proof;

/// <summary>How a motion goes.</summary>
public enum MotionKind
{
    /// <summary>G0: in a straight line, as fast as the machine can. Nothing is cut on purpose.</summary>
    Rapid,

    /// <summary>G1: in a straight line at the feed.</summary>
    Line,

    /// <summary>G2 or G3: along an arc in the XY plane at the feed; Z moves evenly with the angle.</summary>
    Arc,
}

/// <summary>One thing a program does, in order.</summary>
/// <param name="Line">Line of the text, the first being 1.</param>
public abstract record ProgramStep(int Line);

/// <summary>One motion of the tip, in mm, in the frame of the program.</summary>
/// <param name="Line">Line of the text, the first being 1.</param>
/// <param name="Kind">How it goes.</param>
/// <param name="Start">Where it starts; an axis that the program has not placed yet is NaN (only ever in a rapid).</param>
/// <param name="End">Where it ends; an axis that the program has not placed yet is NaN (only ever in a rapid).</param>
/// <param name="Feed">mm/min along the path; 0 for a rapid.</param>
public sealed record Motion(int Line, MotionKind Kind, SpacePoint Start, SpacePoint End, double Feed) : ProgramStep(Line)
{
    /// <summary>Centre of an arc; no meaning otherwise.</summary>
    public PlanePoint Center { get; init; }

    /// <summary>
    /// Radius of an arc, mm: the mean of the radius at its start and at its end, which the text lets differ a little; 0 otherwise.
    /// </summary>
    public double Radius { get; init; }

    /// <summary>Half the difference between an arc's radius at its start and at its end, mm. However a machine settles the difference, it stays this near to the mean circle.</summary>
    public double RadiusError { get; init; }

    /// <summary>Signed angle of an arc, radians, positive counter-clockwise, at most a full turn; 0 otherwise.</summary>
    public double Sweep { get; init; }

    /// <summary>Length of the path, mm; of a rapid with unknown axes, of the known ones.</summary>
    public double Length
    {
        get
        {
            double dz = Known(End.Z - Start.Z), across = PlaneLength;
            return Math.Sqrt((across * across) + (dz * dz));
        }
    }

    /// <summary>Length as seen from above, mm.</summary>
    internal double PlaneLength =>
        Kind == MotionKind.Arc ? Radius * Math.Abs(Sweep) : new PlanePoint(Known(End.X - Start.X), Known(End.Y - Start.Y)).Length;

    /// <summary>The share of the feed that points down, mm/min; 0 if none does.</summary>
    internal double DownwardFeed => Start.Z > End.Z ? Feed * (Start.Z - End.Z) / Length : 0;

    internal bool IsFeed => Kind != MotionKind.Rapid;

    /// <summary>Whether it goes nowhere in X and Y.</summary>
    internal bool IsVertical => Kind != MotionKind.Arc && Start.X == End.X && Start.Y == End.Y;

    private static double Known(double d) => double.IsNaN(d) ? 0 : d;
}

/// <summary>G4: the machine waits.</summary>
/// <param name="Line">Line of the text, the first being 1.</param>
/// <param name="Seconds">0 or more.</param>
public sealed record Dwell(int Line, double Seconds) : ProgramStep(Line);

/// <summary>M0 or M1: the machine waits for a person.</summary>
/// <param name="Line">Line of the text, the first being 1.</param>
/// <param name="IsOptional">M1, which a switch can turn off.</param>
/// <param name="SelectedTool">Number of the latest T word; null before any.</param>
public sealed record Pause(int Line, bool IsOptional, int? SelectedTool) : ProgramStep(Line);

/// <summary>M6: the selected bit goes into the spindle, which stops for it.</summary>
/// <param name="Line">Line of the text, the first being 1.</param>
/// <param name="Tool">Number of the latest T word; 0 before any.</param>
public sealed record ToolChange(int Line, int Tool) : ProgramStep(Line);

/// <summary>The spindle starts, stops or changes its speed.</summary>
/// <param name="Line">Line of the text, the first being 1.</param>
/// <param name="IsRunning">Whether it turns from here on, clockwise seen from above.</param>
/// <param name="Speed">Revolutions a minute that S has set; 0 before any S word.</param>
public sealed record SpindleChange(int Line, bool IsRunning, double Speed) : ProgramStep(Line);

/// <summary>M2 or M30: the program ends.</summary>
/// <param name="Line">Line of the text, the first being 1.</param>
public sealed record ProgramEnd(int Line) : ProgramStep(Line);

/// <summary>Why a text cannot be read.</summary>
/// <param name="Code">What is wrong.</param>
/// <param name="Line">Line of the text, the first being 1.</param>
/// <param name="Words">The offending part of the text.</param>
/// <param name="Found">What was measured, in the code's unit.</param>
/// <param name="Allowed">What it is held against.</param>
public sealed record Refusal(FaultCode Code, int Line, string Words, double? Found = null, double? Allowed = null);

/// <summary>A program text read back.</summary>
public sealed record GcodeProgram
{
    /// <summary>What it does, in order, up to its end or to the line that could not be read.</summary>
    public required ImmutableArray<ProgramStep> Steps { get; init; }

    /// <summary>Why reading stopped; null if the whole text was read.</summary>
    public required Refusal? Refusal { get; init; }

    /// <summary>Lines of text.</summary>
    public required int Lines { get; init; }

    /// <summary>Modes the program depended on before it had stated them, each with the first such line, in the order of the lines.</summary>
    public required ImmutableArray<(StatedModes Mode, int Line)> Unstated { get; init; }

    /// <summary>Lines that begin with a block delete character and hold more than comments; they are read as if the switch were off, that is, they run.</summary>
    public required ImmutableArray<int> DeletableLines { get; init; }
}
