using System.Text;

namespace QuarterCar.Cli;

/// <summary>Where a command writes and what can stop it: results to <see cref="Out"/>, progress and messages to <see cref="Messages"/>.</summary>
/// <param name="Results">Standard output, for bytes.</param>
/// <param name="Messages">Standard error.</param>
/// <param name="Colour">True where results go to a terminal that shows colour.</param>
/// <param name="Cancel">Cancelled on Ctrl-C.</param>
internal sealed record Session(Stream Results, TextWriter Messages, bool Colour, CancellationToken Cancel) : IDisposable
{
    private static readonly UTF8Encoding s_utf8 = new(encoderShouldEmitUTF8Identifier: false);

    /// <summary>Standard output, for text.</summary>
    public TextWriter Out { get; } = new StreamWriter(Results, s_utf8, 1 << 14, leaveOpen: true) { NewLine = "\n" };

    /// <summary>True where messages go to a terminal: progress is a bar there, plain lines elsewhere.</summary>
    public bool MessagesOnTerminal { get; init; }

    /// <summary>True where results go to a terminal.</summary>
    public bool ResultsOnTerminal { get; init; }

    /// <summary>The streams of this process.</summary>
    public static Session OfProcess(CancellationToken cancel) => new(
        new StandardStream(Console.OpenStandardOutput(), "standard output"),
        MessagesOfProcess(),
        !Console.IsOutputRedirected && Environment.GetEnvironmentVariable("NO_COLOR") is null or "" && Environment.GetEnvironmentVariable("TERM") is not (null or "" or "dumb"),
        cancel)
    {
        MessagesOnTerminal = !Console.IsErrorRedirected && Environment.GetEnvironmentVariable("TERM") is not "dumb",
        ResultsOnTerminal = !Console.IsOutputRedirected,
    };

    /// <summary>Standard error; what it does not take is lost, and changes nothing about the outcome.</summary>
    public static TextWriter MessagesOfProcess() => new StreamWriter(new StandardStream(Console.OpenStandardError(), needed: null), s_utf8, 1 << 10) { AutoFlush = true, NewLine = "\n" };

    /// <summary>Says where the results of a run or study are.</summary>
    /// <param name="folder">As it was asked for; null says nothing.</param>
    public void SayWhere(string? folder)
    {
        if (folder is not null) Messages.WriteLine($"Results are in {folder}; {Path.Combine(folder, "report.html")} shows them on one page.");
    }

    public void Dispose()
    {
        // What could not be written was said already when the command ended.
        try
        {
            Out.Dispose();
        }
        catch (IOException)
        {
        }

        Messages.Flush();
    }
}
