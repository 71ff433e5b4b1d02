using System.Globalization;

using QuarterCar.Reports.Units;
using QuarterCar.Scenarios;
using QuarterCar.Studies;
using QuarterCar.Studies.Setups;
using QuarterCar.Studies.Sweeps;

namespace QuarterCar.Reports.Studies;

/// <summary>What a comparison says of all its setups. Fed from every row; keeps the first ones for the tables, and of the rest no more than the sentences need.</summary>
/// <param name="units">Of the numbers in the sentences.</param>
/// <param name="limits">The limits that the scenario of a setup sets, by the setup's place.</param>
public sealed class CompareTally(UnitSystem units, Func<long, LimitSet> limits)
{
    /// <summary>Said where the setups do not all take the same obstacle at the same speed.</summary>
    public const string Unlike = "They do not all take the same obstacle at the same speed: that alone may make the difference.";

    // Setups that a sentence names.
    private const int MostNamed = 8;

    private readonly Lowest _peak = new("acceleration.peak_g", new Readable(units)), _travel = new("travel.up_travel_used", new Readable(units));
    private readonly List<StudyRow> _first = [], _failures = [];
    private readonly Named _resting = new(), _metal = new(), _breaking = new(), _failed = new();
    private string? _obstacle;
    private bool _unlike;

    /// <summary>The first rows, at most <see cref="CompareText.Most"/>, without their runs.</summary>
    public IReadOnlyList<StudyRow> First => _first;

    /// <summary>The first rows of setups that could not be run, wherever they stand; at most <see cref="CompareText.Most"/>.</summary>
    public IReadOnlyList<StudyRow> Failures => _failures;

    /// <summary>Setups.</summary>
    public long Rows { get; private set; }

    /// <summary>Setups that could not be run.</summary>
    public long Failed => _failed.Count;

    /// <summary>Setups that ran.</summary>
    public long Ran => Rows - Failed;

    /// <summary>Setups that meet metal, bind their coils, or stand so.</summary>
    public long OnMetal => _metal.Count + _resting.Count;

    // Setups that their springs hold up. The others metal holds still: their figures may be the lowest, and mean nothing beside these.
    private long Held => Ran - _resting.Count;

    /// <summary>Takes the next row.</summary>
    public void Take(StudyRow row)
    {
        Rows++;
        if (_first.Count < CompareText.Most)
            _first.Add(row with { Run = null });
        if (row.Figures is null)
        {
            _failed.Add(row.Index);
            if (_failures.Count < CompareText.Most)
                _failures.Add(row);
            return;
        }

        if (row.Rest is not null)
        {
            _resting.Add(row.Index);
            return;
        }

        _peak.Take(row);
        _travel.Take(row);
        string obstacle = string.Join('|', row.Request.Values.Where(v => Obstacle.IsPart(v.Path)).Select(v => $"{v.Path}={v.Si?.ToString("R", CultureInfo.InvariantCulture) ?? v.Text}"));
        _unlike |= obstacle != (_obstacle ??= obstacle);
        if (row.MeetsMetal)
            _metal.Add(row.Index);
        if (!limits(row.Index).Holds(row))
            _breaking.Add(row.Index);
    }

    /// <summary>The answer in a few sentences.</summary>
    /// <param name="oneObstacle">False where scenarios do not all have the same obstacle and speed; what is varied is known from the rows.</param>
    public string Verdict(bool oneObstacle = true)
    {
        if (Rows == 0) return StudyHead.NoSetups;
        if (Ran == 0) return Rows == 1 ? "The setup could not be run." : "None of the setups could be run.";
        string answer = Ran == 1 ? $"Setup {(Held == 1 ? _peak.Setups : _resting)} ran." : Held > 1 ? Compared() : Held == 1 ? Alone() : "";
        string metal = _metal.Count == 0 ? "" : $" {_metal} {(_metal.Count == 1 ? "meets metal or binds its" : "meet metal or bind their")} coils.";
        string limited = _breaking.Count == 0 ? "" : $" {_breaking} {(_breaking.Count == 1 ? "breaks a limit of its" : "break a limit of their")} scenario.";
        string missing = Failed == 0 ? "" : FormattableString.Invariant($" {Failed} of {Rows} setups could not be run: {_failed}.");
        string unlike = (oneObstacle && !_unlike) || Held < 2 ? "" : " " + Unlike;
        return (answer + unlike + Resting() + metal + limited + missing).TrimStart();
    }

