namespace ToolpathForge.Cli;

/// <summary>What is printed could not be: the disk behind it is full, or the stream was closed from the start.</summary>
/// <param name="inner">What the system said.</param>
internal sealed class PrintFault(Exception inner) : IOException(inner.Message, inner);

/// <summary>
/// A standard stream whose faults can be told from those of files. A reader that has gone away (<c>list bits | head -1</c>) is none: the base library passes over it,
/// and what is left is printed to nobody.
/// </summary>
/// <param name="stream">The stream of the process.</param>
internal sealed class PrintedStream(Stream stream) : Stream
{
    public override bool CanRead => false;

    public override bool CanSeek => false;

    public override bool CanWrite => true;

    public override long Length => throw new NotSupportedException();

    public override long Position
    {
        get => throw new NotSupportedException();
        set => throw new NotSupportedException();
    }

    public override void Write(byte[] buffer, int offset, int count) => Write(buffer.AsSpan(offset, count));

    public override void Write(ReadOnlySpan<byte> buffer)
    {
        try
        {
            stream.Write(buffer);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new PrintFault(e);
        }
    }

    public override void Flush()
    {
        try
        {
            stream.Flush();
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new PrintFault(e);
        }
    }

    public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();
}
