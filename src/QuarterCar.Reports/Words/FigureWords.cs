using System.Collections.Immutable;
using System.Globalization;

using QuarterCar.Model.Statics;
using QuarterCar.Reports.Units;
using QuarterCar.Studies;

namespace QuarterCar.Reports.Words;

/// <summary>One line of a figures table: words, number, unit.</summary>
/// <param name="Words">What it is.</param>
/// <param name="Number">Rounded; a dash where it does not apply.</param>
/// <param name="Unit">Empty for a pure number.</param>
public sealed record FigureLine(string Words, string Number, string Unit)
{
    /// <summary>The number with its unit.</summary>
    public string Text => Unit.Length == 0 ? Number : Number + "\u00a0" + Unit;
}

/// <summary>A group of lines under one heading.</summary>
/// <param name="Heading">The heading.</param>
/// <param name="Lines">In order.</param>
public sealed record FigureGroup(string Heading, ImmutableArray<FigureLine> Lines);

/// <summary>The figures that people read, in words of the trade, taken from the one figure table.</summary>
public static class FigureWords
{
    private static readonly ImmutableArray<(string Key, string Words)> StandingWords =
    [
        ("ride_height_m", "Ride height (shaft showing)"),
        ("preload_m", "Preload"),
        ("spring_force_N", "Force in the springs at ride height"),
        ("gas_force_N", "Gas force at ride height"),
        ("primary_rate_N_m", "Primary rate"),
        ("secondary_rate_N_m", "Secondary rate"),
        ("crossover_shaft_showing_m", "Crossover at shaft showing"),
        ("crossover_force_N", "Force at crossover"),
        ("stop_nut_gap_ride_height_m", "Stop-nut gap at ride height"),
        ("stop_nut_gap_full_droop_m", "Stop-nut gap at full droop"),
        ("bind_clearance_full_bump_m", "Bind clearance at full bump"),
        ("ride_frequency_hz", "Ride frequency"),
        ("wheel_hop_frequency_hz", "Wheel-hop frequency"),
        ("spring_frequency_hz", "Spring frequency (rigid tyre)"),
        ("reserve_energy_J", "Reserve energy to full bump or bind"),
        ("reserve_wheel_speed_m_s", "Reserve wheel speed"),
    ];

    private static readonly ImmutableArray<(string Name, string Words)> MovingWords =
    [
        ("travel.travel_use", "Stroke used"),
        ("travel.up_travel_used", "Up-travel used, from ride height"),
        ("travel.droop_used", "Droop used, from ride height"),
        ("travel.max_shaft_travel_m", "Most shaft travel"),
        ("travel.min_shaft_travel_m", "Least shaft travel"),
        ("travel.peak_compression_speed_m_s", "Fastest compression of the shaft"),
        ("travel.peak_rebound_speed_m_s", "Fastest rebound of the shaft"),
        ("travel.time_in_secondary_s", "Time on the stop nut"),
        ("acceleration.peak_g", "Peak acceleration, sprung"),
        ("acceleration.rms_g", "R.m.s. acceleration, sprung"),
        ("acceleration.wk_rms_m_s2", "ISO 2631-1 weighted r.m.s. (m/s²)"),
        ("acceleration.vdv_m_s1_75", "Vibration dose value (m/s^1.75)"),
        ("tyre.peak_N", "Peak tyre load"),
        ("tyre.least_N", "Least tyre load"),
        ("tyre.airborne_s", "Time in the air"),
        ("tyre.dynamic_load_coefficient", "Dynamic load coefficient"),
    ];

    private static readonly ImmutableArray<(string Name, string Words)> EnergyWords =
    [
        ("energy.road_work_J", "Put in by the road"),
        ("energy.damper_J", "Lost in the damper"),
        ("energy.friction_J", "Lost in friction"),
        ("energy.contacts_J", "Lost in the stops"),
        ("energy.tyre_J", "Lost in the tyre"),
    ];

