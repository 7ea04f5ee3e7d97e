using System.Globalization;
using System.Text;

namespace ToolpathForge.Plugin.Json;

/// <summary>Writes JSON on one line, in seven-bit characters, each number with as many digits as give it back.</summary>
internal static class JsonWriter
{
    /// <summary>The text of a value.</summary>
    internal static string Write(JsonValue value)
    {
        var text = new StringBuilder();
        Write(value, text);
        return text.ToString();
    }

    private static void Write(JsonValue value, StringBuilder text)
    {
        switch (value.Kind)
        {
            case JsonKind.Null:
                text.Append("null");
                break;
            case JsonKind.Truth:
                text.Append(value.Truth ? "true" : "false");
                break;
            case JsonKind.Number:
                text.Append(Number(value.Number));
                break;
            case JsonKind.Text:
                Quote(value.Text, text);
                break;
            case JsonKind.List:
                char before = '[';
                foreach (JsonValue item in value.Items)
                {
                    text.Append(before);
                    Write(item, text);
                    before = ',';
                }

                text.Append(before == '[' ? "[]" : "]");
                break;
            default:
                char first = '{';
                foreach (KeyValuePair<string, JsonValue> member in value.Members)
                {
                    text.Append(first);
                    Quote(member.Key, text);
                    text.Append(':');
                    Write(member.Value, text);
                    first = ',';
                }

                text.Append(first == '{' ? "{}" : "}");
                break;
        }
    }

    // Fifteen digits read best; where they do not give the number back, seventeen always do (IEEE 754).
    private static string Number(double number)
    {
        string shorter = number.ToString("G15", CultureInfo.InvariantCulture);
        return double.TryParse(shorter, NumberStyles.Float, CultureInfo.InvariantCulture, out double back) && back.Equals(number)
            ? shorter
            : number.ToString("G17", CultureInfo.InvariantCulture);
    }

    private static void Quote(string value, StringBuilder text)
    {
        text.Append('"');
        foreach (char c in value)
        {
            if (c is '"' or '\\')
            {
                text.Append('\\').Append(c);
            }
            else if (c is >= ' ' and <= '~')
            {
                text.Append(c);
            }
            else
            {
                text.Append("\\u").Append(((int)c).ToString("x4", CultureInfo.InvariantCulture));
            }
        }

        text.Append('"');
    }
}
