namespace QuarterCar.Scenarios.Reading;

/// <summary>A file that is read while what was read of it goes into a copy: a pipe gives its text only once, and a file may change afterwards.</summary>
public sealed class CopyingStream : Stream
{
    private readonly Stream _file, _copy;

    private CopyingStream(Stream file, Stream copy) => (_file, _copy) = (file, copy);

    /// <summary>Opens a file for reading.</summary>
    /// <param name="path">The file.</param>
    /// <param name="copy">Takes what is read; null for no copy.</param>
    /// <exception cref="IOException">It cannot be opened.</exception>
    /// <exception cref="UnauthorizedAccessException">It may not be read.</exception>
    public static Stream Open(string path, Stream? copy)
    {
        var file = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read);
        return copy is null ? file : new CopyingStream(file, copy);
    }

    /// <inheritdoc/>
    public override bool CanRead => true;

    /// <inheritdoc/>
    public override bool CanSeek => false;

    /// <inheritdoc/>
    public override bool CanWrite => false;

    /// <inheritdoc/>
    public override long Length => throw new NotSupportedException();

    /// <inheritdoc/>
    public override long Position
    {
        get => throw new NotSupportedException();
        set => throw new NotSupportedException();
    }

    /// <inheritdoc/>
    public override int Read(Span<byte> buffer)
    {
        var read = _file.Read(buffer);
        _copy.Write(buffer[..read]);
        return read;
    }

    /// <inheritdoc/>
    public override int Read(byte[] buffer, int offset, int count) => Read(buffer.AsSpan(offset, count));

    /// <inheritdoc/>
    public override void Flush()
    {
    }

    /// <inheritdoc/>
    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    /// <inheritdoc/>
    public override void SetLength(long value) => throw new NotSupportedException();

    /// <inheritdoc/>
    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    /// <inheritdoc/>
    protected override void Dispose(bool disposing)
    {
        if (disposing)
        {
            _file.Dispose();
        }

        base.Dispose(disposing);
    }
}
