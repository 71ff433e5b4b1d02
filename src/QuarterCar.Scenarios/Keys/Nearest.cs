namespace QuarterCar.Scenarios.Keys;

/// <summary>The nearest known word to a mistyped one.</summary>
public static class Nearest
{
    /// <summary>Edits allowed: with more, the suggestion would be silly.</summary>
    public const int MostEdits = 3;

    /// <summary>The known word with the fewest edits (insert, delete, replace), ties by name; null where none is near.</summary>
    public static string? Find(string word, IEnumerable<string> known)
    {
        string? best = null;
        var least = Math.Min(MostEdits + 1, Math.Max(word.Length, 1));
        foreach (var candidate in known.Order(StringComparer.Ordinal))
        {
            var edits = Math.Abs(candidate.Length - word.Length) > MostEdits ? int.MaxValue : Edits(word, candidate);
            if (edits < Math.Min(least, candidate.Length)) // something of the word has to be left: 'AB' is not near to 'A'..'H'
            {
                (best, least) = (candidate, edits);
            }
        }

        return best;
    }

    /// <summary>Levenshtein distance (Wagner, Fischer, J. ACM 21(1), 1974, 168–173).</summary>
    public static int Edits(string a, string b)
    {
        var row = Enumerable.Range(0, b.Length + 1).ToArray();
        for (var i = 1; i <= a.Length; i++)
        {
            var diagonal = row[0];
            row[0] = i;
            for (var j = 1; j <= b.Length; j++)
            {
                var replaced = diagonal + (a[i - 1] == b[j - 1] ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.Min(replaced, Math.Min(row[j], row[j - 1]) + 1);
            }
        }

        return row[b.Length];
    }
}
