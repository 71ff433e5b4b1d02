using BenchmarkDotNet.Attributes;

namespace QuarterCar.Benchmarks;

/// <summary>One run of each yardstick scenario: time and allocation.</summary>
[MemoryDiagnoser]
public class RunBenchmarks
{
    private Yard _yard = null!;

    /// <summary>The scenario.</summary>
    [Params("quarry_ledge", "fast_whoops", "ramp_and_drop")]
    public string Scenario { get; set; } = "";

    /// <summary>Reads it once.</summary>
    [GlobalSetup]
    public void Read() => _yard = new Yard(Scenario);

    /// <summary>Statics, integration, events, 10 ms grid.</summary>
    [Benchmark]
    public double Once() => _yard.Once();
}
