namespace QuarterCar.Reports.Files;

/// <summary>A file for what is too large for memory, gone when it is closed and, but on Windows, when the program is killed.</summary>
internal static class ScratchFile
{
    /// <summary>Makes one among the user's temporary files.</summary>
    /// <exception cref="IOException">None can be made there; the message names the folder.</exception>
    /// <exception cref="UnauthorizedAccessException">Likewise.</exception>
    public static FileStream Open()
    {
        string path = Path.Combine(Path.GetTempPath(), "quartercar-" + Guid.NewGuid().ToString("N"));
        var file = new FileStream(
            path, new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.ReadWrite, Options = OperatingSystem.IsWindows() ? FileOptions.DeleteOnClose : FileOptions.None, BufferSize = 1 << 16 });
        if (!OperatingSystem.IsWindows()) File.Delete(path); // Unix keeps a file without a name for as long as it is open
        return file;
    }
}
