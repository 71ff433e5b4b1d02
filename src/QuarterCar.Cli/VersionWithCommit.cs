using System.CommandLine;
using System.CommandLine.Invocation;
using System.Reflection;

using QuarterCar.Reports.Json;

namespace QuarterCar.Cli;

/// <summary>--version: the version as in summary.json, and the commit that the program was built from where it was built in a checkout.</summary>
internal sealed class VersionWithCommit : SynchronousCommandLineAction
{
    private const int ShortCommit = 12;

    /// <summary>The version, then the commit in brackets.</summary>
    public static string Text { get; } = Commit() is { } commit ? $"{SummaryJson.Version} ({commit})" : SummaryJson.Version;

    /// <inheritdoc/>
    public override int Invoke(ParseResult parseResult)
    {
        parseResult.InvocationConfiguration.Output.WriteLine(Text);
        return (int)ExitCode.Done;
    }

    private static string? Commit()
    {
        string[] parts = (typeof(SummaryJson).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion ?? "").Split('+');
        return parts.Length == 2 ? parts[1][..Math.Min(ShortCommit, parts[1].Length)] : null;
    }
}
