using System.CommandLine;
using System.Globalization;

using QuarterCar.Cli.Help;
using QuarterCar.Scenarios;
using QuarterCar.Web.Serving;
using QuarterCar.Web.State;

namespace QuarterCar.Cli.Verbs;

/// <summary>`serve`: the live page, until Ctrl-C.</summary>
internal sealed class ServeVerb : Verb
{
    private const int MostPort = 65535;

    private readonly Argument<string?> _file = new("SCENARIO") { Description = "The scenario file (YAML) to open with. [default: one that ships]", Arity = ArgumentArity.ZeroOrOne };
    private readonly Option<string?> _port = new("--port") { HelpName = "N", Description = "The port. [default: a free one]" };

    public ServeVerb()
        : base(HelpTexts.Serve)
    {
        Command.Add(_file);
        Command.Add(_port);
    }

    public override ExitCode Run(ParseResult parsed, Session session)
    {
        int port = Port(parsed.GetValue(_port));
        var problems = new ProblemList();
        OpenedScenario? opened = parsed.GetValue(_file) is { } file ? OpenedScenario.Load(file, problems) : OpenedScenario.Shipped();
        if (opened is null) throw new BadInputException(problems.ToImmutable());
        return Serve(opened, port, session).GetAwaiter().GetResult();
    }

    private static async Task<ExitCode> Serve(OpenedScenario opened, int port, Session session)
    {
        LivePage page;
        try
        {
            page = await LivePage.Start(opened, port);
        }
        catch (IOException)
        {
            throw new BadInputException(string.Create(CultureInfo.InvariantCulture, $"--port: found {port}, which is taken or not allowed; wanted a free port, or none to have one chosen"));
        }

        await using (page)
        {
            await session.Out.WriteLineAsync(page.Address);
            await session.Out.FlushAsync();
            await session.Messages.WriteLineAsync($"The live page is at {page.Address}, for this machine alone. Ctrl-C ends it.");
            try
            {
                await Task.Delay(Timeout.Infinite, session.Cancel);
            }
            catch (OperationCanceledException)
            {
                // This is how it ends.
            }
        }

        return ExitCode.Interrupted;
    }

    private static int Port(string? text)
    {
        if (text is null) return 0;
        if (int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out int port) && port is >= 1 and <= MostPort) return port;
        throw new BadInputException($"--port: found '{text}'; wanted a whole number from 1 to {MostPort.ToString(CultureInfo.InvariantCulture)}");
    }
}
