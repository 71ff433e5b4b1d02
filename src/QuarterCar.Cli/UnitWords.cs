using QuarterCar.Scenarios.Quantities;

namespace QuarterCar.Cli;

/// <summary>Units that a shell has split off: `--load 830 lbf` without quotes comes as two words behind the option and is meant as one.</summary>
internal static class UnitWords
{
    // These take a bare number, or nothing: a word behind them is no unit.
    private static readonly string[] s_bare = ["--jobs", "--part", "--port", "--samples", "--seed", "--json", "--traces"];

    /// <summary>The arguments, a unit behind the number of an option joined to it.</summary>
    public static string[] Joined(string[] args)
    {
        var joined = new List<string>();
        for (int i = 0; i < args.Length; i++)
        {
            if (IsSplitOff(args, i)) joined[^1] += " " + args[i];
            else joined.Add(args[i]);
        }

        return [.. joined];
    }

    // Behind the option's value, or behind option and value in one word.
    private static bool IsSplitOff(string[] args, int i)
    {
        if (i == 0 || args[i - 1].Length == 0 || !char.IsAsciiDigit(args[i - 1][^1]) || UnitTable.Find(args[i]) is null) return false;
        string option = args[i - 1].StartsWith("--", StringComparison.Ordinal) ? args[i - 1].Split('=')[0] : i >= 2 ? args[i - 2] : "";
        return option.StartsWith("--", StringComparison.Ordinal) && !s_bare.Contains(option);
    }
}
