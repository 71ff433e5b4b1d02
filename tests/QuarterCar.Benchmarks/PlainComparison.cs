using System.Diagnostics;
using System.Globalization;

namespace QuarterCar.Benchmarks;

/// <summary>One run of ours against MathNet's fixed-step Runge–Kutta at the step that it needs for the same error, in one process.</summary>
internal static class PlainComparison
{
    private const int MostSteps = 4_000_000;

    /// <summary>Prints one line a scenario.</summary>
    public static void Print()
    {
        foreach (string name in new[] { "quarry_ledge", "fast_whoops", "ramp_and_drop" })
        {
            var yard = new Yard(name);
            for (int i = 0; i < 2000; i++)
                yard.Once();
            long start = Stopwatch.GetTimestamp();
            for (int i = 0; i < 200; i++)
                yard.Once();
            double ours = Stopwatch.GetElapsedTime(start).TotalMicroseconds / 200, error = yard.Errors().Travel;
            double[] exact = yard.NewGrid();
            yard.Once(yard.Run, exact, 1e-11, null);
            var plain = new PlainSteps(yard.Scenario);
            double plainError = double.PositiveInfinity, plainTime = 0;
            int steps = (int)(exact.Length - 1) * 10;
            for (; steps <= MostSteps; steps *= 2)
            {
                start = Stopwatch.GetTimestamp();
                var states = plain.Run(steps);
                plainTime = Stopwatch.GetElapsedTime(start).TotalMicroseconds;
                plainError = plain.Error(states, exact);
                if (plainError <= error)
                    break;
            }

            string reached = plainError <= error ? "" : " (error not reached)";
            Console.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"{name} ours_us={ours:0.0} error_m={error:0.0e-0} plain_us={plainTime:0} plain_error_m={plainError:0.0e-0} plain_steps={Math.Min(steps, MostSteps)} ratio={plainTime / ours:0}{reached}"));
        }
    }
}
