using QuarterCar.Numerics.Signals;
using QuarterCar.TestKit;

using Xunit;

namespace QuarterCar.Numerics.Tests.Signals;

// check-values section 3; transfer function and table of ISO 2631-1 (R), values computed independently (C).
public class WkGainTests
{
    private static readonly Tolerance s_formula = Tolerance.Share(1.5e-12, "twelve printed digits, the last rounded");

    // WK-1 … WK-8; WK-3 as recomputed with 30 digits (0.967181049886459755): the page has a wrong digit, 0.967181089886.
    [Theory]
    [InlineData(1, 0.482473354411)]
    [InlineData(2, 0.531410583735)]
    [InlineData(4, 0.967181049886)]
    [InlineData(5, 1.038825651986)]
    [InlineData(8, 1.036366215626)]
    [InlineData(10, 0.988405626860)]
    [InlineData(16, 0.768699098350)]
    [InlineData(20, 0.635922953777)]
    public void The_gain_is_the_formulas(double hz, double gain) => s_formula.Holds(gain, WkFilter.Gain(hz));

    // WK-9: the peak, 1.054499436 at about 6.171 Hz.
    [Fact]
    public void The_largest_gain_is_at_6_17_hertz()
    {
        double best = Enumerable.Range(0, 4001).Select(i => 5 + i * 0.0005).MaxBy(WkFilter.Gain);
        new Tolerance(0.001, "the place is given to four digits and the scan's step is 0.0005").Holds(6.171, best);
        new Tolerance(1e-9, "ten printed digits; the peak is flat, half a scan step costs 1e-10").Holds(1.054499436, WkFilter.Gain(best));
    }

    // ISO 2631-1:1997 table 3 (R, public code); equals |H| at the nominal centres.
    [Fact]
    public void The_published_third_octave_table_is_met_at_the_nominal_centres()
    {
        int exceptions = 0;
        foreach (string[] row in CheckValues.Rows("iso2631_wk.csv"))
        {
            double hz = CheckValues.Number(row[1]), printed = CheckValues.Number(row[6]), gain = 1000 * WkFilter.Gain(hz);
            double unit = UnitOfLastDigit(printed);
            new Tolerance(0.75 * unit, "the table is rounded, in two bands carelessly (1.25 Hz and 16 Hz)").Holds(printed, gain, row[1] + " Hz");
            if (Math.Abs(gain - printed) > 0.5 * unit)
                exceptions++;
            Tolerance.Share(1e-6, "seven printed digits").Holds(CheckValues.Number(row[5]), gain, row[1] + " Hz, computed");
        }

        Assert.Equal(2, exceptions);
    }

    // 4 digits from 1000, 3 digits below.
    private static double UnitOfLastDigit(double printed) => printed >= 100 ? 1 : printed >= 10 ? 0.1 : 0.01;
}
