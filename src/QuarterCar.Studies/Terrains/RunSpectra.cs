using QuarterCar.Numerics.Signals;
using QuarterCar.Scenarios;

namespace QuarterCar.Studies.Terrains;

/// <summary>What a run over a long course does at which frequency, from the start to the end of the course.</summary>
/// <param name="Ground">The ground and its spectrum.</param>
/// <param name="Acceleration">Of the sprung mass, (m/s²)²/Hz.</param>
/// <param name="TyreLoad">N²/Hz.</param>
public sealed record RunSpectra(TerrainResult Ground, Spectrum Acceleration, Spectrum TyreLoad)
{
    /// <summary>Shortest course whose spectra say something, m.</summary>
    public const double Shortest = 30;

    private const double Spacing = 1.0 / 512; // s: wheel hop is at some 10 Hz, and nothing above 100 Hz is drawn
    private const int LongestStretch = 4096, ShortestStretch = 128; // of 8 s and a quarter second

    /// <summary>The spectra; null for a drop, a course of 30 m or less, or a run that hardly began.</summary>
    public static RunSpectra? Of(RunResult run)
    {
        if (run.Scenario.Excitation is not Course course || run.Track is not RunTrack track || track.Course.Ground.Length <= Shortest)
            return null;
        double time = Math.Min(track.EndTime, track.Course.Ground.Length / course.Speed);
        int count = (int)(time / Spacing);
        if (count < 2 * ShortestStretch)
            return null;
        double[] acceleration = new double[count], load = new double[count];
        for (int i = 0; i < count; i++)
        {
            Sample sample = track.At(i * Spacing);
            (acceleration[i], load[i]) = (sample.SprungAcceleration, sample.TyreForce);
        }

        // Three half-overlapping stretches at least, so that a peak is no accident of one.
        int stretch = Math.Clamp((int)System.Numerics.BitOperations.RoundUpToPowerOf2((uint)(count / 2 + 1)) / 2, ShortestStretch, LongestStretch);
        TerrainResult ground = TerrainStudy.Of(run.Scenario.Title, run.Scenario.Units, track.Course.Ground, track.Course.Road, course.Pieces);
        return new(ground, Spectrum.Welch(acceleration, Spacing, stretch), Spectrum.Welch(load, Spacing, stretch));
    }
}
