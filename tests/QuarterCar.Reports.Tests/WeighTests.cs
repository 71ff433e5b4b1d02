using System.Globalization;
using System.Text.Json;

using QuarterCar.Model;
using QuarterCar.Model.Selection;
using QuarterCar.Reports.Json;
using QuarterCar.Reports.Words;
using QuarterCar.Scenarios;

namespace QuarterCar.Reports.Tests;

/// <summary>What `weigh` shows, on screen and as JSON.</summary>
public sealed class WeighTests
{
    private static MeasuredSpring Spring(string position, double rate, double free, params double[] loaded) => new(position, rate, free, [.. loaded]);

    private static MeasuredCorner Corner(string? name, double upperLoaded, double lowerLoaded) =>
        new(name, [Spring("upper", 20e3, 0.3, upperLoaded), Spring("lower", 40e3, 0.35, lowerLoaded)]);

    private static WeighResult Weighed(params MeasuredCorner[] corners) => Weigh.Of(corners, new WeighErrors());

    private static string Screen(WeighResult result, UnitSystem units = UnitSystem.Si)
    {
        using var writer = new StringWriter(CultureInfo.InvariantCulture) { NewLine = "\n" };
        WeighText.Write(result, units, writer);
        return writer.ToString().Replace('\u00a0', ' ');
    }

    private static JsonElement Json(WeighResult result)
    {
        using var stream = new MemoryStream();
        WeighJson.Write(result, UnitSystem.Si, stream);
        return JsonDocument.Parse(stream.ToArray()).RootElement;
    }

    private static string Keys(JsonElement element) => string.Join(',', element.EnumerateObject().Select(p => p.Name));

    private static string[] Codes(MeasuredCorner corner) => [.. Json(Weighed(corner)).GetProperty("corners")[0].GetProperty("warnings").EnumerateArray().Select(w => w.GetProperty("code").GetString()!)];

    [Fact]
    public void Keys_are_those_of_the_contract_in_its_order()
    {
        JsonElement root = Json(Weighed(Corner("front left", 0.25, 0.3), Corner("front right", 0.2, 0.3)));
        Assert.Equal("corners,differences", Keys(root));
        JsonElement corner = root.GetProperty("corners")[0];
        Assert.Equal("name,spring_load_N,uncertainty_N,springs,friction_N,gas_force_N,coilover_load_N,sprung_weight_N,warnings", Keys(corner));
        Assert.Equal("position,compression_m,load_N,uncertainty_N", Keys(corner.GetProperty("springs")[0]));
        Assert.Equal("code,message", Keys(corner.GetProperty("warnings")[0]));
        Assert.Equal("left,right,difference_N,uncertainty_N", Keys(Assert.Single(root.GetProperty("differences").EnumerateArray())));
    }

    [Fact]
    public void What_was_not_measured_is_null()
    {
        JsonElement corner = Json(Weighed(Corner(null, 0.2, 0.3))).GetProperty("corners")[0];
        foreach (string key in (string[])["name", "friction_N", "gas_force_N", "sprung_weight_N"]) Assert.Equal(JsonValueKind.Null, corner.GetProperty(key).ValueKind);
        Assert.Equal(corner.GetProperty("spring_load_N").GetDouble(), corner.GetProperty("coilover_load_N").GetDouble());
    }

    [Fact]
    public void Screen_opens_with_the_load_and_its_uncertainty()
    {
        // 2000 N, ±√(8800·30400/39200) = 82.6 N; at a ratio of 0.9 it is 1800 ± 74 N.
        string screen = Screen(Weighed(Corner(null, 0.2, 0.3) with { MotionRatio = 0.9 }));
        Assert.StartsWith("2000 ± 83 N on the springs, 1800 ± 74 N of sprung weight at the wheel.\n", screen, StringComparison.Ordinal);
    }

    [Fact]
    public void Screen_reads_as_a_page()
    {
        var gas = new GasData(1.5e6, Math.Sqrt(3e-4 * 4 / Math.PI), 0.35 * 3e-4); // 642 N at 0.1 m
        var left = new MeasuredCorner(
            "rear left", [Spring("upper", 20e3, 0.3, 0.202, 0.198), Spring("lower", 40e3, 0.35, 0.301, 0.299)], MotionRatio: 0.9, ShaftShowing: 0.2, Stroke: 0.3, Gas: gas);
        string screen = Screen(Weighed(left));

        // Lengths to 1.5 mm: √(3400·8800/12 200) = 49.5 N; rates to 1 %: √(7600·29 200/36 800) = 77.7 N.
        string wanted = """
            rear left: 2000 ± 83 N on the springs, 2642 ± 83 N on the coilover with its gas,
            2378 ± 74 N of sprung weight at the wheel.

            rear left
            Load on the springs                              2000  ± 83  N
            Gas force, standing                               642        N
            Load on the coilover                             2642  ± 83  N
            Sprung weight at the wheel                       2378  ± 74  N
            Friction, half of settled from above less below    40        N

            What decides it: the lengths. Read to ± 1.5 mm in place of 3.0 mm they give ± 50
            N in place of 83 N.

            Springs, rear left
                   compression, mm  load, N  ±, N
            upper  100.0            2000      94
            lower   50.0            2000     174

            The uncertainty is that of the springs: errors of gas and motion ratio are not
            in it.
            """;
        Assert.StartsWith(wanted + "\n\nMeasure on level ground", screen, StringComparison.Ordinal);
    }

