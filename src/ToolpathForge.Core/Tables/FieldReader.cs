using System.Collections.Immutable;
using ToolpathForge.Findings;
using ToolpathForge.Measures;

namespace ToolpathForge.Tables;

/// <summary>Reads one value as its key wants it.</summary>
internal static class FieldReader
{
    private const double LeastShare = 0.001;

    private const double MostShare = 100;

    /// <summary>The value; null when a finding says what is wrong with it.</summary>
    internal static FieldValue? Read(TableEntry entry, Key key, TableContext context)
    {
        TomlValue value = entry.Value;
        return (key.Kind, value) switch
        {
            (KeyKind.Text or KeyKind.Row, TextValue text) => ReadText(text, key, context),
            (KeyKind.Choice, TextValue text) => ReadChoice(text, key, context),
            (KeyKind.Flag, FlagValue flag) => FieldValue.OfAmount(flag.IsTrue ? 1 : 0, flag.At),
            (KeyKind.Whole, NumberValue { IsWhole: true } number) => InRange(FieldValue.OfAmount(number.Amount, number.At), key, context),
            (KeyKind.Whole, NumberValue { IsWhole: false } number) => WrongType(key, number, context),
            (KeyKind.Texts, ListValue list) when list.Items.All(i => i is TextValue) => ReadList(list, key, context),
            (KeyKind.Table, TableValue table) => new FieldValue(0, false, "", [], [table], table.At),
            (KeyKind.Tables, ListValue list) when list.Items.All(i => i is TableValue) => ReadList(list, key, context),
            (KeyKind.Length or KeyKind.Size or KeyKind.Angle or KeyKind.Feed or KeyKind.Speed or KeyKind.Number, TextValue text) =>
                ReadMeasure(text, key, context),
            (KeyKind.Length or KeyKind.Size or KeyKind.Angle or KeyKind.Feed or KeyKind.Speed or KeyKind.Number, NumberValue number) =>
                ReadNumber(number, key, context),
            _ => WrongType(key, value, context),
        };
    }

    /// <summary>A default; it is ours, so it is known to be good.</summary>
    internal static FieldValue ReadDefault(string written, Key key, Place at)
    {
        if (key.Kind is KeyKind.Text or KeyKind.Row or KeyKind.Choice)
        {
            return FieldValue.OfText(written, at);
        }

        if (key.Kind == KeyKind.Flag)
        {
            return FieldValue.OfAmount(written == "true" ? 1 : 0, at);
        }

        (Reading<Measure> reading, _) = Measured(written, key, null);
        return reading.IsRead
            ? FieldValue.OfAmount(reading.Value.Amount, at, reading.Value.IsShare)
            : throw new InvalidOperationException($"The default '{written}' of {key.Name} cannot be read.");
    }

    private static FieldValue? ReadText(TextValue text, Key key, TableContext context)
    {
        bool clean = !text.Text.Any(char.IsControl) && text.Text.Trim().Length == text.Text.Length;
        if (text.Text.Length >= key.Least && text.Text.Length <= key.Most && clean)
        {
            return FieldValue.OfText(text.Text, text.At);
        }

        string given = text.Text.Length == 0 ? "empty" : $"'{TextPiece.Short(text.Text)}'";
        context.Add(Finding.Of(
            TableFindings.TextUnusable, text.At, Quantity.Number(text.Text.Length), Quantity.Number(key.Most), Arg.Of("key", key.Name), Arg.Of("text", given)));
        return null;
    }

    private static FieldValue? ReadChoice(TextValue text, Key key, TableContext context)
    {
        if (key.Words.Contains(text.Text, StringComparer.Ordinal))
        {
            return FieldValue.OfText(text.Text, text.At);
        }

        if (OtherWords.Find(text.Text, key.Words) is { } same)
        {
            return FieldValue.OfText(same, text.At);
        }

        var name = Arg.Of("key", key.Name);
        var given = Arg.Of("text", TextPiece.Short(text.Text));
        var words = Arg.Of("words", string.Join(", ", key.Words));
        context.Add(NearWord.Find(text.Text, key.Words) is { } near
            ? Finding.Of(TableFindings.UnknownWordNear, text.At, name, given, words, Arg.Of("near", near))
            : Finding.Of(TableFindings.UnknownWord, text.At, name, given, words));
        return null;
    }

    private static FieldValue? ReadMeasure(TextValue text, Key key, TableContext context)
    {
        (Reading<Measure> reading, bool bare) = Measured(text.Text, key, context.Unit);
        if (reading.IsRead)
        {
            return InRange(FieldValue.OfAmount(reading.Value.Amount, text.At, reading.Value.IsShare), key, context);
        }

        if (!bare || !context.UnitWasTold)
        {
            context.Add(reading.ToFinding(text.Inside(reading.At), key.Name, text.Text));
        }

        return null;
    }

