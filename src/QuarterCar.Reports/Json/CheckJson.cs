using System.Text.Json;

using QuarterCar.Model.Statics;
using QuarterCar.Studies;

namespace QuarterCar.Reports.Json;

/// <summary>What `check --json` prints: the standing corner, SI, the unit in the key.</summary>
public static class CheckJson
{
    /// <summary>Writes one standing corner.</summary>
    public static void Write(StandingResult result, Stream stream)
    {
        using var json = new Utf8JsonWriter(stream, FigureJson.Options);
        json.WriteStartObject();
        json.WriteString("title", result.Scenario.Title);
        json.Static(result.Figures);
        Springs(json, result);
        Damping(json, result);
        Fit(json, result.Fit);
        Cases(json, result);
        json.Warnings(result.Warnings);
        json.WriteEndObject();
    }

    private static void Springs(Utf8JsonWriter json, StandingResult result)
    {
        json.WriteStartArray("springs");
        foreach (var spring in result.Springs)
        {
            json.WriteStartObject();
            json.WriteString("position", spring.Position);
            json.Number("compression_full_droop_m", spring.CompressionFullDroop);
            json.Number("compression_ride_height_m", spring.CompressionRideHeight);
            json.Number("compression_full_bump_m", spring.CompressionFullBump);
            json.Number("bind_clearance_full_bump_m", spring.BindClearanceFullBump);
            json.Number("binds_at_shaft_showing_m", spring.BindsAtShaftShowing);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Damping(Utf8JsonWriter json, StandingResult result)
    {
        json.WriteStartArray("damping");
        foreach (var ratio in result.Damping)
        {
            json.WriteStartObject();
            json.WriteString("region", ratio.Region);
            json.WriteString("direction", ratio.Direction);
            json.Number("shaft_velocity_m_s", ratio.ShaftVelocity);
            json.Number("ratio", ratio.Ratio);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Fit(Utf8JsonWriter json, FitFigures? fit)
    {
        if (fit is null)
        {
            json.WriteNull("fit");
            return;
        }

        json.WriteStartObject("fit");
        json.Number("stack_free_m", fit.StackFree);
        json.Number("least_preload_m", fit.LeastPreload);
        json.Number("most_preload_m", fit.MostPreload);
        json.Number("nut_from_top_m", fit.NutFromTop);
        json.Number("thread_left_m", fit.ThreadLeft);
        json.Number("preload_turns", fit.PreloadTurns);
        json.Number("assembly_force_N", fit.AssemblyForce);
        json.Number("assembly_energy_J", fit.AssemblyEnergy);
        json.Number("radial_clearance_m", fit.RadialClearance);
        json.WriteEndObject();
    }

    private static void Cases(Utf8JsonWriter json, StandingResult result)
    {
        json.WriteStartArray("cases");
        foreach (var one in result.Cases)
        {
            json.WriteStartObject();
            json.WriteString("name", one.Name);
            json.Static(one.Static);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }
}
