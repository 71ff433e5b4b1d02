using System.Text;
using System.Text.Json;

namespace QuarterCar.Cli.Tests;

/// <summary>A command line run inside the test: its exit code and what it wrote.</summary>
internal sealed record Asked(ExitCode Code, string Out, string Messages)
{
    public static Asked Of(params string[] args) => Of(default, args);

    public static Asked Of(CancellationToken cancel, params string[] args)
    {
        using var results = new MemoryStream();
        using var messages = new StringWriter();
        ExitCode code;
        using (var session = new Session(results, messages, Colour: false, cancel)) code = CommandLine.Run(args, session);
        return new Asked(code, Encoding.UTF8.GetString(results.ToArray()), messages.ToString());
    }

    /// <summary>Standard output as one JSON document, and nothing else.</summary>
    public JsonElement Json() => JsonDocument.Parse(Out).RootElement;
}
