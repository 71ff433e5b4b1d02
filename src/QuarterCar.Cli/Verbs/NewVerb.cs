using System.CommandLine;
using System.Text;

using QuarterCar.Cli.Help;
using QuarterCar.Reports.Files;
using QuarterCar.Scenarios.Keys;

namespace QuarterCar.Cli.Verbs;

/// <summary>`new`: a commented scenario to start from. Never overwrites.</summary>
internal sealed class NewVerb : Verb
{
    private readonly Argument<string> _file = new("FILE") { Description = "The file to write, for example my-corner.yaml." };

    public NewVerb()
        : base(HelpTexts.New) => Command.Add(_file);

    public override ExitCode Run(ParseResult parsed, Session session)
    {
        string file = parsed.GetRequiredValue(_file);
        if (string.IsNullOrWhiteSpace(file)) throw new BadInputException("new: found an empty name; wanted a file's");
        if (Directory.Exists(file)) throw new BadInputException($"{file}: found a directory; wanted the name of a file that is not there yet");
        if (File.Exists(file)) throw new BadInputException($"{file}: found a file of that name; wanted a name that is free: nothing is overwritten");
        Write(file);
        session.Out.WriteLine($"Wrote {file}: a corner to start from. Change its values, then: quartercar check {file}");
        return ExitCode.Done;
    }

    private static void Write(string file)
    {
        try
        {
            WholeFile.Write(file, Encoding.UTF8.GetBytes(ScenarioTemplate.Text), replace: false);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or NotSupportedException or ArgumentException && !IoWords.IsFull(e))
        {
            throw new BadInputException($"{file}: cannot be written: {IoWords.Of(e)}");
        }
    }
}
