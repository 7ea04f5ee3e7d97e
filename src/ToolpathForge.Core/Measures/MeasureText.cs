using ToolpathForge.Findings;

namespace ToolpathForge.Measures;

/// <summary>
/// Reads sizes, angles, feeds and speeds as a person writes them. A bare number is in the unit the caller states; without one it is refused,
/// never guessed. The sign is read as written; whether a negative value makes sense is for the caller to say.
/// </summary>
public static class MeasureText
{
    /// <summary>Largest length that is read, mm: a kilometre. More is a slip of the pen.</summary>
    public const double LargestLength = 1e6;

    private const double LargestRate = 1e7;

    /// <summary>Reads a length: <c>3 1/2</c>, <c>3-1/2"</c>, <c>2' 3-1/2"</c>, <c>89 mm</c>, <c>8.9cm</c>, <c>7 1/2 in + 0.12 mm</c>.</summary>
    /// <param name="text">The text.</param>
    /// <param name="unit">The unit of a bare number; null when none has been stated.</param>
    public static Reading<Length> ReadLength(string text, LengthUnit? unit)
    {
        Reading<Measure> size = ReadSize(text, unit);
        if (!size.IsRead)
        {
            return new Reading<Length>(default, size.Problem, size.At, size.Piece);
        }

        return size.Value.IsShare
            ? Reading<Length>.Refused(MeasureFindings.ShareNotAllowed, text, 0)
            : Reading<Length>.Of(new Length(size.Value.Amount));
    }

    /// <summary>Reads a length or a share of the design width (<c>0.62 w</c>, <c>5/8 w</c>).</summary>
    /// <param name="text">The text.</param>
    /// <param name="unit">The unit of a bare number; null when none has been stated.</param>
    public static Reading<Measure> ReadSize(string text, LengthUnit? unit)
    {
        var scan = new MeasureScanner(text);
        FindingKind? problem = TakeSize(ref scan, unit, out Measure size, out bool stated);
        if (problem is not null)
        {
            return Reading<Measure>.Refused(problem, text, scan.At);
        }

        // What the program itself writes when a length does not fall on a fraction: 7 1/2 in + 0.12 mm.
        scan.SkipSpaces();
        int sign = scan.At;
        if (!scan.AtEnd && !size.IsShare && stated && (scan.Take('+') || scan.TakeDash()))
        {
            bool minus = text[sign] != '+';
            problem = TakeSize(ref scan, null, out Measure rest, out _);
            scan.SkipSpaces();
            if (problem is null && scan.AtEnd && !rest.IsShare && rest.Amount >= 0)
            {
                size = Measure.Fixed(size.Amount + (minus ? -rest.Amount : rest.Amount));
            }
            else
            {
                scan.Back(sign);
            }
        }

        if (!scan.AtEnd)
        {
            return Reading<Measure>.Refused(MeasureFindings.TextLeftOver, text, scan.At);
        }

        return Math.Abs(size.Amount) <= LargestLength
            ? Reading<Measure>.Of(size)
            : Reading<Measure>.Refused(MeasureFindings.ValueAbsurd, text, 0);
    }

    /// <summary>Reads an angle: <c>10 deg</c>, <c>10°</c>, <c>22 1/2</c> (degrees), or a slope <c>3:12</c>.</summary>
    /// <param name="text">The text.</param>
    public static Reading<Angle> ReadAngle(string text)
    {
        var scan = new MeasureScanner(text);
        bool minus = scan.TakeMinus();
        bool slashed = scan.IsSlashedPair();
        if (scan.TakeNumber(out WrittenNumber first) is { } problem)
        {
            return Reading<Angle>.Refused(problem, text, scan.At);
        }

        double value = first.Times(1);
        scan.SkipSpaces();
        if (slashed && scan.AtEnd)
        {
            // 4/12 would be a third of a degree; whoever writes it means a roof's slope.
            return Reading<Angle>.Refused(MeasureFindings.SlopeSlashed, text, 0);
        }

        Angle angle;
        if (scan.Take(':'))
        {
            if (scan.TakeNumber(out WrittenNumber run) is { } wrong)
            {
                return Reading<Angle>.Refused(wrong, text, scan.At);
            }

            if (run.Numerator <= 0)
            {
                return Reading<Angle>.Refused(MeasureFindings.SlopeBroken, text, 0);
            }

            angle = Angle.FromSlope(value, run.Times(1));
        }
        else
        {
            int start = scan.At;
            if (scan.TakeUnit() is not ("" or "°" or "deg" or "degree" or "degrees"))
            {
                return Reading<Angle>.Refused(MeasureFindings.UnitUnknown, text, start);
            }

            angle = new Angle(value);
        }

        scan.SkipSpaces();
        if (!scan.AtEnd)
        {
            return Reading<Angle>.Refused(MeasureFindings.TextLeftOver, text, scan.At);
        }

        if (angle.Degrees > 360)
        {
            return Reading<Angle>.Refused(MeasureFindings.ValueAbsurd, text, 0);
        }

        return Reading<Angle>.Of(minus && angle.Degrees > 0 ? new Angle(-angle.Degrees) : angle);
    }

