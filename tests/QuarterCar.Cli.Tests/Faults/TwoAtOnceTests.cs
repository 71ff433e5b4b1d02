using System.Diagnostics;

using QuarterCar.TestKit.Programs;

namespace QuarterCar.Cli.Tests.Faults;

/// <summary>Two runs with one --out at the same time.</summary>
public sealed class TwoAtOnceTests : IDisposable
{
    private const int UsualRounds = 2;

    private readonly Scratch _scratch = new();

    public void Dispose() => _scratch.Dispose();

    [Fact]
    public void Two_runs_into_one_folder_at_once_leave_the_files_of_one()
    {
        string folder = _scratch.At("results");
        int rounds = Study.Times("QUARTERCAR_ROUNDS", UsualRounds);
        for (int round = 0; round < rounds; round++)
        {
            Study[] studies = round % 2 == 0 ? [Study.Run, Study.HigherRun] : [Study.Comparison, Study.Run];
            Process[] both = [.. studies.Select(s => ProgramProcess.Start(_scratch.Folder, s.Into(folder)))];
            ProcessResult[] ends = [.. both.Select(ProgramProcess.End)];
            Assert.All(ends, e => Assert.True(e.Code == 0 || (e.Code == 2 && e.Messages.Contains("another run of quartercar is writing there", StringComparison.Ordinal)), e.Messages));
            Study[] done = [.. studies.Where((_, i) => ends[i].Code == 0)];
            Assert.NotEmpty(done);
            Assert.Contains(done, s => s.Is(folder));
            Assert.Empty(Study.Remnants(folder));
        }
    }
}
