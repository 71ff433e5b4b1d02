namespace QuarterCar.Cli.Tests;

/// <summary>What a failure is called whose like no command shows on demand.</summary>
public sealed class OutcomeTests
{
    [Fact]
    public void Memory_that_runs_out_on_a_thread_of_a_study_is_called_that() => Assert.StartsWith(
        "quartercar: the run takes more memory than this machine has: ",
        Said(new AggregateException(new TaskCanceledException(), new AggregateException(new InsufficientMemoryException()))),
        StringComparison.Ordinal);

    [Fact]
    public void A_failure_on_a_thread_is_called_by_its_own_name() => Assert.StartsWith(
        "quartercar: the computation failed in a way that was not foreseen (InvalidOperationException: why)",
        Said(new AggregateException(new InvalidOperationException("why."))),
        StringComparison.Ordinal);

    private static string Said(Exception failure)
    {
        using var messages = new StringWriter();
        using var session = new Session(new MemoryStream(), messages, Colour: false, CancellationToken.None);
        Assert.Equal(ExitCode.Failed, Outcome.Of(() => throw failure, session));
        return messages.ToString();
    }
}
