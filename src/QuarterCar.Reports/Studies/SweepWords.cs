using System.Globalization;

using QuarterCar.Reports.Units;
using QuarterCar.Reports.Words;
using QuarterCar.Studies;
using QuarterCar.Studies.Setups;
using QuarterCar.Studies.Sweeps;

namespace QuarterCar.Reports.Studies;

/// <summary>A sweep's answer in sentences, the same on screen, report and picture.</summary>
internal sealed class SweepWords
{
    /// <summary>Stands beside every best and every largest value.</summary>
    public const string Caution =
        "This is what one model corner survives on this course: no safe speed and no safe height. Pitch, roll, side load and strength are not in it.";

    /// <summary>Stands beside it on screen and page: what no run tells.</summary>
    public const string NotFitted = "Whether the parts go together (thread, seat, bind at full bump) is not looked at here: 'check' the setup before ordering.";

    private readonly SweepResult _result;
    private readonly Readable _read;

    public SweepWords(SweepResult result)
    {
        (_result, _read) = (result, new Readable(result.Scenario.Units));
        Goal = new FigureScale(result.Goal.Figure, _read);
        Paths = PathScale.Of([.. result.Grid.Paths], result.Scenario.Units);
    }

    /// <summary>The goal's figure.</summary>
    public FigureScale Goal { get; }

    /// <summary>Varied paths, in order.</summary>
    public IReadOnlyList<PathScale> Paths { get; }

    /// <summary>A limited figure.</summary>
    public FigureScale Figure(string name) => new(name, _read);

    /// <summary>The answer.</summary>
    public string Verdict()
    {
        string direction = _result.Goal.Most ? "Most" : "Least";
        if (_result.Rows == 0)
            return StudyHead.NoSetups.TrimEnd('.');
        if (_result.Failed == _result.Rows)
            return $"No point could be run: {_result.FirstFailure}";
        if ((_result.Best ?? _result.Unlimited) is not { } best)
            return $"{Goal.Head} does not apply to this corner";
        string value = Goal.Text(_result.Goal.Of(best.Figures));
        if (AllAlike(best))
        {
            string all = string.Create(CultureInfo.InvariantCulture, $"is {value} at all {_result.Field!.Value.Points:#,0} points");
            return _result.Best is null ? $"{Outside()}; {Goal.Word} {all}" : $"{Goal.Head} {all} inside the limits";
        }

        return _result.Best is null
            ? $"{Outside()}; {direction.ToLowerInvariant()} {Goal.Word} is {value} at {Point(best)}{((best.Rest ?? best.Stop) is { } rest ? ", which " + rest : "")}"
            : $"{direction} {Goal.Word} inside the limits: {value} at {Point(best)}{Alike(value)}";
    }

    // By what is shown, from the best to the poorest: then no point is named.
    private bool AllAlike(StudyRow best) => _result.Field is { Points: > 1 } field && Goal.Text(field.Poorest) == Goal.Text(_result.Goal.Of(best.Figures));

    private string Outside() => _result.Holding == 0 ? "No point holds every limit" : $"{Goal.Head} applies to no point that holds every limit";

    // Of equals, as they are shown, none is the best. No more of them are known than the table shows.
    private string Alike(string value)
    {
        int alike = _result.Leaders.Count(l => Goal.Text(_result.Goal.Of(l.Figures)) == value);
        return alike < 2 ? "" : string.Create(CultureInfo.InvariantCulture, $", one of {(alike == SweepResult.MostLeaders ? "at least " : "")}{alike} points that are alike in it");
    }

    /// <summary>How near the best comes to a limit; empty without best.</summary>
    public string Nearest()
    {
        if (_result.Nearest is not { } near)
            return "";
        FigureScale figure = Figure(near.Figure);
        if (!near.Figure.StartsWith("counts.", StringComparison.Ordinal))
            return $"Nearest limit: {figure.Word} {figure.Text(near.Value)} of {figure.Text(near.Limit)}, {figure.Text(near.Distance)} to spare.";
        string contacts = $"{figure.Word} {figure.Number(near.Value)}, allowed {figure.Number(near.Limit)}.";
        string[] others = [.. _result.Limits.BesideCounts.Select(l => Figure(l.Figure).Word)];
        return others.Length == 0 ? "Only contacts are limited: " + contacts : $"To the best point the limit on {string.Join(", ", others)} does not apply; {contacts}";
    }

