using System.CommandLine;

using QuarterCar.Scenarios.Keys;

namespace QuarterCar.Cli.Options;

/// <summary>Completions of options that name a path into the scenario or a figure of the summary.</summary>
internal static class PathCompletions
{
    /// <summary>Offers every path, up to its equals sign.</summary>
    public static void Paths<T>(Option<T> option) => option.CompletionSources.Add([.. KeyPaths.All(ScenarioKeys.Root).Select(p => p + "=")]);

    /// <summary>Offers every figure with both directions.</summary>
    public static void Goals<T>(Option<T> option) => option.CompletionSources.Add([.. FigureNames.All.SelectMany(f => new[] { f + ":least", f + ":most" })]);
}
