using System.Collections.Immutable;

using QuarterCar.Reports.Plots;
using QuarterCar.Studies;
using QuarterCar.Studies.Setups;
using QuarterCar.Studies.Spreads;

using UnitSystem = QuarterCar.Scenarios.UnitSystem;

namespace QuarterCar;

/// <summary>One setup's row: its figures, or why it has none.</summary>
public sealed class SetupRow
{
    internal SetupRow(StudyRow row)
    {
        Title = row.Request.Title;
        Values = row.Request.Values.ToImmutableDictionary(v => v.Path, v => v.Si, StringComparer.Ordinal);
        StopNut = row.NutWord;
        Note = row.Note;
        Figures = row.Figures is { } figures ? new FigureSet(FigureTable.Names, figures) : null;
        Run = row.Run is { } run ? new Run(run) : null;
    }

    /// <summary>Title.</summary>
    public string Title { get; }

    /// <summary>Varied values by path, SI; null where one is no single number.</summary>
    public IReadOnlyDictionary<string, double?> Values { get; }

    /// <summary>What became of the stop nut: stays, reset, or empty without one.</summary>
    public string StopNut { get; }

    /// <summary>Remark, or the reason why there are no figures.</summary>
    public string Note { get; }

    /// <summary>Figures; null where the setup could not be run.</summary>
    public FigureSet? Figures { get; }

    /// <summary>The run itself where the study keeps it.</summary>
    public Run? Run { get; }
}

/// <summary>What a sweep found.</summary>
/// <param name="Rows">Every point, the last way fastest.</param>
/// <param name="Best">The best point that holds every limit; null where none does.</param>
/// <param name="NearestLimit">Figure of the limit that the best comes nearest to; null without one.</param>
public sealed record SweepAnswer(IReadOnlyList<SetupRow> Rows, SetupRow? Best, string? NearestLimit)
{
    /// <summary>The goal over one way, or a map of it over two; null where a table says more.</summary>
    public Picture? Picture { get; internal init; }
}

/// <summary>How far a path can go for one setup.</summary>
/// <param name="Title">The setup.</param>
/// <param name="Largest">The last value that holds, SI; null where the first breaks already.</param>
/// <param name="FirstBroken">Figure of the limit that breaks first beyond it; null where the whole way holds, or the setup could not be run there or stands on metal or bound coils. A corner that leans on a stop whose touches are limited breaks that limit.</param>
/// <param name="Resolution">How closely the break was pinned, SI.</param>
public sealed record ReachAnswer(string Title, double? Largest, string? FirstBroken, double Resolution);

/// <summary>How figures are spread over the samples.</summary>
public sealed class SpreadAnswer
{
    private readonly SpreadResult _result;

    private readonly UnitSystem _units;

    internal SpreadAnswer(SpreadResult result, UnitSystem units) => (_result, _units) = (result, units);

    /// <summary>Samples that ran.</summary>
    public int Ran => _result.Samples.Ran;

    /// <summary>A figure's percentiles and mean, in the unit of its name; null where it applies to no sample.</summary>
    /// <param name="name">Full dotted name.</param>
    public Spread? Of(string name) => _result.Figure(name) is { } f ? new Spread(f.P05, f.P50, f.P95, f.Mean) : null;

    /// <summary>A figure of every sample that ran, in order; NaN: does not apply.</summary>
    /// <param name="name">Full dotted name.</param>
    /// <exception cref="ArgumentOutOfRangeException">No such figure.</exception>
    public double[] Samples(string name) => _result.Samples.Figure(name);

    /// <summary>The share of samples with at least one event of a name ("bottom_out"); null where none ran.</summary>
    /// <param name="name">As in events.csv.</param>
    public double? ShareWith(string name) => _result.Share(name);

    /// <summary>The share of a figure's variance that each tolerance brings, by its path; what is missing to 1 no straight line explains. Null: cannot be told.</summary>
    /// <param name="name">"static.ride_height_m" or "travel.up_travel_used".</param>
    /// <exception cref="KeyNotFoundException">The variance of no other figure is traced.</exception>
    public IReadOnlyDictionary<string, double?> VarianceShares(string name) =>
        _result.VarianceShare.FirstOrDefault(v => v.Figure == name)?.Shares.ToImmutableDictionary(StringComparer.Ordinal)
        ?? throw new KeyNotFoundException($"no variance of '{name}'; there are {string.Join(", ", _result.VarianceShare.Select(v => v.Figure))}");

    /// <summary>The pictures of `spread`: how the figures are spread, what contributes.</summary>
    public IReadOnlyList<Picture> Pictures() => Picture.All(DrawnPicture.Of(_result, _units));
}

/// <summary>A figure over the samples, in the unit of its name.</summary>
/// <param name="P05">5th percentile.</param>
/// <param name="P50">Median.</param>
/// <param name="P95">95th percentile.</param>
/// <param name="Mean">Mean.</param>
public sealed record Spread(double P05, double P50, double P95, double Mean);
