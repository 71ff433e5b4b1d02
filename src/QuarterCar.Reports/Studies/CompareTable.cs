using System.Collections.Immutable;
using System.Globalization;

using QuarterCar.Reports.Units;
using QuarterCar.Reports.Words;
using QuarterCar.Studies;
using QuarterCar.Studies.Setups;

namespace QuarterCar.Reports.Studies;

/// <summary>One figure of one setup, as text.</summary>
/// <param name="Number">Rounded; a dash where it does not apply.</param>
/// <param name="Rest">A star at the best, and in brackets the difference to the first.</param>
public sealed record CompareCell(string Number, string Rest);

/// <summary>One figure across the setups of a comparison, as text.</summary>
/// <param name="Name">Dotted name.</param>
/// <param name="Words">What it is, with its unit.</param>
/// <param name="Cells">A setup each.</param>
public sealed record CompareLine(string Name, string Words, ImmutableArray<CompareCell> Cells);

/// <summary>The figures of a comparison beside each other: differences to the first setup, the best of each figure starred where less or more of it is plainly better.</summary>
public static class CompareTable
{
    /// <summary>What a comparison cannot say.</summary>
    public const string Caution = "What is best here is best for this one corner in this model. That says nothing of the other corners, of strength, or of how it feels.";

    /// <summary>What stands below the table: the stars explained where there are any.</summary>
    public static string Legend(ImmutableArray<CompareLine> lines) =>
        lines.Any(l => l.Cells.Any(c => c.Rest.StartsWith('*'))) ? "* the best of each figure. " + Caution : Caution;

    // Less is better (−1), more is better (+1), neither (0).
    private static readonly ImmutableArray<(string Name, string Words, int Better)> s_figures =
    [
        ("static.ride_height_m", "ride height", 0),
        ("static.preload_m", "preload", 0),
        ("static.primary_rate_N_m", "primary rate", 0),
        ("static.secondary_rate_N_m", "secondary rate", 0),
        ("static.crossover_shaft_showing_m", "crossover at", 0),
        ("static.stop_nut_gap_ride_height_m", "stop-nut gap at ride", 0),
        ("static.bind_clearance_full_bump_m", "bind clearance", 1),
        ("static.ride_frequency_hz", "ride frequency", 0),
        ("static.reserve_energy_J", "reserve energy", 1),
        ("travel.travel_use", "stroke used", -1),
        ("travel.up_travel_used", "up-travel used", -1),
        ("travel.droop_used", "droop used", 0),
        ("travel.peak_compression_speed_m_s", "compression to", 0),
        ("travel.peak_rebound_speed_m_s", "rebound to", 0),
        ("counts.crossover", "crossovers", 0),
        ("counts.bump_stop", "bump-stop contacts", -1),
        ("counts.bottom_out", "metal contacts", -1),
        ("counts.coil_bind", "coil binds", -1),
        ("counts.top_out", "top-outs", -1),
        ("acceleration.peak_g", "peak acceleration", -1),
        ("acceleration.rms_g", "r.m.s. acceleration", -1),
        ("acceleration.wk_rms_m_s2", "weighted r.m.s., m/s²", -1),
        ("acceleration.vdv_m_s1_75", "dose value, m/s^1.75", -1),
        ("tyre.peak_N", "peak tyre load", -1),
        ("tyre.least_N", "least tyre load", 1),
        ("tyre.airborne_s", "time in the air", -1),
        ("tyre.dynamic_load_coefficient", "dynamic load coeff.", -1),
    ];

    /// <summary>"A", "B", … "Z", then numbers from 27 on.</summary>
    public static string Mark(long index) => index < 26 ? ((char)('A' + index)).ToString() : (index + 1).ToString(CultureInfo.InvariantCulture);

    /// <summary>The lines; figures that apply to none of the setups are left out.</summary>
    public static ImmutableArray<CompareLine> Of(IReadOnlyList<StudyRow> rows, Readable read) =>
        [.. s_figures.Select(f => Line(f.Name, f.Words, f.Better, rows, read)).OfType<CompareLine>()];

    /// <summary>A figure of a row; NaN where it does not apply.</summary>
    public static double Value(string name, StudyRow row) => row.Figures?[FigureTable.Names.IndexOf(name)] ?? double.NaN;

    /// <summary>A figure of a row with its unit.</summary>
    public static string Text(string name, StudyRow row, Readable read)
    {
        double value = Value(name, row);
        return FigureWords.OfName(name, double.IsNaN(value) ? null : value, read).Text;
    }

    /// <summary>One setup's cells, their numbers aligned at the decimal point.</summary>
    public static string[] Column(ImmutableArray<CompareLine> lines, int setup, char digit = ' ', char point = ' ')
    {
        string[] numbers = Align.AtPoint([.. lines.Select(l => l.Cells[setup].Number)], digit, point);
        return [.. numbers.Select((n, i) => Marked(n, lines[i].Cells[setup].Rest))];
    }

    // The star stands at the number, before the spaces that align it.
    private static string Marked(string aligned, string rest)
    {
        string number = aligned.TrimEnd(' ', '\u2007', '\u2008');
        string space = aligned[number.Length..];
        return rest.StartsWith('*') ? number + "*" + space + rest[1..] : number + space + (rest.Length > 0 ? " " + rest : "");
    }

    private static CompareLine? Line(string name, string words, int better, IReadOnlyList<StudyRow> rows, Readable read)
    {
        double[] values = [.. rows.Select(r => Value(name, r))];
        if (values.All(double.IsNaN)) return null;
        string[] texts = [.. values.Select(v => FigureWords.OfName(name, double.IsNaN(v) ? null : v, read).Number)];
        string? best = Best([.. values.Select((v, i) => Judged(rows[i], name) ? v : double.NaN)], texts, better);
        FigureLine named = FigureWords.OfName(name, values.First(v => !double.IsNaN(v)), read);
        return new(
            name,
            named.Unit.Length == 0 ? words : $"{words}, {named.Unit}",
            [.. texts.Select((text, i) => new CompareCell(text, (text == best && Judged(rows[i], name) ? "*" : "") + (i == 0 ? "" : Difference(texts[0], text))))]);
    }

    private static bool Judged(StudyRow row, string name) => row.Rest is null && !row.StandsOn(name);

    // By what is shown: a star for a difference that nobody can see would mislead, and one for a corner that stands on metal no less.
    private static string? Best(double[] values, string[] texts, int better)
    {
        var known = values.Select((v, i) => (Value: v * better, Text: texts[i])).Where(v => !double.IsNaN(v.Value)).ToList();
        return better == 0 || known.Select(k => k.Text).Distinct().Count() < 2 ? null : known.MaxBy(k => k.Value).Text;
    }

    // Between what is shown, so that the table adds up.
    private static string Difference(string first, string text)
    {
        if (Shown(first) is not { } from || Shown(text) is not { } to) return "";
        if (first == text) return " (=)";
        int point = text.IndexOf('.', StringComparison.Ordinal);
        string size = Math.Abs(to - from).ToString("F" + (point < 0 ? 0 : text.Length - point - 1), CultureInfo.InvariantCulture);
        return $" ({(to < from ? Readable.Minus : "+")}{size})";
    }

    private static double? Shown(string text) =>
        double.TryParse(text.Replace(Readable.Minus, "-", StringComparison.Ordinal), NumberStyles.Float, CultureInfo.InvariantCulture, out double value) ? value : null;
}
