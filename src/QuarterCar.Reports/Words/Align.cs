namespace QuarterCar.Reports.Words;

/// <summary>Aligns numbers at their decimal point.</summary>
public static class Align
{
    /// <summary>Pads numbers on both sides so that their points stand below each other in a face with digits of one width.</summary>
    /// <param name="numbers">As text.</param>
    /// <param name="digit">A space as wide as a digit.</param>
    /// <param name="point">A space as wide as a point.</param>
    public static string[] AtPoint(IReadOnlyList<string> numbers, char digit = ' ', char point = ' ')
    {
        var parts = numbers.Select(n => n.Split('.', 2)).ToList();
        int before = parts.Select(p => p[0].Length).DefaultIfEmpty().Max(), after = parts.Select(p => p.Length > 1 ? p[1].Length : 0).DefaultIfEmpty().Max();
        return
        [
            .. parts.Select(p => new string(digit, before - p[0].Length) + p[0] + (after == 0 ? ""
                : p.Length > 1 ? "." + p[1] + new string(digit, after - p[1].Length)
                : point + new string(digit, after))),
        ];
    }
}
