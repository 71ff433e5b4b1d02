using QuarterCar.Scenarios.Weighing;

using Allowed = QuarterCar.TestKit.Tolerance;

namespace QuarterCar.Scenarios.Tests.Weighing;

/// <summary>Measured corners from a file and from flags: the same words give the same numbers, and every mistake is named at once.</summary>
public class MeasuredReaderTests
{
    private static readonly Allowed s_exact = Allowed.Share(1e-15, "exact unit constants, one product");

    private const string _file = """
        length_error: 3 mm
        rate_error: 2 %
        corners:
          - name: front left
            stop_nut_clear: false
            motion_ratio: 0.94
            shaft_showing: 140 mm
            stroke: 300 mm
            gas: { pressure: 12 bar, rod_diameter: 22 mm, volume: 460 cm^3 }
            upper: { rate: 28 N/mm, free_length: 305 mm, loaded_length: [231 mm, 228 mm] }
            lower: { rate: 39 N/mm, free_length: 356 mm, loaded_length: 302 mm, solid_length: 140 mm }
        """;

    private static string[] Lines(string text) => [.. MeasuredReader.ReadText("m.yaml", text).Problems.Select(p => p.ToString())];

    private static MeasuredReading Flags(params (string Flag, string Text)[] given) => MeasuredReader.ReadFlags(given.ToDictionary(g => g.Flag, g => g.Text));

    private static string[] FlagLines(params (string Flag, string Text)[] given) => [.. Flags(given).Problems.Select(p => p.ToString())];

    private static MeasuredInput Good(MeasuredReading reading)
    {
        Assert.Equal([], reading.Problems.Select(p => p.ToString()));
        return reading.Input!;
    }

    [Fact]
    public void File_is_read_in_SI_with_both_readings_in_order()
    {
        MeasuredInput input = Good(MeasuredReader.ReadText("m.yaml", _file));
        var corner = Assert.Single(input.Corners);
        Assert.Equal(("front left", false, 0.94, UnitSystem.Si), (corner.Name, corner.StopNutClear, corner.MotionRatio, input.Units));
        Assert.Equal(["upper", "lower"], corner.Springs.Select(s => s.Position));
        Assert.Equal((2, 1), (corner.Springs[0].LoadedLengths.Length, corner.Springs[1].LoadedLengths.Length));
        s_exact.Holds(0.231, corner.Springs[0].LoadedLengths[0]);
        s_exact.Holds(0.228, corner.Springs[0].LoadedLengths[1]);
        s_exact.Holds(28e3, corner.Springs[0].Rate);
        s_exact.Holds(0.14, corner.Springs[1].SolidLength!.Value);
        Assert.Null(corner.Springs[0].SolidLength);
        s_exact.Holds(460e-6, corner.Gas!.Volume);
        Assert.Equal((0.003, 0.02), (input.Errors.Length, input.Errors.Rate));
    }

    [Fact]
    public void Left_out_keys_have_the_defaults_of_the_contract()
    {
        MeasuredInput input = Good(MeasuredReader.ReadText("m.yaml", "corners: [{ name: a, lower: { rate: 39 N/mm, free_length: 356 mm, loaded_length: 302 mm } }]"));
        Assert.Equal((0.003, 0.02), (input.Errors.Length, input.Errors.Rate));
        Assert.True(input.Corners[0].StopNutClear);
        Assert.Null(input.Corners[0].MotionRatio);
    }

    [Fact]
    public void Flags_say_what_a_file_of_one_corner_says()
    {
        MeasuredInput input = Good(Flags(
            ("--upper-rate", "160 lbf/in"), ("--upper-free", "12 in"), ("--upper-loaded", "9.1 in,9.0 in"),
            ("--lower-rate", "225 lbf/in"), ("--lower-free", "14 in"), ("--lower-loaded", "11.5in"), ("--rate-error", "5 %"), ("--length-error", "0.125 in")));
        var file = Good(MeasuredReader.ReadText("m.yaml", """
            length_error: 0.125 in
            rate_error: 5 %
            corners:
              - name: a
                upper: { rate: 160 lbf/in, free_length: 12 in, loaded_length: [9.1 in, 9.0 in] }
                lower: { rate: 225 lbf/in, free_length: 14 in, loaded_length: 11.5 in }
            """));
        Assert.Null(input.Corners[0].Name);
        Assert.Equal(file.Errors, input.Errors);
        Assert.Equal(UnitSystem.Us, input.Units);
        foreach (var (a, b) in input.Corners[0].Springs.Zip(file.Corners[0].Springs))
        {
            Assert.Equal(b.LoadedLengths.AsEnumerable(), a.LoadedLengths);
            Assert.Equal(b with { LoadedLengths = a.LoadedLengths }, a);
        }
    }

