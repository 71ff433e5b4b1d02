using System.Collections.Immutable;
using System.CommandLine;
using System.Globalization;

using QuarterCar.Cli.Help;
using QuarterCar.Cli.Options;
using QuarterCar.Model.Selection;
using QuarterCar.Reports.Json;
using QuarterCar.Reports.Words;
using QuarterCar.Scenarios;
using QuarterCar.Scenarios.Picking;

namespace QuarterCar.Cli.Verbs;

/// <summary>`pick`: springs for a load and a ride height, ranked.</summary>
internal sealed class PickVerb : Verb
{
    private readonly ImmutableArray<(PickFlag Flag, Option<string?> Option)> _flags =
        [.. PickFlags.All.Select(f => (f, new Option<string?>(f.Name) { HelpName = f.Value, Description = f.Help }))];

    private readonly Option<string?> _springs = new("--springs") { HelpName = "LIST.csv", Description = "Springs to choose from. [default: invented, the list that ships: to try things out with, not to be bought from]" };
    private readonly Option<string?> _tenders = new("--tenders") { HelpName = "LIST.csv", Description = "Tenders to try above every pair; 'invented' takes those that ship." };
    private readonly Option<string?> _units = new("--units") { HelpName = "us|si", Description = "Units of the text; JSON is always SI. [default: those of the load]" };
    private readonly Option<bool> _json = new("--json") { Description = "Prints the result as JSON, and nothing else, on standard output." };

    public PickVerb()
        : base(HelpTexts.Pick)
    {
        Choice.Of(_units, "us", "si");
        foreach (var (_, option) in _flags) Command.Add(option);
        Command.Add(_springs);
        Command.Add(_tenders);
        Command.Add(_units);
        Command.Add(_json);
    }

    public override ExitCode Run(ParseResult parsed, Session session)
    {
        PickInput input = Read(parsed);
        PickResult result = Pick.Of(input.Data, session.Cancel);
        if (parsed.GetValue(_json)) PickJson.Write(result, input.Units, session.Results);
        else PickText.Write(result, input, session.Out, session.Colour);
        session.Out.Flush();
        if (result.Sets.Length < result.Examined)
            session.Messages.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{result.Examined:#,0} sets were ranked; the best {result.Sets.Length:#,0} are listed."));
        return ExitCode.Done;
    }

    private PickInput Read(ParseResult parsed)
    {
        var given = _flags.Where(f => parsed.GetValue(f.Option) is not null).ToDictionary(f => f.Flag.Name, f => parsed.GetValue(f.Option)!);
        UnitSystem? units = parsed.GetValue(_units) switch { null => null, "us" => UnitSystem.Us, _ => UnitSystem.Si };
        PickReading read = PickReader.Read(given, parsed.GetValue(_springs), parsed.GetValue(_tenders), units);
        return read.Input ?? throw new BadInputException(read.Problems);
    }
}