    [Fact]
    public void Upper_that_reads_low_puts_no_mean_on_the_screen()
    {
        // Upper 1000 N, lower 2000 N: their mean, weighted by 1/6436 and 1/28 036 or so, is near 1200 N.
        WeighResult result = Weighed(Corner("front left", 0.25, 0.3));
        string screen = Screen(result), flat = screen.ReplaceLineEndings(" ");
        Assert.Contains("front left: the springs do not read the same, so their mean is no load. Most likely the slider rests on the stop nut; then the lower spring alone counts: 2000 ± 174 N", flat, StringComparison.Ordinal);
        string mean = result.Corners[0].Loads.SpringLoad.ToString("F0", CultureInfo.InvariantCulture);
        Assert.DoesNotContain(mean, screen, StringComparison.Ordinal);
        Assert.Contains("(springs_disagree)", flat, StringComparison.Ordinal);
    }

    [Fact]
    public void Json_gives_the_load_that_the_screen_gives_and_no_difference_where_the_screen_has_none()
    {
        // The lower's 2000 N alone, ±√(2·(40·3)² + (2 % of 2000)²); the upper reads 1000. The other corner's springs agree on 2000.
        JsonElement root = Json(Weighed(Corner("front left", 0.25, 0.3) with { MotionRatio = 0.9 }, Corner("front right", 0.2, 0.3)));
        JsonElement left = root.GetProperty("corners")[0], difference = root.GetProperty("differences")[0];
        foreach ((string key, double wanted) in new[] { ("spring_load_N", 2000), ("coilover_load_N", 2000), ("sprung_weight_N", 1800), ("uncertainty_N", Math.Sqrt(28_800 + 40 * 40.0)) })
            Assert.Equal(wanted, left.GetProperty(key).GetDouble(), 1e-9 * wanted);
        Assert.Contains("the load given is the lower spring's alone, 2000 ± 174 N", left.GetProperty("warnings")[0].GetProperty("message").GetString(), StringComparison.Ordinal);
        foreach (string key in (string[])["difference_N", "uncertainty_N"]) Assert.Equal(JsonValueKind.Null, difference.GetProperty(key).ValueKind);
    }

    [Fact]
    public void Scatter_within_the_errors_is_no_disagreement_and_leaves_the_advice()
    {
        // 28·75.5 = 2114 and 39·58.4 = 2277.6 N, plain mean 2195.8: ±√(2·(28·3)² + 43.9²) = 127 and ±171 N, together 213 where they are 164 apart.
        // χ² = (1.96·163.6/212.9)², its root 1.51. As read 1/√(1/126.7² + 1/171.2²) = 102 N; lengths to 1.5 mm: 73.9 and 93.7, together 58 N.
        var corner = new MeasuredCorner(null, [Spring("upper", 28e3, 0.305, 0.2295), Spring("lower", 39e3, 0.356, 0.2976)]);
        Assert.Contains(
            "What decides it: the springs scatter within their errors, but more than usual, which widens the uncertainty 1.5 times; then the lengths: read to ± 1.5 mm in place of 3.0 mm "
            + "they give, before it is widened, ± 58 N in place of 102 N.",
            Flat(corner), StringComparison.Ordinal);
        // Lower below the upper: no cause stands out. 3000 and 2000 N, mean 2500: ±√(7200 + 50²) = 98.5 and ±177 N, together 202; 1.96·1000/202.4 = 9.7.
        Assert.Contains("What decides it: the springs differ more than their errors explain, which widens the uncertainty 9.7 times.", Flat(Corner(null, 0.15, 0.3)), StringComparison.Ordinal);
    }

    [Fact]
    public void A_widening_that_reads_as_one_is_not_told_and_stays_in_both_numbers()
    {
        // 2000 and 2104 N, mean 2052: u² = 2·60² + 41.04² = 8884.3 and 2·120² + 41.04² = 30 484.3, together 198.4 N: 1.96·104/198.4 = 1.027. As read
        // 1/√(1/8884.3 + 1/30 484.3) = 82.94 N, shown 85.2; lengths to 1.5 mm: √(1/(1/3484.3 + 1/8884.3)) = 50.03, shown 51.4.
        string screen = Flat(Corner(null, 0.2, 0.2974));
        Assert.Contains("± 85 N on the springs", screen, StringComparison.Ordinal);
        Assert.Contains("What decides it: the lengths. Read to ± 1.5 mm in place of 3.0 mm they give ± 51 N in place of 85 N.", screen, StringComparison.Ordinal);
        Assert.DoesNotContain("1.0 times", screen, StringComparison.Ordinal);
    }

