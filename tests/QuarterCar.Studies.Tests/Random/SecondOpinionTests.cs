using CsCheck;

using QuarterCar.Benchmarks;
using QuarterCar.Scenarios;

using Xunit;

namespace QuarterCar.Studies.Tests.RandomCorners;

/// <summary>Random corners against the plain laws (if and else) stepped by MathNet.Numerics' fixed-step Runge–Kutta: no pieces, no guards, no events.</summary>
public class SecondOpinionTests
{
    private const double Grid = 0.01;
    private const int Fine = 2000;

    [Fact]
    public void Shaft_travel_agrees_with_the_plain_laws_in_fixed_steps() => CornerCase.Plausible.Sample(
        c =>
        {
            if (CornerChecks.Run(c.Si, "run.duration=1.5 s") is not { Scenario.Excitation: Course } run)
                return;
            double[] ours = [.. Enumerable.Range(0, 150).Select(i => run.Track.At(i * Grid).ShaftTravel)];
            var plain = new PlainSteps(run.Scenario);
            double coarse = plain.Error(plain.Run(150 * Fine / 2), ours), fine = plain.Error(plain.Run(150 * Fine), ours);

            // A force that jumps or bends inside a step leaves an order of one and more: the error halves with the step at
            // least on average, and where the jump falls in its step is chance. What is left is ours: 1 µm (physics.md section 5).
            Assert.True(fine <= 1e-6 + 2 * Math.Abs(coarse - fine), FormattableString.Invariant($"off by {fine:G3} m at 5 µs, {coarse:G3} m at 10 µs"));
        },
        iter: CornerCase.Opinions(10),
        print: c => "\n" + c.Si);
}
