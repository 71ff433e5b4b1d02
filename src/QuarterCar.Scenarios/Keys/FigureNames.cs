using System.Collections.Immutable;

using QuarterCar.Model;

namespace QuarterCar.Scenarios.Keys;

/// <summary>Dotted names of the numeric figures of summary.json that a limit, a goal or a study can name.</summary>
public static class FigureNames
{
    /// <summary>In the order of summary.json.</summary>
    public static readonly ImmutableArray<string> All =
    [
        .. Of("static",
            "ride_height_m", "shaft_travel_m", "wheel_travel_m", "preload_m", "spring_force_N", "gas_force_N", "primary_rate_N_m", "secondary_rate_N_m",
            "crossover_shaft_travel_m", "crossover_shaft_showing_m", "crossover_force_N", "stop_nut_gap_full_droop_m", "stop_nut_gap_ride_height_m",
            "bind_clearance_full_bump_m", "ride_frequency_hz", "wheel_hop_frequency_hz", "spring_frequency_hz", "reserve_energy_J", "reserve_wheel_speed_m_s"),
        .. Of("travel",
            "max_shaft_travel_m", "min_shaft_travel_m", "travel_use", "up_travel_used", "droop_used", "mean_shaft_travel_m",
            "peak_compression_speed_m_s", "peak_rebound_speed_m_s", "time_in_secondary_s"),
        .. Of("counts", [.. EventNames.All]),
        .. Of("acceleration", "peak_g", "rms_g", "wk_rms_m_s2", "vdv_m_s1_75"),
        .. Of("tyre", "peak_N", "least_N", "airborne_s", "dynamic_load_coefficient"),
        .. Of("energy", "residual_J", "residual_relative", "damper_J", "friction_J", "contacts_J", "tyre_J", "road_work_J"),
    ];

    /// <summary>
    /// The full name of a figure given in full or by its last part. False where none or several fit; <paramref name="near"/> then has the several,
    /// or the nearest known name if any.
    /// </summary>
    public static bool TryResolve(string given, out string figure, out ImmutableArray<string> near)
    {
        var fitting = All.Where(f => f == given || f.EndsWith("." + given, StringComparison.Ordinal)).ToImmutableArray();
        figure = fitting.Length == 1 ? fitting[0] : "";
        near = fitting;
        if (fitting.IsEmpty)
        {
            var known = given.Contains('.', StringComparison.Ordinal) ? All : [.. All.Select(LastPart)];
            near = Nearest.Find(given, known) is { } name ? [name] : [];
        }

        return fitting.Length == 1;
    }

    private static string LastPart(string figure) => figure[(figure.IndexOf('.', StringComparison.Ordinal) + 1)..];

    private static IEnumerable<string> Of(string block, params string[] names) => names.Select(n => block + "." + n);
}
