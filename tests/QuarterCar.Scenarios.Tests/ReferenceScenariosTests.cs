using QuarterCar.Model;
using QuarterCar.Model.Terrain;
using QuarterCar.Scenarios.Reading;

namespace QuarterCar.Scenarios.Tests;

/// <summary>The reference scenarios read without a problem, to the SI numbers that were computed outside this program.</summary>
public class ReferenceScenariosTests
{
    // Both sides convert decimals by one multiplication or two: a few units in the last place of a double.
    private const double _rounding = 1e-14;

    private const double _gravity = 9.80665;

    public static TheoryData<string> Files => [.. Directory.GetFiles(Readings.Folder("reference"), "*.yaml").Select(f => Path.GetFileNameWithoutExtension(f)).Order(StringComparer.Ordinal)];

    internal static Scenario Read(string name) => ScenarioReader.Read(Path.Combine(Readings.Folder("reference"), name + ".yaml"), ReadOptions.Plain).Good();

    [Fact]
    public void There_are_fourteen() => Assert.Equal(14, Files.Count);

    [Theory, MemberData(nameof(Files))]
    public void Reference_scenario_reads_without_a_problem(string name) => Assert.NotEmpty(Read(name).Title);

    // sprung_weight_N, unsprung_mass_kg and static.preload_m of the reference's own figures.
    [Theory]
    [InlineData("coil_bind", 2206.4962499999997, 39.0, 0.015)]
    [InlineData("desert_table", 5515.794802923019, 97.52235954999999, 0.05588)]
    [InlineData("dune_whoops", 2846.86183376672, 59.87419284, 0.04826)]
    [InlineData("fast_whoops", 3692.023940666215, 65.77089365, 0.03556)]
    [InlineData("gravel_lane", 5295.590999999999, 62.0, 0.007)]
    [InlineData("hard_bottom", 2843.9285, 47.0, 0.038)]
    [InlineData("loading_ramp", 9700.0, 171.0, 0.011)]
    [InlineData("orchard_kerb", 804.1452999999999, 15.5, 0.022)]
    [InlineData("sand_drop", 1846.0119703331075, 39.916128560000004, 0.02794)]
    [InlineData("single_spring_ditch", 3380.6484275979797, 47.62719885, null)]
    [InlineData("tender_triple", 3180.4784549112574, 104.3262451, 0.08636)]
    [InlineData("yard_hump", 4216.8595, 58.00000000000001, 0.009)]
    public void Weights_and_preload_are_those_of_the_reference(string name, double weight, double unsprungMass, double? preload)
    {
        var corner = Read(name).Corner;
        Relative(weight, corner.SprungWeight!.Value);
        Relative(unsprungMass, corner.UnsprungWeight / _gravity);
        if (preload is { } p)
        {
            Relative(p, corner.Coilover.Preload);
        }
    }

    // The first rate of the reference's stack: the springs in series; full bump's wheel travel: the stroke through the motion ratio.
    [Theory]
    [InlineData("coil_bind", 18186.666666666668, 0.2717391304347826)]
    [InlineData("dune_whoops", 12419.411399562616, 0.4860493827160493)]
    [InlineData("quarry_ledge", 16375.496282787404, 0.3242553191489361)]
    [InlineData("single_spring_ditch", 49035.51386901338, 0.2257777777777778)]
    [InlineData("tender_triple", 7358.492023157666, 0.3404123711340206)]
    [InlineData("yard_hump", 48380.0, 0.15)]
    public void Spring_rates_and_stroke_are_those_of_the_reference(string name, double firstRate, double fullBumpTravel)
    {
        var corner = Read(name).Corner;
        var springs = corner.Coilover.Springs;
        var compliance = new[] { springs.Tender, springs.Upper, springs.Lower }.OfType<SpringData>().Sum(s => 1 / s.Rate);
        Relative(firstRate, 1 / compliance);
        Relative(fullBumpTravel, corner.Coilover.Stroke / Assert.Single(corner.MotionRatio).Value);
    }

    [Fact]
    public void Quarry_ledge_reads_to_hand_worked_numbers()
    {
        var scenario = Read("quarry_ledge");
        var coilover = scenario.Corner.Coilover;
        Assert.Equal(UnitSystem.Us, scenario.Units);
        Relative(1250 * 175.126835246476, scenario.Corner.Tyre.Rate);              // 4.4482216152605 / 0.0254
        Relative(180 * 6894.757293168361, coilover.Gas!.Pressure);                 // 4.4482216152605 / 0.00064516
        Relative(28 * 1.6387064e-5, coilover.Gas.Volume);                          // 0.0254³
        Relative(0.1016, coilover.Damper!.Compression[0].At);                      // 4 in/s
        Relative(90 * 4.4482216152605, coilover.Damper.Compression[0].Value);
        Relative(0.2413, Assert.Single(coilover.Damper.Zones).From);               // 9.5 in
        Relative(0.03175, coilover.StopNut!.Length);
        Assert.Equal(StopNutReference.RideHeight, coilover.StopNut.At);
        Assert.Equal(0.2, coilover.BumpStop!.Loss);
        Assert.Equal(293.15, coilover.Gas.Temperature);
        Assert.Equal(new StopData(1e7, 0.1), coilover.BottomOut);                  // physics.md section 4
        Assert.Equal(new StopData(1e6, 0.5), coilover.TopOut);
        var course = Assert.IsType<Course>(scenario.Excitation);
        Relative(6 * 0.44704, course.Speed);
        Relative(-0.508, Assert.IsType<StepPiece>(course.Pieces[1]).Height);
        Assert.Equal(new RunSettings(6, 0.001, 1e-6), scenario.Run);
        Assert.Equal([new("counts.bottom_out", 0), new("counts.coil_bind", 0), new("travel.up_travel_used", 0.95)], scenario.Limits.ToArray());
    }

    [Fact]
    public void Other_pieces_and_tables_read_to_hand_worked_numbers()
    {
        var random = Assert.IsType<RandomPiece>(Course("gravel_lane").Pieces[1]);
        Assert.Equal(new RandomPiece('E', 28, 23), random);
        Assert.Equal(5000, Read("gravel_lane").Corner.Coilover.BumpStop!.Force[1].Value);
        var whoops = Assert.IsType<HaversinePiece>(Course("dune_whoops").Pieces[1]);
        Assert.Equal(5, whoops.Count);
        Relative(20.5 * 0.3048, whoops.Spacing);
        var table = Read("desert_table").Corner;
        Assert.Equal([0.58, 0.63, 0.74, 0.80], table.MotionRatio.Select(p => p.Value));
        Relative(0.5588, table.MotionRatio[3].At);
        Assert.True(table.Coilover.BumpStop!.OnAxle);
        Relative(0.8128, Assert.IsType<Drop>(Read("sand_drop").Excitation).Height);
        Assert.Equal(1.35, Read("sand_drop").Corner.Coilover.Gas!.Exponent);
        Assert.Null(Read("single_spring_ditch").Corner.Coilover.StopNut);
        Assert.Null(Read("single_spring_ditch").Corner.Coilover.Springs.Upper);
    }

    private static Course Course(string name) => Assert.IsType<Course>(Read(name).Excitation);

    private static void Relative(double wanted, double found) => Assert.Equal(0, (found / wanted) - 1, _rounding);
}
