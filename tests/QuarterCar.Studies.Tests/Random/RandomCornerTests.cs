using System.Collections.Immutable;

using CsCheck;

using QuarterCar.Model.Motion;
using QuarterCar.Scenarios;
using QuarterCar.Scenarios.Reading;
using QuarterCar.Studies.Setups;
using QuarterCar.TestKit.Programs;

using Xunit;
using Xunit.Abstractions;

using Tolerance = QuarterCar.TestKit.Tolerance;

namespace QuarterCar.Studies.Tests.RandomCorners;

/// <summary>Corners that nobody thought of, through reader, corner, run and figures. A failure prints the smallest scenario found; keep it in found/.</summary>
public class RandomCornerTests(ITestOutputHelper output)
{
    private static readonly string s_found = Checkout.At("tests", "QuarterCar.Studies.Tests", "Random", "found");

    public static TheoryData<string> Found => [.. Directory.GetFiles(s_found, "*.yaml").Select(f => Path.GetFileNameWithoutExtension(f)).Order(StringComparer.Ordinal)];

    [Theory, InlineData("plausible"), InlineData("wild")]
    public void Every_run_ends_with_a_reason_and_its_rows_and_books_hold(string kind)
    {
        int ran = 0, tried = 0;
        Try(kind, 300, c =>
        {
            Interlocked.Increment(ref tried);
            if (CornerChecks.Run(c.Si) is not { } run)
                return;
            Interlocked.Increment(ref ran);
            CornerChecks.All(run, damped: kind == "plausible");
        });
        Assert.True(ran > tried / 3, $"only {ran} of {tried} ran: the corners are mostly refused");
        output.WriteLine($"{kind}: {ran} of {tried} ran");
    }

    [Theory, InlineData("plausible"), InlineData("wild")]
    public void Metric_and_US_words_give_the_same_figures(string kind) => Try(kind, 300, c =>
    {
        // Steps that differ by a last bit may be cut differently, and then the runs differ by what the steps are allowed:
        // at 1e-12 that is below what is asserted, and what remains is the words.
        RunResult? si = CornerChecks.Run(c.Si, "run.tolerance=1e-12"), us = CornerChecks.Run(c.Us, "run.tolerance=1e-12");
        Assert.True(si is null == us is null, $"refused: {(si is null ? "metric" : "US")} words only");
        if (si is null)
            return;
        Assert.Equal((UnitSystem.Si, UnitSystem.Us), (si.Scenario.Units, us!.Scenario.Units));

        // Of a wild corner what stands: its undamped bounces make much of a last bit.
        int figures = kind == "wild" ? FigureTable.Standing.Length : FigureTable.Names.Length;
        foreach ((string name, double? one, double? other) in FigureTable.Names.Zip(Values(si), Values(us)).Take(figures))
        {
            if (name.StartsWith("energy.residual", StringComparison.Ordinal))
                continue; // what does not close is rounding and truncation itself
            if (name == "travel.time_in_secondary_s" && si.Standing.Figures.StopNutGapRideHeight < 1e-9)
                continue; // at rest on the change of rate itself, when it is left by 1e-13 m hangs on the last bit
            Assert.True(one is null == other is null, $"{name}: {one}, in US words {other}");

            // A term of the energy account is one of a sum: a hundredth of it need not be known better than the whole.
            double size = name.StartsWith("energy.", StringComparison.Ordinal) ? Account(si.Figures.Energy) : Math.Abs(one ?? 0);
            new Tolerance(1e-9 * Math.Max(1, size), "the words differ in the last bit of each quantity").Holds(one ?? 0, other ?? 0, name);
        }
    });

    [Theory, InlineData("plausible")]
    public void A_ten_times_smaller_tolerance_moves_the_travel_figures_by_less_than_a_micrometre(string kind) => Try(kind, 300, c =>
    {
        RunResult? one = CornerChecks.Run(c.Si), finer = CornerChecks.Run(c.Si, "run.tolerance=1e-7");
        if (one?.Figures.Run.End != RunEnds.Finished || finer?.Figures.Run.End != RunEnds.Finished)
            return;
        const double promised = 1.1e-6;
        double moved = Moved(one, finer), allowed = promised;
        if (moved > promised)
        {
            // Bounces on metal, one after another, can make anything of anything: then a ten-millionth of the load moves as much.
            string heavier = FormattableString.Invariant($"corner.sprung_weight={finer.Standing.Corner.SprungWeight * (1 + 1e-7):R} N");
            allowed = Math.Max(promised, Moved(CornerChecks.Run(c.Si, "run.tolerance=1e-9")!, CornerChecks.Run(c.Si, "run.tolerance=1e-9", heavier)!));
        }

        new Tolerance(allowed, "lengths are within 1 µm at the default tolerance (physics.md section 5), and a tenth of it at a tenth").Holds(0, moved, "largest, least or mean shaft travel");
    });

