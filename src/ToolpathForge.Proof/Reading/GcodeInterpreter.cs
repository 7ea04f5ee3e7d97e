using System.Globalization;

namespace ToolpathForge.Proof;

/// <summary>
/// Runs the words of one line after another, in the standard's order of execution (NISTIR 6556, table 8), and writes down what the machine would do.
/// What is not known, or whose effect the text does not settle, is refused.
/// </summary>
internal sealed class GcodeInterpreter(bool acceptsIsoUnits)
{
    private const double MillimetresPerInch = 25.4;

    private readonly Dictionary<char, double> values = [];
    private readonly Dictionary<CodeGroup, int> codes = [];
    private StatedModes stated;
    private bool hasReadLength;
    private bool isInch;
    private bool isIncremental;
    private bool isPlaneXY = true;
    private int? motionMode;
    private int? workOffset;
    private double feed;
    private int? selectedTool;
    private bool isRunning;
    private double speed;
    private SpacePoint position = new(double.NaN, double.NaN, double.NaN);
    private int line;
    private Refusal? refusal;

    internal List<ProgramStep> Steps { get; } = [];

    internal List<(StatedModes Mode, int Line)> Unstated { get; } = [];

    internal bool HasEnded { get; private set; }

    private double Unit => isInch ? MillimetresPerInch : 1;

    /// <summary>Runs one line.</summary>
    /// <param name="words">Its words, in any order.</param>
    /// <param name="number">Its number in the text.</param>
    /// <returns>Why it is refused, or null.</returns>
    internal Refusal? Run(List<Word> words, int number)
    {
        line = number;
        refusal = null;
        if (!TrySort(words) || !TryCheckUse())
        {
            return refusal;
        }

        SetFeed();
        SetSpindleAndTool();
        Dwell();
        SetModes();
        if (refusal is null && (HasAxes || codes.ContainsKey(CodeGroup.Motion)))
        {
            Move();
        }

        if (refusal is null)
        {
            Stop();
        }

        return refusal;
    }

    private bool HasAxes => values.ContainsKey('x') || values.ContainsKey('y') || values.ContainsKey('z');

    private bool Refuse(FaultCode code, string words)
    {
        refusal ??= new Refusal(code, line, words);
        return false;
    }

    private static string Text(char letter, double value) =>
        char.ToUpperInvariant(letter) + value.ToString("0.######", CultureInfo.InvariantCulture);

    private string Text(params ReadOnlySpan<char> letters)
    {
        var parts = new List<string>();
        foreach (char letter in letters)
        {
            if (values.TryGetValue(letter, out double value))
            {
                parts.Add(Text(letter, value));
            }
        }

        return string.Join(' ', parts);
    }

    /// <summary>Sorts words into codes by group and values by letter.</summary>
    private bool TrySort(List<Word> words)
    {
        values.Clear();
        codes.Clear();
        int stops = 0;
        foreach (Word word in words)
        {
            if (word.Letter is not ('g' or 'm'))
            {
                values.Add(word.Letter, word.Value);
                continue;
            }

            if (word.Letter == 'm' && ++stops > 4)
            {
                return Refuse(FaultCodes.TooManyStops, Text('m', word.Value));
            }

            FaultCode? wrong = CodeTable.Find(word, out int code, out CodeGroup group);
            if (wrong is null && code is 700 or 710 && group == CodeGroup.Unit && !acceptsIsoUnits)
            {
                wrong = FaultCodes.CodeRefused;
            }

            if (wrong is not null)
            {
                return Refuse(wrong, Text(word.Letter, word.Value));
            }

            if (!codes.TryAdd(group, code))
            {
                return Refuse(FaultCodes.GroupRepeated, Text(word.Letter, word.Value));
            }
        }

        return true;
    }

    /// <summary>Whether every word has something on its line that uses it, and no value is out of its range.</summary>
    private bool TryCheckUse()
    {
        int? motion = codes.TryGetValue(CodeGroup.Motion, out int explicitMotion) ? explicitMotion : HasAxes ? motionMode : null;
        bool isArc = motion is 20 or 30;
        bool isDwell = codes.GetValueOrDefault(CodeGroup.NonModal, -1) == 40;
        foreach ((char letter, double value) in values.OrderBy(v => v.Key))
        {
            bool isUsed = letter switch
            {
                'x' or 'y' or 'z' or 'f' or 's' or 't' => true,
                'i' or 'j' or 'r' => isArc,
                'p' => isDwell,
                _ => false,
            };
            if (!isUsed)
            {
                return Refuse(FaultCodes.WordUnused, Text(letter, value));
            }

            if (value < 0 && letter is 'f' or 's' or 't' or 'p')
            {
                return Refuse(FaultCodes.ValueNegative, Text(letter, value));
            }

            if (letter == 't' && Math.Abs(value - Math.Round(value)) > ProofAccuracy.WholeNumber)
            {
                return Refuse(FaultCodes.ValueNotWhole, Text(letter, value));
            }
        }

        return !isDwell || values.ContainsKey('p') || Refuse(FaultCodes.WordMissing, "G4");
    }

    private void Need(StatedModes mode)
    {
        if ((stated & mode) == StatedModes.None)
        {
            stated |= mode;
            Unstated.Add((mode, line));
        }
    }

    private void SetFeed()
    {
        if (codes.ContainsKey(CodeGroup.FeedMode))
        {
            stated |= StatedModes.Feed;
        }

        if (!values.TryGetValue('f', out double value))
        {
            return;
        }

        // F acts before the unit does: with both on a line its meaning depends on what was in force before.
        if (codes.TryGetValue(CodeGroup.Unit, out int unit) && (!stated.HasFlag(StatedModes.Unit) || unit is 200 or 700 != isInch))
        {
            Refuse(FaultCodes.UnitChanged, Text('f'));
        }

        Need(StatedModes.Unit);
        Need(StatedModes.Feed);
        hasReadLength = true;
        feed = value * Unit;
    }

