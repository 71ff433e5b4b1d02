using System.Collections.Immutable;
using System.Diagnostics;

using QuarterCar.Model;
using QuarterCar.Model.Motion;
using QuarterCar.Scenarios.Reading;

namespace QuarterCar.Studies.Setups;

/// <summary>One setup's row: its figures, or why it has none.</summary>
/// <param name="Index">Place in the whole study, from 0.</param>
/// <param name="Request">What was asked.</param>
/// <param name="Nut">What became of the stop nut; null without one.</param>
/// <param name="Note">Remark, or the reason.</param>
/// <param name="Figures">In the order of <see cref="FigureTable.Names"/>; null where it could not be run.</param>
/// <param name="Run">The run itself where the study keeps it.</param>
public sealed record StudyRow(long Index, SetupRequest Request, NutRule? Nut, string Note, ImmutableArray<double?>? Figures, RunResult? Run)
{
    private static readonly int s_bottomOut = FigureTable.Names.IndexOf("counts.bottom_out"), s_coilBind = FigureTable.Names.IndexOf("counts.coil_bind");

    /// <summary>stays, reset, or empty without a stop nut.</summary>
    public string NutWord => Nut switch { NutRule.Stays => "stays", NutRule.Reset => "reset", _ => "" };

    /// <summary>Metal or bound coils that the corner stands on, in words; null where its springs hold it up. Such a corner is not one to drive, whatever its figures are.</summary>
    public string? Rest => Figures is null ? null : AtRest.In(Note);

    /// <summary>A stop that the corner leans on at rest, in words; null where it leans on none.</summary>
    public string? Stop => Figures is null ? null : AtRest.StopIn(Note)?.Words;

    /// <summary>What --hold set; empty without one.</summary>
    public string HeldBy => Figures is null ? "" : AtRest.Without(Note);

    /// <summary>True where the corner already stands at the start on what a figure counts touches of: its none tells nothing then.</summary>
    /// <param name="figure">Dotted name.</param>
    public bool StandsOn(string figure) => Figures is not null && AtRest.StopIn(Note)?.Touches.Contains(figure) == true;

    /// <summary>True where the corner meets metal or binds its coils in the run, or stands so.</summary>
    public bool MeetsMetal => Rest is not null || (Figures is { } f && f[s_bottomOut] + f[s_coilBind] > 0);

    /// <summary>The row of a setup that was run.</summary>
    /// <param name="index">Place in the whole study, from 0.</param>
    /// <param name="request">What was asked.</param>
    /// <param name="nut">What became of the stop nut; null without one.</param>
    /// <param name="note">Remark.</param>
    /// <param name="result">Its run; one that stopped early gives no figures.</param>
    /// <param name="keepRun">True where the row carries it.</param>
    public static StudyRow Of(long index, SetupRequest request, NutRule? nut, string note, RunResult result, bool keepRun)
    {
        if (result.Figures.Run.End != RunEnds.Finished)
            return new StudyRow(index, request, nut, result.Figures.Run.Message, null, null);
        string rest = AtRest.Of(result.Standing.Corner) ?? AtRest.Stop(result) ?? "";
        return new StudyRow(
            index, request, nut, note.Length > 0 && rest.Length > 0 ? note + "; " + rest : note + rest, FigureTable.Values(result.Standing.Figures, result.Figures), keepRun ? result : null);
    }
}

/// <summary>How a study is carried out.</summary>
/// <param name="Jobs">Threads.</param>
/// <param name="Part">This part, from 1.</param>
/// <param name="Parts">Of so many: every Parts-th setup from the Part-th.</param>
/// <param name="KeepRuns">So many rows at least carry their runs, the first that have one; <see cref="All"/> for every row.</param>
public sealed record StudyOptions(int Jobs, int Part = 1, int Parts = 1, long KeepRuns = 0)
{
    /// <summary>Every row carries its run.</summary>
    public const long All = long.MaxValue;

    /// <summary>One thread a core.</summary>
    public static readonly StudyOptions Default = new(Environment.ProcessorCount);

    /// <summary>How many of so many setups fall to this part.</summary>
    public long Count(long setups) => (setups - Part + Parts) / Parts;
}

/// <summary>
/// Runs the setups of a study over all cores and hands their rows on in order, the same bits for any number of threads.
/// Memory does not grow with the number of setups: rows are handed on in blocks, small ones while the rows carry their runs.
/// </summary>
public static class StudyEngine
{
    private const int BlockPerJob = 16;

    // Blocks of short runs grow, so that threads seldom wait for the last run of one; those of long runs stay, so that progress is told often.
    private const int MostPerJob = 256;
    private static readonly TimeSpan ShortBlock = TimeSpan.FromMilliseconds(50);

