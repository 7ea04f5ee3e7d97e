using System.Globalization;

namespace ToolpathForge.Proof;

/// <summary>
/// Reads values from a line whose spaces and comments are gone: numbers without exponent, expressions in brackets, functions of an expression
/// (NISTIR 6556 sections 3.3.2.1 to 3.3.2.4). Numbered parameters are refused.
/// </summary>
internal ref struct ValueReader
{
    private static readonly string[] Functions = ["abs", "acos", "asin", "atan", "cos", "exp", "fix", "fup", "ln", "round", "sin", "sqrt", "tan"];

    private readonly ReadOnlySpan<char> text;

    internal ValueReader(ReadOnlySpan<char> text)
    {
        this.text = text;
        Code = FaultCodes.NumberMalformed;
    }

    internal int Position { get; private set; }

    /// <summary>Why the last value could not be read.</summary>
    internal FaultCode Code { get; private set; }

    internal readonly bool AtEnd => Position >= text.Length;

    private readonly char Current => Position < text.Length ? text[Position] : '\0';

    internal char Next() => text[Position++];

    internal bool Take(char c)
    {
        if (AtEnd || text[Position] != c)
        {
            return false;
        }

        Position++;
        return true;
    }

    internal bool TakeDigit()
    {
        if (!char.IsAsciiDigit(Current))
        {
            return false;
        }

        Position++;
        return true;
    }

    /// <summary>The text from a place up to just behind where reading has come to.</summary>
    internal readonly string From(int start) => text[start..Math.Min(text.Length, Position + 1)].ToString();

    /// <summary>The text up to just behind where reading has come to.</summary>
    internal readonly string Around() => From(0);

    internal bool TryValue(out double value)
    {
        char c = Current;
        if (c == '[')
        {
            return TryBrackets(out value);
        }

        if (c == '#')
        {
            value = 0;
            return Fail(FaultCodes.ParameterRefused);
        }

        return char.IsAsciiLetter(c) ? TryFunction(out value) : TryNumber(out value);
    }

    private bool Fail(FaultCode code)
    {
        Code = code;
        return false;
    }

    private bool TryNumber(out double value)
    {
        int from = Position;
        _ = Take('+') || Take('-');
        int digits = 0;
        while (TakeDigit())
        {
            digits++;
        }

        if (Take('.'))
        {
            while (TakeDigit())
            {
                digits++;
            }
        }

        value = 0;
        return digits > 0
            && double.TryParse(text[from..Position], NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out value)
            ? true
            : Fail(FaultCodes.NumberMalformed);
    }

    /// <summary>An expression in brackets: powers first, then products, then sums and logic, each from left to right.</summary>
    private bool TryBrackets(out double value)
    {
        value = 0;
        if (!Take('['))
        {
            return Fail(FaultCodes.ExpressionMalformed);
        }

        if (!TryChain(3, out value))
        {
            return false;
        }

        return Take(']') || Fail(FaultCodes.ExpressionMalformed);
    }

    /// <summary>A chain of operations of one rank: 3 sums and logic, 2 products, 1 powers, 0 a single value.</summary>
    private bool TryChain(int rank, out double value)
    {
        if (rank == 0)
        {
            return TryValue(out value) || Fail(Code == FaultCodes.NumberMalformed ? FaultCodes.ExpressionMalformed : Code);
        }

        if (!TryChain(rank - 1, out value))
        {
            return false;
        }

        while (TryOperator(rank, out string operation))
        {
            if (!TryChain(rank - 1, out double right))
            {
                return false;
            }

            value = Apply(operation, value, right);
            if (!double.IsFinite(value))
            {
                return Fail(FaultCodes.ExpressionUndefined);
            }
        }

        return true;
    }

    private bool TryOperator(int rank, out string operation)
    {
        ReadOnlySpan<char> rest = text[Position..];
        operation = rank switch
        {
            1 => rest.StartsWith("**") ? "**" : "",
            2 => rest.StartsWith("mod") ? "mod" : rest is ['/', ..] ? "/" : rest is ['*', ..] && !rest.StartsWith("**") ? "*" : "",
            _ => rest.StartsWith("and") ? "and" : rest.StartsWith("xor") ? "xor" : rest.StartsWith("or") ? "or" : rest is ['+', ..] ? "+" : rest is ['-', ..] ? "-" : "",
        };
        Position += operation.Length;
        return operation.Length > 0;
    }

    private static double Apply(string operation, double a, double b) => operation switch
    {
        "**" => Math.Pow(a, b),
        "*" => a * b,
        "/" => b == 0 ? double.NaN : a / b,
        "mod" => Modulo(a, b),
        "+" => a + b,
        "-" => a - b,
        "and" => a != 0 && b != 0 ? 1 : 0,
        "xor" => (a != 0) != (b != 0) ? 1 : 0,
        _ => a != 0 || b != 0 ? 1 : 0,
    };

    /// <summary>The remainder, never negative.</summary>
    private static double Modulo(double a, double b)
    {
        double rest = a % b;
        return rest < 0 ? rest + Math.Abs(b) : rest;
    }

    private bool TryFunction(out double value)
    {
        value = 0;
        ReadOnlySpan<char> rest = text[Position..];
        foreach (string name in Functions)
        {
            if (!rest.StartsWith(name))
            {
                continue;
            }

            Position += name.Length;
            if (!TryBrackets(out double argument))
            {
                return false;
            }

            double second = 1;
            if (name == "atan" && (!Take('/') || !TryBrackets(out second)))
            {
                return Fail(FaultCodes.ExpressionMalformed);
            }

            value = Evaluate(name, argument, second);
            return double.IsFinite(value) || Fail(FaultCodes.ExpressionUndefined);
        }

        return Fail(FaultCodes.NumberMalformed);
    }

    /// <summary>Angles are in degrees; ATAN takes two expressions.</summary>
    private static double Evaluate(string name, double x, double second) => name switch
    {
        "abs" => Math.Abs(x),
        "acos" => Degrees(Math.Acos(x)),
        "asin" => Degrees(Math.Asin(x)),
        "atan" => Degrees(Math.Atan2(x, second)),
        "cos" => Math.Cos(Radians(x)),
        "exp" => Math.Exp(x),
        "fix" => Math.Floor(x),
        "fup" => Math.Ceiling(x),
        "ln" => x > 0 ? Math.Log(x) : double.NaN,
        "round" => Math.Round(x, MidpointRounding.AwayFromZero),
        "sin" => Math.Sin(Radians(x)),
        "sqrt" => Math.Sqrt(x),
        _ => Math.Tan(Radians(x)),
    };

    private static double Radians(double degrees) => degrees * Math.PI / 180;

    private static double Degrees(double radians) => radians * 180 / Math.PI;
}
