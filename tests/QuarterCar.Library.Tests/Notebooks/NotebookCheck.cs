using System.Globalization;
using System.Text.RegularExpressions;

namespace QuarterCar.LibraryTests.Notebooks;

/// <summary>
/// Holds a fresh run of a notebook against its file: every cell ran, none failed, and each shows the same words and pictures, its numbers within one unit
/// of their last digit (rounding differs between processors).
/// </summary>
internal static partial class NotebookCheck
{
    /// <summary>What is wrong, a line each; nothing where all is well.</summary>
    /// <param name="file">As it is kept.</param>
    /// <param name="ran">From scratch.</param>
    public static IReadOnlyList<string> Complaints(Notebook file, Notebook ran)
    {
        if (ran.Cells.Count == 0 || !ran.Cells.Any(c => c.Ran)) return ["no cell ran"];
        if (ran.Cells.Count != file.Cells.Count) return [$"{ran.Cells.Count} code cells ran of {file.Cells.Count}"];
        return [.. Failures(ran), .. file.Cells.Zip(ran.Cells).SelectMany((pair, i) => Differences(pair.First, pair.Second).Select(d => $"cell {i + 1}: {d}"))];
    }

    /// <summary>Cells that did not run or failed, a line each.</summary>
    public static IEnumerable<string> Failures(Notebook ran) => ran.Cells.SelectMany((cell, i) => (cell.Ran ? [] : new[] { $"cell {i + 1} did not run" })
        .Concat(cell.Outputs.Where(o => o.IsError).Select(o => $"cell {i + 1} failed: {o.Text}")));

    /// <summary>True where two texts have the same words, and numbers within one unit of the last digit shown.</summary>
    public static bool Same(string one, string other)
    {
        if (Words(one) != Words(other)) return false;
        return Number().Matches(one).Zip(Number().Matches(other)).All(p =>
        {
            int digits = Math.Min(Decimals(p.First.Value), Decimals(p.Second.Value));
            return Math.Abs(Value(p.First.Value) - Value(p.Second.Value)) <= (decimal)Math.Pow(10, -digits);
        });
    }

    private static IEnumerable<string> Differences(NotebookCell kept, NotebookCell fresh)
    {
        if (kept.Source != fresh.Source) yield return "another cell ran";
        if (kept.Outputs.Count != fresh.Outputs.Count) yield return $"shows {fresh.Outputs.Count} outputs, the file {kept.Outputs.Count}";
        foreach ((NotebookOutput a, NotebookOutput b) in kept.Outputs.Zip(fresh.Outputs))
        {
            if (a.HasPicture != b.HasPicture) yield return "a picture is missing";
            string[] was = a.Text.Split('\n'), now = b.Text.Split('\n');
            if (was.Length != now.Length) yield return $"shows {now.Length} lines, the file {was.Length}";
            foreach ((string w, string n) in was.Zip(now).Where(p => !Same(p.First, p.Second))) yield return $"shows '{n}', the file '{w}'";
        }
    }

    // Columns move when a number gets a digit more.
    private static string Words(string text) => Blanks().Replace(Number().Replace(text, "#"), " ").Trim();

    private static decimal Value(string number) => decimal.Parse(number.Replace('\u2212', '-'), CultureInfo.InvariantCulture);

    private static int Decimals(string number) => number.Contains('.', StringComparison.Ordinal) ? number.Length - number.IndexOf('.', StringComparison.Ordinal) - 1 : 0;

    [GeneratedRegex(@"(?<!\w)[-\u2212]?\d+(\.\d+)?", RegexOptions.CultureInvariant)]
    private static partial Regex Number();

    [GeneratedRegex(@"\s+", RegexOptions.CultureInvariant)]
    private static partial Regex Blanks();
}
