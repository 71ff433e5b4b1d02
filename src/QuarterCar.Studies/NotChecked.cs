using QuarterCar.Model;
using QuarterCar.Scenarios;

namespace QuarterCar.Studies;

/// <summary>The one remark that lists what could not be checked, and which keys it wants: silence would read as a pass.</summary>
internal static class NotChecked
{
    /// <summary>The remark; none where everything was checked.</summary>
    public static IEnumerable<Warning> Of(StandingWarnings.Subject s)
    {
        string[] missing = [.. s.Body is { } body ? OfBody(s, body) : ["how the springs fit the body (coilover.body)"], .. OfLower(s)];
        if (missing.Length > 0)
            yield return new("not_checked", $"Not checked, because the scenario does not say enough: {string.Join("; ", missing)}.");
    }

    private static IEnumerable<string> OfBody(StandingWarnings.Subject s, BodyData body)
    {
        SpringSetData set = s.Coilover.Springs;
        List<string> lengths = [], sides = [];
        Add(lengths, body.SeatLength is null, "coilover.body.seat_length");
        Add(lengths, body.Slider is null && set.Upper is not null, "coilover.body.slider");
        if (lengths.Count > 0)
            yield return $"least and most preload, place of the coil nut and force to assemble ({string.Join(", ", lengths)})";
        if (body.Thread is null)
            yield return "most preload and thread left (coilover.body.thread)";
        if (body.ThreadPitch is null)
            yield return "preload in turns (coilover.body.thread_pitch)";
        Add(sides, body.Diameter is null, "coilover.body.diameter");
        foreach ((string name, SpringData spring) in set.Placed)
            Add(sides, spring.CoilInner is null, $"coilover.springs.{name}.inner_diameter");
        if (sides.Count > 0)
            yield return $"clearance between springs and body ({string.Join(", ", sides)})";
    }

    private static IEnumerable<string> OfLower(StandingWarnings.Subject s)
    {
        if (s.Coilover.Springs.Lower.CoilMean is null)
            yield return "bowing of the lower spring (coilover.springs.lower.mean_diameter)";
    }

    private static void Add(List<string> list, bool missing, string key)
    {
        if (missing)
            list.Add(key);
    }
}
