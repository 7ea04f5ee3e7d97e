using System.Text;
using ToolpathForge.Service.Host;

namespace ToolpathForge.Tests.Host;

/// <summary>Messages parted by lines, or by the header of the Language Server Protocol's base protocol (3.17): fields ended by CRLF, an empty line, Content-Length bytes.</summary>
public class MessageStreamTests
{
    private static List<string> Read(string text, int most = 1000, int piece = int.MaxValue)
    {
        var messages = new MessageStream(new Pieces(Encoding.UTF8.GetBytes(text), piece), most);
        var read = new List<string>();
        while (messages.Read() is { } message)
        {
            read.Add(message.Fault is { } fault ? fault.Code.ToString(System.Globalization.CultureInfo.InvariantCulture) : Encoding.UTF8.GetString(message.Bytes.Span));
        }

        return read;
    }

    [Theory]
    [InlineData("{\"a\":1}\n{\"b\":2}\n", "{\"a\":1}|{\"b\":2}")]
    [InlineData("{\"a\":1}\r\n\r\n  \n{\"b\":2}", "{\"a\":1}|{\"b\":2}")]
    [InlineData("\n\n[]\n", "[]")]
    [InlineData("Content-Length: 2\r\n\r\n{}Content-Length: 4\r\n\r\n[12]", "{}|[12]")]
    [InlineData("content-length:2\r\nContent-Type: application/vscode-jsonrpc; charset=utf-8\r\n\r\n{}", "{}")]
    [InlineData("Content-Length: 2\r\nContent-Type: application/vscode-jsonrpc; charset=utf8\r\n\r\n{}", "{}")]
    [InlineData("Content-Length: 3\r\n\r\n\"é", "\"é")]
    [InlineData("Content-Length: 2\r\nContent-Type: text; charset=latin-1\r\n\r\n{}Content-Length: 2\r\n\r\n[]", "-32700|[]")]
    [InlineData("Content-Type: x\r\n\r\nContent-Length: 2\r\n\r\n{}", "-32700|{}")]
    [InlineData("Content-Length: 2\r\nContent-Length: 2\r\n\r\n{}Content-Length: 2\r\n\r\n[]", "-32700|[]")]
    [InlineData("Content-Length: two\r\n\r\nContent-Length: 2\r\n\r\n[]", "-32700|[]")]
    [InlineData("Content-Length: -2\r\n\r\nContent-Length: 2\r\n\r\n[]", "-32700|[]")]
    [InlineData("Content-Length: 5\r\n\r\n{}", "-32700")]
    [InlineData("Content-Length: 5\r\n", "-32700")]
    [InlineData("", "")]
    [InlineData("  \n \n", "")]
    public void Messages_are_parted(string text, string expected)
    {
        foreach (int piece in (int[])[1, 3, int.MaxValue])
        {
            Assert.Equal(expected, string.Join('|', Read(text, 1000, piece)));
        }
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void What_is_too_large_is_told_and_passed_over(bool lines)
    {
        string large = "[\"" + new string('x', 5000) + "\"]";
        string text = lines ? $"{large}\n{{}}\n" : $"Content-Length: {large.Length}\r\n\r\n{large}Content-Length: 2\r\n\r\n{{}}";
        Assert.Equal(["-32003", "{}"], Read(text, 1000));
    }

    /// <summary>Gives so many bytes at a time, as a pipe may.</summary>
    private sealed class Pieces(byte[] bytes, int piece) : MemoryStream(bytes)
    {
        public override int Read(byte[] buffer, int offset, int count) => base.Read(buffer, offset, Math.Min(count, piece));
    }
}