    // Of summary.json alone: named where a limit or a goal asks for them.
    private static readonly ImmutableArray<(string Name, string Words)> FurtherWords =
    [
        ("static.shaft_travel_m", "Shaft travel at ride height"),
        ("static.wheel_travel_m", "Wheel travel at ride height"),
        ("static.crossover_shaft_travel_m", "Crossover at shaft travel"),
        ("travel.mean_shaft_travel_m", "Mean shaft travel"),
        ("energy.residual_J", "Energy that does not close"),
        ("energy.residual_relative", "Energy that does not close, share of the largest"),
    ];

    private static readonly Dictionary<string, string> AllWords = MovingWords.Concat(EnergyWords).Concat(FurtherWords)
        .Concat(StandingWords.Select(w => (Name: "static." + w.Key, w.Words))).ToDictionary(w => w.Name, w => w.Words, StringComparer.Ordinal);

    /// <summary>The standing figures.</summary>
    public static FigureGroup Standing(StandingFigures figures, Readable read) => new(
        "Standing",
        [.. StandingWords.Select(w => Line(w.Key, w.Words, FigureTable.Standing.Single(f => f.Key == w.Key).Value(figures), read))]);

    /// <summary>The figures of the run.</summary>
    public static FigureGroup Moving(RunResult result, Readable read) => new("Run", Lines(MovingWords, result, read));

    /// <summary>The energy account, its residual last.</summary>
    public static FigureGroup Energy(RunResult result, Readable read)
    {
        string residual = result.Figures.Energy.ResidualRelative.ToString("0.0E+0", CultureInfo.InvariantCulture);
        return new("Energy", [.. Lines(EnergyWords, result, read), new("Does not close by (share of the largest)", residual, "")]);
    }

    /// <summary>Any figure of the figure table with its unit, as a limit shows it.</summary>
    public static FigureLine OfName(string name, double? value, Readable read) => Line(name, WordsOf(name), value, read);

    /// <summary>A limit held against its figure: what came out and the largest allowed. A broken limit gets decimals until the two differ, as "90 %, allowed 90 %" denies itself.</summary>
    public static (FigureLine Value, FigureLine Largest) OfLimit(LimitVerdict limit, Readable read)
    {
        const int most = 12; // with the unit's own at most 15, all that a double holds
        string words = WordsOf(limit.Figure);
        for (int more = 0; ; more++)
        {
            FigureLine value = Line(limit.Figure, words, limit.Value, read, more), largest = Line(limit.Figure, words, limit.Largest, read, more);
            if (!limit.Broken || value.Number != largest.Number || more == most) return (value, largest);
        }
    }

    /// <summary>Broken, holds, or does not apply: a corner that stands outside its stroke has no up-travel that a limit could be held against.</summary>
    public static string StateOf(LimitVerdict limit) => limit.Broken ? "broken" : limit.Value is null ? "does not apply" : "holds";

    private static string WordsOf(string name) => AllWords.GetValueOrDefault(name) ?? CountWords(name);

    private static string CountWords(string name) =>
        name.StartsWith("counts.", StringComparison.Ordinal) ? "Count of " + EventWords.Of(name["counts.".Length..]) : name;

    private static ImmutableArray<FigureLine> Lines(ImmutableArray<(string Name, string Words)> words, RunResult result, Readable read) =>
        [.. words.Select(w => Line(w.Name, w.Words, FigureTable.Value(w.Name, result.Standing.Figures, result.Figures), read))];

    private static FigureLine Line(string key, string words, double? value, Readable read, int moreDecimals = 0)
    {
        var (dimension, toSi) = Readable.OfKey(key);
        var unit = key.StartsWith("counts.", StringComparison.Ordinal) ? new ReadableUnit("", 1, 0) : read.Unit(dimension);
        return new(words, Readable.Number(unit with { Decimals = unit.Decimals + moreDecimals }, value * toSi), value is null ? "" : unit.Name);
    }
}
