using System.Globalization;
using System.Text.RegularExpressions;

using QuarterCar.Scenarios;
using QuarterCar.Scenarios.Reading;

using Xunit;

namespace QuarterCar.Studies.Tests.Properties;

/// <summary>What a run must not depend on: how finely it is sampled, what runs beside it, the words its quantities came in.</summary>
public partial class RepeatableRunTests
{
    private static readonly string[] s_some = ["quarry-ledge", "tender-triple", "drop-test", "rising-ratio"];

    public static TheoryData<string> Some => [.. s_some];

    [Theory, MemberData(nameof(Some))]
    public void Sampling_every_1_ms_or_every_20_ms_gives_the_same_steps_events_and_peaks(string name)
    {
        RunResult fine = Scenes.Run(name, "run.sample=1 ms"), coarse = Scenes.Run(name, "run.sample=20 ms");
        Assert.NotEqual(fine.Track.RowCount, coarse.Track.RowCount);
        AssertSame(fine, coarse);
    }

    [Fact]
    public void Scenarios_run_beside_each_other_give_the_bits_that_they_give_alone()
    {
        Scenario[] scenarios = [.. s_some.Select(n => Scenes.Read(n))];
        RunResult[] alone = [.. scenarios.Select(s => SingleRun.Of(s))], beside = new RunResult[4 * scenarios.Length];
        Parallel.For(0, beside.Length, new ParallelOptions { MaxDegreeOfParallelism = 4 }, i => beside[i] = SingleRun.Of(scenarios[i % scenarios.Length]));
        for (int i = 0; i < beside.Length; i++)
            AssertSame(alone[i % scenarios.Length], beside[i]);
    }

    [Theory, InlineData("quarry-ledge"), InlineData("tender-triple"), InlineData("single-spring"), InlineData("whoops")]
    public void The_same_scenario_in_metric_words_gives_the_same_figures(string name)
    {
        string text = File.ReadAllText(Scenes.PathOf(name)), metric = UsQuantity().Replace(text, Metric);
        Assert.DoesNotMatch(UsQuantity(), metric);
        RunResult us = Scenes.Run(name), si = SingleRun.Of(Scenes.Good(ScenarioReader.ReadText("metric.yaml", metric, ReadOptions.Plain)));
        Assert.Equal((UnitSystem.Us, UnitSystem.Si), (us.Scenario.Units, si.Scenario.Units));
        Assert.Equal(us.Events.Select(e => e.Event), si.Events.Select(e => e.Event));
        foreach (((string figure, double? one), (_, double? other)) in Corners.Figures(us).Zip(Corners.Figures(si)))
        {
            if (figure.StartsWith("energy.residual", StringComparison.Ordinal))
                continue; // what does not close is rounding and truncation itself
            Assert.Equal(one is null, other is null);
            Assert.True(Math.Abs((one ?? 0) - (other ?? 0)) <= 1e-9 * Math.Max(1, Math.Abs(one ?? 0)), $"{figure}: {one:R}, in metric words {other:R}");
        }
    }

    private static void AssertSame(RunResult one, RunResult other)
    {
        Assert.Equal(Corners.Figures(one), Corners.Figures(other));
        Assert.Equal(one.Events.AsEnumerable(), other.Events.AsEnumerable());
        Assert.Equal(one.Figures.Run, other.Figures.Run);
        Assert.Equal(((RunTrack)one.Track).Steps.ToArray().Select(s => (s.Start, s.Length)), ((RunTrack)other.Track).Steps.ToArray().Select(s => (s.Start, s.Length)));
    }

    // Exact constants: international inch and pound (1959), standard gravity (CGPM 1901).
    private static string Metric(Match m)
    {
        const double inch = 0.0254, pound = 0.45359237 * 9.80665, psi = pound / (inch * inch);
        double value = double.Parse(m.Groups[1].Value, CultureInfo.InvariantCulture);
        (double factor, string unit) = m.Groups[2].Value switch
        {
            "in" => (inch, "m"),
            "ft" => (12 * inch, "m"),
            "in/s" => (inch, "m/s"),
            "mph" => (0.44704, "m/s"),
            "lbf" => (pound, "N"),
            "lbf/in" => (pound / inch, "N/m"),
            "lbf*s/in" => (pound / inch, "N*s/m"),
            "psi" => (psi / 1000, "kPa"),
            "in^3" => (inch * inch * inch * 1e6, "cm^3"),
            _ => throw new InvalidOperationException(m.Value),
        };
        return (value * factor).ToString("R", CultureInfo.InvariantCulture) + " " + unit;
    }

    [GeneratedRegex(@"(?<![\w.])(-?\d+(?:\.\d+)?) (lbf\*s/in|lbf/in|lbf|in/s|in\^3|in|ft|mph|psi)(?![\w/*^])")]
    private static partial Regex UsQuantity();
}
