using QuarterCar.Scenarios.Documents;
using QuarterCar.Scenarios.Keys;

namespace QuarterCar.Studies.Setups;

/// <summary>Which paths setups can differ in, and one spelling for each.</summary>
public static class VariedPaths
{
    /// <summary>The path in its one spelling: terrain[01].step is terrain[1].step.</summary>
    public static string Canonical(string path) => DocumentPath.TryParse(path, out DocumentPath parsed) ? parsed.ToString() : path;

    /// <summary>What is wrong with a path that no setup has for itself, and what is wanted; null for one that can vary.</summary>
    public static (string Found, string Wanted)? Refusal(KnownPath known) => known.Steps[0].Name switch
    {
        "limits" => ("limits that vary", "the same limits for every setup: in the scenario, or with --set"),
        "title" => ("a title that varies", "the column 'title' of a --setups file"),
        _ => null,
    };
}
