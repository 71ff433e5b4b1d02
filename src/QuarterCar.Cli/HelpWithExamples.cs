using System.Collections.Immutable;
using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;

using QuarterCar.Cli.Verbs;

namespace QuarterCar.Cli;

/// <summary>The help page of a verb with its examples below, of the root with what holds for every verb.</summary>
internal sealed class HelpWithExamples(HelpAction page, ImmutableArray<Verb> verbs, string epilogue) : SynchronousCommandLineAction
{
    public override bool Terminating => true;

    public override bool ClearsParseErrors => true;

    public override int Invoke(ParseResult parseResult)
    {
        int code = page.Invoke(parseResult);
        TextWriter output = parseResult.InvocationConfiguration.Output;
        if (verbs.FirstOrDefault(v => v.Command == parseResult.CommandResult.Command) is not { } verb)
        {
            output.WriteLine(epilogue);
            return code;
        }

        output.WriteLine(verb.Examples.Length == 1 ? "Example:" : "Examples:");
        foreach (string example in verb.Examples) output.WriteLine("  " + example);
        return code;
    }
}
