using System.Collections.Immutable;
using System.Text.RegularExpressions;

namespace QuarterCar.Reports.Files;

/// <summary>The names that result files can have: the only files in a folder that are ours to replace or remove.</summary>
public static partial class OurFiles
{
    /// <summary>Plots, each as .png and .svg.</summary>
    public static readonly ImmutableArray<string> Plots =
    [
        "shaft_travel", "force_travel", "damper", "tyre_load", "acceleration", "travel_use", "rates",
        "compare", "sweep", "reach", "spread", "spread_shares", "terrain", "spectrum", "response_spectra",
    ];

    private static readonly ImmutableArray<string> Tables =
        ["trace", "events", "curve", "compare", "sweep", "spread", "terrain"];

    private static readonly ImmutableHashSet<string> Names =
    [
        "report.html", "summary.json", "check.json", "compare.json", "sweep.json", "spread.json", "reach.json", "tweak.json", "terrain.json", "part.json",
        .. Tables.SelectMany(t => new[] { t + ".csv", t + ".xlsx", t + ".parquet" }),
        .. Plots.SelectMany(p => new[] { p + ".png", p + ".svg" }),
    ];

    /// <summary>True for a path, relative to the result folder and with forward slashes, that only we write.</summary>
    public static bool Contains(string path) => Names.Contains(path) || OfASetup().IsMatch(path);

    /// <summary>Traces of single setups of a study: setups/NN/trace.csv and the like.</summary>
    [GeneratedRegex(@"^setups/[0-9]{2,}/(trace|events)\.(csv|xlsx|parquet)$", RegexOptions.CultureInvariant)]
    private static partial Regex OfASetup();
}
