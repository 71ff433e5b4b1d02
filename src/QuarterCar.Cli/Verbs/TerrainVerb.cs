using System.CommandLine;

using QuarterCar.Cli.Help;
using QuarterCar.Cli.Options;
using QuarterCar.Model.Terrain;
using QuarterCar.Reports.Files;
using QuarterCar.Reports.Json;
using QuarterCar.Reports.Words;
using QuarterCar.Scenarios;
using QuarterCar.Scenarios.Reading;
using QuarterCar.Studies.Terrains;

namespace QuarterCar.Cli.Verbs;

/// <summary>`terrain`: how rough a course or a measured profile is, in the standard numbers.</summary>
internal sealed class TerrainVerb : Verb
{
    private const string Profile = ".csv";

    private readonly ScenarioOptions _scenario;
    private readonly OutOptions _out;

    public TerrainVerb()
        : base(HelpTexts.Terrain)
    {
        _scenario = new ScenarioOptions(Command, "SCENARIO or PROFILE.csv", "The scenario file (YAML), or a profile: a .csv file with columns distance_<unit> and height_<unit>.");
        _out = new OutOptions(Command, "terrain.csv and plots");
    }

    public override ExitCode Run(ParseResult parsed, Session session)
    {
        ScenarioInput input = _scenario.Input(parsed);
        TerrainResult result = Ask(input, parsed, session);
        string? folder = _out.Folder(parsed);
        session.Cancel.ThrowIfCancellationRequested();
        if (folder is not null) TerrainFiles.Write(result, folder, session.Cancel);
        if (_out.Json(parsed)) TerrainJson.Write(result, session.Results);
        else TerrainText.Write(result, session.Out, session.Colour);
        session.Out.Flush();
        if (folder is not null) session.Messages.WriteLine($"The course as a table and plots is in {folder}.");
        return ExitCode.Done;
    }

    private static TerrainResult Ask(ScenarioInput input, ParseResult parsed, Session session)
    {
        if (input.File.EndsWith(Profile, StringComparison.OrdinalIgnoreCase)) return OfProfile(input, session);
        var scenario = input.Read(session);
        return input.Ask(() => TerrainStudy.Of(scenario, session.Cancel));
    }

    private static TerrainResult OfProfile(ScenarioInput input, Session session)
    {
        var mistakes = new ProblemList();
        string name = Path.GetFileName(input.File);
        foreach (string option in input.Options.Sets.Select(_ => "--set").Concat(input.Options.Case is null ? [] : ["--case"]).Concat(input.Options.Nut is null ? [] : ["--nut"]).Distinct())
            mistakes.Note(new Place(option, 0, 0), "", "it beside a profile, which has no scenario to change", "a scenario whose terrain has a piece `profile: { file: " + name + " }`");
        if (ProfileReader.ReadFile(input.File, input.File, mistakes) is not { } profile || mistakes.Count > 0) throw new BadInputException(mistakes.ToImmutable());
        return TerrainStudy.Of(new ProfilePiece(name, profile.Points), input.Options.Units ?? profile.Units, session.Cancel);
    }
}
