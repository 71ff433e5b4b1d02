using System.Collections.Immutable;
using System.Text.Json;

using QuarterCar.Reports.Json;
using QuarterCar.Studies;
using QuarterCar.Studies.Setups;
using QuarterCar.Studies.Sweeps;

namespace QuarterCar.Reports.Studies;

/// <summary>What sweep, reach and tweak write as JSON: SI, dotted names, null where nothing applies.</summary>
public static class SweepJson
{
    /// <summary>The best point of a sweep: values, figures, nearest_limit; null where nothing holds every limit.</summary>
    public static void Best(Utf8JsonWriter json, SweepResult result)
    {
        if (result.Best is not { } best)
        {
            json.WriteNullValue();
            return;
        }

        json.WriteStartObject();
        json.WriteString("title", best.Request.Title);
        json.WriteStartObject("values");
        Values(json, best.Request);
        json.WriteEndObject();
        Figures(json, best.Figures!.Value);
        Nearest(json, result.Nearest);
        json.WriteEndObject();
    }

    /// <summary>reach.json.</summary>
    public static void Write(ReachResult result, Stream stream)
    {
        using var json = new Utf8JsonWriter(stream, FigureJson.Options);
        json.WriteStartObject();
        json.WriteString("title", result.Scenario.Title);
        json.WriteString("scenario_hash", result.Scenario.Hash);
        json.WriteString("version", SummaryJson.Version);
        json.WriteString("path", result.Axis.Path);
        if (result.Setups is [{ Request.Values.IsEmpty: true } only])
        {
            Reach(json, only);
        }
        else
        {
            json.WriteStartArray("setups");
            foreach (ReachSetup setup in result.Setups)
            {
                json.WriteStartObject();
                json.WriteString("title", setup.Request.Title);
                json.WriteStartObject("values");
                Values(json, setup.Request);
                json.WriteEndObject();
                json.WriteString("stop_nut", setup.NutWord);
                json.WriteString("path", result.Axis.Path);
                Reach(json, setup);
                json.WriteEndObject();
            }

            json.WriteEndArray();
        }

        json.WriteEndObject();
    }

    /// <summary>tweak.json.</summary>
    public static void Write(TweakResult result, Stream stream)
    {
        using var json = new Utf8JsonWriter(stream, FigureJson.Options);
        json.WriteStartObject();
        json.WriteString("title", result.Scenario.Title);
        json.WriteString("scenario_hash", result.Scenario.Hash);
        json.WriteString("version", SummaryJson.Version);
        json.WriteString("goal", result.Goal.ToString());
        json.Number("base", result.Base);
        json.WriteStartArray("steps");
        foreach (TweakOutcome step in result.Steps)
            Step(json, step);
        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void Step(Utf8JsonWriter json, TweakOutcome step)
    {
        json.WriteStartObject();
        json.WriteString("path", step.Step.Path);
        json.WriteString("title", step.Step.What);
        json.Number("from", step.Step.From);
        json.Number("to", step.Step.To);
        if (step.Step.Spring is { } spring)
        {
            json.WriteStartObject("spring");
            json.Number("rate_N_m", spring.Rate);
            json.Number("free_length_m", spring.FreeLength);
            json.Number("solid_length_m", spring.SolidLength);
            json.WriteEndObject();
        }

        json.Number("goal", step.Goal);
        json.Number("change", step.Change);
        json.WriteStartObject("side_effects");
        foreach ((string name, double change) in step.SideEffects)
            json.Number(name, change);
        json.WriteEndObject();
        json.WriteBoolean("feasible", step.Feasible);
        if (step.Reason is { } reason)
            json.WriteString("reason", reason);
        json.WriteStartArray("limits_broken");
        foreach (string limit in step.LimitsBroken)
            json.WriteStringValue(limit);
        json.WriteEndArray();
        json.WriteStartArray("event_changes");
        foreach (EventChange change in step.EventChanges)
        {
            json.WriteStartObject();
            json.WriteString("event", change.Event);
            json.WriteNumber("before", change.Before);
            json.WriteNumber("after", change.After);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void Reach(Utf8JsonWriter json, ReachSetup setup)
    {
        json.Number("largest", setup.Largest);
        if (setup.FirstBroken is { } first)
        {
            json.WriteStartObject("first_broken");
            json.WriteString("figure", first.Verdict?.Figure);
            json.Number("limit", first.Verdict?.Largest);
            json.Number("value", first.Verdict?.Value);
            json.Number("at", first.At);
            if ((first.Failure ?? first.Rest) is { } note)
                json.WriteString("note", note);
            json.WriteEndObject();
        }
        else
        {
            json.WriteNull("first_broken");
        }

        json.Number("resolution", setup.Resolution);
        if (setup.HeldBy.Length > 0) json.WriteString("note", setup.HeldBy);
        json.WriteStartArray("scan");
        foreach (ReachPoint point in setup.Scan)
        {
            json.WriteStartObject();
            json.Number("at", point.At);
            json.WriteBoolean("holds", point.Holds);
            if ((point.Failure ?? point.Rest) is { } note)
                json.WriteString("note", note);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Values(Utf8JsonWriter json, SetupRequest request)
    {
        foreach (SetupValue value in request.Values)
        {
            if (value.Si is not null)
                json.Number(value.Path, value.Si);
            else
                json.WriteString(value.Path, value.Text);
        }
    }

    private static void Figures(Utf8JsonWriter json, ImmutableArray<double?> figures)
    {
        json.WriteStartObject("figures");
        for (int i = 0; i < figures.Length; i++)
            json.Number(FigureTable.Names[i], figures[i]);
        json.WriteEndObject();
    }

    private static void Nearest(Utf8JsonWriter json, NearestLimit? near)
    {
        if (near is null)
        {
            json.WriteNull("nearest_limit");
            return;
        }

        json.WriteStartObject("nearest_limit");
        json.WriteString("figure", near.Figure);
        json.Number("limit", near.Limit);
        json.Number("value", near.Value);
        json.Number("distance", near.Distance);
        json.WriteEndObject();
    }
}
