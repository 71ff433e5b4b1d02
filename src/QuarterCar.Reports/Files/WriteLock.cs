using System.Diagnostics;

namespace QuarterCar.Reports.Files;

/// <summary>The right to write in one place, held by one run at a time: a file that is open for its holder alone and goes with it. The system gives it back when the holder is killed, so that nobody is locked out by a run that is no more.</summary>
internal sealed class WriteLock : IDisposable
{
    // EWOULDBLOCK of Linux and of the BSDs, and Windows' sharing violation.
    private const int HeldOnLinux = 11, HeldOnBsd = 35, HeldOnWindows = unchecked((int)0x80070020);

    private const int MostLength = 1 << 16;

    private static readonly TimeSpan s_pause = TimeSpan.FromMilliseconds(20);

    private readonly string _path;
    private readonly FileStream _file;
    private readonly int _length = Random.Shared.Next(1, MostLength);

    private WriteLock(string path, FileStream file) => (_path, _file) = (path, file);

    /// <summary>Takes it.</summary>
    /// <param name="path">The file, in a folder that is there.</param>
    /// <param name="patience">How long to wait for somebody else.</param>
    /// <returns>Null where somebody else held it all the time.</returns>
    /// <exception cref="IOException">No file can be made there, or what is there is no plain file.</exception>
    /// <exception cref="UnauthorizedAccessException">No file may be made there.</exception>
    public static WriteLock? Take(string path, TimeSpan patience)
    {
        var clock = Stopwatch.StartNew();
        while (true)
        {
            if (Try(path) is { } taken) return taken;
            if (clock.Elapsed >= patience) return null;
            Thread.Sleep(s_pause);
        }
    }

    /// <summary>Refuses a link in the lock's place: the folder may be a stranger's, and what the link leads to would be opened, even made, and its length changed. No run of ours leaves one.</summary>
    /// <param name="path">The file.</param>
    /// <exception cref="IOException">There is one; the message names it.</exception>
    public static void RefuseLink(string path)
    {
        if (new FileInfo(path).LinkTarget is not null) throw new IOException($"found a link named {Path.GetFileName(path)} there, through which nothing is written; wanted it away");
    }

    /// <summary>Gives it back.</summary>
    public void Dispose()
    {
        // Unix lets go of a name while the file is still open: nobody then takes the lock of a file that is about to go. Windows does so only afterwards.
        if (!OperatingSystem.IsWindows()) Remove();
        _file.Dispose();
        if (OperatingSystem.IsWindows()) Remove();
    }

    private static WriteLock? Try(string path)
    {
        RefuseLink(path);
        FileStream file;
        try
        {
            file = new FileStream(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None, bufferSize: 0);
        }
        catch (IOException e) when (e.HResult is HeldOnLinux or HeldOnBsd or HeldOnWindows)
        {
            return null;
        }

        var taken = new WriteLock(path, file);
        try
        {
            // Nothing is changed of what came into the place meanwhile.
            RefuseLink(path);
            if (!file.CanSeek) throw new IOException($"found {Path.GetFileName(path)} there, which is no file; wanted it away");

            // Between finding the file and locking it its last holder may have removed it; a length that only this holder knows tells whether the name still leads here.
            file.SetLength(taken._length);
            if (taken.IsInPlace()) return taken;
        }
        catch
        {
            file.Dispose();
            throw;
        }

        file.Dispose();
        return null;
    }

    private bool IsInPlace() => new FileInfo(_path) is { Exists: true } found && found.Length == _length;

    private void Remove()
    {
        try
        {
            if (OperatingSystem.IsWindows() || IsInPlace()) File.Delete(_path);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // It stays, hidden and empty of meaning; the next run takes it over.
        }
    }
}