    [Fact]
    public void Output_units_are_those_of_the_first_spring_or_those_asked_for()
    {
        string us = _file.Replace("28 N/mm", "160 lbf/in", StringComparison.Ordinal).Replace("shaft_showing: 140 mm", "shaft_showing: 5.5 in", StringComparison.Ordinal);
        Assert.Equal(UnitSystem.Us, Good(MeasuredReader.ReadText("m.yaml", us)).Units);
        Assert.Equal(UnitSystem.Si, Good(MeasuredReader.ReadText("m.yaml", us, UnitSystem.Si)).Units);
    }

    [Fact]
    public void Every_mistake_of_every_corner_is_named_in_one_reading() => Assert.Equal(
        [
            "m.yaml:2: rate_error: found '2'; wanted a percentage with its unit: %",
            "m.yaml:5: corners[0].upper.rate: found '28'; wanted a spring rate with its unit: lbf/in, lb/in, N/mm, N/m, kN/m",
            "m.yaml:5: corners[0].upper.loaded_length[0]: found '400 mm'; wanted a loaded length that is not above the free length",
            "m.yaml:6: corners[0].lower.rate: found '0 N/mm'; wanted a spring rate above 0",
            "m.yaml:6: corners[0].lower.free_length: found nothing; wanted a length with its unit: in, ft, mm, cm, m",
            "m.yaml:6: corners[0].lower.loaded_length: found nothing; wanted a list, each item a length with its unit",
            "m.yaml:7: corners[1].name: found 'front left'; wanted another name: each corner's once",
            "m.yaml:8: corners[1].shaft_showing: found '310 mm'; wanted a shaft showing that is not above the stroke",
            "m.yaml:10: corners[1].lower.loaded_length: found 3 items; wanted at most 2",
            "m.yaml:11: corners[2].gas.rod_diameter: found nothing; wanted a length with its unit: in, ft, mm, cm, m",
            "m.yaml:11: corners[2].gas.volume: found nothing; wanted a volume with its unit: in^3, cm^3, m^3",
            "m.yaml:11: corners[2].name: found nothing; wanted a line of text, at most 200 characters",
            "m.yaml:11: corners[2].shaft_showing: found nothing; wanted the shaft showing: the gas share hangs on it",
            "m.yaml:11: corners[2].stroke: found nothing; wanted the stroke: the gas share hangs on it",
            "m.yaml:12: corners[2].loewr: found an unknown key; wanted 'lower'",
            "m.yaml:13: corners[2].lower.loaded_length[0]: found '90 mm'; wanted a loaded length that is not below the solid length by more than the length error",
        ],
        Lines("""
            length_error: 3 mm
            rate_error: 2
            corners:
              - name: front left
                upper: { rate: 28, free_length: 305 mm, loaded_length: 400 mm }
                lower: { rate: 0 N/mm }
              - name: front left
                shaft_showing: 310 mm
                stroke: 300 mm
                lower: { rate: 39 N/mm, free_length: 356 mm, loaded_length: [302 mm, 301 mm, 300 mm] }
              - gas: { pressure: 12 bar }
                loewr: 5
                lower: { rate: 39 N/mm, free_length: 356 mm, loaded_length: 90 mm, solid_length: 100 mm }
            """));

    [Theory]
    [InlineData("length_error: -3 mm", "m.yaml:1: length_error: found '-3 mm'; wanted a length of 0 or more")]
    [InlineData("rate_error: -2 %", "m.yaml:1: rate_error: found '-2 %'; wanted a percentage of 0 or more")]
    public void Negative_error_is_refused(string error, string line) =>
        Assert.Equal(line, Assert.Single(Lines(error + "\ncorners: [{ name: a, lower: { rate: 1 N/mm, free_length: 9 mm, loaded_length: 8 mm } }]")));

