using System.Collections.Immutable;

using QuarterCar.Scenarios;

namespace QuarterCar.Cli;

/// <summary>The input or its use is wrong: carries every line that the user has to see.</summary>
internal sealed class BadInputException(ImmutableArray<string> lines) : Exception(string.Join('\n', lines))
{
    public BadInputException(string line)
        : this([line])
    {
    }

    public BadInputException(IEnumerable<Problem> problems)
        : this([.. problems.Select(p => p.ToString())])
    {
    }

    /// <summary>One a mistake.</summary>
    public ImmutableArray<string> Lines { get; } = lines;
}
