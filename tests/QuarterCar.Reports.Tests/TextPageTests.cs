using System.Globalization;

using QuarterCar.Reports.Words;

namespace QuarterCar.Reports.Tests;

/// <summary>Tables on a page of 80 columns.</summary>
public sealed class TextPageTests
{
    // 14 letters of the set, 3 of the number and two spaces behind set and words leave 59 of 80: 12 words. A set broken in two would read as other springs.
    [Fact]
    public void The_column_that_gives_way_breaks_by_words_and_no_other()
    {
        string words = string.Join(' ', Enumerable.Repeat("word", 20));
        string[] lines = Table(["14.0/52.5/65.7", words, "1.0"], gives: 1);
        Assert.StartsWith("14.0/52.5/65.7  word ", lines[0], StringComparison.Ordinal);
        Assert.Equal(20, lines.Sum(l => l.Split("word").Length - 1));
        Assert.All(lines, l => Assert.True(l.Length <= 80, l));
        Assert.Equal(2, lines.Length);
    }

    private static string[] Table(string[] row, int gives)
    {
        using var writer = new StringWriter(CultureInfo.InvariantCulture) { NewLine = "\n" };
        var page = new TextPage(writer, colour: false);
        page.Rows("Heading", [row], [2], gives: gives).Flush();
        return writer.ToString().Trim().Split('\n')[1..];
    }
}
