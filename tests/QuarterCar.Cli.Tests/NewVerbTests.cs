using QuarterCar.TestKit.Programs;

namespace QuarterCar.Cli.Tests;

/// <summary>`new`: a scenario to start from, never over another file.</summary>
public sealed class NewVerbTests : IDisposable
{
    private readonly Scratch _scratch = new();

    public void Dispose() => _scratch.Dispose();

    [Fact]
    public void What_it_writes_passes_check_and_runs()
    {
        string file = _scratch.At("my-corner.yaml");
        Assert.Equal(ExitCode.Done, Asked.Of("new", file).Code);
        Assert.Equal(ExitCode.Done, Asked.Of("check", file).Code);
        Assert.Equal(ExitCode.Done, Asked.Of("run", file).Code);
    }

    [Fact]
    public void A_file_that_is_there_stays_as_it_is()
    {
        string file = _scratch.Write("mine.yaml", "mine");
        Asked asked = Asked.Of("new", file);
        Assert.Equal(ExitCode.BadInput, asked.Code);
        Assert.Contains("nothing is overwritten", asked.Messages, StringComparison.Ordinal);
        Assert.Equal("mine", File.ReadAllText(file));
    }

    [Theory]
    [InlineData("")]
    [InlineData("no-such-folder/a.yaml")]
    public void A_place_that_cannot_be_written_is_bad_input_and_stays_empty(string name)
    {
        Assert.Equal(ExitCode.BadInput, Asked.Of("new", _scratch.At(name)).Code);
        Assert.Empty(_scratch.Files());
    }

    [Fact]
    public void A_place_that_takes_no_file_is_told_without_names_that_nobody_chose()
    {
        if (!OperatingSystem.IsLinux()) return; // /proc is Linux's
        Asked asked = Asked.Of("new", "/proc/a.yaml");
        Assert.Equal((ExitCode.BadInput, "quartercar: /proc/a.yaml: cannot be written: no file can be made there"), (asked.Code, asked.Messages.TrimEnd()));
    }
}
