using System.Globalization;

using QuarterCar.Reports.Words;

namespace QuarterCar.Reports.Tests;

/// <summary>Tables on a page of 80 columns.</summary>
public sealed class TextPageTests
{
    // A long remark took the first column's room until it was gone, with the names of the setups in it.
    [Fact]
    public void Of_several_columns_of_words_the_widest_breaks_first()
    {
        using var writer = new StringWriter(CultureInfo.InvariantCulture);
        string remark = string.Join(' ', Enumerable.Repeat("word", 30));
        new TextPage(writer, colour: false).Rows("Heading", [["first setup", "40.0", remark], ["second setup", "41.0", ""]], [1], ["", "length, mm", "remark"], gives: [0, 2]).Flush();
        Assert.Contains("first setup", writer.ToString(), StringComparison.Ordinal);
        Assert.Contains("second setup", writer.ToString(), StringComparison.Ordinal);
        Assert.All(writer.ToString().Split('\n'), l => Assert.InRange(l.TrimEnd('\r').Length, 0, 80));
    }

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
        page.Rows("Heading", [row], [2], gives: [gives]).Flush();
        return writer.ToString().Trim().Split('\n')[1..];
    }
}
