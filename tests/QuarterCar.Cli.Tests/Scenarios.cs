using System.Globalization;

using QuarterCar.TestKit.Programs;

namespace QuarterCar.Cli.Tests;

/// <summary>Scenarios that the tests of the command line start from.</summary>
internal static class Scenarios
{
    /// <summary>The one that the README runs.</summary>
    public static string QuarryLedge { get; } = Checkout.At("scenarios", "quarry-ledge.yaml");

    /// <summary>Free length of the lower spring, mm.</summary>
    public const double LowerFree = 350;

    /// <summary>A drop without gas, motion ratio or bump stop: what its stop nut does can be worked out by hand.</summary>
    public static string Plain(double limit = 0, double height = 0.3) => string.Create(CultureInfo.InvariantCulture, $$"""
        title: Plain corner
        corner: { sprung_weight: 3500 N, unsprung_weight: 600 N }
        tyre: { rate: 220 N/mm, damping: 400 N*s/m }
        coilover:
          stroke: 300 mm
          springs:
            upper: { rate: 30 N/mm, free_length: 300 mm, solid_length: 100 mm }
            lower: { rate: 40 N/mm, free_length: 350 mm, solid_length: 130 mm }
          preload: 30 mm
          stop_nut: { gap: 20 mm, at: ride_height }
          damper: { compression: [[0.1 m/s, 300 N], [1 m/s, 1500 N]], rebound: [[0.1 m/s, 500 N], [1 m/s, 2500 N]] }
          bump_stop: { on: shaft, length: 50 mm, force: [[20 mm, 2000 N], [45 mm, 20000 N]] }
        drop: { height: {{height}} m }
        run: { duration: 2 s }
        limits: { travel_use: {{limit}} }
        cases:
          - { name: loaded, corner.sprung_weight: +500 N }
        """);
}
