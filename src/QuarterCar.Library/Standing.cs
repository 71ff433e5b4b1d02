using QuarterCar.Reports.Files;
using QuarterCar.Reports.Json;
using QuarterCar.Reports.Plots;
using QuarterCar.Reports.Tables;
using QuarterCar.Studies;

using UnitsNet;

using UnitSystem = QuarterCar.Scenarios.UnitSystem;

namespace QuarterCar;

/// <summary>
/// The corner at rest: what `check` answers. Null: does not apply to this corner. A figure that leads to wrench work comes with the usual cautions:
/// springs under compression and gas under pressure can injure.
/// </summary>
public sealed class Standing
{
    private readonly StandingResult _result;

    internal Standing(StandingResult result)
    {
        _result = result;
        Figures = new([.. FigureTable.Standing.Select(f => f.Name)], [.. FigureTable.Standing.Select(f => f.Value(result.Figures))]);
        Curve = new(Rows(Columns.Curve.Columns, result.Curve), [.. result.Curve.Select(r => Columns.RegionName(r.Region))]);
    }

    /// <summary>Shaft showing: what is left of the stroke, bump stop and wiper not counted.</summary>
    public Length RideHeight => Length.FromMeters(_result.Figures.RideHeight);

    /// <summary>Preload: coil-nut travel past first contact; negative where the springs are loose at full droop.</summary>
    public Length Preload => Length.FromMeters(_result.Figures.Preload);

    /// <summary>Force in the springs at ride height, gas not in it.</summary>
    public Force SpringForce => Force.FromNewtons(_result.Figures.SpringForce);

    /// <summary>Rate of the springs in series at ride height.</summary>
    public ForcePerLength PrimaryRate => ForcePerLength.FromNewtonsPerMeter(_result.Figures.PrimaryRate);

    /// <summary>Rate with the slider on the stop nut; null without stop nut.</summary>
    public ForcePerLength? SecondaryRate => _result.Figures.SecondaryRate is { } rate ? ForcePerLength.FromNewtonsPerMeter(rate) : null;

    /// <summary>Shaft showing where the slider meets the stop nut; null where it never does.</summary>
    public Length? CrossoverShaftShowing => _result.Figures.CrossoverShaftShowing is { } showing ? Length.FromMeters(showing) : null;

    /// <summary>Room left before a spring binds at full bump; negative where it binds before; null where none can bind.</summary>
    public Length? BindClearance => (double?)_result.Figures.BindClearanceFullBump is { } clearance ? Length.FromMeters(clearance) : null;

    /// <summary>Undamped frequency of the sprung mass on springs, gas and tyre; null where the corner does not hang free of its stops.</summary>
    public Frequency? RideFrequency => (double?)_result.Figures.RideFrequency is { } f ? Frequency.FromHertz(f) : null;

    /// <summary>Every standing figure by its dotted name ("static.ride_height_m"), SI.</summary>
    public FigureSet Figures { get; }

    /// <summary>Each spring, from the coil nut down.</summary>
    public IReadOnlyList<SpringStand> Springs => [.. _result.Springs.Select(s => new SpringStand(
        s.Position, s.CompressionFullDroop, s.CompressionRideHeight, s.CompressionFullBump, s.BindClearanceFullBump))];

    /// <summary>Standing force over travel, full droop to full bump: the columns of curve.csv, SI.</summary>
    public Series Curve { get; }

    /// <summary>Remarks, each with what to do.</summary>
    public IReadOnlyList<Warning> Warnings => Warning.Of(_result.Warnings);

    /// <summary>The pictures of `check`: force_travel, rates.</summary>
    public IReadOnlyList<Picture> Pictures() => Picture.All(DrawnPicture.Of(_result));

    /// <summary>The text of check --json.</summary>
    public string ToJson() => JsonText.Of(stream => CheckJson.Write(_result, stream));

    /// <summary>Writes curve.csv and the plots of `check`, whole or not at all.</summary>
    /// <param name="folder">Made where it is missing; files that are not ours stay.</param>
    /// <exception cref="IOException">The folder cannot be written to; earlier results are unchanged.</exception>
    public void WriteTo(string folder) => Folder.Write(() => CheckFiles.Write(_result, folder));

    internal static Dictionary<string, double[]> Rows<T>(IEnumerable<Column<T>> columns, IReadOnlyCollection<T> rows) => columns
        .Where(c => c.Word is null)
        .ToDictionary(c => c.Header(UnitSystem.Si), c => rows.Select(r => c.In(UnitSystem.Si, r)).ToArray(), StringComparer.Ordinal);
}
