using System.Collections.Immutable;

using QuarterCar.Model;
using QuarterCar.Model.Terrain;
using QuarterCar.Numerics.Signals;
using QuarterCar.Scenarios;

namespace QuarterCar.Studies.Terrains;

/// <summary>How rough a ground is, in the standard numbers: what `terrain` asks, and a run's report.</summary>
public static class TerrainStudy
{
    // Above this many samples the spectrum takes a power of two: the transform of any other length needs several times the memory.
    private const int ManySamples = 1 << 21;

    /// <summary>Longest course whose roughness index is worked out, m: a height every 250 mm is held in memory.</summary>
    internal const double LongestIndexed = 1e6;

    /// <summary>Of a scenario's course.</summary>
    /// <param name="scenario">One with a course.</param>
    /// <param name="cancel">Stops it.</param>
    /// <exception cref="CornerException">A drop, which has no course; or the wheel would be stopped at its hub.</exception>
    /// <exception cref="OperationCanceledException">Cancelled.</exception>
    public static TerrainResult Of(Scenario scenario, CancellationToken cancel = default)
    {
        if (scenario.Excitation is not Course course)
            throw new CornerException("drop", "a drop test, which has no ground to drive over", "terrain and speed");
        CourseModel model = CourseModel.Of(scenario, cancel);
        return Of(scenario.Title, scenario.Units, model.Ground, model.Road, course.Pieces, cancel);
    }

    /// <summary>Of a measured profile.</summary>
    /// <param name="profile">As read.</param>
    /// <param name="units">Of what is written.</param>
    /// <param name="cancel">Stops it.</param>
    /// <exception cref="OperationCanceledException">Cancelled.</exception>
    public static TerrainResult Of(ProfilePiece profile, UnitSystem units, CancellationToken cancel = default) =>
        Of(profile.File, units, Ground.Build([profile], cancel), null, [profile], cancel);

    /// <summary>Of a course that stands already: a run's.</summary>
    public static TerrainResult Of(string title, UnitSystem units, Ground ground, Road? road, ImmutableArray<TerrainPiece> pieces, CancellationToken cancel = default)
    {
        Spectrum? spectrum = SpectrumOf(ground, pieces);
        cancel.ThrowIfCancellationRequested();
        RoughnessFit? fit = spectrum is null ? null : RoughnessFit.Of(spectrum);
        (double lowest, double highest) = Extremes(ground);
        var figures = new TerrainFigures(ground.Length, fit, Index(ground, pieces), ground.LargestSlope, lowest, highest);
        cancel.ThrowIfCancellationRequested();
        return new(title, units, ground, road, pieces, figures, spectrum, [.. TerrainWarnings.Of(figures, pieces)]);
    }

    /// <summary>The spectrum of the ground's heights: at a profile's own spacing, which it knows nothing below, else every 0.05 m.</summary>
    private static Spectrum? SpectrumOf(Ground ground, ImmutableArray<TerrainPiece> pieces)
    {
        double coarsest = pieces.OfType<ProfilePiece>().Select(OwnSpacing).DefaultIfEmpty(RandomCourse.Spacing).Max();
        double wanted = Math.Round(ground.Length / coarsest);
        if (!(ground.Length > 0) || wanted < 4)
            return null;
        int count = wanted <= ManySamples ? (int)wanted : (int)System.Numerics.BitOperations.RoundUpToPowerOf2((uint)Math.Min(wanted, 4.0 * ManySamples));
        double spacing = ground.Length / count;
        if (2 * spacing * RoughnessFit.Lowest > 1)
            return null; // so long that not even the longest wave of the range shows
        return Spectrum.EndMatched(Heights(count + 1, i => ground.Height(i == count ? ground.Length : i * spacing)), spacing);
    }

    /// <summary>
    /// Of rows at even distances theirs, also where some are lost or odd: between them nothing is known, and straight lines would be far smoother than
    /// the ground. Of uneven ones the middle of all, but a few corners far apart are straight lines, known at every place.
    /// </summary>
    private static double OwnSpacing(ProfilePiece profile)
    {
        const double even = 0.01, alike = 0.1;
        const int survey = 32;
        double[] gaps = [.. profile.Points.Zip(profile.Points.Skip(1), (a, b) => b.At - a.At).Where(g => g > 0)];
        Array.Sort(gaps);
        double median = gaps[gaps.Length / 2];
        bool surveyed = gaps.Length >= survey && 2 * gaps.Count(g => Math.Abs(g - median) <= alike * median) >= gaps.Length;
        return median <= GoldenCar.Spacing || surveyed || gaps[^1] - gaps[0] < even * median ? median : RandomCourse.Spacing;
    }

    private static double? Index(Ground ground, ImmutableArray<TerrainPiece> pieces)
    {
        if (ground.Length is < GoldenCar.Shortest or > LongestIndexed)
            return null;
        int count = (int)Math.Floor(ground.Length / GoldenCar.Spacing * (1 + 1e-12)) + 1;
        if (!IsFiner(pieces))
            return GoldenCar.Index(Heights(count, i => ground.Height(i * GoldenCar.Spacing)), GoldenCar.Spacing);

        // A footprint of 250 mm is the moving average of straight lines and haversines, exactly.
        var averaged = Road.Build(ground, TyreContact.Footprint, 0, GoldenCar.Averaging);
        return GoldenCar.Index(Heights(count, i => averaged.Height(i * GoldenCar.Spacing)), GoldenCar.Spacing);
    }

    /// <summary>True where the ground says more than a height every 250 mm can.</summary>
    private static bool IsFiner(ImmutableArray<TerrainPiece> pieces) => pieces.Any(piece => piece switch
    {
        FlatPiece => false,
        RampPiece ramp => ramp.Length < GoldenCar.Spacing,
        ProfilePiece profile => profile.Points.Zip(profile.Points.Skip(1)).Any(p => p.Second.At - p.First.At < GoldenCar.Spacing * (1 - 1e-9)),
        _ => true,
    });

    private static double[] Heights(int count, Func<int, double> height)
    {
        double[] heights = new double[count];
        for (int i = 0; i < count; i++)
            heights[i] = height(i);
        return heights;
    }

    private static (double Lowest, double Highest) Extremes(Ground ground)
    {
        (double lowest, double highest) = (0, 0);
        foreach (ref readonly GroundPart part in ground.Parts)
        {
            double start = double.IsInfinity(part.Start) ? 0 : part.StartHeight, end = part.EndHeight;
            double top = part.Wave?.Top ?? start, bottom = part.Wave is { } wave ? wave.Top - wave.Height : start;
            lowest = Math.Min(lowest, Math.Min(Math.Min(start, end), bottom));
            highest = Math.Max(highest, Math.Max(Math.Max(start, end), top));
        }

        return (lowest, highest);
    }
}
