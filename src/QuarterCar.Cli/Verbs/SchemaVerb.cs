using System.CommandLine;

using QuarterCar.Cli.Help;
using QuarterCar.Scenarios.Schema;

namespace QuarterCar.Cli.Verbs;

/// <summary>`schema`: the JSON Schema of the scenario file, for editors and other programs.</summary>
internal sealed class SchemaVerb : Verb
{
    public SchemaVerb()
        : base(HelpTexts.Schema)
    {
    }

    public override ExitCode Run(ParseResult parsed, Session session)
    {
        session.Out.Write(ScenarioSchema.Text);
        return ExitCode.Done;
    }
}
