using QuarterCar.Model.Motion;
using QuarterCar.Scenarios;
using QuarterCar.Scenarios.Reading;
using QuarterCar.Studies.Setups;
using QuarterCar.Studies.Tests.Reference;

using Xunit;

namespace QuarterCar.Studies.Tests.Setups;

/// <summary>The short way of a study's setups: the bits of the long one, and little from the heap.</summary>
public class StudyCostTests
{
    // Corner, road of its own where the setup changes it, figures and row; a copy of the steps alone would be 80 kB and more.
    private const long MostBytes = 64 * 1024;

    private static readonly string[] s_paths =
    [
        "coilover.stop_nut.gap", "coilover.preload", "coilover.springs.upper.rate", "coilover.springs.lower.free_length", "corner.sprung_weight",
        "corner.motion_ratio", "tyre.rate", "tyre.damping", "coilover.gas.pressure", "coilover.friction", "speed", "terrain[1].step", "run.tolerance",
    ];

    // Some cannot be: a solid spring, a value out of range, a wheel stopped at its hub, a unit that does not fit.
    private static readonly string[][] s_values =
    [
        ["0.6 in", "31 mm", "-1 in"], ["0 m", "2.5 in", "-1e-2 m"], ["140 lbf/in", "30 N/mm", "0 N/mm"], ["14.5 in", "0.4 m", "1 in"], ["700 lbf", "3900 N", "700"],
        ["0.9", "1", "0"], ["1000 lbf/in", "2.2e5 N/m", "3 lbf"], ["0 N*s/m", "4 lbf*s/in", "1e999 N*s/m"], ["150 psi", "14 bar", "-1 psi"], ["0 lbf", "100 N", "none"],
        ["4 mph", "3 m/s", "0 mph"], ["-15 in", "0.2 m", "3 m"], ["1e-5", "3e-7", "1"],
    ];

    public static TheoryData<string> Names => [.. ReferenceRun.Names];

    [Fact]
    public void Setups_of_the_short_way_have_the_rows_of_those_whose_document_is_read_whole()
    {
        StudyBase study = Study("quarry_ledge");
        int ran = 0, refused = 0;
        for (int p = 0; p < s_paths.Length; p++)
        {
            // A partner that stays makes every setup one of two values.
            var partner = SetupValue.Of("coilover.springs.lower.rate", "220 lbf/in");
            SetupPlan plan = SetupPlan.List([s_paths[p], partner.Path], [.. s_values[p].Select(v => SetupRequest.Of([SetupValue.Of(s_paths[p], v), partner]))]);
            for (int i = 0; i < plan.Count; i++)
            {
                StudyRow whole = One(study, plan, i, keep: true), quick = One(study, plan, i, keep: false);
                Assert.Equal((whole.Note, whole.Nut), (quick.Note, quick.Nut));
                Assert.Equal(Bits(whole), Bits(quick));
                (ran, refused) = whole.Figures is null ? (ran, refused + 1) : (ran + 1, refused);
            }
        }

        Assert.True(ran >= 26 && refused >= 10, $"{ran} ran, {refused} refused");
    }

    [Theory, MemberData(nameof(Names))]
    public void A_setup_takes_little_from_the_heap_however_long_its_run(string name)
    {
        StudyBase study = Study(name);
        SetupPlan plan = SetupPlan.List(["coilover.preload"], [.. Enumerable.Range(0, 3).Select(i => SetupRequest.Of([SetupValue.OfSi("coilover.preload", 0.03 + 0.001 * i)]))]);
        var run = new MotionRun();
        for (int i = 0; i < 3; i++)
            StudyEngine.One(study, plan, i, run, false, default);
        long before = GC.GetAllocatedBytesForCurrentThread();
        StudyEngine.One(study, plan, 1, run, false, default);
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 1, MostBytes);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(3)]
    [InlineData(200_000_000)]
    public void Rows_come_in_order_and_what_their_taker_throws_ends_the_study(int jobs)
    {
        List<long> taken = [];
        var thrown = Assert.Throws<IOException>(() => StudyEngine.Rows(
            1000,
            new StudyOptions(jobs),
            (i, _, _) => new StudyRow(i, SetupRequest.Of([]), null, "", null, null),
            row =>
            {
                taken.Add(row.Index);
                if (row.Index == 300)
                    throw new IOException("disk full");
            },
            null,
            default));
        Assert.Equal("disk full", thrown.Message);
        Assert.Equal(Enumerable.Range(0, 301).Select(i => (long)i), taken);
    }

    private static StudyRow One(StudyBase study, SetupPlan plan, int i, bool keep) => StudyEngine.One(study, plan, i, new MotionRun(), keep, default);

    private static IEnumerable<long?>? Bits(StudyRow row) => row.Figures?.Select(f => f is { } v ? BitConverter.DoubleToInt64Bits(v) : (long?)null);

    private static StudyBase Study(string name)
    {
        var options = new ReadOptions(null, [], null, null, StandingBase.Instance);
        ScenarioDocument document = ScenarioDocument.Load(Path.Combine(AppContext.BaseDirectory, "reference", name + ".yaml"), new ProblemList())!;
        return new StudyBase(document, options, ScenarioReader.Read(document, options).Scenario!);
    }
}
