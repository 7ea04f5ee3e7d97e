using System.Collections.Immutable;
using System.Text;
using ToolpathForge.Findings;

namespace ToolpathForge.Service.Files;

/// <summary>Reads a text file that a person wrote, or says why it cannot be read.</summary>
internal static class TextFile
{
    private static readonly UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>Largest job or catalogue file: a thousand times what a person would write.</summary>
    internal const int LargestJob = 4 << 20;

    /// <summary>Largest program that is read back: some two million lines.</summary>
    internal const int LargestProgram = 64 << 20;

    /// <summary>The text, without a byte order mark; or null and the finding that says why.</summary>
    /// <param name="path">Where it lies.</param>
    /// <param name="shown">The file as the person named it.</param>
    /// <param name="largest">Largest size in bytes.</param>
    /// <param name="at">Where the person named it; the file itself when on the command line.</param>
    internal static (string? Text, Finding? Finding) Read(string path, string shown, int largest, Place? at = null)
    {
        (byte[]? bytes, Finding? fault) = ReadBytes(path, shown, largest, at);
        if (bytes is null)
        {
            return (null, fault);
        }

        ReadOnlySpan<byte> text = bytes.AsSpan().StartsWith(Encoding.UTF8.Preamble) ? bytes.AsSpan(Encoding.UTF8.Preamble.Length) : bytes;
        try
        {
            return (Strict.GetString(text), null);
        }
        catch (DecoderFallbackException e)
        {
            ReadOnlySpan<byte> before = text[..Math.Clamp(e.Index, 0, text.Length)];
            int line = before.Count((byte)'\n') + 1;
            int column = Encoding.UTF8.GetCharCount(before[(before.LastIndexOf((byte)'\n') + 1)..]) + 1;
            return (null, Finding.Of(FileFindings.NotText, at ?? Place.InFile(shown, line, column)));
        }
    }

    /// <summary>The bytes of any file; or null and the finding that says why.</summary>
    /// <inheritdoc cref="Read"/>
    internal static (byte[]? Bytes, Finding? Finding) ReadBytes(string path, string shown, int largest, Place? at = null)
    {
        Place place = at ?? Place.InFile(shown, 0, 0);
        Finding Told(FindingKind kind, params ImmutableArray<Arg> more) => Finding.Of(kind, place, more);
        try
        {
            if (Directory.Exists(path))
            {
                return (null, Told(FileFindings.IsFolder));
            }

            return UpTo(path, largest) is { } bytes ? (bytes, null) : (null, Told(FileFindings.TooLarge, Arg.Of("megabytes", Quantity.Number(largest >> 20))));
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            return (null, Told(FileFindings.Missing, Arg.Of("near", NearFile(path))));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return (null, Told(FileFindings.Unreadable, Arg.Of("reason", Refusal.Of(e))));
        }
    }

    /// <summary>The whole file; null when it is larger than may be. A file that claims no length, such as a pipe, is read no further than that.</summary>
    private static byte[]? UpTo(string path, int largest)
    {
        using var file = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        long claimed = file.CanSeek ? file.Length : 0;
        if (claimed > largest)
        {
            return null;
        }

        // As large as it says at once: growing would hold it three times over.
        var bytes = new MemoryStream((int)claimed);
        byte[] buffer = new byte[64 << 10];
        for (int read = file.Read(buffer); read > 0; read = file.Read(buffer))
        {
            bytes.Write(buffer, 0, read);
            if (bytes.Length > largest)
            {
                return null;
            }
        }

        return bytes.Length == bytes.Capacity ? bytes.GetBuffer() : bytes.ToArray();
    }

    /// <summary>A file beside the missing one that it may have been meant to be.</summary>
    private static string NearFile(string path)
    {
        try
        {
            string folder = Path.GetDirectoryName(Path.GetFullPath(path)) ?? ".";
            if (!Directory.Exists(folder))
            {
                return "The folder itself is not there.";
            }

            IEnumerable<string> names = Directory.EnumerateFiles(folder).Take(1000).Select(f => Path.GetFileName(f)!).Order(StringComparer.Ordinal);
            return Words.Nearest(Path.GetFileName(path), names) is { } near ? $"Did you mean {near}?" : "Nothing of a similar name lies there.";
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException)
        {
            return "The folder cannot be read.";
        }
    }
}
