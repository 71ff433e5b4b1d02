using System.Collections.Immutable;
using System.CommandLine;

using QuarterCar.Cli.Help;
using QuarterCar.Cli.Options;
using QuarterCar.Reports.Studies;

namespace QuarterCar.Cli.Verbs;

/// <summary>`gather`: puts the parts of one study together.</summary>
internal sealed class GatherVerb : Verb
{
    private readonly Argument<string[]> _folders = new("DIR") { Description = "The --out folders of all parts, in any order.", Arity = ArgumentArity.OneOrMore };
    private readonly OutOptions _out;
    private readonly AlsoOptions _also;

    public GatherVerb()
        : base(HelpTexts.Gather)
    {
        Command.Add(_folders);
        _out = new OutOptions(Command, "the files of the whole study");
        _also = new AlsoOptions(Command);
    }

    public override ExitCode Run(ParseResult parsed, Session session)
    {
        StudyParts parts = Parts(parsed.GetRequiredValue(_folders));
        if (_out.Folder(parsed) is not { } folder) throw new BadInputException("gather: found no --out; wanted a folder for the whole study");
        using var gathering = new Gathering(parts, folder, _out.Json(parsed), _also.Formats(parsed, folder, parts.Head.Setups));
        try
        {
            var (verb, asked) = CommandLine.Study(parts.Head.Study, parts.Asked.Arguments);
            ExitCode code = verb.Run(asked, gathering, session);
            session.Messages.WriteLine(FormattableString.Invariant($"They are the {parts.Head.Setups} setups of {parts.Parts.Length} parts."));
            return code;
        }
        catch (FormatException e)
        {
            throw new BadInputException(e.Message);
        }
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
