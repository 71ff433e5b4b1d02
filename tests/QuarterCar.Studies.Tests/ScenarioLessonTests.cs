using Xunit;

using static QuarterCar.Studies.Tests.Scenes;

namespace QuarterCar.Studies.Tests;

/// <summary>
/// What the ledge and the two-track teach, in figures. Forces of contacts and peaks are good to 0.1 % (they agree so with
/// the reference runs), so a comparison with a margin of 5 % or more states a difference between setups, not one of computing.
/// </summary>
public class ScenarioLessonTests
{
    private const string Baseline = "quarry-ledge", LongerStop = "quarry-ledge-longer-stop", Stiffer = "quarry-ledge-stiffer-secondary", Late = "quarry-ledge-late-crossover";
    private const string Early = "two-track-early-crossover", Later = "two-track-later-crossover";

    [Theory, InlineData(LongerStop), InlineData(Stiffer)]
    public void The_better_ledge_setups_keep_the_ride_height_within_an_eighth_of_an_inch(string better) =>
        Assert.InRange(Check(better).Figures.RideHeight - Check(Baseline).Figures.RideHeight, -Inch / 8, Inch / 8);

    [Theory, InlineData(Baseline), InlineData(LongerStop), InlineData(Stiffer), InlineData(Late)]
    public void All_ledge_setups_drop_the_same_corner_off_the_same_ledge(string name)
    {
        Scenarios.Scenario one = Read(name), other = Read(Baseline);
        Assert.Equal([.. ((Scenarios.Course)other.Excitation).Pieces], ((Scenarios.Course)one.Excitation).Pieces.ToArray());
        Assert.Equal(((Scenarios.Course)other.Excitation).Speed, ((Scenarios.Course)one.Excitation).Speed);
        Assert.Equal((other.Corner.SprungWeight, other.Corner.UnsprungWeight, other.Corner.Tyre), (one.Corner.SprungWeight, one.Corner.UnsprungWeight, one.Corner.Tyre));
    }

    // The comments claim 15 % and a third; each is asked for less than its claim by several times the error of a contact's force.
    [Theory, InlineData(LongerStop, 0.90), InlineData(Stiffer, 0.75)]
    public void The_better_ledge_setups_hit_the_bump_stop_less_hard_and_leave_more_travel(string better, double share)
    {
        RunResult one = Run(better), other = Run(Baseline);
        Assert.InRange(Hardest(one), 0, share * Hardest(other));
        Assert.True(one.Figures.Travel.MaxShaftTravel < other.Figures.Travel.MaxShaftTravel - 2e-3, "two millimetres are a thousand times the error of a travel");
        Assert.True(one.Standing.Figures.ReserveEnergy > 1.2 * other.Standing.Figures.ReserveEnergy);
    }

    [Fact]
    public void The_longer_stop_softens_the_landing_although_it_takes_more_energy()
    {
        RunResult longer = Run(LongerStop), baseline = Run(Baseline);
        Assert.InRange(longer.Figures.Acceleration.PeakG, 0, 0.95 * baseline.Figures.Acceleration.PeakG);
        Assert.True(longer.Figures.Bottoming.Max(c => c.Energy) > 1.5 * baseline.Figures.Bottoming.Max(c => c.Energy));
    }

    [Fact]
    public void The_longer_stop_adds_to_the_reserve_what_lies_between_the_two_stops_lines()
    {
        // Areas under the straight lines up to full bump, lbf·in, by trapezoids; the last slopes are carried on.
        double longer = 0.5 * 0.8 * 350 + 0.5 * 1.2 * (350 + 950) + 0.5 * 1.8 * (950 + 2000) + 0.4 * (2000 + 0.2 * (2000.0 - 950) / 1.8);
        double shorter = 0.5 * 0.5 * 150 + 0.5 * 0.9 * (150 + 900) + 0.5 * 0.6 * (900 + 3600) + 0.2 * (3600 + 0.1 * (3600.0 - 900) / 0.6);
        double more = Check(LongerStop).Figures.ReserveEnergy!.Value - Check(Baseline).Figures.ReserveEnergy!.Value;
        Assert.Equal((longer - shorter) * Pound * Inch, more, 1e-6);
    }

    [Fact]
    public void The_stiffer_secondary_rides_on_the_same_series_rate()
    {
        Model.Statics.StandingFigures stiffer = Check(Stiffer).Figures, baseline = Check(Baseline).Figures;
        Assert.Equal(130.0 * 350 / (130 + 350) * PoundPerInch, stiffer.PrimaryRate, 1e-6);
        Assert.Equal(160.0 * 225 / (160 + 225) * PoundPerInch, baseline.PrimaryRate, 1e-6);
        Assert.Equal(350 * PoundPerInch, stiffer.SecondaryRate!.Value, 1e-6);
    }

    [Fact]
    public void With_the_stop_nut_too_far_away_the_upper_spring_goes_solid_and_the_hit_is_harder()
    {
        RunResult late = Run(Late), baseline = Run(Baseline);
        string[] codes = [.. late.Warnings.Select(w => w.Code)];
        Assert.Contains("binds_before_full_bump", codes);
        Assert.Contains("crossover_never", codes);
        Assert.Equal(0, Count(late, "crossover"));
        Assert.True(First(late, "upper_bind").Time > First(late, "bump_stop").Time);
        Assert.True(Hardest(late) > 1.05 * Hardest(baseline));
    }

    [Fact]
    public void An_early_crossover_is_felt_on_small_bumps_although_the_corner_stands_the_same()
    {
        RunResult early = Run(Early), later = Run(Later);
        Assert.Equal(later.Standing.Figures.RideHeight, early.Standing.Figures.RideHeight, 1e-12);
        Assert.Equal(later.Standing.Figures.RideFrequency!.Value, early.Standing.Figures.RideFrequency!.Value, 1e-12);
        Assert.True(early.Figures.Travel.TimeInSecondary > 1);
        Assert.Equal(0, Count(later, "crossover"));

        // Each weighted figure may be off by 0.5 %: 5 % between them is the setup.
        Assert.True(early.Figures.Acceleration.WeightedRms > 1.05 * later.Figures.Acceleration.WeightedRms);
    }

    [Fact]
    public void Opening_the_gap_moves_the_crossover_by_one_plus_upper_over_lower_and_bind_from_lower_to_upper()
    {
        StandingResult early = Check(Early), later = Check(Later);
        double opened = 1.8 * Inch;
        Assert.Equal(opened * (1 + 160.0 / 225), later.Figures.CrossoverShaftTravel!.Value - early.Figures.CrossoverShaftTravel!.Value, 1e-12);
        Assert.Equal(opened, later.Springs[1].BindClearanceFullBump - early.Springs[1].BindClearanceFullBump, 1e-12);
        Assert.Equal(-opened, later.Springs[0].BindClearanceFullBump - early.Springs[0].BindClearanceFullBump, 1e-12);
        Assert.Contains(early.Warnings, w => w.Code == "binds_before_full_bump" && w.Message.Contains("lower", StringComparison.Ordinal));
    }
}