    /// <summary>Reads a feed, mm/min: <c>1500 mm/min</c>, <c>1.5 m/min</c>, <c>25 mm/s</c>, <c>60 in/min</c>; a bare number is in the unit given, a minute.</summary>
    /// <param name="text">The text.</param>
    /// <param name="unit">The unit of a bare number; null when none has been stated.</param>
    public static Reading<double> ReadFeed(string text, LengthUnit? unit) => ReadRate(text, word => word switch
    {
        "mm/min" => 1m,
        "mm/s" => 60m,
        "m/min" => 1000m,
        "in/min" => 25.4m,
        "in/s" => 25.4m * 60,
        "" when unit == LengthUnit.Millimetre => 1m,
        "" when unit == LengthUnit.Inch => 25.4m,
        _ => null,
    });

    /// <summary>Reads a spindle speed, rev/min: <c>16000</c>, <c>16000 rpm</c>.</summary>
    /// <param name="text">The text.</param>
    public static Reading<double> ReadSpeed(string text) =>
        ReadRate(text, word => word is "" or "rpm" or "rev/min" or "/min" ? 1m : null);

    /// <summary>Reads a plain number without a unit: <c>0.5</c>, <c>1/3</c>.</summary>
    /// <param name="text">The text.</param>
    public static Reading<double> ReadNumber(string text) => ReadRate(text, word => word.Length == 0 ? 1m : null);

    private static Reading<double> ReadRate(string text, Func<string, decimal?> scaleOf)
    {
        var scan = new MeasureScanner(text);
        bool minus = scan.TakeMinus();
        if (scan.TakeNumber(out WrittenNumber number) is { } problem)
        {
            return Reading<double>.Refused(problem, text, scan.At);
        }

        scan.SkipSpaces();
        int start = scan.At;
        string word = scan.TakeUnit();
        if (scaleOf(word) is not { } scale)
        {
            return Reading<double>.Refused(word.Length == 0 ? MeasureFindings.UnitMissing : MeasureFindings.UnitUnknown, text, start);
        }

        scan.SkipSpaces();
        if (!scan.AtEnd)
        {
            return Reading<double>.Refused(MeasureFindings.TextLeftOver, text, scan.At);
        }

        double value = number.Times(scale);
        if (value > LargestRate)
        {
            return Reading<double>.Refused(MeasureFindings.ValueAbsurd, text, 0);
        }

        return Reading<double>.Of(minus && value > 0 ? -value : value);
    }

    private static FindingKind? TakeSize(ref MeasureScanner scan, LengthUnit? unit, out Measure size, out bool stated)
    {
        size = default;
        stated = false;
        bool minus = scan.TakeMinus();
        if (scan.TakeNumber(out WrittenNumber number) is { } problem)
        {
            return problem;
        }

        scan.SkipSpaces();
        int start = scan.At;
        if (scan.Take('%'))
        {
            scan.Back(start);
            return MeasureFindings.Percent;
        }

        string word = scan.TakeUnit();
        stated = word.Length > 0;
        double value;
        if (word == "w")
        {
            value = number.Times(1);
        }
        else if (word is "'" or "ft" or "foot" or "feet")
        {
            value = number.Times(304.8m);
            if (TakeInchesBehindFeet(ref scan, ref value) is { } wrong)
            {
                return wrong;
            }
        }
        else if (ScaleOf(word, unit) is { } scale)
        {
            value = number.Times(scale);
        }
        else
        {
            scan.Back(start);
            return stated || !scan.AtEnd ? MeasureFindings.UnitUnknown : MeasureFindings.UnitMissing;
        }

        value = minus && value > 0 ? -value : value;
        size = word == "w" ? Measure.Share(value) : Measure.Fixed(value);
        return null;
    }

    // 2' 3-1/2", 2'-6, 2' - 6", 2 ft 6 in: behind feet a bare number can only be inches.
    private static FindingKind? TakeInchesBehindFeet(ref MeasureScanner scan, ref double value)
    {
        int before = scan.At;
        scan.SkipSpaces();
        scan.TakeDash();
        scan.SkipSpaces();
        int start = scan.At;
        FindingKind? problem = scan.TakeNumber(out WrittenNumber inches);
        if (problem == MeasureFindings.NumberExpected)
        {
            scan.Back(before);
            return null;
        }

        if (problem is not null)
        {
            return problem;
        }

        if (scan.TakeUnit() is not ("" or "\"" or "in" or "inch" or "inches"))
        {
            scan.Back(start);
            return MeasureFindings.TextLeftOver;
        }

        value += inches.Times(25.4m);
        return null;
    }

    private static decimal? ScaleOf(string word, LengthUnit? unit) => word switch
    {
        "mm" => 1m,
        "cm" => 10m,
        "m" => 1000m,
        "\"" or "in" or "inch" or "inches" => 25.4m,
        "" when unit == LengthUnit.Millimetre => 1m,
        "" when unit == LengthUnit.Inch => 25.4m,
        _ => null,
    };
}
