using QuarterCar.Reports.Files;
using QuarterCar.Scenarios;

namespace QuarterCar.Cli;

/// <summary>The one place that turns what happened to a command into an exit code and words on standard error.</summary>
internal static class Outcome
{
    /// <summary>Set to anything, a failure that nobody foresaw also shows where in the program it happened.</summary>
    public const string TraceVariable = "QUARTERCAR_TRACE";

    /// <summary>Said after Ctrl-C.</summary>
    public const string InterruptedWords = "interrupted: no results were written";

    /// <summary>Runs a command to its exit code; nothing is thrown past this point.</summary>
    public static ExitCode Of(Func<ExitCode> command, Session session)
    {
        try
        {
            ExitCode code = command();
            session.Out.Flush();
            session.Results.Flush();
            return code;
        }
        catch (BadInputException e)
        {
            foreach (string line in e.Lines) Say(session, line);
            return ExitCode.BadInput;
        }
        catch (OperationCanceledException) when (session.Cancel.IsCancellationRequested)
        {
            Say(session, InterruptedWords);
            return ExitCode.Interrupted;
        }
        catch (Exception e)
        {
            Say(session, Words(Cause(e)));
            Trace(session, e);
            return ExitCode.Failed;
        }
    }

    // Threads of a study hand on what failed in a parcel; want of memory says more than what it made fail elsewhere.
    private static Exception Cause(Exception e)
    {
        var all = (e as AggregateException)?.Flatten().InnerExceptions;
        return all?.OfType<OutOfMemoryException>().FirstOrDefault() ?? all?.FirstOrDefault() ?? e;
    }

    private static string Words(Exception e) => e switch
    {
        ResultFolderException => e.Message,
        IOException or UnauthorizedAccessException => $"cannot write the results: {IoWords.Of(e)}",
        OutOfMemoryException => "the run takes more memory than this machine has: use a shorter run.duration, a longer run.sample or a looser run.tolerance, and check for values far out of proportion",
        _ => $"the computation failed in a way that was not foreseen ({e.GetType().Name}: {e.Message.ReplaceLineEndings(" ").TrimEnd('.')}); this is a fault of the program. Set {TraceVariable}=1 to see where.",
    };

    private static void Trace(Session session, Exception e)
    {
        if (Environment.GetEnvironmentVariable(TraceVariable) is { Length: > 0 }) session.Messages.WriteLine(e);
    }

    private static void Say(Session session, string line) => session.Messages.WriteLine("quartercar: " + PlainText.Line(line));
}
