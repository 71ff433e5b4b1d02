using System.Text.Json;

using QuarterCar.Model.Statics;
using QuarterCar.Reports.Json;
using QuarterCar.Reports.Tests.Reference;
using QuarterCar.Studies;

namespace QuarterCar.Reports.Tests;

public sealed class CheckJsonTests
{
    [Fact]
    public void Keys_are_those_of_the_contract_in_its_order()
    {
        var standing = ReferenceRun.Read("quarry_ledge").Standing;
        standing = standing with
        {
            Damping = [new DampingRatio("primary", "compression", 0.1, 0.3)],
            Fit = new FitFigures(0.7, 0, 0.1, 0.02, 0.08, 12, 0, 0, null),
            Cases = [new CaseStanding("two up", standing.Figures)],
        };
        using var json = Read(standing);
        var root = json.RootElement;
        Assert.Equal("title,static,springs,damping,fit,cases,warnings", Keys(root));
        Assert.Equal(
            "position,compression_full_droop_m,compression_ride_height_m,compression_full_bump_m,bind_clearance_full_bump_m,binds_at_shaft_showing_m",
            Keys(root.GetProperty("springs")[0]));
        Assert.Equal("region,direction,shaft_velocity_m_s,ratio", Keys(root.GetProperty("damping")[0]));
        Assert.Equal(
            "stack_free_m,least_preload_m,most_preload_m,nut_from_top_m,thread_left_m,preload_turns,assembly_force_N,assembly_energy_J,radial_clearance_m",
            Keys(root.GetProperty("fit")));
        Assert.Equal(JsonValueKind.Null, root.GetProperty("fit").GetProperty("radial_clearance_m").ValueKind);
        Assert.Equal("name,static", Keys(root.GetProperty("cases")[0]));
    }

    [Fact]
    public void Without_a_body_fit_is_null_and_without_a_damper_damping_is_an_empty_list()
    {
        using var json = Read(ReferenceRun.Read("quarry_ledge").Standing);
        Assert.Equal(JsonValueKind.Null, json.RootElement.GetProperty("fit").ValueKind);
        Assert.Equal(0, json.RootElement.GetProperty("damping").GetArrayLength());
    }

    private static string Keys(JsonElement element) => string.Join(',', element.EnumerateObject().Select(p => p.Name));

    private static JsonDocument Read(StandingResult result)
    {
        using var stream = new MemoryStream();
        CheckJson.Write(result, stream);
        return JsonDocument.Parse(stream.ToArray());
    }
}
