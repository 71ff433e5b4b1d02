using System.Text.RegularExpressions;

namespace QuarterCar.Reports.Files;

/// <summary>Why a file could not be written, in words for the user: without the hidden names that he did not choose.</summary>
public static partial class IoWords
{
    // ENOSPC, EDQUOT of Linux and of the BSDs, and Windows' two words for a full disk.
    private static readonly int[] s_full = [28, 122, 69, unchecked((int)0x80070070), unchecked((int)0x80070027)];

    /// <summary>The reason, without a full stop.</summary>
    public static string Of(Exception e) => e switch
    {
        UnauthorizedAccessException => "permission denied",
        FileNotFoundException when e.Message.Contains(HiddenNames.Prefix, StringComparison.Ordinal) => "no file can be made there",
        _ => HiddenName().Replace(e.Message, "").TrimEnd('.'),
    };

    /// <summary>True where the place is right but full, which is nobody's mistake.</summary>
    public static bool IsFull(Exception? e) => e is IOException && s_full.Contains(e.HResult);

    [GeneratedRegex(@" : '[^']*/\" + HiddenNames.Prefix + @"[^']*'$", RegexOptions.CultureInvariant | RegexOptions.Singleline)]
    private static partial Regex HiddenName();
}
