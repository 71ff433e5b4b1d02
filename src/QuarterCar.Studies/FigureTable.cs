using System.Collections.Immutable;

using QuarterCar.Model;
using QuarterCar.Model.Statics;

namespace QuarterCar.Studies;

/// <summary>One numeric figure of summary.json: where it stands there and how it is read. SI, the unit at the end of its key.</summary>
/// <typeparam name="T">The record that holds it.</typeparam>
/// <param name="Block">The object of summary.json that it stands in (static, travel, …).</param>
/// <param name="Key">Its key there, unit included.</param>
/// <param name="Value">Reads it; null: does not apply.</param>
public sealed record Figure<T>(string Block, string Key, Func<T, double?> Value)
{
    /// <summary>Dotted name: block and key.</summary>
    public string Name { get; } = Block + "." + Key;
}

/// <summary>Every numeric figure of a run by its dotted name, in the order of summary.json: the one table behind the summary, the rows of the studies and the limits.</summary>
public static class FigureTable
{
    /// <summary>The block "static", of a standing corner alone.</summary>
    public static readonly ImmutableArray<Figure<StandingFigures>> Standing =
    [
        Static("ride_height_m", f => f.RideHeight),
        Static("shaft_travel_m", f => f.ShaftTravel),
        Static("wheel_travel_m", f => f.WheelTravel),
        Static("preload_m", f => f.Preload),
        Static("spring_force_N", f => f.SpringForce),
        Static("gas_force_N", f => f.GasForce),
        Static("primary_rate_N_m", f => f.PrimaryRate),
        Static("secondary_rate_N_m", f => f.SecondaryRate),
        Static("crossover_shaft_travel_m", f => f.CrossoverShaftTravel),
        Static("crossover_shaft_showing_m", f => f.CrossoverShaftShowing),
        Static("crossover_force_N", f => f.CrossoverForce),
        Static("stop_nut_gap_full_droop_m", f => f.StopNutGapFullDroop),
        Static("stop_nut_gap_ride_height_m", f => f.StopNutGapRideHeight),
        Static("bind_clearance_full_bump_m", f => f.BindClearanceFullBump),
        Static("ride_frequency_hz", f => f.RideFrequency),
        Static("wheel_hop_frequency_hz", f => f.WheelHopFrequency),
        Static("spring_frequency_hz", f => f.SpringFrequency),
        Static("reserve_energy_J", f => f.ReserveEnergy),
        Static("reserve_wheel_speed_m_s", f => f.ReserveWheelSpeed),
    ];

    /// <summary>The blocks that need a run: travel, counts, acceleration, tyre, energy.</summary>
    public static readonly ImmutableArray<Figure<RunFigures>> Moving =
    [
        new("travel", "max_shaft_travel_m", f => f.Travel.MaxShaftTravel),
        new("travel", "min_shaft_travel_m", f => f.Travel.MinShaftTravel),
        new("travel", "travel_use", f => f.Travel.TravelUse),
        new("travel", "up_travel_used", f => f.Travel.UpTravelUsed),
        new("travel", "droop_used", f => f.Travel.DroopUsed),
        new("travel", "mean_shaft_travel_m", f => f.Travel.MeanShaftTravel),
        new("travel", "peak_compression_speed_m_s", f => f.Travel.PeakCompressionSpeed),
        new("travel", "peak_rebound_speed_m_s", f => f.Travel.PeakReboundSpeed),
        new("travel", "time_in_secondary_s", f => f.Travel.TimeInSecondary),
        .. EventNames.All.Select((name, i) => new Figure<RunFigures>("counts", name, f => f.Counts[i].Value)),
        new("acceleration", "peak_g", f => f.Acceleration.PeakG),
        new("acceleration", "rms_g", f => f.Acceleration.RmsG),
        new("acceleration", "wk_rms_m_s2", f => f.Acceleration.WeightedRms),
        new("acceleration", "vdv_m_s1_75", f => f.Acceleration.DoseValue),
        new("tyre", "peak_N", f => f.Tyre.Peak),
        new("tyre", "least_N", f => f.Tyre.Least),
        new("tyre", "airborne_s", f => f.Tyre.Airborne),
        new("tyre", "dynamic_load_coefficient", f => f.Tyre.DynamicLoadCoefficient),
        new("energy", "residual_J", f => f.Energy.Residual),
        new("energy", "residual_relative", f => f.Energy.ResidualRelative),
        new("energy", "damper_J", f => f.Energy.Damper),
        new("energy", "friction_J", f => f.Energy.Friction),
        new("energy", "contacts_J", f => f.Energy.Contacts),
        new("energy", "tyre_J", f => f.Energy.Tyre),
        new("energy", "road_work_J", f => f.Energy.RoadWork),
    ];

    /// <summary>Dotted names of all figures, in order.</summary>
    public static readonly ImmutableArray<string> Names = [.. Standing.Select(f => f.Name), .. Moving.Select(f => f.Name)];

    private static readonly Dictionary<string, int> Places = Names.Select((name, i) => (name, i)).ToDictionary(p => p.name, p => p.i, StringComparer.Ordinal);

    /// <summary>All figures of a run, in the order of <see cref="Names"/>; null: does not apply.</summary>
    public static ImmutableArray<double?> Values(StandingFigures standing, RunFigures run) =>
        [.. Standing.Select(f => f.Value(standing)), .. Moving.Select(f => f.Value(run))];

    /// <summary>One figure of a run by its dotted name.</summary>
    /// <exception cref="KeyNotFoundException">There is no such figure.</exception>
    public static double? Value(string name, StandingFigures standing, RunFigures run)
    {
        int place = Places[name];
        return place < Standing.Length ? Standing[place].Value(standing) : Moving[place - Standing.Length].Value(run);
    }

    /// <summary>The dotted names that a figure's name can mean: itself, or those that end with it after the dot.</summary>
    public static ImmutableArray<string> Matching(string name) =>
        Places.ContainsKey(name) ? [name] : [.. Names.Where(n => n.EndsWith("." + name, StringComparison.Ordinal))];

    private static Figure<StandingFigures> Static(string key, Func<StandingFigures, double?> value) => new("static", key, value);
}
