using System.Collections.Immutable;
using System.CommandLine;

using QuarterCar.Cli.Options;
using QuarterCar.Reports.Studies;
using QuarterCar.Studies.Setups;

namespace QuarterCar.Cli.Verbs;

/// <summary>`gather`: puts the parts of one study together.</summary>
internal sealed class GatherVerb : Verb
{
    private readonly Argument<string[]> _folders = new("DIR") { Description = "The --out folders of all parts, in any order.", Arity = ArgumentArity.OneOrMore };
    private readonly OutOptions _out;

    public GatherVerb()
        : base(
            "gather",
            "Puts the parts of a study (--part K/N) together: table, JSON and traces byte for byte as one run writes them, and a report. Overlaid plots need the runs themselves and are left out.",
            "quartercar compare scenarios/quarry-ledge.yaml --vary coilover.preload='1,1.4,1.8 in' --part 1/2 --out out/part1",
            "quartercar compare scenarios/quarry-ledge.yaml --vary coilover.preload='1,1.4,1.8 in' --part 2/2 --out out/part2",
            "quartercar gather out/part1 out/part2 --out out/whole")
    {
        Command.Add(_folders);
        _out = new OutOptions(Command, "the files of the whole study");
    }

    public override ExitCode Run(ParseResult parsed, Session session)
    {
        StudyParts parts = Parts(parsed.GetRequiredValue(_folders));
        if (_out.Folder(parsed) is not { } folder) throw new BadInputException("gather: found no --out; wanted a folder for the whole study");
        bool missing = false;
        var rows = new List<StudyRow>();
        try
        {
            if (parts.Head.Study == "spread")
            {
                missing = SpreadFiles.Write(folder, parts.Head, parts.Produce, cancel: session.Cancel).Samples.Failed > 0;
            }
            else
            {
                CompareFiles.Gather(folder, parts, row =>
                {
                    missing |= row.Figures is null;
                    if (rows.Count < CompareText.Most) rows.Add(row);
                }, session.Cancel);
            }
        }
        catch (FormatException e)
        {
            throw new BadInputException(e.Message);
        }

        if (_out.Json(parsed))
        {
            using FileStream file = File.OpenRead(Path.Combine(folder, parts.Head.Study + ".json"));
            file.CopyTo(session.Results);
        }
        else if (rows.Count > 0)
        {
            CompareText.Write(parts.Head, rows, session.Out, session.Colour);
        }

        session.Out.Flush();
        session.Messages.WriteLine(FormattableString.Invariant($"The {parts.Head.Setups} setups of {parts.Parts.Length} parts are in {folder}."));
        return missing ? ExitCode.Broken : ExitCode.Done;
    }

    private static StudyParts Parts(string[] folders)
    {
        var mistakes = new List<string>();
        var parts = new List<StudyPart>();
        foreach (string folder in folders)
        {
            try
            {
                parts.Add(StudyPart.Open(folder));
            }
            catch (FormatException e)
            {
                mistakes.Add(e.Message);
            }
        }

        if (mistakes.Count > 0) throw new BadInputException([.. mistakes]);
        return StudyParts.Of(parts, out ImmutableArray<string> wrong) ?? throw new BadInputException(wrong);
    }
}