    private void SetSpindleAndTool()
    {
        bool hasChanged = false;
        if (values.TryGetValue('s', out double s))
        {
            speed = s;
            hasChanged = true;
        }

        if (values.TryGetValue('t', out double t))
        {
            selectedTool = (int)Math.Round(t);
        }

        if (codes.ContainsKey(CodeGroup.Change))
        {
            Steps.Add(new ToolChange(line, selectedTool ?? 0));
            isRunning = false;
        }

        if (codes.TryGetValue(CodeGroup.Spindle, out int spindle))
        {
            isRunning = spindle == 3;
            hasChanged = true;
        }

        if (hasChanged)
        {
            Steps.Add(new SpindleChange(line, isRunning, speed));
        }
    }

    private void Dwell()
    {
        if (codes.GetValueOrDefault(CodeGroup.NonModal, -1) == 40)
        {
            Steps.Add(new Dwell(line, values['p']));
        }
    }

    private void SetModes()
    {
        if (codes.TryGetValue(CodeGroup.Plane, out int plane))
        {
            isPlaneXY = plane == 170;
            stated |= StatedModes.Plane;
        }

        if (codes.TryGetValue(CodeGroup.Unit, out int unit))
        {
            bool toInch = unit is 200 or 700;
            if (toInch != isInch && hasReadLength)
            {
                Refuse(FaultCodes.UnitChanged, Text('g', unit / 10.0));
            }

            isInch = toInch;
            stated |= StatedModes.Unit;
        }

        if (codes.TryGetValue(CodeGroup.WorkOffset, out int offset))
        {
            if (workOffset is { } before && before != offset)
            {
                Refuse(FaultCodes.WorkOffsetChanged, Text('g', offset / 10.0));
            }

            workOffset = offset;
        }

        if (codes.TryGetValue(CodeGroup.Distance, out int distance))
        {
            isIncremental = distance == 910;
            stated |= StatedModes.Distance;
        }
    }

    private void Move()
    {
        if (codes.TryGetValue(CodeGroup.Motion, out int mode))
        {
            motionMode = mode;
        }

        if (motionMode is null or 800)
        {
            if (HasAxes)
            {
                Refuse(FaultCodes.AxesWithoutMotion, Text('x', 'y', 'z'));
            }

            return;
        }

        if (!HasAxes)
        {
            Refuse(FaultCodes.AxesMissing, Text('g', motionMode.Value / 10.0));
            return;
        }

        Need(StatedModes.Unit);
        Need(StatedModes.Distance);
        hasReadLength = true;
        var end = new SpacePoint(Axis('x', position.X), Axis('y', position.Y), Axis('z', position.Z));
        if (motionMode == 0)
        {
            Add(new Motion(line, MotionKind.Rapid, position, end, 0));
        }
        else if (!position.IsKnown)
        {
            Refuse(FaultCodes.PositionUnknown, Text('x', 'y', 'z'));
        }
        else if (feed <= 0)
        {
            Refuse(FaultCodes.FeedMissing, Text('x', 'y', 'z'));
        }
        else if (motionMode == 10)
        {
            Add(new Motion(line, MotionKind.Line, position, end, feed));
        }
        else
        {
            Add(Arc(new Motion(line, MotionKind.Arc, position, end, feed), motionMode == 20));
        }
    }

    private Motion? Arc(Motion motion, bool isClockwise)
    {
        Need(StatedModes.Plane);
        string words = Text('x', 'y', 'z', 'i', 'j', 'r');
        bool hasCenter = values.ContainsKey('i') || values.ContainsKey('j');
        bool hasRadius = values.TryGetValue('r', out double radius);
        FaultCode? wrong = !isPlaneXY ? FaultCodes.PlaneNotRead
            : !values.ContainsKey('x') && !values.ContainsKey('y') ? FaultCodes.ArcEndMissing
            : hasCenter && hasRadius ? FaultCodes.ArcFormsMixed
            : !hasCenter && !hasRadius ? FaultCodes.ArcCenterMissing
            : null;
        if (wrong is not null)
        {
            Refuse(wrong, words);
            return null;
        }

        double mismatch = isInch ? ProofAccuracy.ArcMismatchInches * MillimetresPerInch : ProofAccuracy.ArcMismatchMillimetres;
        var offset = new PlanePoint(values.GetValueOrDefault('i') * Unit, values.GetValueOrDefault('j') * Unit);
        Motion? arc = hasRadius
            ? ArcReader.ByRadius(motion, radius * Unit, isClockwise, mismatch, words, out Refusal? wrongArc)
            : ArcReader.ByCenter(motion, offset, isClockwise, mismatch, words, out wrongArc);
        refusal ??= wrongArc;
        return arc;
    }

    private double Axis(char letter, double now)
    {
        if (!values.TryGetValue(letter, out double value))
        {
            return now;
        }

        if (!isIncremental)
        {
            return value * Unit;
        }

        if (double.IsNaN(now))
        {
            Refuse(FaultCodes.PositionUnknown, Text(letter));
        }

        return now + (value * Unit);
    }

    private void Add(Motion? motion)
    {
        if (refusal is null && motion is not null)
        {
            Steps.Add(motion);
            position = motion.End;
        }
    }

    private void Stop()
    {
        switch (codes.GetValueOrDefault(CodeGroup.Stop, -1))
        {
            case 0 or 1:
                Steps.Add(new Pause(line, codes[CodeGroup.Stop] == 1, selectedTool));
                break;
            case 2 or 30:
                Steps.Add(new ProgramEnd(line));
                HasEnded = true;
                break;
        }
    }
}
