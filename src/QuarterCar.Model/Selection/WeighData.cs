using System.Collections.Immutable;

namespace QuarterCar.Model.Selection;

/// <summary>A spring used as a scale: its known rate and the lengths read off it, SI.</summary>
/// <param name="Position">tender, upper or lower.</param>
/// <param name="Rate">k, N/m.</param>
/// <param name="FreeLength">Without load, m.</param>
/// <param name="LoadedLengths">With the vehicle standing on it, m: one reading, or two (settled from below, from above).</param>
/// <param name="SolidLength">With its coils bound, m; null where not given.</param>
public sealed record MeasuredSpring(string Position, double Rate, double FreeLength, ImmutableArray<double> LoadedLengths, double? SolidLength = null)
{
    /// <summary>Above the upper spring; made to go solid.</summary>
    public const string Tender = "tender";

    /// <summary>Above the slider.</summary>
    public const string Upper = "upper";

    /// <summary>Below the slider; a single spring is this one.</summary>
    public const string Lower = "lower";

    /// <summary>c, m: free length less the mean of the readings.</summary>
    public double Compression => FreeLength - LoadedLengths.Average();

    /// <summary>F = k·c, N.</summary>
    public double Load => Rate * Compression;

    /// <summary>Half the load's rise from the first reading to the second, N; null with one reading. The sign says which stands lower.</summary>
    public double? HalfStep => LoadedLengths.Length == 2 ? Rate * (LoadedLengths[0] - LoadedLengths[1]) / 2 : null;
}

/// <summary>How far what was measured may be off: half-widths of 95 %.</summary>
/// <param name="Length">Of each length, m.</param>
/// <param name="Rate">Of each rate, as a share of it.</param>
public sealed record WeighErrors(double Length = 3e-3, double Rate = 0.02)
{
    /// <summary>Half-width of 95 % over standard deviation, normal.</summary>
    public const double Coverage = 1.96;

    /// <summary>Half-width of a compression, m: the difference of two lengths, √2·u_length.</summary>
    public double Compression => Math.Sqrt(2) * Length;
}

/// <summary>What was measured on one corner of the standing vehicle, SI.</summary>
/// <param name="Name">Null where it has none.</param>
/// <param name="Springs">From the coil nut down.</param>
/// <param name="StopNutClear">False where the slider is on the stop nut: then only the lower spring carries the whole load.</param>
/// <param name="MotionRatio">r at ride height, shaft travel per wheel travel; null where not given.</param>
/// <param name="ShaftShowing">m; null where not given.</param>
/// <param name="Stroke">m; null where not given.</param>
/// <param name="Gas">Null where not given. With it stand shaft showing and stroke.</param>
public sealed record MeasuredCorner(
    string? Name,
    ImmutableArray<MeasuredSpring> Springs,
    bool StopNutClear = true,
    double? MotionRatio = null,
    double? ShaftShowing = null,
    double? Stroke = null,
    GasData? Gas = null);
