using System.Collections.Immutable;
using System.Text.Json;

using QuarterCar.Model;
using QuarterCar.Model.Statics;
using QuarterCar.Scenarios;
using QuarterCar.Studies;

namespace QuarterCar.Reports.Tests.Reference;

/// <summary>A reference run as the program's own result, from figures computed outside it.</summary>
internal static class ReferenceRun
{
    public static RunResult Read(string name, double step = 0.01)
    {
        var scenario = ReferenceScenario.Read(name);
        using var json = JsonDocument.Parse(File.ReadAllText(ReferenceData.File(name + ".expected.json")));
        var root = json.RootElement;
        var track = ReferenceTrack.Read(name, step);
        var figures = Figures(root, track);
        var standing = Standing(scenario, root);
        return new(scenario, standing, track, figures, Events(root), Limits(scenario, standing, figures), standing.Warnings);
    }

    private static StandingResult Standing(Scenario scenario, JsonElement root)
    {
        var s = root.GetProperty("static");
        double D(string key) => s.GetProperty(key).GetDouble();
        double? M(string key) => s.TryGetProperty(key, out var v) && v.ValueKind == JsonValueKind.Number ? v.GetDouble() : null;
        var figures = new StandingFigures(
            D("ride_height_m"), D("shaft_travel_m"), D("wheel_travel_m"), D("preload_m"), D("spring_force_N"), D("gas_force_N"), D("primary_rate_N_m"),
            M("secondary_rate_N_m"), M("crossover_shaft_travel_m"), M("crossover_shaft_showing_m"), M("crossover_force_N"),
            M("stop_nut_gap_full_droop_m"), M("stop_nut_gap_ride_height_m"), D("bind_clearance_full_bump_m"), D("ride_frequency_hz"),
            D("wheel_hop_frequency_hz"), D("spring_frequency_hz"), M("reserve_energy_J"), M("reserve_wheel_speed_m_s"));
        var springs = root.GetProperty("derived").GetProperty("spring_compression_full_bump_m").EnumerateObject()
            .Select(p => new SpringStanding(p.Name, 0, 0, p.Value.GetDouble(), figures.BindClearanceFullBump, null)).ToImmutableArray();
        ImmutableArray<Warning> warnings = [new("droop_share_unusual", "Droop is a large share of the stroke; lower the ride height if the corner tops out.")];
        return new(scenario, Corner.Build(scenario.Corner), figures, springs, [], null, [], ReferenceCurve.Rows(scenario, root), warnings);
    }

    private static RunFigures Figures(JsonElement root, ReferenceTrack track)
    {
        var travel = root.GetProperty("travel");
        var acceleration = root.GetProperty("acceleration");
        var tyre = root.GetProperty("tyre");
        var energy = root.GetProperty("energy");
        var run = root.GetProperty("run");
        double D(JsonElement e, string key) => e.GetProperty(key).GetDouble();
        double? M(JsonElement e, string key) => e.TryGetProperty(key, out var v) && v.ValueKind == JsonValueKind.Number ? v.GetDouble() : null;
        return new(
            new TravelFigures(
                D(travel, "max_shaft_travel_m"), D(travel, "min_shaft_travel_m"), D(travel, "travel_use"), M(travel, "up_travel_used"), M(travel, "droop_used"),
                track.Given.Average(r => r.ShaftTravel), track.Given.Max(r => r.ShaftVelocity), -track.Given.Min(r => r.ShaftVelocity), D(travel, "time_in_secondary_s")),
            [.. EventNames.All.Select(n => KeyValuePair.Create(n, root.GetProperty("counts").GetProperty(n).GetInt32()))],
            [.. root.GetProperty("bottoming").EnumerateArray().Select(b => Contact(b, b.GetProperty("kind").GetString()!))],
            new AccelerationFigures(D(acceleration, "peak_g"), D(acceleration, "rms_g"), D(acceleration, "wk_rms_m_s2"), D(acceleration, "vdv_m_s1_75")),
            new TyreFigures(D(tyre, "peak_N"), D(tyre, "least_N"), D(tyre, "airborne_s"), D(tyre, "dynamic_load_coefficient")),
            new EnergyFigures(
                D(energy, "residual_J"), D(energy, "residual_relative"), D(energy, "damper_J"), D(energy, "friction_J"), D(energy, "contacts_J"),
                D(energy, "tyre_J"), D(energy, "road_work_J")),
            new RunAccount("finished", track.EndTime, "", run.GetProperty("steps").GetInt64(), 0, run.GetProperty("evaluations").GetInt64()));
    }

    private static ContactFigures Contact(JsonElement e, string kind) => new(
        kind, e.GetProperty("time_s").GetDouble(), e.GetProperty("distance_m").GetDouble(), e.GetProperty("shaft_velocity_m_s").GetDouble(),
        e.GetProperty("peak_force_N").GetDouble(), e.GetProperty("penetration_m").GetDouble(), e.GetProperty("duration_s").GetDouble(),
        e.GetProperty("energy_J").GetDouble());

    private static ImmutableArray<EventRow> Events(JsonElement root) =>
    [
        .. root.GetProperty("events").EnumerateArray().Select(e =>
        {
            string name = e.GetProperty("event").GetString()!;
            return new EventRow(
                name, e.GetProperty("time_s").GetDouble(), e.GetProperty("distance_m").GetDouble(), e.GetProperty("shaft_travel_m").GetDouble(),
                e.GetProperty("shaft_velocity_m_s").GetDouble(), e.TryGetProperty("peak_force_N", out _) ? Contact(e, name) : null);
        }),
    ];

    private static ImmutableArray<LimitVerdict> Limits(Scenario scenario, StandingResult standing, RunFigures figures) =>
    [
        .. scenario.Limits.Select(l =>
        {
            double? value = FigureTable.Value(l.Figure, standing.Figures, figures);
            return new LimitVerdict(l.Figure, l.Largest, value, value > l.Largest);
        }),
    ];
}
