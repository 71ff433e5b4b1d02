using System.Collections.Immutable;

namespace QuarterCar.Cli.Help;

/// <summary>One line of a list on a help page.</summary>
/// <param name="Name">A file or an exit code.</param>
/// <param name="Words">What it is, in one sentence.</param>
internal sealed record HelpEntry(string Name, string Words);

/// <summary>What the help page of a verb says beside its arguments and options.</summary>
/// <param name="Name">The verb.</param>
/// <param name="Does">One sentence, for this page and for the list of verbs.</param>
internal sealed record VerbHelp(string Name, string Does)
{
    /// <summary>How it is called, without the program's name; empty where arguments and options tell it.</summary>
    public ImmutableArray<string> Usage { get; init; } = [];

    /// <summary>What it does, a few plain sentences a paragraph.</summary>
    public ImmutableArray<string> About { get; init; } = [];

    /// <summary>Files that it writes.</summary>
    public ImmutableArray<HelpEntry> Files { get; init; } = [];

    /// <summary>What exit code 0 means.</summary>
    public string Done { get; init; } = "Done.";

    /// <summary>What exit code 1 means; empty where the verb never ends with it.</summary>
    public string Broken { get; init; } = "";

    /// <summary>What exit code 130 means.</summary>
    public string Interrupted { get; init; } = HelpTexts.Interrupted;

    /// <summary>Command lines that run in a checkout.</summary>
    public ImmutableArray<string> Examples { get; init; } = [];

    /// <summary>Verbs whose pages go with this one.</summary>
    public ImmutableArray<string> See { get; init; } = [];
}
