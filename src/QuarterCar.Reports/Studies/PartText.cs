using System.Text;

using QuarterCar.Scenarios.Reading;

namespace QuarterCar.Reports.Studies;

/// <summary>Files of a part, which may be a stranger's: plain ones alone are read, and never a line without end.</summary>
internal static class PartText
{
    // A setup's line, characters: its title and its values come from a row of at most 1 MiB, its figures take some thousands.
    private const int LongestLine = 1 << 24;

    private const int BlockLength = 1 << 16;

    /// <summary>Opens a file. A link may lead to other files of this machine, and a pipe, which has no length, would be waited for.</summary>
    /// <param name="file">The file.</param>
    /// <param name="wanted">What it should be.</param>
    /// <exception cref="FormatException">It is none to be read; the message says why.</exception>
    public static FileStream Open(string file, string wanted)
    {
        try
        {
            var found = new FileInfo(file);
            if (found.LinkTarget is not null) throw new FormatException($"{file}: found a link; wanted {wanted}");
            if (found is { Exists: true, Length: 0 }) throw new FormatException($"{file}: found an empty file; wanted {wanted}");
            return new FileStream(file, FileMode.Open, FileAccess.Read, FileShare.Read);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw Unreadable(file, wanted, e);
        }
    }

    /// <summary>Its lines, read as they are asked for.</summary>
    /// <param name="file">The file.</param>
    /// <param name="wanted">What it should be.</param>
    /// <exception cref="FormatException">It is none to be read, or has a line that is none of ours.</exception>
    public static IEnumerable<string> Lines(string file, string wanted)
    {
        using var reader = new StreamReader(Open(file, wanted), Encoding.UTF8);
        var line = new StringBuilder();
        var block = new char[BlockLength];
        for (int length; (length = Read(reader, block, file, wanted)) > 0;)
        {
            int from = 0;
            for (int end; (end = block.AsSpan(from, length - from).IndexOf('\n')) >= 0; from += end + 1)
            {
                yield return line.Append(block, from, end).ToString();
                line.Clear();
            }

            line.Append(block, from, length - from);
            if (line.Length > LongestLine) throw new FormatException(FormattableString.Invariant($"{file}: found a line of more than {LongestLine:#,0} characters; wanted {wanted}"));
        }

        if (line.Length > 0) yield return line.ToString();
    }

    /// <summary>Says that a file cannot be read.</summary>
    public static FormatException Unreadable(string file, string wanted, Exception e) => new($"{file}: found {TextFiles.Why(file, e)}; wanted {wanted}", e);

    private static int Read(StreamReader reader, char[] block, string file, string wanted)
    {
        try
        {
            return reader.Read(block);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw Unreadable(file, wanted, e);
        }
    }
}
