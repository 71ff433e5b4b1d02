using System.CommandLine;

using QuarterCar.Studies.Sweeps;

namespace QuarterCar.Cli.Options;

/// <summary>--goal: the figure that a study looks for the least or the most of.</summary>
internal sealed class GoalOption
{
    private readonly Option<string?> _goal = new("--goal")
    {
        HelpName = "FIGURE:least|most",
        Description = $"What is looked for: a figure of summary.json, or its last part where that is unambiguous. [default: {Goal.Default}]",
    };

    /// <summary>Adds it to a verb.</summary>
    public GoalOption(Command command)
    {
        PathCompletions.Goals(_goal);
        command.Add(_goal);
    }

    /// <summary>The goal; null with a line that says what is wrong.</summary>
    public Goal? Read(ParseResult parsed, out string mistake)
    {
        mistake = "";
        if (parsed.GetValue(_goal) is not { } text) return Goal.Default;
        Goal? goal = Goal.Parse(text, out string found, out string wanted);
        if (goal is null) mistake = $"--goal: found {found}; wanted {wanted}";
        return goal;
    }
}
