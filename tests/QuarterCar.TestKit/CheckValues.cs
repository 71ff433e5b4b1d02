using System.Globalization;

namespace QuarterCar.TestKit;

/// <summary>The reference tables under tests/data/check-values: comma-separated, a header line, point as decimal mark.</summary>
public static class CheckValues
{
    /// <summary>The rows of a table as texts, header left out.</summary>
    /// <param name="file">File name.</param>
    public static IReadOnlyList<string[]> Rows(string file) =>
        [.. File.ReadLines(Path.Combine(AppContext.BaseDirectory, "check-values", file)).Skip(1).Select(Fields)];

    /// <summary>A text as a number.</summary>
    public static double Number(string text) => double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);

    private static string[] Fields(string line)
    {
        var fields = new List<string>();
        int start = 0;
        bool quoted = false;
        for (int i = 0; i <= line.Length; i++)
        {
            if (i < line.Length && line[i] == '"')
                quoted = !quoted;
            if (i < line.Length && (quoted || line[i] != ','))
                continue;
            fields.Add(line[start..i].Trim('"'));
            start = i + 1;
        }

        return [.. fields];
    }
}
