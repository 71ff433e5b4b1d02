using System.Collections.Immutable;

using QuarterCar.Drafts;
using QuarterCar.Scenarios;
using QuarterCar.Scenarios.Reading;
using QuarterCar.Studies.Setups;

using UnitsNet;

namespace QuarterCar;

/// <summary>A setup of a study: a title and what it changes of the base.</summary>
/// <param name="Title">For tables and legends.</param>
public sealed record SetupDraft(string Title)
{
    private ImmutableArray<(string Path, string Text)> Values { get; init; } = [];

    /// <summary>The setup with one more value.</summary>
    /// <param name="path">Dotted path into the scenario.</param>
    /// <param name="value">As the file would have it, unit included.</param>
    public SetupDraft With(string path, string value) => this with { Values = Values.Add((path, value)) };

    /// <summary>The setup with one more quantity.</summary>
    /// <param name="path">Dotted path into the scenario.</param>
    /// <param name="value">Of the dimension that the path wants.</param>
    public SetupDraft With(string path, IQuantity value) => With(path, QuantityTexts.Of(value));

    /// <summary>Upper and lower rate together.</summary>
    /// <param name="upper">Rate of the upper spring.</param>
    /// <param name="lower">Rate of the lower spring.</param>
    public static SetupDraft Split(ForcePerLength upper, ForcePerLength lower) =>
        new SetupDraft($"{QuantityTexts.Of(upper)} over {QuantityTexts.Of(lower)}").With(SplitText.Upper, upper).With(SplitText.Lower, lower);

    internal static SetupPlan Plan(Scenario scenario, IEnumerable<SetupDraft> setups)
    {
        ImmutableArray<SetupDraft> all = [.. setups];
        if (all.IsEmpty) throw new ScenarioException([new Problem("setups", 0, "", "nothing", "at least one setup")]);
        var problems = new ProblemList();
        foreach ((SetupDraft setup, string path, string text) in all.SelectMany(s => s.Values.Select(v => (s, v.Path, v.Text))))
        {
            foreach (Problem problem in ScenarioReader.Read(scenario.Document, scenario.Options with { Sets = [.. scenario.Options.Sets, $"{path}={text}"], Nut = NutRule.Reset }).Problems)
                problems.Note(problem with { File = setup.Title });
        }

        if (problems.Count > 0) throw new ScenarioException(problems.ToImmutable());
        return SetupPlan.List(
            [.. all.SelectMany(s => s.Values.Select(v => v.Path)).Distinct()],
            [.. all.Select(s => new SetupRequest(s.Title, [.. s.Values.Select(v => SetupValue.Of(v.Path, v.Text))]))]);
    }
}
