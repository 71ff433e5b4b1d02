using System.Globalization;

using QuarterCar.Model.Terrain;
using QuarterCar.Numerics.Signals;
using QuarterCar.Studies.Terrains;
using QuarterCar.TestKit.Programs;

using Xunit;

using static QuarterCar.Studies.Tests.Scenes;

namespace QuarterCar.Studies.Tests;

/// <summary>What the farm track teaches, and how its profile was made.</summary>
public class FarmTrackTests
{
    private const double Washboard = 0.6; // m from crest to crest

    // The recipe in the head of farm-track.yaml; heights are rounded to 0.1 mm.
    [Fact]
    public void Profile_is_the_random_course_of_seed_41_with_washboard_and_a_pothole()
    {
        double[] random = RandomCourse.Heights('B', 200, 41);
        string[] rows = [.. File.ReadLines(Checkout.At("scenarios", "farm-track.csv")).Skip(1)];
        Assert.Equal(2001, rows.Length);
        for (int i = 0; i < rows.Length; i++)
        {
            double s = i / 10.0, washboard = s is >= 60 and <= 96 ? 9 * (1 - Math.Cos(2 * Math.PI * (s - 60) / Washboard)) : 0;
            double pothole = s is >= 140 and <= 141.2 ? 35 * (1 - Math.Cos(2 * Math.PI * (s - 140) / 1.2)) : 0;
            double[] row = [.. rows[i].Split(',').Select(c => double.Parse(c, CultureInfo.InvariantCulture))];
            Assert.Equal(s, row[0], 1e-12);
            Assert.Equal(1e3 * random[2 * i] + washboard - pothole, row[1], 0.05 + 1e-9);
        }
    }

    // 60 waves of 9 mm amplitude have the mean square 9²/2 mm² over 36 m of 210 m.
    [Fact]
    public void Washboard_stands_far_above_the_fitted_line_with_its_mean_square()
    {
        RunSpectra spectra = RunSpectra.Of(Run("farm-track"))!;
        Spectrum ground = spectra.Ground.Spectrum!;
        double power = 0, line = 0;
        for (int i = 0; i < ground.Densities.Length; i++)
        {
            double n = ground.Frequency(i);
            if (Math.Abs(n - 1 / Washboard) > 0.1)
                continue;
            power += ground.Densities[i] * ground.Step;
            line += spectra.Ground.Figures.Fit!.Value.Density * Math.Pow(0.1 / n, 2) * ground.Step;
        }

        Assert.InRange(power / (0.5 * 9e-3 * 9e-3 * 36 / 210), 0.95, 1.1); // the random course adds a few hundredths, straight lines take some off
        Assert.True(power > 20 * line);
        Assert.Equal('C', spectra.Ground.Figures.Fit!.Value.RoadClass);
    }

    [Fact]
    public void Tyre_load_and_chassis_peak_at_speed_over_the_washboards_spacing()
    {
        RunSpectra spectra = RunSpectra.Of(Run("farm-track"))!;
        double expected = 24 / 3.6 / Washboard;
        foreach (Spectrum s in new[] { spectra.TyreLoad, spectra.Acceleration })
            Assert.InRange(s.Frequency(s.Densities.IndexOf(s.Densities.Max())) - expected, -s.Step, s.Step);
    }

    [Fact]
    public void Washboard_shakes_the_wheel_most_where_it_meets_wheel_hop_and_the_pothole_hits_harder_the_faster()
    {
        RunResult slow = Run("farm-track", "speed=15 km/h"), meets = Run("farm-track"), fast = Run("farm-track", "speed=50 km/h");
        double hop = meets.Standing.Figures.WheelHopFrequency;
        Assert.InRange(24 / 3.6 / Washboard / hop, 0.9, 1.2);
        Assert.True(meets.Figures.Tyre.DynamicLoadCoefficient > 1.5 * slow.Figures.Tyre.DynamicLoadCoefficient);
        Assert.True(meets.Figures.Tyre.DynamicLoadCoefficient > 1.1 * fast.Figures.Tyre.DynamicLoadCoefficient);
        Assert.True(fast.Figures.Tyre.Peak > 1.3 * meets.Figures.Tyre.Peak);
    }

    [Fact]
    public void Single_obstacles_have_no_spectra_and_a_drop_neither()
    {
        Assert.Null(RunSpectra.Of(Run("quarry-ledge")));
        Assert.Null(RunSpectra.Of(Run("drop-test")));
        Assert.NotNull(RunSpectra.Of(Run("gravel-lane")));
    }
}