    private string Resting() =>
        _resting.Count == 0 ? ""
        : Ran == 1 ? $" It {AtRest.Either}."
        : Held == 0 ? $" All {(Failed == 0 ? "of them" : "that ran")} {AtRest.EitherOfMany}, so that none is better than another."
        : _resting.Count == 1 ? $" {_resting} {AtRest.Either} and is left out of that."
        : $" {_resting} {AtRest.EitherOfMany} and are left out of that.";

    private string Alone() => $"{_peak.Setups} alone is held up by its springs: peak acceleration {_peak.Text}{(_travel.Setups.Count == 0 ? "" : $", up-travel used {_travel.Text}")}.";

    // By what is shown: a winner by a difference that nobody can see would mislead.
    private string Compared()
    {
        bool peak = _peak.Setups.Count == Held, travel = _travel.Setups.Count == Held;
        string all = Held == Ran ? "All" : _peak.Setups.ToString();
        if (peak && travel)
            return $"{all} are alike in peak acceleration, {_peak.Text}, and in up-travel used, {_travel.Text}.";
        string first = peak ? $"{all} are alike in peak acceleration, {_peak.Text}" : $"{_peak.Setups} {(_peak.Setups.Count == 1 ? "has" : "have")} the lowest peak acceleration, {_peak.Text}";
        if (_travel.Setups.Count == 0)
            return first + ".";
        if (_travel.Applies == 1)
            return $"{first}; up-travel used applies to {_travel.Setups} alone, {_travel.Text}.";
        bool one = _travel.Setups.Count == 1;
        string part = _travel.Applies == Held ? "" : FormattableString.Invariant($" (it applies to {_travel.Applies} of {Held})");
        string who = _travel.Setups.ToString() != _peak.Setups.ToString() ? $"{_travel.Setups} {(one ? "uses" : "use")}" : one ? "it also uses" : "they also use";
        return first + (travel ? $"; {(Held == Ran ? "all" : _travel.Setups.ToString())} are alike in up-travel used, {_travel.Text}." : $"; {who} least of the up-travel, {_travel.Text}{part}.");
    }

    /// <summary>The setups with the lowest value of a figure as it is shown.</summary>
    private sealed class Lowest(string figure, Readable read)
    {
        private double _value = double.PositiveInfinity;

        public Named Setups { get; private set; } = new();

        /// <summary>Setups that have the figure.</summary>
        public long Applies { get; private set; }

        public string Text { get; private set; } = "";

        public void Take(StudyRow row)
        {
            double value = CompareTable.Value(figure, row);
            if (double.IsNaN(value)) return;
            Applies++;
            string text = CompareTable.Text(figure, row, read);
            if (Setups.Count > 0 && text != Text)
            {
                if (value > _value) return;
                Setups = new();
            }

            (Text, _value) = (text, Math.Min(_value, value));
            Setups.Add(row.Index);
        }
    }

    /// <summary>Setups by their marks, the first few of them; their count beyond.</summary>
    private sealed class Named
    {
        private readonly List<string> _marks = [];

        public long Count { get; private set; }

        public void Add(long index)
        {
            Count++;
            if (_marks.Count < MostNamed) _marks.Add(CompareTable.Mark(index));
        }

        public override string ToString() =>
            Count > _marks.Count ? FormattableString.Invariant($"{string.Join(", ", _marks)} and {Count - _marks.Count} more")
            : Count > 1 ? $"{string.Join(", ", _marks.SkipLast(1))} and {_marks[^1]}"
            : string.Concat(_marks);
    }
}
