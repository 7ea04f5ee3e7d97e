using System.Buffers.Text;
using System.Text;

namespace ToolpathForge.Service.Host;

/// <summary>How messages are parted on a stream.</summary>
public enum Framing
{
    /// <summary>One a line.</summary>
    Lines,

    /// <summary>Each after a header with its length (Language Server Protocol 3.17, base protocol).</summary>
    Lengths,
}

/// <summary>A message as it came, or why there is none.</summary>
/// <param name="Bytes">UTF-8; empty where there is a fault.</param>
/// <param name="Fault">Null for a message.</param>
public readonly record struct Incoming(ReadOnlyMemory<byte> Bytes, RpcError? Fault);

/// <summary>
/// Parts a stream into messages. Its first byte that is no white space says how: a brace or bracket begins a message a line, anything else a header. A message that is too large
/// is passed over without being kept; a header that cannot be understood is told, and reading goes on after it.
/// </summary>
/// <param name="stream">What comes in.</param>
/// <param name="most">Bytes of one message, at most.</param>
public sealed class MessageStream(Stream stream, int most)
{
    private const int LongestHeader = 8192;

    private readonly byte[] _buffer = new byte[65536];
    private int _at;
    private int _end;

    /// <summary>How messages are parted; null until the first has begun.</summary>
    public Framing? Framing { get; private set; }

    /// <summary>The next message; null when the stream has ended.</summary>
    public Incoming? Read()
    {
        if (Framing is null)
        {
            int first = Peek();
            while (first is ' ' or '\t' or '\r' or '\n')
            {
                _at++;
                first = Peek();
            }

            if (first < 0)
            {
                return null;
            }

            // A byte order mark belongs to text, and text is lines.
            Framing = first is '{' or '[' or 0xEF || !char.IsAsciiLetter((char)first) ? Host.Framing.Lines : Host.Framing.Lengths;
        }

        return Framing == Host.Framing.Lines ? ReadLine() : ReadLength();
    }

    private Incoming? ReadLine()
    {
        while (true)
        {
            (byte[] line, bool whole, bool ended) = Until(most);
            if (!whole)
            {
                return new Incoming(default, RpcError.TooLarge);
            }

            ReadOnlyMemory<byte> trimmed = line.AsMemory().TrimEnd((byte)'\r');
            if (!trimmed.Span.Trim(" \t\r"u8).IsEmpty)
            {
                return new Incoming(trimmed, null);
            }

            if (ended)
            {
                return null;
            }
        }
    }

    private Incoming? ReadLength()
    {
        long? length = null;
        bool sound = true;
        bool any = false;
        for (int lines = 0; ; lines++)
        {
            (byte[] line, bool whole, bool ended) = Until(LongestHeader);
            ReadOnlySpan<byte> text = line.AsSpan().TrimEnd((byte)'\r');
            if (ended && text.IsEmpty)
            {
                return any ? new Incoming(default, RpcError.Parse.Because("the stream ends within a header")) : null;
            }

            if (text.IsEmpty && whole)
            {
                if (!any)
                {
                    // A line feed too many between messages does no harm.
                    continue;
                }

                break;
            }

            any = true;
            sound &= whole && lines < 64 && Field(text, ref length);
            if (ended)
            {
                return new Incoming(default, RpcError.Parse.Because("the stream ends within a header"));
            }
        }

        return length switch
        {
            null => new Incoming(default, RpcError.Parse.Because("a header without Content-Length")),
            _ when !sound => Skip(length.Value, RpcError.Parse.Because("a header that cannot be understood")),
            > int.MaxValue => Skip(length.Value, RpcError.TooLarge),
            { } n when n > most => Skip(n, RpcError.TooLarge),
            { } n => Body((int)n),
        };
    }

    // Name, colon, value; names are compared without regard to case (RFC 7230). Of Content-Type only utf-8 is known.
    private static bool Field(ReadOnlySpan<byte> line, ref long? length)
    {
        int colon = line.IndexOf((byte)':');
        if (colon <= 0)
        {
            return false;
        }

        string name = Encoding.ASCII.GetString(line[..colon]).Trim();
        ReadOnlySpan<byte> value = line[(colon + 1)..].Trim(" \t"u8);
        if (name.Equals("Content-Length", StringComparison.OrdinalIgnoreCase))
        {
            bool read = Utf8Parser.TryParse(value, out long n, out int used) && used == value.Length && n >= 0 && value[0] is >= (byte)'0' and <= (byte)'9';
            bool again = length is not null;
            length = read ? n : length;
            return read && !again;
        }

        return !name.Equals("Content-Type", StringComparison.OrdinalIgnoreCase)
            || !Encoding.ASCII.GetString(value).Contains("charset=", StringComparison.OrdinalIgnoreCase)
            || Encoding.ASCII.GetString(value).Replace("\"", "", StringComparison.Ordinal).Contains("charset=utf", StringComparison.OrdinalIgnoreCase);
    }

    private Incoming Body(int length)
    {
        byte[] body = new byte[length];
        int have = 0;
        while (have < length)
        {
            if (Peek() < 0)
            {
                return new Incoming(default, RpcError.Parse.Because("the stream ends within a message"));
            }

            int take = Math.Min(length - have, _end - _at);
            Array.Copy(_buffer, _at, body, have, take);
            have += take;
            _at += take;
        }

        return new Incoming(body, null);
    }

    private Incoming Skip(long length, RpcError fault)
    {
        while (length > 0 && Peek() >= 0)
        {
            int take = (int)Math.Min(length, _end - _at);
            length -= take;
            _at += take;
        }

        return new Incoming(default, fault);
    }

    // Up to a line feed, which is taken and not given; more than so many bytes are passed over.
    private (byte[] Line, bool Whole, bool Ended) Until(int longest)
    {
        using var line = new MemoryStream();
        bool whole = true;
        while (Peek() >= 0)
        {
            int feed = Array.IndexOf(_buffer, (byte)'\n', _at, _end - _at);
            int take = (feed < 0 ? _end : feed) - _at;
            whole &= line.Length + take <= longest;
            if (whole)
            {
                line.Write(_buffer, _at, take);
            }

            _at += take;
            if (feed >= 0)
            {
                _at++;
                return (line.ToArray(), whole, false);
            }
        }

        return (line.ToArray(), whole, true);
    }

    private int Peek()
    {
        if (_at == _end)
        {
            (_at, _end) = (0, stream.Read(_buffer, 0, _buffer.Length));
        }

        return _at < _end ? _buffer[_at] : -1;
    }
}
