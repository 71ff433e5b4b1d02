using System.Text.Json;


using Xunit;
using Xunit.Abstractions;

namespace QuarterCar.Studies.Tests.Reference;

/// <summary>The whole chain against runs computed independently of this project (tests/data/reference; mark C), within the tolerances that come with them.</summary>
public class ReferenceTests(ITestOutputHelper output)
{
    public static TheoryData<string> Names => [.. ReferenceRun.Names];

    // Forces and accelerations may jump at an event or a break of the road: rows this close to one are left out, s.
    private const double NearJump = 20e-6;

    [Theory, MemberData(nameof(Names))]
    public void Standing_figures_agree(string name)
    {
        ReferenceRun reference = ReferenceRun.Load(name);
        RunResult run = SingleRun.Of(reference.Scenario("run.tolerance=1e-9"));
        foreach (JsonProperty p in reference.Expected.GetProperty("static").EnumerateObject())
        {
            double? ours = FigureTable.Value("static." + p.Name, run.Standing.Figures, run.Figures);
            if (p.Value.ValueKind == JsonValueKind.Null)
            {
                Assert.Null(ours);
                continue;
            }

            double theirs = p.Value.GetDouble(), allowed = p.Name.EndsWith("_hz", StringComparison.Ordinal) ? 1e-5 : reference.Tolerance("static_rel");
            Assert.NotNull(ours);
            Assert.True(Math.Abs(ours.Value - theirs) <= allowed * Math.Abs(theirs) + 1e-12, $"{p.Name}: {ours:R}, reference {theirs:R}");
        }
    }

    [Theory, MemberData(nameof(Names))]
    public void Events_agree_in_name_order_and_time(string name)
    {
        ReferenceRun reference = ReferenceRun.Load(name);
        double worst = EventError(reference, SingleRun.Of(reference.Scenario("run.tolerance=1e-9")));
        output.WriteLine($"{name}: events within {worst:e1} s");
        Assert.True(worst <= reference.Tolerance("event_time_s"), $"{worst}");
    }

    [Theory, MemberData(nameof(Names))]
    public void At_the_default_tolerance_events_are_within_a_microsecond_and_travel_within_a_micrometre(string name)
    {
        ReferenceRun reference = ReferenceRun.Load(name);
        RunResult run = SingleRun.Of(reference.Scenario());
        double events = EventError(reference, run), travel = reference.Rows.Max(r => Math.Abs(run.Track.At(ReferenceRun.Parse(r[0])).ShaftTravel - ReferenceRun.Parse(r[Array.IndexOf(reference.Columns, "shaft_travel_m")])));
        output.WriteLine($"{name}: events within {events:e1} s, travel within {travel:e1} m, energy residual {run.Figures.Energy.ResidualRelative:e1}, {run.Figures.Run.Steps} steps");
        Assert.True(events <= 1e-6, $"events {events}");
        Assert.True(travel <= 1e-6, $"travel {travel}");
        Assert.True(Math.Abs(run.Figures.Energy.ResidualRelative) <= 1e-5, $"energy {run.Figures.Energy.ResidualRelative}");
    }

    [Theory, MemberData(nameof(Names))]
    public void Figures_agree(string name)
    {
        ReferenceRun reference = ReferenceRun.Load(name);
        RunResult run = SingleRun.Of(reference.Scenario("run.tolerance=1e-9"));
        foreach (string block in new[] { "travel", "counts", "acceleration", "tyre" })
        {
            foreach (JsonProperty p in reference.Expected.GetProperty(block).EnumerateObject())
                Figure(reference, run, block + "." + p.Name, p.Value);
        }

        Assert.True(Math.Abs(run.Figures.Energy.ResidualRelative) <= reference.Tolerance("energy_residual_relative"), $"energy {run.Figures.Energy.ResidualRelative}");
        Contacts(reference, run);
    }

    [Theory, MemberData(nameof(Names))]
    public void Trace_agrees(string name)
    {
        ReferenceRun reference = ReferenceRun.Load(name);
        RunResult run = SingleRun.Of(reference.Scenario("run.tolerance=1e-9"));
        double[] jumps = Jumps(reference);
        var worst = new Dictionary<string, double>();
        foreach (string[] row in reference.Rows)
        {
            double t = ReferenceRun.Parse(row[0]);
            Sample s = run.Track.At(t);
            bool near = jumps.Any(j => Math.Abs(j - t) < NearJump);
            for (int c = 1; c < row.Length; c++)
            {
                if (Ours(s, reference.Columns[c]) is not { } ours || row[c].Length == 0)
                    continue;
                (double allowed, bool jumpy) = Allowed(reference, run, reference.Columns[c]);
                if (jumpy && near)
                    continue;
                double share = Math.Abs(ours - ReferenceRun.Parse(row[c])) / allowed;
                worst[reference.Columns[c]] = Math.Max(share, worst.GetValueOrDefault(reference.Columns[c]));
            }

            if (!near)
                Assert.Equal(row[Array.IndexOf(reference.Columns, "rate_region")], s.Region.ToString().ToLowerInvariant());
        }

        foreach ((string column, double share) in worst)
            Assert.True(share <= 1, $"{column}: {share} of the allowed difference");
        output.WriteLine($"{name}: worst {worst.MaxBy(p => p.Value)}");
    }

    private static double EventError(ReferenceRun reference, RunResult run)
    {
        JsonElement[] theirs = [.. reference.Expected.GetProperty("events").EnumerateArray()];
        string Key(string n) => n is "lower_bind" or "coil_bind" ? "bind" : n is "lower_unbind" or "coil_unbind" ? "unbind" : n;
        Assert.Equal(theirs.Select(e => Key(e.GetProperty("event").GetString()!)), run.Events.Select(e => Key(e.Event)));
        return theirs.Zip(run.Events, (a, b) => Math.Abs(a.GetProperty("time_s").GetDouble() - b.Time)).DefaultIfEmpty(0).Max();
    }

