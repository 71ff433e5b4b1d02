using QuarterCar.Model.Motion;
using QuarterCar.Scenarios;
using QuarterCar.Scenarios.Reading;
using QuarterCar.Studies.Setups;

using Xunit;

namespace QuarterCar.Studies.Tests.Setups;

/// <summary>How much of a study is held at once: runs are large, and a study may have millions of rows.</summary>
public class StudyMemoryTests
{
    private static readonly StudyRow s_run = OneRun();

    [Theory]
    [InlineData(1)]
    [InlineData(3)]
    public void No_more_than_two_runs_a_thread_wait_to_be_taken(int jobs)
    {
        int asked = 0, taken = 0, most = 0;
        StudyEngine.Rows(
            200,
            new StudyOptions(jobs, KeepRuns: StudyOptions.All),
            (i, _, keep) => Row(i, keep, ref asked),
            row =>
            {
                Assert.NotNull(row.Run);
                most = Math.Max(most, Volatile.Read(ref asked) - taken++);
            },
            null,
            default);
        Assert.Equal((200, 200), (asked, taken));
        Assert.InRange(most, 1, 2 * jobs);
    }

    // Every third setup cannot be run, and the first twenty cannot either.
    [Theory]
    [InlineData(1, 1, 1)]
    [InlineData(3, 1, 1)]
    [InlineData(3, 2, 2)]
    public void Runs_are_kept_until_as_many_as_are_wanted_are_there(int jobs, int part, int parts)
    {
        const int wanted = 6;
        int asked = 0;
        List<StudyRow> rows = [];
        StudyEngine.Rows(500, new StudyOptions(jobs, part, parts, wanted), (i, _, keep) => i < 20 || i % 3 == 0 ? new StudyRow(i, s_run.Request, null, "no", null, null) : Row(i, keep, ref asked), rows.Add, null, default);
        StudyRow[] ran = [.. rows.Where(r => r.Figures is not null)];
        Assert.Equal(500 / parts, rows.Count);
        Assert.All(ran[..wanted], r => Assert.NotNull(r.Run));
        Assert.InRange(rows.Count(r => r.Run is not null), wanted, wanted + (2 * jobs));
        Assert.All(ran[(wanted + (2 * jobs))..], r => Assert.Null(r.Run));
    }

    [Fact]
    public void More_jobs_than_any_machine_has_do_not_hold_the_whole_study_at_once()
    {
        int asked = 0, first = 0;
        StudyEngine.Rows(1_000_000, new StudyOptions(1_000_000), (i, _, keep) => Row(i, keep, ref asked), _ => first = first == 0 ? Volatile.Read(ref asked) : first, null, default);
        Assert.Equal(1_000_000, asked);
        Assert.InRange(first, 1, 500_000);
    }

    private static StudyRow Row(long index, bool keep, ref int asked)
    {
        Interlocked.Increment(ref asked);
        return keep ? s_run with { Index = index } : s_run with { Index = index, Run = null };
    }

    private static StudyRow OneRun()
    {
        var options = new ReadOptions(null, [], null, null, StandingBase.Instance);
        ScenarioDocument document = ScenarioDocument.Load(Path.Combine(AppContext.BaseDirectory, "reference", "quarry_ledge.yaml"), new ProblemList())!;
        var study = new StudyBase(document, options, ScenarioReader.Read(document, options).Scenario!);
        return StudyEngine.One(study, SetupPlan.List([], [SetupRequest.Of([])]), 0, new MotionRun(), true, default);
    }
}
