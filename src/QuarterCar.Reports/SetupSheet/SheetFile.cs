using System.Text;

using QuarterCar.Reports.Files;

namespace QuarterCar.Reports.SetupSheet;

/// <summary>The file of a sheet: written beside its place and moved in whole, folders made where they are missing; a file that is not a sheet of ours is never replaced.</summary>
public static class SheetFile
{
    private static readonly UTF8Encoding s_utf8 = new(encoderShouldEmitUTF8Identifier: false);

    private static readonly string[] s_devices = ["/dev/", "/proc/", "/sys/"];

    // The mark stands in the page's head, well within this.
    private const int HeadLength = 400;

    /// <summary>What speaks against writing there, in words for the user; null where nothing does but a full disk, which writing itself will meet. An empty file may be replaced: there is nothing in it to lose.</summary>
    public static string? Objection(string file)
    {
        if (string.IsNullOrWhiteSpace(file)) return "found an empty name; wanted a file's, for example sheet.html";
        if (Directory.Exists(file)) return $"{file}: found a directory; wanted a file's name, for example {Path.Combine(file, "sheet.html")}";
        try
        {
            if (IsDevice(file)) return $"{file}: found something that is no file; wanted a file's name, for example sheet.html";
            string target = WholeFile.Target(file); // the file that would be replaced, and not what the system makes of a link
            if (File.Exists(target) && !IsOurs(target)) return $"{file}: found a file that is no setup sheet of ours; wanted a name that is free: nothing else is overwritten";
            Named(file);
            WholeFile.RefuseLink(file);
            string probe = Path.Combine(NearestFolder(file), HiddenNames.Probe + Guid.NewGuid().ToString("N"));
            using (new FileStream(probe, FileMode.CreateNew, FileAccess.Write)) { }
            File.Delete(probe);
            return null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or NotSupportedException or ArgumentException)
        {
            return IoWords.IsFull(e) ? null : $"{file}: cannot be written: {IoWords.Of(e)}";
        }
    }

    /// <summary>Writes the sheet, whole or not at all.</summary>
    /// <exception cref="IOException">It could not be written; what was there before still is.</exception>
    public static void Write(string file, string page)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(Path.GetFullPath(file))!);
        WholeFile.Write(file, s_utf8.GetBytes(page), replace: true);
    }

    private static bool IsOurs(string file)
    {
        using var reader = new StreamReader(file, s_utf8);
        char[] head = new char[HeadLength];
        string text = new(head, 0, reader.ReadBlock(head));
        return text.Length == 0 || text.Contains(SheetPage.Mark, StringComparison.Ordinal);
    }

    // A rename would put the sheet in the place of the device or pipe itself.
    private static bool IsDevice(string file)
    {
        string target = WholeFile.Target(file);
        if (s_devices.Any(d => target.StartsWith(d, StringComparison.Ordinal))) return true;
        if (!File.Exists(target) || new FileInfo(target).Length > 0) return false;
        using var opened = new FileStream(target, FileMode.Open, FileAccess.ReadWrite, FileShare.ReadWrite); // for both, or a pipe would wait for a writer
        return !opened.CanSeek;
    }

    // A name that is too long is no name; one that nothing has yet is.
    private static void Named(string file)
    {
        try
        {
            File.GetAttributes(file);
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            // It will be made.
        }
    }

    private static string NearestFolder(string file)
    {
        string folder = Path.GetDirectoryName(Path.GetFullPath(file))!;
        while (!Directory.Exists(folder) && Path.GetDirectoryName(folder) is { } above) folder = above;
        return folder;
    }
}
