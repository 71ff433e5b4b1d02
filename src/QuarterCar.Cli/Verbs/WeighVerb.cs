using System.Collections.Immutable;
using System.CommandLine;

using QuarterCar.Cli.Help;
using QuarterCar.Cli.Options;
using QuarterCar.Model.Selection;
using QuarterCar.Reports.Json;
using QuarterCar.Reports.Words;
using QuarterCar.Scenarios;
using QuarterCar.Scenarios.Weighing;

namespace QuarterCar.Cli.Verbs;

/// <summary>`weigh`: the load on a coilover from springs of known rate and their loaded lengths.</summary>
internal sealed class WeighVerb : Verb
{
    private readonly Option<string?> _file = new("--file") { HelpName = "MEASURED.yaml", Description = "Measured corners, in place of flags; left and right are compared." };
    private readonly ImmutableArray<(MeasuredFlag Flag, Option<string?> Option)> _flags =
        [.. MeasuredFlags.All.Select(f => (f, new Option<string?>(f.Name) { HelpName = f.Value, Description = f.Help }))];

    private readonly Option<string?> _units = new("--units") { HelpName = "us|si", Description = "Units of the text; JSON is always SI. [default: those of the first spring]" };
    private readonly Option<bool> _json = new("--json") { Description = "Prints the result as JSON, and nothing else, on standard output." };

    public WeighVerb()
        : base(HelpTexts.Weigh)
    {
        Choice.Of(_units, "us", "si");
        Command.Add(_file);
        foreach (var (_, option) in _flags) Command.Add(option);
        Command.Add(_units);
        Command.Add(_json);
    }

    public override ExitCode Run(ParseResult parsed, Session session)
    {
        MeasuredInput input = Read(parsed);
        WeighResult result = Weigh.Of(input.Corners, input.Errors);
        session.Cancel.ThrowIfCancellationRequested();
        if (parsed.GetValue(_json)) WeighJson.Write(result, input.Units, session.Results);
        else WeighText.Write(result, input.Units, session.Out, session.Colour);
        session.Out.Flush();
        return ExitCode.Done;
    }

    private MeasuredInput Read(ParseResult parsed)
    {
        var given = _flags.Where(f => parsed.GetValue(f.Option) is not null).ToDictionary(f => f.Flag.Name, f => parsed.GetValue(f.Option)!);
        UnitSystem? units = parsed.GetValue(_units) switch { null => null, "us" => UnitSystem.Us, _ => UnitSystem.Si };
        string? file = parsed.GetValue(_file);
        if (file is null && given.Count == 0)
            throw new BadInputException("weigh: found nothing to weigh; wanted --lower-rate, --lower-free and --lower-loaded (and the same for other springs), or --file MEASURED.yaml");
        MeasuredReading read = file is null ? MeasuredReader.ReadFlags(given, units) : MeasuredReader.ReadFile(file, units);
        ImmutableArray<string> lines = [.. read.Problems.Select(p => p.ToString())];
        if (file is not null && given.Count > 0)
            lines = [$"--file: found it beside {string.Join(", ", given.Keys)}; wanted the file alone: its measurements and errors stand in it", .. lines];
        return lines.IsEmpty ? read.Input! : throw new BadInputException(lines);
    }
}