    private static FieldValue? ReadNumber(NumberValue number, Key key, TableContext context)
    {
        if (!double.IsFinite(number.Amount))
        {
            context.Add(Finding.Of(
                TableFindings.NotFinite, number.At, Arg.Of("key", key.Name), Arg.Of("text", TextPiece.Short(number.Written))));
            return null;
        }

        if (Math.Abs(number.Amount) > MeasureText.LargestLength)
        {
            context.Add(Finding.Of(
                MeasureFindings.ValueAbsurd, number.At, Arg.Of("key", key.Name), Arg.Of("text", TextPiece.Short(number.Written))));
            return null;
        }

        double amount = number.Amount;
        if (key.Kind is KeyKind.Length or KeyKind.Size or KeyKind.Feed)
        {
            if (context.Unit is not { } unit)
            {
                if (!context.UnitWasTold)
                {
                    context.Add(Finding.Of(
                        MeasureFindings.UnitMissing, number.At, Arg.Of("key", key.Name), Arg.Of("text", TextPiece.Short(number.Written))));
                }

                return null;
            }

            // In decimal, so that a bare 3.5 is the same double as a written 3 1/2 in.
            amount = unit == LengthUnit.Inch ? (double)((decimal)amount * 25.4m) : amount;
        }

        return InRange(FieldValue.OfAmount(amount, number.At), key, context);
    }

    private static FieldValue? ReadList(ListValue list, Key key, TableContext context)
    {
        if (list.Items.Length < key.Least || list.Items.Length > key.Most)
        {
            bool few = list.Items.Length < key.Least;
            context.Add(Finding.Of(
                few ? TableFindings.TooFew : TableFindings.TooMany,
                list.At,
                Quantity.Number(list.Items.Length),
                Quantity.Number(few ? key.Least : key.Most),
                Arg.Of("key", key.Name)));
            return null;
        }

        return new FieldValue(0, false, "", [.. list.Items.OfType<TextValue>()], [.. list.Items.OfType<TableValue>()], list.At);
    }

    // Also tells whether a failure is only about the unit that the file has not stated.
    private static (Reading<Measure> Reading, bool Bare) Measured(string text, Key key, LengthUnit? unit)
    {
        Reading<Measure> reading = key.Kind switch
        {
            KeyKind.Length => Map(MeasureText.ReadLength(text, unit), v => v.Millimetres),
            KeyKind.Size => MeasureText.ReadSize(text, unit),
            KeyKind.Angle => Map(MeasureText.ReadAngle(text), v => v.Degrees),
            KeyKind.Feed => Map(MeasureText.ReadFeed(text, unit), v => v),
            KeyKind.Speed => Map(MeasureText.ReadSpeed(text), v => v),
            _ => Map(MeasureText.ReadNumber(text), v => v),
        };
        return (reading, reading.Problem == MeasureFindings.UnitMissing);
    }

    private static Reading<Measure> Map<T>(Reading<T> reading, Func<T, double> amount)
        where T : struct =>
        reading.IsRead
            ? Reading<Measure>.Of(Measure.Fixed(amount(reading.Value)))
            : new Reading<Measure>(default, reading.Problem, reading.At, reading.Piece);

    private static FieldValue? InRange(FieldValue value, Key key, TableContext context)
    {
        // A share is held to the key's range once it is a length, for which the width must be known. Here only nonsense is kept out.
        double least = value.IsShare ? LeastShare : key.Least;
        double most = value.IsShare ? MostShare : key.Most;
        if (value.Amount >= least && value.Amount <= most)
        {
            return value;
        }

        bool small = value.Amount < least;
        context.Add(RangeFinding(small, key, value.At, value.Amount, small ? least : most, value.IsShare));
        return null;
    }

    /// <summary>The finding for a value outside its key's range.</summary>
    internal static Finding RangeFinding(bool small, Key key, Place at, double found, double allowed, bool share = false)
    {
        QuantityKind kind = key.Kind switch
        {
            KeyKind.Length => QuantityKind.Length,
            KeyKind.Size => share ? QuantityKind.Number : QuantityKind.Length,
            KeyKind.Angle => QuantityKind.Angle,
            KeyKind.Feed => QuantityKind.Feed,
            KeyKind.Speed => QuantityKind.Speed,
            _ => QuantityKind.Number,
        };
        return Finding.Of(
            small ? TableFindings.TooSmall : TableFindings.TooLarge, at, new Quantity(found, kind), new Quantity(allowed, kind), Arg.Of("key", key.Name));
    }

    private static FieldValue? WrongType(Key key, TomlValue value, TableContext context)
    {
        string given = value switch
        {
            TextValue => "a text",
            NumberValue { IsWhole: true } => "a whole number",
            NumberValue => "a number",
            FlagValue => "true or false",
            DateValue => "a date or time",
            ListValue => "a list",
            _ => "a table",
        };
        context.Add(Finding.Of(
            TableFindings.WrongType,
            value.At,
            Arg.Of("key", key.Name),
            Arg.Of("wanted", KeyText.Takes(key.Kind)),
            Arg.Of("given", given),
            Arg.Of("example", KeyText.Example(key))));
        return null;
    }
}
