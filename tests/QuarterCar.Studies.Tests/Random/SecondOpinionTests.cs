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

    // Where a force jumps inside a fixed step, its error is of first order and chance; so nothing jumps here, though much bends.
    private static readonly string[] s_smooth =
        ["run.duration=1.5 s", "coilover.damper.zones=none", "tyre.damping=0 N*s/m", "tyre.contact=footprint", "tyre.footprint=0.18 m"];

    [Fact]
    public void Shaft_travel_agrees_with_the_plain_laws_in_fixed_steps() => CornerCase.Plausible.Sample(
        c =>
        {
            if (CornerChecks.Run(c.Si, s_smooth) is not { Scenario.Excitation: Course } run)
                return;
            double[] ours = [.. Enumerable.Range(0, 150).Select(i => run.Track.At(i * Grid).ShaftTravel)];
            var plain = new PlainSteps(run.Scenario);
            double coarse = plain.Error(plain.Run(150 * Fine / 2), ours), fine = plain.Error(plain.Run(150 * Fine), ours);

            // A force that bends inside a step leaves second order and more; what is left at half the step is less than
            // what halving it moved. The rest is ours: 1 µm (physics.md section 5).
            Assert.True(fine <= 1e-6 + 2 * Math.Abs(coarse - fine), FormattableString.Invariant($"off by {fine:G3} m at 5 µs, {coarse:G3} m at 10 µs"));
        },
        iter: CornerCase.Opinions(10),
        print: c => "\n" + c.Si);
}