    private static double Moved(RunResult one, RunResult other)
    {
        TravelFigures a = one.Figures.Travel, b = other.Figures.Travel;
        return new[] { a.MaxShaftTravel - b.MaxShaftTravel, a.MinShaftTravel - b.MinShaftTravel, a.MeanShaftTravel - b.MeanShaftTravel }.Max(Math.Abs);
    }

    [Theory, InlineData("plausible"), InlineData("wild")]
    public void A_row_of_compare_is_the_runs_summary_bit_for_bit(string kind) => Try(kind, 300, c => RowIsRun(c.Si));

    [Theory, MemberData(nameof(Found))]
    public void Kept_cases_hold(string name)
    {
        string text = File.ReadAllText(Path.Combine(s_found, name + ".yaml"));
        RunResult run = CornerChecks.Run(text) ?? throw new InvalidOperationException("a kept case is one that runs");
        CornerChecks.All(run, damped: run.Scenario.Corner.Coilover.Damper is not null);
        RowIsRun(text);
    }

    // The road falls by 11.5375 mm under the wheel at the run's last moment: of 459.7 + 9.194 N on 10.48 N/mm that leaves 468.894 − 10.48·11.5375 N.
    [Fact]
    public void A_drop_exactly_at_the_end_is_in_the_least_tyre_load()
    {
        RunResult run = CornerChecks.Run(File.ReadAllText(Path.Combine(s_found, "a-drop-exactly-at-the-end.yaml")))!;
        new Tolerance(1e-9, "rounding of heights over 10.48 N/mm").Holds(347.981, run.Figures.Tyre.Least);
        Assert.Equal(run.Figures.Tyre.Least, run.Track.Rows().Last().TyreForce);
    }

    [Fact]
    public void A_load_that_only_gas_squeezed_past_nothing_would_carry_is_refused()
    {
        Scenario scenario = CornerCase.Read(File.ReadAllText(Path.Combine(s_found, "refused", "load-past-the-gas.yaml")))!;

        // V/A = 2.042 cm³ over π/4 of 1 cm²: nothing stands beyond 26 mm of shaft travel.
        Assert.Equal("corner", Assert.Throws<QuarterCar.Model.CornerException>(() => SingleRun.Of(scenario)).Key);
    }

    // The peak of −v by its own definition: the least shaft velocity on a grid of a microsecond around the found place.
    [Fact]
    public void A_peak_just_past_the_end_of_a_step_is_found()
    {
        RunResult run = CornerChecks.Run(File.ReadAllText(Path.Combine(s_found, "peak-across-a-steps-end.yaml")))!;
        double fastest = Enumerable.Range(0, 400_001).Max(i => -run.Track.At(i * 5e-6).ShaftVelocity);

        // 5 µs off a smooth peak: at most 2.5 µs² / 2 of a velocity's second derivative, some 1e3 m/s³.
        new Tolerance(1e-8, "the grid's distance from the peak").Holds(fastest, run.Figures.Travel.PeakReboundSpeed);
    }

    private static double Account(EnergyFigures e) => new[] { e.RoadWork, e.Damper, e.Friction, e.Contacts, e.Tyre }.Max(Math.Abs);

    private static void Try(string kind, long standard, Action<CornerCase> holds) =>
        CornerCase.Of(kind).Sample(holds, iter: CornerCase.Count(standard), print: c => "\n" + c.Si);

    private static void RowIsRun(string text)
    {
        if (CornerChecks.Run(text) is not { } alone)
            return;
        ReadOptions options = ReadOptions.Plain with { Base = StandingBase.Instance };
        ScenarioDocument document = ScenarioDocument.Parse("random.yaml", text, null, new ProblemList())!;
        var study = new StudyBase(document, options, alone.Scenario);
        SetupValue same = SetupValue.OfSi("coilover.preload", alone.Scenario.Corner.Coilover.Preload);
        foreach (SetupRequest request in new[] { new SetupRequest("", []), SetupRequest.Of([same]) })
        {
            StudyRow row = StudyEngine.One(study, new SetupPlan([], 1, _ => request), 0, new MotionRun(), false, CancellationToken.None);
            bool finished = alone.Figures.Run.End == RunEnds.Finished;
            Assert.Equal(finished, row.Figures is not null);
            if (finished)
                Assert.Equal(FigureTable.Names.Zip(Values(alone)), FigureTable.Names.Zip(row.Figures!.Value));
        }
    }

    private static ImmutableArray<double?> Values(RunResult run) => FigureTable.Values(run.Standing.Figures, run.Figures);
}
