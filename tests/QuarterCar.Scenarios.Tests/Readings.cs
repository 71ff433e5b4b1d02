using QuarterCar.Model;
using QuarterCar.Scenarios.Reading;

namespace QuarterCar.Scenarios.Tests;

/// <summary>Short ways to read scenarios in tests.</summary>
internal static class Readings
{
    /// <summary>A corner in US units with nothing left out that a rule looks at.</summary>
    public const string Bench = """
        title: Bench corner
        corner:
          sprung_weight: 800 lbf
          unsprung_weight: 140 lbf
          motion_ratio: 0.9
        tyre:
          rate: 1200 lbf/in
          radius: 17 in
          contact: rolling_circle
        coilover:
          stroke: 12 in
          springs:
            upper: { rate: 150 lbf/in, free_length: 12 in, solid_length: 4.5 in }
            lower: { rate: 225 lbf/in, free_length: 14 in, solid_length: 5.6 in }
          preload: 1.5 in
          stop_nut: { gap: 1.2 in, at: ride_height }
          gas: { pressure: 180 psi, rod_diameter: 0.875 in, volume: 28 in^3 }
        terrain:
          - flat: 10 ft
          - step: -20 in
        speed: 6 mph
        cases:
          - { name: heavy, corner.sprung_weight: +120 lbf }
          - { name: hot, coilover.gas.temperature: 90 degC }
          - name: shallow
            terrain[1].step: =-10 in
          - name: deeper
            terrain[1].step: -4 in
        """;

    public static string Folder(string name) => Path.Combine(AppContext.BaseDirectory, name);

    public static ReadResult Read(string text, params string[] sets) => ScenarioReader.ReadText("bench.yaml", text, ReadOptions.Plain with { Sets = [.. sets] });

    public static ReadResult With(string text, ReadOptions options) => ScenarioReader.ReadText("bench.yaml", text, options);

    public static Scenario Good(this ReadResult result)
    {
        Assert.Equal([], result.Problems.Select(p => p.ToString()));
        return result.Scenario!;
    }

    public static string[] Lines(this ReadResult result)
    {
        Assert.Null(result.Scenario);
        return [.. result.Problems.Select(p => p.ToString())];
    }

    /// <summary>A standing base with answers of its own that remembers what it was asked about.</summary>
    public sealed class Standing(double? heldTravel = null, double? sprungWeight = null) : IStandingBase
    {
        public List<CornerData> Asked { get; } = [];

        public double? HeldTravel(CornerData asWritten)
        {
            Asked.Add(asWritten);
            return heldTravel;
        }

        public double? SprungWeight(CornerData asWritten)
        {
            Asked.Add(asWritten);
            return sprungWeight;
        }
    }
}
