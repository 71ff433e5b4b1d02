using System.CommandLine;
using System.CommandLine.Completions;

using QuarterCar.Scenarios.Keys;

namespace QuarterCar.Cli.Options;

/// <summary>Completions of options that name a path into the scenario or a figure of the summary; made when a shell asks, not at every start.</summary>
internal static class PathCompletions
{
    /// <summary>Offers every path, up to its equals sign.</summary>
    public static void Paths<T>(Option<T> option) => Words(option, () => KeyPaths.All(ScenarioKeys.Root).Select(p => p + "="));

    /// <summary>Offers every figure with both directions.</summary>
    public static void Goals<T>(Option<T> option) => Words(option, () => FigureNames.All.SelectMany(f => new[] { f + ":least", f + ":most" }));

    private static void Words<T>(Option<T> option, Func<IEnumerable<string>> words) => option.CompletionSources.Add(_ => words().Select(w => new CompletionItem(w)));
}
