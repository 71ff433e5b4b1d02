namespace QuarterCar.Studies.Tests.Sweeps;

/// <summary>Corners whose answers can be worked out outside the code.</summary>
internal static class Corners
{
    /// <summary>A mass on one spring over a stiff, well damped tyre that carries next to no mass: a drop onto a spring.</summary>
    public const string DropOnSpring = """
        title: Drop on a spring
        corner: { sprung_weight: 100 kg, unsprung_weight: 0.2 kg }
        tyre: { rate: 1e5 kN/m, damping: 9000 N*s/m }
        coilover:
          stroke: 500 mm
          springs:
            lower: { rate: 20 N/mm, free_length: 700 mm, solid_length: 100 mm }
        drop: { height: 500 mm }
        run: { duration: 0.6 s, tolerance: 1e-8 }
        limits: { max_shaft_travel_m: 0.27583163977727 }
        """;

    /// <summary>The same on two springs in series of which the upper is held after 80 mm.</summary>
    public const string DropOnPair = """
        title: Drop on a pair of springs
        corner: { sprung_weight: 300 kg, unsprung_weight: 0.2 kg }
        tyre: { rate: 1e5 kN/m, damping: 9000 N*s/m }
        coilover:
          stroke: 500 mm
          springs:
            upper: { rate: 40 N/mm, free_length: 400 mm, solid_length: 100 mm }
            lower: { rate: 60 N/mm, free_length: 600 mm, solid_length: 100 mm }
          stop_nut: { gap: 80 mm, at: full_droop }
        drop: { height: 300 mm }
        run: { duration: 0.6 s, tolerance: 1e-8 }
        limits: { max_shaft_travel_m: 0.3171897352427 }
        """;

    /// <summary>A plain corner with damper, bump stop and stop nut, no gas, motion ratio 1.</summary>
    public const string Plain = """
        title: Plain corner
        corner: { sprung_weight: 350 kg, unsprung_weight: 60 kg }
        tyre: { rate: 220 N/mm, damping: 400 N*s/m }
        coilover:
          stroke: 300 mm
          springs:
            upper: { rate: 60 N/mm, free_length: 300 mm, solid_length: 100 mm }
            lower: { rate: 60 N/mm, free_length: 350 mm, solid_length: 130 mm }
          preload: 30 mm
          stop_nut: { gap: 20 mm, at: ride_height }
          damper: { compression: [[0.1 m/s, 300 N], [1 m/s, 1500 N]], rebound: [[0.1 m/s, 500 N], [1 m/s, 2500 N]] }
          bump_stop: { on: shaft, length: 50 mm, force: [[20 mm, 2000 N], [45 mm, 20000 N]] }
        drop: { height: 300 mm }
        run: { duration: 1 s }
        """;

    /// <summary>One spring of 30 N/mm, nothing else, over level ground that is hardly driven: standing figures by hand.</summary>
    public const string Single = """
        title: Single spring
        corner: { sprung_weight: 350 kg, unsprung_weight: 60 kg }
        tyre: { rate: 220 N/mm, damping: 400 N*s/m }
        coilover:
          stroke: 300 mm
          springs:
            lower: { rate: 30 N/mm, free_length: 500 mm, solid_length: 100 mm }
          damper: { compression: [[1 m/s, 1500 N]], rebound: [[1 m/s, 2500 N]] }
        terrain: [{ flat: 1 m }]
        speed: 1 m/s
        run: { duration: 0.1 s }
        limits: { spring_frequency_hz: 1.6 }
        """;

    /// <summary>The same without limits of its own.</summary>
    public static readonly string NoLimits = Single.Replace("limits: { spring_frequency_hz: 1.6 }", "", StringComparison.Ordinal);

    /// <summary>One spring that carries 4200 N at full bump over a step of 20 mm.</summary>
    /// <param name="weight">Sprung weight, N.</param>
    public static string SingleNearMetal(double weight) => FormattableString.Invariant($$"""
        title: Near metal
        corner: { sprung_weight: {{weight}} N, unsprung_weight: 600 N }
        tyre: { rate: 220 N/mm }
        coilover:
          stroke: 200 mm
          springs:
            lower: { rate: 20 N/mm, free_length: 300 mm, solid_length: 80 mm }
          preload: 10 mm
        terrain: [{ flat: 1 m }, { step: 20 mm }, { flat: 2 m }]
        speed: 1 m/s
        limits: { up_travel_used: 0.95 }
        """);

    /// <summary>The same with a bump stop that touches 200 mm in, and a limit that takes the place of its own.</summary>
    /// <param name="limits">As in a scenario.</param>
    public static string SingleWithStop(string limits) => Single
        .Replace("  damper:", "  bump_stop: { on: shaft, length: 100 mm, force: [[50 mm, 2000 N]] }\n  damper:", StringComparison.Ordinal)
        .Replace("limits: { spring_frequency_hz: 1.6 }", $"limits: {limits}", StringComparison.Ordinal);

    /// <summary>Underdamped over even whoops: it swings up at the speed that meets its own frequency and calms down beyond.</summary>
    public const string Whoops = """
        title: Whoops through resonance
        corner: { sprung_weight: 350 kg, unsprung_weight: 40 kg }
        tyre: { rate: 300 N/mm, damping: 600 N*s/m }
        coilover:
          stroke: 400 mm
          springs:
            lower: { rate: 30 N/mm, free_length: 600 mm, solid_length: 100 mm }
          preload: 50 mm
          damper: { compression: [[1 m/s, 1200 N]], rebound: [[1 m/s, 1200 N]] }
        terrain: [{ flat: 1 m }, { whoops: { height: 60 mm, spacing: 4 m, count: 8 } }, { flat: 5 m }]
        speed: 6 m/s
        limits: { up_travel_used: 0.25 }
        """;
}
