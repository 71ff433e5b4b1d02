using System.Text;

namespace QuarterCar.Scenarios.Reading;

/// <summary>Text files, read whole but never more of them than a bound.</summary>
public static class TextFiles
{
    /// <summary>Largest scenario file, bytes; a long one has some ten thousand.</summary>
    public const int LargestScenario = 10_000_000;

    /// <summary>UTF-8 that refuses what is none.</summary>
    public static readonly Encoding StrictUtf8 = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>The text of a file; null where it cannot be read, is too large or no text, with the reason noted.</summary>
    public static string? Read(string path, string name, string wanted, ProblemList problems)
    {
        try
        {
            using var file = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read);
            if (file.CanSeek && file.Length > LargestScenario)
            {
                problems.Note(new Place(name, 0, 0), "", Texts.TooLarge(LargestScenario), wanted);
                return null;
            }

            return Read(file, name, wanted, problems);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            problems.Note(new Place(name, 0, 0), "", Why(path, e), wanted);
            return null;
        }
    }

    /// <summary>Why a file could not be read, in words.</summary>
    public static string Why(string path, Exception e) => e switch
    {
        FileNotFoundException or DirectoryNotFoundException => Texts.NoSuchFile,
        DecoderFallbackException => Texts.NotUtf8,
        _ when Directory.Exists(path) => Texts.ADirectory,
        UnauthorizedAccessException => Texts.NoPermission,
        _ => Texts.Unreadable(e.Message),
    };

    /// <summary>The text of a stream; null where it is too large or no text, with the reason noted.</summary>
    public static string? Read(Stream file, string name, string wanted, ProblemList problems)
    {
        var bytes = new MemoryStream();
        var block = new byte[1 << 16];
        for (int n; (n = file.Read(block)) > 0;)
        {
            bytes.Write(block, 0, n);
            if (bytes.Length > LargestScenario)
            {
                problems.Note(new Place(name, 0, 0), "", Texts.TooLarge(LargestScenario), wanted);
                return null;
            }
        }

        try
        {
            var text = StrictUtf8.GetString(bytes.GetBuffer(), 0, (int)bytes.Length).TrimStart('\ufeff');
            if (!text.Contains('\0', StringComparison.Ordinal))
            {
                return text;
            }
        }
        catch (DecoderFallbackException)
        {
            // Said below, like a zero byte: the file is no text.
        }

        problems.Note(new Place(name, 0, 0), "", Texts.NotUtf8, Texts.Utf8Text);
        return null;
    }
}