    [Fact]
    public void Flags_are_named_in_place_of_keys() => Assert.Equal(
        [
            "--rate-error: found '2'; wanted a percentage with its unit: %",
            "--upper-free: found nothing; wanted a length with its unit: in, ft, mm, cm, m",
            "--upper-loaded: found nothing; wanted a length with its unit, or two, separated by a comma: settled from below, from above",
            "--lower-loaded: found '231'; wanted a length with its unit: in, ft, mm, cm, m",
            "--lower-rate: found nothing; wanted a spring rate with its unit: lbf/in, lb/in, N/mm, N/m, kN/m",
            "--lower-free: found nothing; wanted a length with its unit: in, ft, mm, cm, m",
            "--motion-ratio: found '0'; wanted a plain number above 0",
            "--rod-diameter: found nothing; wanted a length with its unit: in, ft, mm, cm, m",
            "--gas-volume: found nothing; wanted a volume with its unit: in^3, cm^3, m^3",
            "--shaft-showing: found nothing; wanted the shaft showing: the gas share hangs on it",
            "--stroke: found nothing; wanted the stroke: the gas share hangs on it",
        ],
        FlagLines(("--upper-rate", "160 lbf/in"), ("--lower-loaded", "231,5 mm"), ("--rate-error", "2"), ("--gas-pressure", "180 psi"), ("--motion-ratio", "0")));

    [Fact]
    public void Gas_too_small_for_the_rod_is_refused_as_in_a_scenario()
    {
        // 1.02·π/4·(20 mm)²·300 mm = 96.13 cm³.
        string text = _file.Replace("22 mm, volume: 460 cm^3", "20 mm, volume: 96 cm^3", StringComparison.Ordinal);
        Assert.Equal("m.yaml:9: corners[0].gas.volume: found '96 cm^3'; wanted more than 96.1327 cm^3 (1.02 times what the rod takes up over the stroke)", Assert.Single(Lines(text)));
        Assert.Empty(Lines(text.Replace("96 cm^3", "97 cm^3", StringComparison.Ordinal)));
    }

    [Theory]
    [InlineData("", "m.yaml: found an empty file; wanted a file of measured corners (YAML)")]
    [InlineData("corners: []", "m.yaml:1: corners: found an empty list; wanted a list, each item a corner: name, springs and their loaded lengths")]
    [InlineData("corners: 3", "m.yaml:1: corners: found '3'; wanted a list, each item a corner: name, springs and their loaded lengths")]
    [InlineData("corners: [3]", "m.yaml:1: corners[0]: found '3'; wanted keys: name, stop_nut_clear, motion_ratio, shaft_showing, stroke, gas, tender, upper, lower")]
    [InlineData("corners: [{ name: a, lower: 3 }]", "m.yaml:1: corners[0].lower: found '3'; wanted keys: rate, free_length, loaded_length, solid_length")]
    [InlineData("corners: [{ name: a, stop_nut_clear: yes, lower: { rate: 1 N/mm, free_length: 9 mm, loaded_length: 8 mm } }]", "m.yaml:1: corners[0].stop_nut_clear: found 'yes'; wanted one of: true, false")]
    [InlineData("corners: [{ name: a, lower: { rate: 1 N/mm, free_length: 9 mm, loaded_length: { a: 1 } } }]", "m.yaml:1: corners[0].lower.loaded_length: found a map; wanted a list, each item a length with its unit")]
    [InlineData("corners: [{ name: a, lower: { rate: 1 N/mm, free_length: 9 mm, loaded_length: } }]", "m.yaml:1: corners[0].lower.loaded_length: found nothing; wanted a list, each item a length with its unit")]
    public void Misshapen_file_is_answered_in_one_line(string text, string line) => Assert.Equal(line, Assert.Single(Lines(text)));

    [Fact]
    public void Missing_file_is_named() =>
        Assert.Equal("nowhere/m.yaml: found no such file; wanted a file of measured corners (YAML)", Assert.Single(MeasuredReader.ReadFile("nowhere/m.yaml").Problems).ToString());
}
