using System.Collections.Immutable;

using QuarterCar.Reports.Files;
using QuarterCar.Reports.Json;
using QuarterCar.Reports.Plots;
using QuarterCar.Reports.Tables;
using QuarterCar.Studies;

namespace QuarterCar;

/// <summary>One run over the course, or one drop: what `run` answers. What one model corner survives is no safe speed and no safe height.</summary>
public sealed class Run
{
    private readonly Lazy<Series> _trace;

    internal Run(RunResult result)
    {
        Result = result;
        Figures = new(FigureTable.Names, FigureTable.Values(result.Standing.Figures, result.Figures));
        _trace = new(() => Sampled(result));
    }

    internal RunResult Result { get; }

    /// <summary>True where it ran to its end; else <see cref="Message"/> says why not.</summary>
    public bool Finished => Result.Figures.Run.End == RunEnds.Finished;

    /// <summary>One sentence with advice where it did not finish; empty otherwise.</summary>
    public string Message => Result.Figures.Run.Message;

    /// <summary>Every figure by the dotted names of summary.json, SI.</summary>
    public FigureSet Figures { get; }

    /// <summary>Events in order of time.</summary>
    public IReadOnlyList<RunEvent> Events => [.. Result.Events.Select(Event)];

    /// <summary>The columns of trace.csv, a row a sample, SI. Worked out at the first call.</summary>
    public Series Trace => _trace.Value;

    /// <summary>The scenario's limits.</summary>
    public IReadOnlyList<LimitResult> Limits => [.. Result.Limits.Select(l => new LimitResult(l.Figure, l.Largest, l.Value, l.Broken))];

    /// <summary>Remarks, each with what to do.</summary>
    public IReadOnlyList<Warning> Warnings => Warning.Of(Result.Warnings);

    /// <summary>The pictures of report.html: shaft_travel, travel_use, force_travel, damper (where there is one), tyre_load, acceleration.</summary>
    public IReadOnlyList<Picture> Pictures() => Picture.All(DrawnPicture.Of(Result));

    /// <summary>The text of summary.json.</summary>
    public string ToJson() => JsonText.Of(stream => SummaryJson.Write(Result, stream));

    /// <summary>Writes trace.csv, events.csv, summary.json and, if wanted, report.html and plots, whole or not at all.</summary>
    /// <param name="folder">Made where it is missing; files that are not ours stay.</param>
    /// <param name="pictures">False leaves report and plots out.</param>
    /// <exception cref="InvalidOperationException">The run did not finish: half a run never takes the place of earlier results.</exception>
    /// <exception cref="IOException">The folder cannot be written to; earlier results are unchanged.</exception>
    public void WriteTo(string folder, bool pictures = true)
    {
        if (!Finished) throw new InvalidOperationException(Message);
        Folder.Write(() => RunFiles.Write(Result, folder, new RunFilesOptions(pictures)));
    }

    private static RunEvent Event(EventRow row) => new(
        row.Event,
        row.Time,
        row.Distance,
        row.ShaftTravel,
        row.ShaftVelocity,
        row.Contact is { } c ? new RunContact(c.PeakForce, c.Penetration, c.Duration, c.Energy) : null);

    private static Series Sampled(RunResult result)
    {
        ImmutableArray<Sample> rows = [.. result.Track.Rows()];
        return new(Standing.Rows(Columns.Trace.Columns, rows), [.. rows.Select(r => Columns.RegionName(r.Region))]);
    }
}
