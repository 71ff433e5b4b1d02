using QuarterCar.TestKit.Programs;

namespace QuarterCar.Cli.Tests.Faults;

/// <summary>Standard output and standard error that nobody reads, that are closed, or that lead to a full disk.</summary>
public sealed class OutputTests : IDisposable
{
    // Every verb that ends by itself, with the exit code that it has when somebody listens.
    private const string Commands =
        """
        0 schema
        0 --help
        2 nonsense
        0 check plain.yaml --json
        0 run plain.yaml --out out/run
        0 run plain.yaml --json
        0 new fresh.yaml
        0 weigh --upper-rate 28N/mm --upper-free 300mm --upper-loaded 230mm --lower-rate 40N/mm --lower-free 350mm --lower-loaded 301mm --json
        0 pick --load 3500N --stroke 300mm --ride-height 130mm --json
        0 compare plain.yaml --vary coilover.preload=1,2cm --out out/compare --json
        1 compare plain.yaml --vary coilover.preload=1,-90cm
        0 sweep plain.yaml --vary coilover.preload=1:2:2cm --part 1/1 --out out/part --json
        0 gather out/part --out out/whole --json
        0 reach plain.yaml --vary drop.height=0.1:0.2m --json
        0 tweak plain.yaml --json
        0 spread plain.yaml --samples 3 --json
        0 terrain ledge.yaml --json
        0 sheet plain.yaml --out sheet.html
        0 completion bash
        """;

    private readonly Scratch _scratch = new();

    public OutputTests()
    {
        _scratch.Write("plain.yaml", Scenarios.Plain(limit: 2) + "\ntolerances: { corner.sprung_weight: 4 % }\n");
        _scratch.Write("ledge.yaml", File.ReadAllText(Scenarios.QuarryLedge));
        _scratch.Write("commands", Commands + "\n");
    }

    public void Dispose() => _scratch.Dispose();

    [Fact]
    public void Every_verb_ends_as_it_does_anyway_when_nobody_reads_what_it_says()
    {
        // `true` is gone long before the program has begun to write.
        const string script = "while read -r code words; do $QUARTERCAR $words 2> messages < /dev/null | true; echo \"${PIPESTATUS[0]}|$code|$words|$(grep -E '   at |foreseen|cannot' messages)\"; done < commands";
        string[][] lines = Lines(script);
        Assert.Equal(Commands.Split('\n').Length, lines.Length);
        Assert.All(lines, l => Assert.Equal((l[1], ""), (l[0], l[3])));
        string[] files = _scratch.Files();
        Assert.All((string[])["out/run/trace.csv", "out/whole/sweep.csv", "out/compare/compare.json", "fresh.yaml", "sheet.html"], f => Assert.Contains(f, files));
    }

    [Fact]
    public void A_reader_of_one_line_gets_that_line()
    {
        string[][] lines = Lines("for words in schema 'run plain.yaml --json' '--help'; do $QUARTERCAR $words 2> messages | head -1 > line; echo \"${PIPESTATUS[0]}|$(cat messages)|$(wc -l < line)\"; done");
        Assert.Equal(3, lines.Length);
        Assert.All(lines, l => Assert.Equal(["0", "", "1"], l));
    }

    [Theory]
    [InlineData("> /dev/full", "check plain.yaml", "3|quartercar: cannot write the results: standard output takes nothing: No space left on device")]
    [InlineData("> /dev/full", "compare plain.yaml --vary coilover.preload=1,2cm --json", "3|quartercar: cannot write the results: standard output takes nothing: No space left on device")]
    [InlineData(">&-", "check plain.yaml", "3|quartercar: cannot write the results: standard output takes nothing: it is closed, or not open for writing")]
    [InlineData("2> /dev/full", "check nowhere.yaml", "2|")]
    [InlineData("2>&-", "check nowhere.yaml", "2|")]
    [InlineData("> /dev/null 2> /dev/full", "run plain.yaml --out out", "0|")]
    public void What_leads_nowhere_costs_the_exit_code_only_where_results_are_lost(string where, string words, string expected)
    {
        string messages = where.Contains('2', StringComparison.Ordinal) ? where : $"2> messages {where}";
        Assert.Equal(expected, ProgramProcess.Shell(_scratch.Folder, $"$QUARTERCAR {words} {messages}; echo \"$?|$([ -e messages ] && cat messages)\"").Out.TrimEnd());
        if (words.EndsWith("--out out", StringComparison.Ordinal)) Assert.Contains("out/trace.csv", _scratch.Files());
    }

    private string[][] Lines(string script)
    {
        ProcessResult result = ProgramProcess.Shell(_scratch.Folder, script);
        Assert.Equal("", result.Messages);
        return [.. result.Out.TrimEnd().Split('\n').Select(l => l.Split('|'))];
    }
}
