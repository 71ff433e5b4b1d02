using System.Collections.Immutable;

using QuarterCar.Model;
using QuarterCar.Scenarios;

namespace QuarterCar;

/// <summary>One mistake in what was given: where it is, what was found, what is wanted. The words are those of the command line.</summary>
/// <param name="Source">File, or name of the text.</param>
/// <param name="Line">From 1; 0 where there are no lines.</param>
/// <param name="Key">Dotted path of the key; empty where the whole is meant.</param>
/// <param name="Found">What stands there.</param>
/// <param name="Wanted">What would be right.</param>
public sealed record Mistake(string Source, int Line, string Key, string Found, string Wanted)
{
    /// <summary>One line, as the command line prints it.</summary>
    public override string ToString() => new Problem(Source, Line, Key, Found, Wanted).ToString();

    internal static Mistake Of(Problem p) => new(p.File, p.Line, p.Key, p.Found, p.Wanted);
}

/// <summary>What was given describes no corner, course or study that can be computed. Nothing was computed and nothing was written.</summary>
public sealed class ScenarioException : Exception
{
    internal ScenarioException(IEnumerable<Problem> problems)
        : this([.. problems.Select(Mistake.Of)])
    {
    }

    internal ScenarioException(string source, CornerException e)
        : this([new Mistake(source, 0, e.Key, e.Found, e.Wanted)])
    {
    }

    private ScenarioException(ImmutableArray<Mistake> mistakes)
        : base(string.Join('\n', mistakes)) => Mistakes = mistakes;

    /// <summary>Every mistake, at least one.</summary>
    public IReadOnlyList<Mistake> Mistakes { get; }
}
