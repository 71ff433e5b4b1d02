using System.Collections.Immutable;
using System.Text.Json;

using QuarterCar.Studies;

namespace QuarterCar.Reports.Json;

/// <summary>summary.json: the figures of one run, SI, the unit in the key.</summary>
public static class SummaryJson
{
    /// <summary>The program's version as the summary gives it.</summary>
    public static string Version { get; } = typeof(SummaryJson).Assembly.GetName().Version?.ToString(3) ?? "0.0.0";

    /// <summary>Writes one run.</summary>
    public static void Write(RunResult result, Stream stream)
    {
        using var json = new Utf8JsonWriter(stream, FigureJson.Options);
        var figures = result.Figures;
        json.WriteStartObject();
        json.WriteString("title", result.Scenario.Title);
        json.WriteString("scenario_hash", result.Scenario.Hash);
        json.WriteString("version", Version);
        json.Warnings(result.Warnings);
        Limits(json, result.Limits);
        json.Static(result.Standing.Figures);
        json.Block("travel", FigureTable.Moving, figures);
        json.Block("counts", FigureTable.Moving, figures);
        Bottoming(json, figures.Bottoming);
        json.Block("acceleration", FigureTable.Moving, figures);
        json.Block("tyre", FigureTable.Moving, figures);
        json.Block("energy", FigureTable.Moving, figures);
        Account(json, figures.Run);
        json.WriteEndObject();
    }

    private static void Limits(Utf8JsonWriter json, ImmutableArray<LimitVerdict> limits)
    {
        json.WriteStartArray("limits");
        foreach (var limit in limits)
        {
            json.WriteStartObject();
            json.WriteString("figure", limit.Figure);
            json.Number("limit", limit.Largest);
            json.Number("value", limit.Value);
            json.WriteBoolean("broken", limit.Broken);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Bottoming(Utf8JsonWriter json, ImmutableArray<ContactFigures> contacts)
    {
        json.WriteStartArray("bottoming");
        foreach (var contact in contacts)
        {
            json.WriteStartObject();
            json.WriteString("kind", contact.Kind);
            json.Number("time_s", contact.Time);
            json.Number("distance_m", contact.Distance);
            json.Number("shaft_velocity_m_s", contact.ShaftVelocity);
            json.Number("peak_force_N", contact.PeakForce);
            json.Number("penetration_m", contact.Penetration);
            json.Number("duration_s", contact.Duration);
            json.Number("energy_J", contact.Energy);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Account(Utf8JsonWriter json, RunAccount run)
    {
        json.WriteStartObject("run");
        json.WriteString("end", run.End);
        json.WriteNumber("steps", run.Steps);
        json.WriteNumber("rejected", run.Rejected);
        json.WriteNumber("evaluations", run.Evaluations);
        json.WriteEndObject();
    }
}
