using QuarterCar.Reports.Files;

namespace QuarterCar.Cli;

/// <summary>A stream of the process, which may lead to a full disk or, closed by whoever started it, to nowhere.</summary>
/// <param name="stream">The stream.</param>
/// <param name="needed">What it is called where the command has failed when it takes nothing; null where its words are simply lost then.</param>
internal sealed class StandardStream(Stream stream, string? needed) : Stream
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

    public override void Flush() => Tried(stream.Flush);

    public override void Write(byte[] buffer, int offset, int count) => Tried(() => stream.Write(buffer, offset, count));

    public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    private void Tried(Action action)
    {
        try
        {
            action();
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // A closed descriptor reads as one without permission.
            if (needed is not null) throw new IOException($"{needed} takes nothing: {(e is IOException ? IoWords.Of(e) : "it is closed, or not open for writing")}", e);
        }
    }
}