    private static string Flat(MeasuredCorner corner) => Screen(Weighed(corner)).ReplaceLineEndings(" ");

    // 28 N/mm at 74 and 77 mm: 2114 N; 39 N/mm at 74 mm: 2886 N. The upper tells of 42 N of friction, but only of what it carried before the slider came to rest.
    [Fact]
    public void Friction_that_only_a_spring_left_out_was_read_for_asks_for_the_other_and_not_for_what_was_given()
    {
        var upper = Spring("upper", 28e3, 0.305, 0.231, 0.228);
        var left = new MeasuredCorner("front left", [upper, Spring("lower", 39e3, 0.356, 0.282)]);
        const string nut = "Friction is not known at front left: the slider is taken to rest on the stop nut, and then only the lower spring tells of it. Read the lower spring both ways too, settled from below and from above.";
        foreach (MeasuredCorner corner in (MeasuredCorner[])[left, left with { StopNutClear = false }])
        {
            string screen = Flat(corner);
            Assert.Contains(nut, screen, StringComparison.Ordinal);
            Assert.DoesNotContain("Friction is not known from one reading", screen, StringComparison.Ordinal);
        }

        // A corner without a name: 2000 N on upper and lower, 700 on the tender.
        MeasuredCorner two = Corner(null, 0.2, 0.3);
        Assert.Contains(
            "Friction is not known: the tender is taken to be solid, and then only the other springs tell of it. Read them both ways too, settled from below and from above.",
            Flat(two with { Springs = two.Springs.Insert(0, Spring("tender", 10e3, 0.1, 0.031, 0.029)) }), StringComparison.Ordinal);
        Assert.Contains("Friction is not known from one reading: settle the vehicle", Flat(two), StringComparison.Ordinal);
        Assert.DoesNotContain("is not known", Flat(left with { Springs = [upper, Spring("lower", 39e3, 0.356, 0.283, 0.281)] }), StringComparison.Ordinal);
    }

    [Fact]
    public void The_lower_spring_alone_has_the_uncertainty_of_the_load_beside_it()
    {
        // 2886 N, ±√(2·(39·3)² + (2 % of 2886)²) = 175.2.
        WeighResult result = Weighed(new MeasuredCorner("front left", [Spring("upper", 28e3, 0.305, 0.231, 0.228), Spring("lower", 39e3, 0.356, 0.282)]));
        JsonElement corner = Json(result).GetProperty("corners")[0];
        Assert.Equal(Math.Sqrt(2 * 117 * 117 + 57.72 * 57.72), corner.GetProperty("springs")[1].GetProperty("uncertainty_N").GetDouble(), 1e-9);
        Assert.Equal(corner.GetProperty("uncertainty_N").GetDouble(), corner.GetProperty("springs")[1].GetProperty("uncertainty_N").GetDouble(), 1e-9);
        string screen = Screen(result);
        Assert.Contains("2886 ± 175 N", screen, StringComparison.Ordinal);
        Assert.Matches(@"lower +74\.0 +2886 +175", screen);
    }

    [Fact]
    public void Warnings_carry_their_codes()
    {
        Assert.Equal([], Codes(Corner("a", 0.2, 0.3)));
        Assert.Equal(["springs_disagree"], Codes(Corner("a", 0.25, 0.3)));
        Assert.Equal(["springs_disagree"], Codes(Corner("a", 0.15, 0.3)));
        Assert.Equal(["motion_ratio_above_1"], Codes(Corner("a", 0.2, 0.3) with { MotionRatio = 1.1 }));
        Assert.Equal([], Codes(Corner("a", 0.25, 0.3) with { StopNutClear = false }));
        var lower = Spring("lower", 40e3, 0.35, 0.295, 0.305); // ±200 N of friction on ±174 N
        Assert.Equal(["friction_large"], Codes(new MeasuredCorner("a", [lower])));
        Assert.Equal(["near_solid"], Codes(new MeasuredCorner("a", [Spring("lower", 40e3, 0.35, 0.3) with { SolidLength = 0.296 }])));
        var tender = Spring("tender", 10e3, 0.1, 0.03) with { SolidLength = 0.03 };
        MeasuredCorner two = Corner("a", 0.2, 0.3);
        Assert.Equal(["tender_solid"], Codes(two with { Springs = two.Springs.Insert(0, tender) }));
    }

    [Fact]
    public void A_difference_within_the_errors_is_said_to_be_one()
    {
        string screen = Screen(Weighed(Corner("front left", 0.2, 0.3), Corner("front right", 0.199, 0.3), Corner("rear left", 0.15, 0.275), Corner("rear right", 0.2, 0.3)));
        Assert.Contains("front left and front right: within the errors", screen, StringComparison.Ordinal);
        Assert.Contains("rear left carries more than rear right", screen, StringComparison.Ordinal);
    }

    [Fact]
    public void Lines_fit_a_terminal_of_eighty_columns() =>
        Assert.All(Screen(Weighed(Corner("front left", 0.25, 0.3), Corner("front right", 0.2, 0.3))).Split('\n'), l => Assert.True(l.Length <= 80, l));
}
