using System.Globalization;
using System.Text;

namespace ToolpathForge.Plugin.Json;

/// <summary>Text that is no JSON, or none of the form that was expected.</summary>
/// <param name="message">What is wrong.</param>
internal sealed class JsonFaultException(string message) : Exception(message);

/// <summary>
/// Reads one value of JSON from text, strictly by RFC 8259: no comments, no trailing commas, nothing after the value but white space. Refused as well, since
/// what they mean is left open there: a name given twice, half of a surrogate pair, and a number beyond the range of a double.
/// </summary>
internal sealed class JsonReader
{
    /// <summary>How deep lists and maps may lie in each other.</summary>
    internal const int MaxDepth = 64;

    private readonly string _text;
    private int _at;

    private JsonReader(string text) => _text = text;

    /// <summary>The value.</summary>
    /// <exception cref="JsonFaultException">It isn't JSON; the message says where.</exception>
    internal static JsonValue Read(string text)
    {
        var reader = new JsonReader(text);
        JsonValue value = reader.Value(0);
        reader.SkipSpace();
        return reader._at == text.Length ? value : throw reader.Fault("something follows the value");
    }

    private JsonValue Value(int depth)
    {
        SkipSpace();
        switch (Peek())
        {
            case '{':
                return Map(Deeper(depth));
            case '[':
                return List(Deeper(depth));
            case '"':
                return JsonValue.Of(Text());
            case 't':
                return Word("true", JsonValue.Of(true));
            case 'f':
                return Word("false", JsonValue.Of(false));
            case 'n':
                return Word("null", JsonValue.Null);
            default:
                return Number();
        }
    }

    private int Deeper(int depth) => depth < MaxDepth ? depth + 1 : throw Fault("it is nested too deep");

    private JsonValue Map(int depth)
    {
        var members = new List<KeyValuePair<string, JsonValue>>();
        var names = new HashSet<string>(StringComparer.Ordinal);
        _at++;
        SkipSpace();
        if (Peek() == '}')
        {
            _at++;
            return JsonValue.Of(members);
        }

        while (true)
        {
            SkipSpace();
            if (Peek() != '"')
            {
                throw Fault("a name is missing");
            }

            string name = Text();
            if (!names.Add(name))
            {
                throw Fault("a name is given twice");
            }

            SkipSpace();
            Take(':');
            members.Add(new KeyValuePair<string, JsonValue>(name, Value(depth)));
            if (Ends('}'))
            {
                return JsonValue.Of(members);
            }
        }
    }

    private JsonValue List(int depth)
    {
        var items = new List<JsonValue>();
        _at++;
        SkipSpace();
        if (Peek() == ']')
        {
            _at++;
            return JsonValue.Of(items);
        }

        while (true)
        {
            items.Add(Value(depth));
            if (Ends(']'))
            {
                return JsonValue.Of(items);
            }
        }
    }

    private bool Ends(char end)
    {
        SkipSpace();
        if (Peek() == end)
        {
            _at++;
            return true;
        }

        Take(',');
        return false;
    }

    private string Text()
    {
        int from = ++_at;
        while (_at < _text.Length && _text[_at] is not ('"' or '\\') && _text[_at] >= ' ')
        {
            _at++;
        }

        // Nearly all texts have nothing escaped in them.
        string start = _text.Substring(from, _at - from);
        if (Peek() == '"')
        {
            _at++;
            return Whole(start);
        }

        var text = new StringBuilder(start);
        while (true)
        {
            char c = Peek();
            if (c < ' ')
            {
                throw Fault(_at < _text.Length ? "a control character stands in a text" : "it ends within a text");
            }

            _at++;
            if (c == '"')
            {
                return Whole(text.ToString());
            }

            text.Append(c == '\\' ? Escaped() : c);
        }
    }

    private char Escaped()
    {
        char c = Peek();
        _at++;
        switch (c)
        {
            case '"' or '\\' or '/':
                return c;
            case 'b':
                return '\b';
            case 'f':
                return '\f';
            case 'n':
                return '\n';
            case 'r':
                return '\r';
            case 't':
                return '\t';
            case 'u':
                int code = 0;
                for (int i = 0; i < 4; i++)
                {
                    char digit = Peek();
                    _at++;
                    code = (code * 16) + (digit switch
                    {
                        >= '0' and <= '9' => digit - '0',
                        >= 'a' and <= 'f' => digit - 'a' + 10,
                        >= 'A' and <= 'F' => digit - 'A' + 10,
                        _ => throw Fault("\\u needs four hexadecimal digits"),
                    });
                }

                return (char)code;
            default:
                throw Fault("there is no such escape");
        }
    }

    private string Whole(string text)
    {
        for (int i = 0; i < text.Length; i++)
        {
            if (char.IsHighSurrogate(text[i]) && i + 1 < text.Length && char.IsLowSurrogate(text[i + 1]))
            {
                i++;
            }
            else if (char.IsSurrogate(text[i]))
            {
                throw Fault("a text holds half of a surrogate pair");
            }
        }

        return text;
    }

    private JsonValue Number()
    {
        int from = _at;
        if (Peek() == '-')
        {
            _at++;
        }

        if (Peek() == '0')
        {
            _at++;
        }
        else
        {
            Digits();
        }

        if (Peek() == '.')
        {
            _at++;
            Digits();
        }

        if (Peek() is 'e' or 'E')
        {
            _at++;
            if (Peek() is '+' or '-')
            {
                _at++;
            }

            Digits();
        }

        // The older base library throws at what is too large, the newer says infinite.
        return double.TryParse(_text.Substring(from, _at - from), NumberStyles.Float, CultureInfo.InvariantCulture, out double number) && !double.IsInfinity(number)
            ? JsonValue.Of(number)
            : throw Fault("a number is too large");
    }

    private void Digits()
    {
        int from = _at;
        while (Peek() is >= '0' and <= '9')
        {
            _at++;
        }

        if (_at == from)
        {
            throw Fault("a value or digit is missing");
        }
    }

    private JsonValue Word(string word, JsonValue value)
    {
        if (string.CompareOrdinal(_text, _at, word, 0, word.Length) != 0)
        {
            throw Fault("there is no such word");
        }

        _at += word.Length;
        return value;
    }

    private void Take(char c)
    {
        if (Peek() != c)
        {
            throw Fault("'" + c + "' is missing");
        }

        _at++;
    }

    private void SkipSpace()
    {
        while (Peek() is ' ' or '\t' or '\n' or '\r')
        {
            _at++;
        }
    }

    // Nul at the end: it may stand nowhere in JSON, so that it is refused wherever it is met.
    private char Peek() => _at < _text.Length ? _text[_at] : '\0';

    private JsonFaultException Fault(string says) => new(FormattableString.Invariant($"{says}, at character {_at}"));
}
