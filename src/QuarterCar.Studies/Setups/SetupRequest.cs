using System.Collections.Immutable;
using System.Globalization;

using QuarterCar.Scenarios.Keys;
using QuarterCar.Scenarios.Quantities;

namespace QuarterCar.Studies.Setups;

/// <summary>One value that a setup changes.</summary>
/// <param name="Path">Dotted path into the scenario.</param>
/// <param name="Text">The value as the scenario file would have it, unit included.</param>
/// <param name="Si">SI value; null where it is no single number.</param>
public sealed record SetupValue(string Path, string Text, double? Si)
{
    /// <summary>A value as somebody wrote it. A number only where numbers stand: a file may be called 2024-05-01.csv.</summary>
    public static SetupValue Of(string path, string text) => new(path, text, Measured.TryParse(text, out Measured m) && double.IsFinite(m.Si) && PathUnits.IsNumber(path) ? m.Si : null);

    /// <summary>A value worked out in SI.</summary>
    public static SetupValue OfSi(string path, double si) => new(path, Measured.Write(si, PathUnits.Unit(path)), si);

    /// <summary>As the reader's overrides have it.</summary>
    public string AsSet => Path + "=" + Text;
}

/// <summary>One setup that a study asks for: a title and what it changes of the base.</summary>
/// <param name="Title">For tables and legends.</param>
/// <param name="Values">In the order of the study's paths.</param>
public sealed record SetupRequest(string Title, ImmutableArray<SetupValue> Values)
{
    /// <summary>A setup named by what it changes: "gap 1.25 in, upper rate 150 lbf/in".</summary>
    public static SetupRequest Of(ImmutableArray<SetupValue> values) =>
        new(values.IsEmpty ? "as written" : string.Join(", ", PathWords.Of([.. values.Select(v => v.Path)]).Zip(values, (words, v) => words + " " + v.Text)), values);
}

/// <summary>The SI unit of what stands at a path, as a text that the reader takes and as the end of a column's name.</summary>
public static class PathUnits
{
    /// <summary>As the reader takes it; empty for a plain number.</summary>
    public static string Unit(string path) => Of(path).Unit;

    /// <summary>A column's name: the path with its SI unit ("coilover.stop_nut.gap_m").</summary>
    public static string Column(string path) => Of(path).Suffix is { Length: > 0 } s ? path + "_" + s : path;

    /// <summary>True where a single number can stand.</summary>
    public static bool IsNumber(string path) => Kind(path) is QuantityKind or WholeKind or TableKind { OrPlainValue: true };

    private static KeyKind? Kind(string path) => KeyPaths.Resolve(ScenarioKeys.Root, path, out _)?.Kind;

    private static (string Unit, string Suffix) Of(string path) => Kind(path) switch
    {
        QuantityKind q => Of(q.Dimension),
        TableKind { OrPlainValue: true } t => Of(t.Value.Dimension),
        _ => ("", ""),
    };

    private static (string Unit, string Suffix) Of(Dimension d) => d switch
    {
        Dimension.Length => ("m", "m"),
        Dimension.Force => ("N", "N"),
        Dimension.SpringRate => ("N/m", "N_m"),
        Dimension.Damping => ("N*s/m", "N_s_m"),
        Dimension.Speed => ("m/s", "m_s"),
        Dimension.Pressure => ("Pa", "Pa"),
        Dimension.Volume => ("m^3", "m3"),
        Dimension.Time => ("s", "s"),
        Dimension.Angle => ("rad", "rad"),
        Dimension.Temperature => ("K", "K"),
        Dimension.Loss => ("s/m", "s_m"),
        _ => ("", ""),
    };

    /// <summary>A number as it stands in titles: short, the same in every culture.</summary>
    public static string Short(double value) => value.ToString("G6", CultureInfo.InvariantCulture);
}

/// <summary>A study's setups, made when asked for, so that a grid of millions takes no memory.</summary>
/// <param name="Paths">Paths that vary, in order.</param>
/// <param name="Count">How many setups.</param>
/// <param name="At">The setup of an index from 0.</param>
public sealed record SetupPlan(ImmutableArray<string> Paths, long Count, Func<long, SetupRequest> At)
{
    /// <summary>A grid: every combination, the last path fastest.</summary>
    public static SetupPlan Grid(ImmutableArray<(string Path, ImmutableArray<SetupValue> Values)> axes)
    {
        long count = axes.Aggregate(1L, (n, a) => checked(n * a.Values.Length));
        return new SetupPlan([.. axes.Select(a => a.Path)], count, i =>
        {
            var values = new SetupValue[axes.Length];
            for (int k = axes.Length - 1; k >= 0; k--)
            {
                values[k] = axes[k].Values[(int)(i % axes[k].Values.Length)];
                i /= axes[k].Values.Length;
            }

            return SetupRequest.Of([.. values]);
        });
    }

    /// <summary>A list of setups as they are.</summary>
    public static SetupPlan List(ImmutableArray<string> paths, ImmutableArray<SetupRequest> setups) => new(paths, setups.Length, i => setups[(int)i]);
}
