using System.Globalization;

using QuarterCar.Reports.Units;
using QuarterCar.Studies.Setups;
using QuarterCar.Studies.Sweeps;

namespace QuarterCar.Reports.Studies;

/// <summary>A sweep's answer in sentences, the same on screen, report and picture.</summary>
internal sealed class SweepWords
{
    /// <summary>Stands beside every best and every largest value.</summary>
    public const string Caution =
        "This is what one model corner survives on this course: no safe speed and no safe height. Pitch, roll, side load and strength are not in it.";

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
        if (_result.Best is { } best)
            return $"{direction} {Goal.Word} inside the limits: {Goal.Text(_result.Goal.Of(best.Figures))} at {Point(best)}";
        if (_result.Unlimited is { } any)
            return $"No point holds every limit; {direction.ToLowerInvariant()} {Goal.Word} is {Goal.Text(_result.Goal.Of(any.Figures))} at {Point(any)}";
        return _result.Rows == 0 ? StudyHead.NoSetups.TrimEnd('.') : $"No point could be run: {_result.FirstFailure}";
    }

    /// <summary>How near the best comes to a limit; empty without best.</summary>
    public string Nearest()
    {
        if (_result.Nearest is not { } near)
            return "";
        FigureScale figure = Figure(near.Figure);
        return near.Figure.StartsWith("counts.", StringComparison.Ordinal)
            ? $"Only contacts are limited: {figure.Word} {figure.Number(near.Value)}, allowed {figure.Number(near.Limit)}."
            : $"Nearest limit: {figure.Word} {figure.Text(near.Value)} of {figure.Text(near.Limit)}, {figure.Text(near.Distance)} to spare.";
    }

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
        FigureScale figure = Figure(b.Limit.Figure);
        return new[] { $"{figure.Words} above {figure.Text(b.Limit.Largest)}", b.Points.ToString("#,0", CultureInfo.InvariantCulture), figure.Text(b.Worst), Where(b) };
    })];

    private string Where(SweepBreak b) => string.Join("; ", Paths.Select((p, k) => double.IsNaN(b.Least[k]) ? "" : b.Least[k] == b.Most[k]
        ? $"{p.Name} {p.Text(b.Least[k])}"
        : $"{p.Name} {p.Number(b.Least[k])} to {p.Text(b.Most[k])}").Where(t => t.Length > 0));
}
