namespace QuarterCar.Scenarios;

/// <summary>
/// Text that strangers wrote, before it is shown: what a terminal obeys instead of showing (control characters), what turns the reading order of a line
/// around (Unicode Standard Annex 9: overrides, embeddings, isolates) and what breaks a line is never handed on.
/// </summary>
public static class PlainText
{
    /// <summary>True for a character that is shown and does nothing else.</summary>
    public static bool IsShown(char c) => !char.IsControl(c) && c is not ('\u2028' or '\u2029' or '\ufeff' or (>= '\u202a' and <= '\u202e') or (>= '\u2066' and <= '\u2069'));

    /// <summary>True for a line of text that is shown as it is, no half of a surrogate pair in it.</summary>
    public static bool IsLine(string text)
    {
        for (var i = 0; i < text.Length; i++)
        {
            if (char.IsSurrogate(text[i]) ? i + 1 == text.Length || !char.IsSurrogatePair(text[i], text[++i]) : !IsShown(text[i]))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>The text on one line, a blank for each character that is not shown.</summary>
    public static string Line(string text) => text.All(IsShown) ? text : string.Concat(text.Select(c => IsShown(c) ? c : ' '));
}
