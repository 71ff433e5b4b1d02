using System.Collections.Immutable;
using System.CommandLine;
using System.CommandLine.Parsing;

using QuarterCar.Scenarios;
using QuarterCar.Scenarios.Reading;
using QuarterCar.Studies;

namespace QuarterCar.Cli.Options;

/// <summary>What every verb takes that reads a scenario: the file, a load case, overrides, the stop nut's rule, output units.</summary>
internal sealed class ScenarioOptions
{
    private readonly Argument<string> _file;
    private readonly Argument<string[]> _files = new("SCENARIO") { Description = "One or more scenario files (YAML).", Arity = ArgumentArity.OneOrMore };
    private readonly bool _several;
    private readonly Option<string?> _case = new("--case") { HelpName = "NAME", Description = "Takes a load case of the scenario, by its name." };
    private readonly Option<string[]> _set = new("--set") { HelpName = "PATH=VALUE", Description = "Another value for this call, after the case; may be given several times. PATH is dotted and lists count from 0, as in terrain[1].step; VALUE is as in the file; none takes the key away: --set coilover.preload='1.6 in'" };
    private readonly Option<string?> _nut = new("--nut") { HelpName = "stays|reset", Description = "The stop nut when something else changes: it stays where it is on the body, or its gap is set anew. [default: reset for --set, stays for a case; of setups that are compared those with other springs or nuts are reset, the others stay]" };
    private readonly Option<string?> _units = new("--units") { HelpName = "us|si", Description = "Units of text, tables and pictures; JSON and the tables of studies are always SI. [default: those of the scenario's first length, force or rate]" };

    /// <summary>Adds them to a verb.</summary>
    /// <param name="command">The verb.</param>
    /// <param name="several">True where it takes more than one scenario.</param>
    public ScenarioOptions(Command command, bool several = false)
        : this(command, "SCENARIO", "The scenario file (YAML).", several)
    {
    }

    /// <summary>Adds them to a verb whose file has another name on the help page.</summary>
    public ScenarioOptions(Command command, string file, string description)
        : this(command, file, description, several: false)
    {
    }

    private ScenarioOptions(Command command, string file, string description, bool several)
    {
        _file = new Argument<string>(file) { Description = description };
        _several = several;
        Choice.Of(_nut, "stays", "reset");
        Choice.Of(_units, "us", "si");
        PathCompletions.Paths(_set);
        command.Add(several ? _files : _file);
        command.Add(_case);
        command.Add(_set);
        command.Add(_nut);
        command.Add(_units);
    }

    /// <summary>The input as asked for; nothing is read yet.</summary>
    /// <param name="parsed">The command line.</param>
    /// <param name="gathering">Knows where the files lie that parts of a study read; null for the files themselves.</param>
    public ScenarioInput Input(ParseResult parsed, Gathering? gathering = null) => Inputs(parsed, gathering)[0];

    /// <summary>Every input as asked for, with the same case, overrides and units.</summary>
    public ImmutableArray<ScenarioInput> Inputs(ParseResult parsed, Gathering? gathering = null) => [.. (_several ? parsed.GetRequiredValue(_files) : [parsed.GetRequiredValue(_file)]).Select(file => Input(file, parsed, gathering))];

    private ScenarioInput Input(string file, ParseResult parsed, Gathering? gathering) => new(
        file,
        new ReadOptions(
            parsed.GetValue(_case),
            [.. parsed.GetValue(_set) ?? []],
            parsed.GetValue(_nut) switch { null => null, "stays" => NutRule.Stays, _ => NutRule.Reset },
            parsed.GetValue(_units) switch { null => null, "us" => UnitSystem.Us, _ => UnitSystem.Si },
            StandingBase.Instance),
        gathering,
        Keeps: gathering is null && parsed.GetResult("--part") is OptionResult { Implicit: false });
}
