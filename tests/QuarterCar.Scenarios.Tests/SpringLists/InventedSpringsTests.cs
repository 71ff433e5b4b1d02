using System.Globalization;
using System.Text;

using CsvHelper;

using QuarterCar.Model.Springs;
using QuarterCar.Scenarios.SpringLists;

namespace QuarterCar.Scenarios.Tests.SpringLists;

/// <summary>The lists that ship: every row by the formulas of check values section 4 (EN 13906-1:2013, from memory, numbers computed), written out here a second time.</summary>
public sealed class InventedSpringsTests
{
    private const double Inch = 0.0254, PoundForcePerInch = 0.45359237 * 9.80665 / Inch;

    // Oil-tempered wire by EN 10270-2: G; tensile strength assumed; 0.56 of it allowed at solid by EN 13906-1. All from memory.
    private const double G = 79.5e9, AllowedAtSolid = 0.56 * 1650e6;

    public static TheoryData<string> Files => ["invented-springs.csv", "invented-tenders.csv"];

    [Theory, MemberData(nameof(Files))]
    public void Every_row_has_the_rate_and_solid_length_of_its_wire_and_coils_and_stays_within_the_allowed_stress(string file)
    {
        using var csv = CsvReader.Create(InventedSprings.Open(file), new CsvReaderOptions { CommentPrefix = '#' });
        int rows = 0;
        while (csv.Read())
        {
            double Cell(string column) => double.Parse(csv.GetString(column), CultureInfo.InvariantCulture);
            double rate = Cell("rate_lbf_in") * PoundForcePerInch, free = Cell("free_length_in") * Inch, solid = Cell("solid_length_in") * Inch;
            double d = Cell("wire_diameter_mm") / 1e3, mean = Cell("mean_diameter_mm") / 1e3, n = Cell("active_coils");
            string name = csv.GetString("name");
            Assert.StartsWith("invented", name, StringComparison.Ordinal);
            // Coils are printed to four decimals: the rate hangs on them by that share.
            Assert.Equal(rate, G * Math.Pow(d, 4) / (8 * Math.Pow(mean, 3) * n), rate * 0.6e-4 / n);
            // Solid length to four decimals of an inch, and the coils' rounding times the wire.
            Assert.Equal((n + 2) * d, solid, 0.51e-4 * Inch + 0.51e-4 * d);
            Assert.Equal(Cell("inner_diameter_in") * Inch + d, mean, 1e-12);
            // The stress is the recipe's before rounding: 1e-4 is what the rounding of solid length and coils does to it at most.
            Assert.InRange(8 * rate * (free - solid) * mean / (Math.PI * d * d * d), 0, AllowedAtSolid * (1 + 1e-4));
            Assert.InRange(mean / d, 5, 20);
            Assert.InRange(solid / free, 0, 0.6);
            rows++;
        }

        Assert.InRange(rows, 10, 1000);
    }

    [Theory, MemberData(nameof(Files))]
    public void The_file_says_of_itself_that_it_is_invented_and_not_to_be_bought_from(string file)
    {
        using var reader = new StreamReader(InventedSprings.Open(file));
        string first = reader.ReadLine()!;
        Assert.Contains("INVENTED", first, StringComparison.Ordinal);
        Assert.Contains("Not to be bought from", first, StringComparison.Ordinal);
    }

    [Fact]
    public void The_lists_are_what_their_recipe_makes()
    {
        double[] inner = [2.5, 3.0, 3.75];
        Assert.Equal(Rows("invented-springs.csv"), Made("invented", inner[..1], Steps(8, 14, 2), Steps(75, 400, 25))
            + Made("invented", inner[1..2], Steps(8, 18, 2), Steps(75, 500, 25)) + Made("invented", inner[2..], Steps(10, 18, 2), Steps(100, 600, 50)));
        Assert.Equal(Rows("invented-tenders.csv"), Made("invented tender", inner, Steps(3, 6, 1), Steps(40, 100, 20)));
    }

    // Common practice, no source: 2.5, 3.0 and 3.75 in springs on 2.0, 2.5 and 3.0 in bodies.
    [Theory, InlineData(2.0, 2.5), InlineData(2.5, 3.0), InlineData(3.0, 3.75), InlineData(2.25, 3.0), InlineData(4.0, 3.75)]
    public void A_body_takes_springs_that_are_half_an_inch_wider(double body, double inner)
    {
        Assert.Equal(inner * Inch, InventedSprings.InnerFor(body * Inch), 1e-12);
        Assert.NotEmpty(InventedSprings.Springs().OfInnerDiameter(inner * Inch).Springs);
        Assert.NotEmpty(InventedSprings.Tenders().OfInnerDiameter(inner * Inch).Springs);
    }

    [Fact]
    public void Without_a_body_the_list_of_a_2_5_in_body_is_taken() => Assert.Equal(3.0 * Inch, InventedSprings.InnerFor(null), 1e-12);

    private static int[] Steps(int from, int to, int step) => [.. Enumerable.Range(0, (to - from) / step + 1).Select(i => from + i * step)];

    private static string Rows(string file)
    {
        using var reader = new StreamReader(InventedSprings.Open(file));
        return string.Concat(reader.ReadToEnd().Split('\n').SkipWhile(l => l.StartsWith('#')).Skip(1).Where(l => l.Length > 0).Select(l => l + "\n"));
    }

    private static string Made(string tag, double[] inner, int[] lengths, int[] rates)
    {
        var text = new StringBuilder();
        foreach (double di in inner)
        {
            foreach (int length in lengths)
            {
                foreach (int rate in rates)
                {
                    if (Wound(di * Inch, length * Inch, rate * PoundForcePerInch) is { } s)
                        text.Append(CultureInfo.InvariantCulture, $"{tag} {di:F2} x {length} x {rate},{rate},{length},{s.SolidLengthGround() / Inch:F4},{di:F2},{s.Wire * 1e3:F2},{s.Mean * 1e3:F2},{s.Active:F4}\n");
                }
            }
        }

        return text.ToString();
    }

    // The thinnest wire, in steps of 0.25 mm from 4 mm, whose stress at solid is allowed.
    private static HelicalSpring? Wound(double inner, double free, double rate)
    {
        for (int step = 16; step < 100; step++)
        {
            double d = step * 0.25e-3, mean = inner + d;
            var spring = new HelicalSpring(d, mean, HelicalSpring.ActiveFor(rate, d, mean));
            double travel = free - spring.SolidLengthGround();
            if (travel <= 0)
                return null;
            if (spring.ShearStress(rate * travel) <= AllowedAtSolid)
                return spring.Index is >= 5 and <= 20 && spring.Active >= 2 && spring.SolidLengthGround() <= 0.6 * free ? spring : null;
        }

        return null;
    }
}
