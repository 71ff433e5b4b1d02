using System.Text;

using QuarterCar.Scenarios.SpringLists;

namespace QuarterCar.Scenarios.Tests.SpringLists;

public sealed class SpringListReaderTests
{
    private const double Inch = 0.0254, PoundForcePerInch = 0.45359237 * 9.80665 / Inch;

    [Theory]
    [InlineData("rate_lbf_in,free_length_in,solid_length_in", "150,12,4.5", 150 * PoundForcePerInch, 12 * Inch, 4.5 * Inch)]
    [InlineData("solid_length_mm,rate_N_mm,free_length_mm", "110,26.3,305", 26300, 0.305, 0.110)]
    [InlineData("rate_N_m,free_length_m,solid_length_in", "26300,0.305,4", 26300, 0.305, 4 * Inch)]
    public void Each_column_has_its_own_unit(string header, string row, double rate, double free, double solid)
    {
        var spring = Assert.Single(Read($"# a remark\n{header}\n{row}\n").List!.Springs);
        Assert.Equal((rate, free, solid), (spring.Rate, spring.FreeLength, spring.SolidLength), new Close());
    }

    [Fact]
    public void Optional_columns_may_be_empty_in_a_row_and_other_columns_are_left_alone()
    {
        var rows = Read("name,rate_N_mm,free_length_mm,solid_length_mm,inner_diameter_mm,colour\nA,20,300,100,76,red,,\nB,20,300,100,,\n").List!.Rows;
        Assert.Equal(["A", "B"], rows.Select(r => r.Name));
        Assert.Equal([0.076, null], rows.Select(r => r.Spring.InnerDiameter));
        Assert.Equal([2, 3], rows.Select(r => r.Line));
    }

    [Theory]
    [InlineData("free_length_in,solid_length_in\n12,4\n", ":1: rate: found none in the header")]
    [InlineData("rate,free_length_in,solid_length_in\n150,12,4\n", ":1: rate: found a column whose name does not end in a unit")]
    [InlineData("rate_lbf_in,free_length_kg,solid_length_in\n150,12,4\n", ":1: free_length_kg: found a column whose name")]
    [InlineData("rate_lbf_in,rate_N_mm,free_length_in,solid_length_in\n150,26,12,4\n", "one column of rate, in one unit")]
    [InlineData("rate_lbf_in,free_length_in,solid_length_in,inner_diamter_in\n150,12,4,3\n", "inner_diameter_in")]
    [InlineData("rate_lbf_in,free_length_in,solid_length_in\nsoft,12,4\n", ":2: rate_lbf_in: found 'soft'")]
    [InlineData("rate_lbf_in,free_length_in,solid_length_in\nNaN,12,4\n", ":2: rate_lbf_in: found 'NaN'")]
    [InlineData("rate_lbf_in,free_length_in,solid_length_in\n150,,4\n", ":2: free_length_in: found nothing")]
    [InlineData("rate_lbf_in,free_length_in,solid_length_in\n150,12\n", ":2: solid_length_in: found nothing")]
    [InlineData("rate_lbf_in,free_length_in,solid_length_in\n150,12,4\n200,6,6\n", ":3: solid_length_in: found '6'")]
    [InlineData("rate_lbf_in,free_length_in,solid_length_in\n150,12,4\n150,12,4\n", ":3: found the same spring as in line 2")]
    [InlineData("rate_lbf_in,free_length_in,solid_length_in\n-150,12,4\n", "a finite number above 0")]
    [InlineData("rate_lbf_in,free_length_in,solid_length_in\n", "found no spring below the header")]
    [InlineData("rate_N_mm,free_length_mm,solid_length_mm\n28,305,5,110\n", ":2: found 4 cells; wanted 3, one a column (decimals with a point")] // 305,5 mm free: 5 mm solid
    [InlineData("", "found an empty file")]
    public void A_mistake_is_named_with_its_row_and_column(string text, string expected)
    {
        var (list, problems) = Read(text);
        Assert.Null(list);
        Assert.Contains(expected, problems, StringComparison.Ordinal);
    }

    [Fact]
    public void All_mistakes_of_a_list_are_found_at_once()
    {
        string problems = Read("rate_lbf_in,free_length_in,solid_length_in\nsoft,12,13\nNaN,,4\n").Problems;
        Assert.Equal(4, problems.Split('\n').Length);
    }

    [Fact]
    public void More_rows_than_are_read_are_refused()
    {
        string rows = string.Concat(Enumerable.Range(1, SpringListReader.MostRows + 1).Select(i => FormattableString.Invariant($"{i},300,100\n")));
        Assert.Contains("more than 10,000 springs", Read("rate_N_mm,free_length_mm,solid_length_mm\n" + rows).Problems, StringComparison.Ordinal);
    }

    private static (SpringList? List, string Problems) Read(string text)
    {
        var problems = new ProblemList();
        using var stream = new MemoryStream(Encoding.UTF8.GetBytes(text));
        var list = SpringListReader.Read(stream, "list.csv", problems);
        return (list, problems.Count == 0 ? "" : string.Join('\n', problems.ToImmutable()));
    }

    /// <summary>To rounding of the unit's factor.</summary>
    private sealed class Close : IEqualityComparer<(double A, double B, double C)>
    {
        public bool Equals((double A, double B, double C) x, (double A, double B, double C) y) => Near(x.A, y.A) && Near(x.B, y.B) && Near(x.C, y.C);

        public int GetHashCode((double A, double B, double C) obj) => 0;

        private static bool Near(double a, double b) => Math.Abs(a - b) <= 1e-15 * Math.Abs(a) * 4;
    }
}
