using QuarterCar.Scenarios.Quantities;

namespace QuarterCar.Cli;

/// <summary>Units that a shell has split off: `--split 150/250,175/225 lbf/in` without quotes comes as two words and is meant as one.</summary>
internal static class UnitWords
{
    private static readonly string[] s_options = ["--set", "--vary", "--split"];

    /// <summary>The arguments, a unit behind a number of one of these options joined to it.</summary>
    public static string[] Joined(string[] args)
    {
        var joined = new List<string>();
        for (int i = 0; i < args.Length; i++)
        {
            bool splitOff = i >= 2 && s_options.Contains(args[i - 2]) && args[i - 1].Length > 0 && char.IsAsciiDigit(args[i - 1][^1]) && UnitTable.Find(args[i]) is not null;
            if (splitOff) joined[^1] += " " + args[i];
            else joined.Add(args[i]);
        }

        return [.. joined];
    }
}
