using System.Text.Json;

using QuarterCar.Model;
using QuarterCar.Reports.Json;
using QuarterCar.Reports.Tests.Reference;
using QuarterCar.Studies;

namespace QuarterCar.Reports.Tests;

public sealed class SummaryJsonTests
{
    [Fact]
    public void Keys_are_those_of_the_contract_in_its_order()
    {
        using var json = Read(ReferenceRun.Read("quarry_ledge"));
        var root = json.RootElement;
        Assert.Equal(
            "title,scenario_hash,version,warnings,limits,static,travel,counts,bottoming,acceleration,tyre,energy,run", Keys(root));
        Assert.Equal(
            "ride_height_m,shaft_travel_m,wheel_travel_m,preload_m,spring_force_N,gas_force_N,primary_rate_N_m,secondary_rate_N_m,crossover_shaft_travel_m,"
            + "crossover_shaft_showing_m,crossover_force_N,stop_nut_gap_full_droop_m,stop_nut_gap_ride_height_m,bind_clearance_full_bump_m,ride_frequency_hz,"
            + "wheel_hop_frequency_hz,spring_frequency_hz,reserve_energy_J,reserve_wheel_speed_m_s",
            Keys(root.GetProperty("static")));
        Assert.Equal(
            "max_shaft_travel_m,min_shaft_travel_m,travel_use,up_travel_used,droop_used,mean_shaft_travel_m,peak_compression_speed_m_s,peak_rebound_speed_m_s,"
            + "time_in_secondary_s",
            Keys(root.GetProperty("travel")));
        Assert.Equal(string.Join(',', EventNames.All), Keys(root.GetProperty("counts")));
        Assert.Equal(
            "kind,time_s,distance_m,shaft_velocity_m_s,peak_force_N,penetration_m,duration_s,energy_J", Keys(root.GetProperty("bottoming")[0]));
        Assert.Equal("peak_g,rms_g,wk_rms_m_s2,vdv_m_s1_75", Keys(root.GetProperty("acceleration")));
        Assert.Equal("peak_N,least_N,airborne_s,dynamic_load_coefficient", Keys(root.GetProperty("tyre")));
        Assert.Equal("residual_J,residual_relative,damper_J,friction_J,contacts_J,tyre_J,road_work_J", Keys(root.GetProperty("energy")));
        Assert.Equal("end,steps,rejected,evaluations", Keys(root.GetProperty("run")));
        Assert.Equal("code,message", Keys(root.GetProperty("warnings")[0]));
        Assert.Equal("figure,limit,value,broken", Keys(root.GetProperty("limits")[0]));
    }

    [Theory]
    [InlineData("quarry_ledge")]
    [InlineData("coil_bind")]
    [InlineData("single_spring_ditch")]
    public void Numbers_are_the_reference_numbers_to_the_last_digit(string name)
    {
        using var json = Read(ReferenceRun.Read(name));
        using var expected = JsonDocument.Parse(File.ReadAllText(ReferenceData.File(name + ".expected.json")));
        foreach (string block in new[] { "static", "travel", "counts", "acceleration", "tyre", "energy" })
        {
            foreach (var figure in expected.RootElement.GetProperty(block).EnumerateObject())
            {
                var ours = json.RootElement.GetProperty(block).GetProperty(figure.Name);
                Assert.Equal(figure.Value.ValueKind, ours.ValueKind);
                if (figure.Value.ValueKind == JsonValueKind.Number) Assert.Equal(figure.Value.GetDouble(), ours.GetDouble());
            }
        }
    }

    [Fact]
    public void Without_a_stop_nut_the_crossover_is_null()
    {
        using var json = Read(ReferenceRun.Read("single_spring_ditch"));
        Assert.Equal(JsonValueKind.Null, json.RootElement.GetProperty("static").GetProperty("crossover_force_N").ValueKind);
    }

    [Theory]
    [InlineData("de-DE")]
    [InlineData("tr-TR")]
    public void The_summary_is_the_same_bytes_in_every_culture(string culture)
    {
        var run = ReferenceRun.Read("quarry_ledge");
        Assert.Equal(Cultures.In("", () => Bytes(run)), Cultures.In(culture, () => Bytes(run)));
    }

    [Fact]
    public void The_figure_table_names_every_number_of_the_summary_but_run_and_lists()
    {
        using var json = Read(ReferenceRun.Read("quarry_ledge"));
        var names = json.RootElement.EnumerateObject().Where(b => b.Value.ValueKind == JsonValueKind.Object && b.Name != "run")
            .SelectMany(b => b.Value.EnumerateObject().Select(f => b.Name + "." + f.Name));
        Assert.Equal(names, FigureTable.Names);
    }

    [Fact]
    public void A_figure_s_last_part_names_it_where_that_is_unambiguous()
    {
        Assert.Equal("travel.up_travel_used", Assert.Single(FigureTable.Matching("up_travel_used")));
        Assert.Equal("counts.bottom_out", Assert.Single(FigureTable.Matching("bottom_out")));
        Assert.Equal("acceleration.peak_g", Assert.Single(FigureTable.Matching("acceleration.peak_g")));
        Assert.Empty(FigureTable.Matching("bottoming"));
    }

    [Fact]
    public void A_number_that_is_not_finite_is_null()
    {
        var run = ReferenceRun.Read("quarry_ledge");
        run = run with { Figures = run.Figures with { Tyre = run.Figures.Tyre with { Peak = double.NaN } } };
        using var json = Read(run);
        Assert.Equal(JsonValueKind.Null, json.RootElement.GetProperty("tyre").GetProperty("peak_N").ValueKind);
    }

    private static string Keys(JsonElement element) => string.Join(',', element.EnumerateObject().Select(p => p.Name));

    private static JsonDocument Read(RunResult run) => JsonDocument.Parse(Bytes(run));

    private static byte[] Bytes(RunResult run)
    {
        using var stream = new MemoryStream();
        SummaryJson.Write(run, stream);
        return stream.ToArray();
    }
}
