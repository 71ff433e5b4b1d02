using System.Collections.Immutable;

using QuarterCar.Drafts;
using QuarterCar.Scenarios;
using QuarterCar.Studies.Setups;

using UnitsNet;

namespace QuarterCar;

/// <summary>A setup of a study: a title and what it changes of the base.</summary>
/// <param name="Title">For tables and legends.</param>
public sealed record SetupDraft(string Title)
{
    private ImmutableArray<(string Path, string Text)> Values { get; init; } = [];

    internal IEnumerable<string> Sets => Values.Select(v => $"{v.Path}={v.Text}");

    /// <summary>The setup with one more value; a path that it has already takes the new one.</summary>
    /// <param name="path">Dotted path into the scenario.</param>
    /// <param name="value">As the file would have it, unit included.</param>
    public SetupDraft With(string path, string value) =>
        this with { Values = Values.RemoveAll(v => VariedPaths.Canonical(v.Path) == VariedPaths.Canonical(path)).Add((path, value)) };

    /// <summary>The setup with one more quantity.</summary>
    /// <param name="path">Dotted path into the scenario.</param>
    /// <param name="value">Of the dimension that the path wants.</param>
    public SetupDraft With(string path, IQuantity value) => With(path, QuantityTexts.Of(value));

    /// <summary>Upper and lower rate together.</summary>
    /// <param name="upper">Rate of the upper spring.</param>
    /// <param name="lower">Rate of the lower spring.</param>
    public static SetupDraft Split(ForcePerLength upper, ForcePerLength lower) =>
        new SetupDraft($"{QuantityTexts.Of(upper)} over {QuantityTexts.Of(lower)}").With(SplitText.Upper, upper).With(SplitText.Lower, lower);

    internal static SetupPlan Plan(Scenario scenario, IEnumerable<SetupDraft> setups, string? way = null)
    {
        ImmutableArray<SetupDraft> all = [.. setups];
        if (all.IsEmpty) throw new ScenarioException([new Problem("setups", 0, "", "nothing", "at least one setup")]);
        var problems = new ProblemList();
        var check = new ValueCheck(scenario.Document, scenario.Options, problems);
        ImmutableArray<SetupRequest> requests = [.. all.Select(s => new SetupRequest(s.Title, [.. s.Values.Select(v => SetupValue.Of(v.Path, v.Text))]))];
        foreach ((SetupRequest request, SetupValue value) in requests.SelectMany(r => r.Values.Select(v => (r, v))))
        {
            var place = new Place(request.Title, 0, 0);
            if (way is not null && VariedPaths.Canonical(value.Path) == VariedPaths.Canonical(way)) problems.Note(place, value.Path, "the path of the way itself", "setups that differ in others");
            else if (check.Path(value.Path, place) is { } known) check.Value(known, value, place, request.Values);
        }

        if (problems.Count > 0) throw new ScenarioException(problems.ToImmutable());
        return SetupPlan.List([.. all.SelectMany(s => s.Values.Select(v => v.Path)).Distinct()], requests);
    }
}