    /// <summary>What is held by at the point that the answer names, and where its stop nut stands; empty where nothing is held and nothing moves the nut.</summary>
    public string Nut() => (_result.Best ?? _result.Unlimited) is { } best && !AllAlike(best)
        ? NutWords.Sentence("There", best.HeldBy, _result.Grid.Paths, best.Figures, _read)
        : "";

    /// <summary>The limits that the figures of the best point do not tell of; empty where all are judged, and where <see cref="Nearest"/> says it.</summary>
    public string NotJudged() =>
        _result.Best is not { } best || _result.Nearest?.Figure.StartsWith("counts.", StringComparison.Ordinal) == true || LimitWords.NotJudged(_result.Limits, best.Figures, _read) is not { } open ? ""
        : AllAlike(best) ? $"At {Point(best)} {open}."
        : $"There {open}.";

    /// <summary>How many points hold.</summary>
    public string Count()
    {
        string text = string.Create(CultureInfo.InvariantCulture, $"{_result.Holding:#,0} of {_result.Rows:#,0} points hold every limit.");
        return _result.Failed == 0 ? text : text + string.Create(CultureInfo.InvariantCulture, $" {_result.Failed:#,0} could not be run; the first: {_result.FirstFailure}");
    }

    /// <summary>A point's values in words.</summary>
    public string Point(StudyRow row) => string.Join(", ", row.Request.Values.Select((v, k) => v.Si is { } si ? $"{Paths[k].Name} {Paths[k].Text(si)}" : $"{Paths[k].Name} {v.Text}"));

    /// <summary>Heads of the table of the best points.</summary>
    public string[] LeaderHeads() => ["", .. Paths.Select(p => p.Label), Goal.Label, "nearest limit"];

    /// <summary>Rows of the table of the best points.</summary>
    public List<string[]> Leaders() => [.. _result.Leaders.Select((row, i) => (string[])
    [
        (i + 1).ToString(CultureInfo.InvariantCulture),
        .. row.Request.Values.Select((v, k) => v.Si is { } si ? Paths[k].Number(si) : v.Text),
        Goal.Number(_result.Goal.Of(row.Figures)),
        _result.Limits.Nearest(row.Figures!.Value) is { } near ? $"{Figure(near.Figure).Word} {Figure(near.Figure).Text(near.Value)}" : "",
    ])];

    /// <summary>Rows of what broke where: limit, how often, worst, where.</summary>
    public List<string[]> Breaks() => [.. _result.Breaks.Select(b =>
    {
        if (b.Limit is not { } limit)
            return [AtRest.Either, b.Points.ToString("#,0", CultureInfo.InvariantCulture), "", Where(b)];
        if (double.IsNaN(b.Worst))
            return [AtRest.OnStopOf(limit.Figure), b.Points.ToString("#,0", CultureInfo.InvariantCulture), "", Where(b)];
        var (worst, largest) = FigureWords.OfLimit(new LimitVerdict(limit.Figure, limit.Largest, b.Worst, Broken: true), _read);
        return new[] { $"{Figure(limit.Figure).Words} above {largest.Text}", b.Points.ToString("#,0", CultureInfo.InvariantCulture), worst.Text, Where(b) };
    })];

    private string Where(SweepBreak b) => string.Join("; ", Paths.Select((p, k) => double.IsNaN(b.Least[k]) ? "" : b.Least[k] == b.Most[k]
        ? $"{p.Name} {p.Text(b.Least[k])}"
        : $"{p.Name} {p.Number(b.Least[k])} to {p.Text(b.Most[k])}").Where(t => t.Length > 0));
}
