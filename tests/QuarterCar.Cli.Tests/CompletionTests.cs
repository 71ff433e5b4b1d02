using QuarterCar.TestKit.Programs;

namespace QuarterCar.Cli.Tests;

/// <summary>What a shell offers while a line is typed.</summary>
public sealed class CompletionTests : IDisposable
{
    private readonly Scratch _scratch = new();

    [Theory]
    [InlineData("che", "check")]
    [InlineData("run corner.yaml --un", "--units")]
    [InlineData("run corner.yaml --units ", "si")]
    [InlineData("run corner.yaml --set coilover.stop_nut.g", "coilover.stop_nut.gap=")]
    [InlineData("sweep corner.yaml --vary coilover.pre", "coilover.preload=")]
    [InlineData("sweep corner.yaml --goal travel.travel_u", "travel.travel_use:least")]
    [InlineData("compare corner.yaml --hold ride_height,", "ride_height,crossover")]
    [InlineData("completion z", "zsh")]
    public void Line_gets_its_word(string line, string word) => Assert.Contains(word, Asked.Of("completion", "bash", "--line", line).Out.Split('\n'));

    [Fact]
    public void Bash_completes_with_the_script()
    {
        // A stand-in on the path is the program itself; the shell's own completion machinery fills COMPREPLY.
        _scratch.Write("bin/quartercar", "#!/bin/bash\nexec $QUARTERCAR \"$@\"\n");
        var shell = ProgramProcess.Shell(_scratch.Folder, """
            chmod +x bin/quartercar; export PATH=$PWD/bin:$PATH
            source <(quartercar completion bash)
            COMP_LINE='quartercar run a.yaml --set coilover.stop_nut.g'; COMP_POINT=${#COMP_LINE}
            COMP_WORDS=(quartercar run a.yaml --set coilover.stop_nut.g); COMP_CWORD=4
            _quartercar 2>/dev/null; echo "${COMPREPLY[@]}"
            """);
        Assert.Equal("coilover.stop_nut.gap=", shell.Out.Trim());
    }

    [Fact]
    public void Unknown_shell_is_bad_input() =>
        Assert.Equal((ExitCode.BadInput, "quartercar: completion: found 'tcsh'; wanted bash, zsh, fish or pwsh"), (Asked.Of("completion", "tcsh").Code, Asked.Of("completion", "tcsh").Messages.Trim()));

    public void Dispose() => _scratch.Dispose();
}