    private static void Figure(ReferenceRun reference, RunResult run, string name, JsonElement value)
    {
        double? ours = FigureTable.Value(name, run.Standing.Figures, run.Figures);
        if (value.ValueKind == JsonValueKind.Null)
        {
            Assert.Null(ours);
            return;
        }

        double theirs = value.GetDouble();
        double allowed = name switch
        {
            _ when name.StartsWith("counts.", StringComparison.Ordinal) => 0,
            "travel.max_shaft_travel_m" or "travel.min_shaft_travel_m" or "travel.mean_shaft_travel_m" => 1e-6,
            "travel.travel_use" => 1e-6 / run.Standing.Corner.Stroke,
            "travel.up_travel_used" => 1e-6 / run.Standing.Figures.RideHeight,
            "travel.droop_used" => 1e-6 / run.Standing.Figures.ShaftTravel,
            "travel.peak_compression_speed_m_s" or "travel.peak_rebound_speed_m_s" => 2e-5,
            "travel.time_in_secondary_s" or "tyre.airborne_s" => 1e-6 * (1 + run.Events.Length),
            "acceleration.peak_g" or "tyre.peak_N" => 5e-4 * theirs,
            "tyre.least_N" => 5e-4 * run.Figures.Tyre.Peak,
            "acceleration.rms_g" or "tyre.dynamic_load_coefficient" => reference.Tolerance("rms_rel") * theirs,
            _ => reference.Tolerance("weighted_rel") * theirs,
        };
        Assert.True(Math.Abs(ours!.Value - theirs) <= allowed, $"{name}: {ours:R}, reference {theirs:R}");
    }

    private static void Contacts(ReferenceRun reference, RunResult run)
    {
        JsonElement[] theirs = [.. reference.Expected.GetProperty("bottoming").EnumerateArray()];
        Assert.Equal(theirs.Length, run.Figures.Bottoming.Length);
        for (int i = 0; i < theirs.Length; i++)
        {
            ContactFigures ours = run.Figures.Bottoming[i];
            double Their(string key) => theirs[i].GetProperty(key).GetDouble();
            Assert.Equal(theirs[i].GetProperty("kind").GetString(), ours.Kind);
            Assert.Equal(Their("time_s"), ours.Time, 1e-6);
            Assert.Equal(Their("shaft_velocity_m_s"), ours.ShaftVelocity, 2e-5);
            Assert.Equal(Their("penetration_m"), ours.Penetration, 1e-6);
            Assert.Equal(Their("duration_s"), ours.Duration, 2e-6);
            Assert.Equal(Their("peak_force_N"), ours.PeakForce, reference.Tolerance("contact_force_rel") * Their("peak_force_N"));
            Assert.Equal(Their("energy_J"), ours.Energy, reference.Tolerance("contact_energy_rel") * Their("energy_J"));
        }
    }

    private static double[] Jumps(ReferenceRun reference) =>
    [
        .. reference.Expected.GetProperty("events").EnumerateArray().Select(e => e.GetProperty("time_s").GetDouble()),
        .. reference.Expected.GetProperty("road_breaks_s").EnumerateArray().Select(e => e.GetDouble()),
    ];

    private static (double Allowed, bool Jumpy) Allowed(ReferenceRun reference, RunResult run, string column) => column switch
    {
        "sprung_acceleration_g" => (reference.Tolerance("force_N") / run.Standing.Corner.SprungWeight, true),
        "unsprung_acceleration_g" => (2 * reference.Tolerance("force_N") / (run.Standing.Corner.UnsprungMass * 9.80665), true),
        _ when column.EndsWith("_m_s", StringComparison.Ordinal) => (reference.Tolerance("velocity_m_s"), false),
        _ when column.EndsWith("_N", StringComparison.Ordinal) => (reference.Tolerance("force_N"), true),
        _ => (reference.Tolerance("length_m"), column is "road_m" or "ground_m" or "tyre_deflection_m"),
    };

    private static double? Ours(Sample s, string column) => column switch
    {
        "distance_m" => s.Distance,
        "ground_m" => s.Ground,
        "road_m" => s.Road,
        "sprung_m" => s.Sprung,
        "sprung_velocity_m_s" => s.SprungVelocity,
        "unsprung_m" => s.Unsprung,
        "unsprung_velocity_m_s" => s.UnsprungVelocity,
        "wheel_travel_m" => s.WheelTravel,
        "wheel_velocity_m_s" => s.WheelVelocity,
        "shaft_travel_m" => s.ShaftTravel,
        "shaft_velocity_m_s" => s.ShaftVelocity,
        "shaft_showing_m" => s.ShaftShowing,
        "sprung_acceleration_g" => s.SprungAcceleration / 9.80665,
        "unsprung_acceleration_g" => s.UnsprungAcceleration / 9.80665,
        "spring_force_N" => s.SpringForce,
        "damper_force_N" => s.DamperForce,
        "gas_force_N" => s.GasForce,
        "bump_stop_force_N" => s.BumpStopForce,
        "shaft_force_N" => s.ShaftForce,
        "tyre_force_N" => s.TyreForce,
        "tyre_deflection_m" => s.TyreDeflection,
        "slider_gap_m" => s.SliderGap,
        "lower_spring_compression_m" => s.LowerSpringCompression,
        "upper_group_compression_m" => s.UpperGroupCompression,
        "coil_nut_force_N" => s.CoilNutForce,
        "stop_nut_force_N" => s.StopNutForce,
        "rate_region" => null,
        _ => throw new InvalidOperationException(column),
    };
}
