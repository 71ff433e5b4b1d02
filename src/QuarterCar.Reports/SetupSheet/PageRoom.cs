using QuarterCar.Scenarios;

namespace QuarterCar.Reports.SetupSheet;

/// <summary>Shares out the height of the one page: text takes what it needs, the drawing the rest, and warnings from the end give way where even that does not do. Heights in mm, from counted letters: a browser lays out the page, so each count is on the long side.</summary>
internal sealed class PageRoom
{
    // Letter paper less its margins; head, captions, table heads, footer, figure note and gaps.
    private const double Page = 262, Fixed = 39, Line = 3.5, RowGap = 1.2, AfterRow = 4.7;

    private const double LeastDrawing = 84, MostDrawing = 124;

    private const int PerPageLine = 112, PerDoLine = 44, PerCautionLine = 58, MostLetters = 330;

    /// <summary>The room of one sheet.</summary>
    public PageRoom(IReadOnlyList<Warning> warnings, IReadOnlyList<SetupStep> steps, int afterRows, int factLetters)
    {
        double rest = Page - Fixed - afterRows * AfterRow - Line * Math.Min(3, Lines(factLetters, PerPageLine))
            - steps.Sum(s => RowGap + Line * Math.Max(s.Numbers.Length, Math.Max(Lines(s.Head.Length + s.Do.Length, PerDoLine), Lines(s.Caution.Length, PerCautionLine))));
        int shown = warnings.Count;
        while (shown > 1 && rest - Needs(Shown(warnings, shown)) < LeastDrawing) shown--;
        Warnings = Shown(warnings, shown);
        Drawing = Math.Clamp(rest - Needs(Warnings), LeastDrawing, MostDrawing);
    }

    /// <summary>Warnings as shown.</summary>
    public string[] Warnings { get; }

    /// <summary>Height of the drawing.</summary>
    public double Drawing { get; }

    private static string[] Shown(IReadOnlyList<Warning> warnings, int shown)
    {
        string more = warnings.Count > shown ? $"And {warnings.Count - shown} more, which check lists." : "";
        return [.. warnings.Take(shown).Select(w => w.Message.Length <= MostLetters ? w.Message : w.Message[..(MostLetters - 1)] + "…"), .. more.Length > 0 ? new[] { more } : []];
    }

    private static double Needs(string[] warnings) => warnings.Length == 0 ? 0 : 2.5 + Line * warnings.Sum(w => Lines(w.Length, PerPageLine));

    private static int Lines(int letters, int perLine) => (letters + perLine - 1) / perLine;
}