    // More threads than that only wait for each other, and blocks grow with them.
    private const int MostJobsPerCore = 4;

    /// <summary>Runs a study.</summary>
    /// <param name="study">The base.</param>
    /// <param name="plan">The setups.</param>
    /// <param name="options">How.</param>
    /// <param name="take">Takes the rows, in order of index, on the calling thread.</param>
    /// <param name="progress">Told how many of how many are done, on the calling thread.</param>
    /// <param name="cancel">Stops within one run's time with <see cref="OperationCanceledException"/>.</param>
    public static void Run(StudyBase study, SetupPlan plan, StudyOptions options, Action<StudyRow> take, Action<long, long>? progress, CancellationToken cancel) =>
        Rows(plan.Count, options, (index, run, keep) => One(study, plan, index, run, keep, cancel), take, progress, cancel);

    /// <summary>The same for rows that come from elsewhere than one base, for example from several scenarios.</summary>
    /// <param name="setups">How many in the whole study.</param>
    /// <param name="options">How.</param>
    /// <param name="one">The row of an index, in memory used again, and whether it carries its run; asked on many threads.</param>
    /// <param name="take">Takes the rows, in order of index, on the calling thread.</param>
    /// <param name="progress">Told how many of how many are done, on the calling thread.</param>
    /// <param name="cancel">Stops it.</param>
    public static void Rows(long setups, StudyOptions options, Func<long, MotionRun, bool, StudyRow> one, Action<StudyRow> take, Action<long, long>? progress, CancellationToken cancel)
    {
        long count = options.Count(setups), started = 0, done = 0, kept = 0;
        int most = MostJobsPerCore * Environment.ProcessorCount;
        int jobs = (int)Math.Clamp(options.Jobs, 1, Math.Clamp(count, 1, most)); // more threads than setups have nothing to do
        long block = (long)jobs * BlockPerJob;
        using var runs = new ThreadLocal<MotionRun>(() => new MotionRun());
        var parallel = new ParallelOptions { MaxDegreeOfParallelism = jobs, CancellationToken = cancel };
        Task<Block> next = Start();
        try
        {
            while (done < count)
            {
                Block ready = next.GetAwaiter().GetResult();
                if (ready.Time < ShortBlock && ready.Rows.Length >= block && block < (long)jobs * MostPerJob)
                    block *= 2;
                kept += ready.Rows.Count(r => r.Run is not null);
                next = Start();
                foreach (StudyRow row in ready.Rows)
                    take(row);
                done += ready.Rows.Length;
                progress?.Invoke(done, count);
            }
        }
        finally
        {
            // Whatever ended this: nobody may still run in memory that is given back.
            Task.WaitAny([next], CancellationToken.None);
        }

        // The next block runs while the rows of the last one are taken; with one job everything is done on the calling thread.
        Task<Block> Start()
        {
            long first = started;
            bool keep = kept < options.KeepRuns;
            var rows = new StudyRow[Math.Min(keep ? jobs : block, count - started)]; // a run can be a hundred megabytes
            started += rows.Length;
            return jobs == 1 ? Task.FromResult(Fill()) : Task.Run(Fill, CancellationToken.None);

            Block Fill()
            {
                long start = Stopwatch.GetTimestamp();
                Parallel.For(0, rows.Length, parallel, i => rows[i] = one(options.Part - 1 + (first + i) * options.Parts, runs.Value!, keep));
                return new Block(rows, Stopwatch.GetElapsedTime(start));
            }
        }
    }

    /// <summary>Rows that follow one another, and how long they took.</summary>
    private readonly record struct Block(StudyRow[] Rows, TimeSpan Time);

    /// <summary>One setup alone: the row that the study would give it.</summary>
    public static StudyRow One(StudyBase study, SetupPlan plan, long index, MotionRun run, bool keepRun, CancellationToken cancel)
    {
        SetupRequest request = plan.At(index);
        try
        {
            return One(study, study.Make(request, hashed: keepRun), index, run, keepRun, cancel);
        }
        catch (SetupException e)
        {
            return new StudyRow(index, request, null, e.Message, null, null);
        }
    }

    /// <summary>The row of a setup that is made already.</summary>
    public static StudyRow One(StudyBase study, Setup setup, long index, MotionRun run, bool keepRun, CancellationToken cancel)
    {
        SetupRequest request = setup.Request;
        try
        {
            RunResult result = SingleRun.Of(setup.Scenario, study.Course(setup.Scenario), run, keepRun, cancel);
            return StudyRow.Of(index, request, setup.Nut, setup.Note, result, keepRun);
        }
        catch (CornerException e)
        {
            return new StudyRow(index, request, setup.Nut, $"{e.Key}: {e.Found}; wanted {e.Wanted}", null, null);
        }
    }
}
