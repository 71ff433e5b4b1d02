using QuarterCar.Reports.Studies;

namespace QuarterCar.Reports.Tests;

/// <summary>Titles and notes come from files that strangers write; a spreadsheet must not compute them.</summary>
public sealed class FormulaTextTests
{
    [Theory]
    [InlineData("=1+1", "'=1+1")]
    [InlineData("+1", "'+1")]
    [InlineData("-1", "'-1")]
    [InlineData("@SUM(A1)", "'@SUM(A1)")]
    [InlineData("\t=1+1", "'\t=1+1")]
    [InlineData("\r=1+1", "'\r=1+1")]
    public void A_text_that_a_spreadsheet_would_compute_gets_an_apostrophe(string text, string cell) => Assert.Equal(cell, StudyCsv.Safe(text));

    [Theory]
    [InlineData("")]
    [InlineData("gap 1.25 in = base")]
    [InlineData("'quoted'")]
    [InlineData("<b>ledge</b>")]
    public void Any_other_text_stays_as_it_is(string text) => Assert.Equal(text, StudyCsv.Safe(text));
}
