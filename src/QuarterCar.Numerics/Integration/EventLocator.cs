namespace QuarterCar.Numerics.Integration;

/// <summary>
/// Finds the first guard that a step crosses, on the step's interpolant. A crossing belongs to (start, end]: a guard
/// that begins on its boundary and moves inside is not crossed. Knows nothing of what a crossing means.
/// </summary>
internal static class EventLocator
{
    /// <summary>The earliest crossing.</summary>
    /// <param name="system">The equations with their guards.</param>
    /// <param name="step">The step.</param>
    /// <param name="suspects">Bit mask of guards to look at.</param>
    /// <param name="theta">Where, 0 to 1; on the far side of the boundary or on it.</param>
    /// <returns>The guard, or −1 where none is crossed.</returns>
    public static int First<TSystem>(ref TSystem system, in DenseStep step, uint suspects, out double theta)
        where TSystem : struct, IPiecewiseSystem
    {
        int first = -1;
        theta = 1;
        for (int guard = 0; suspects != 0; guard++, suspects >>= 1)
        {
            if ((suspects & 1) == 0)
                continue;
            bool crosses;
            double at;
            if (system.TryLinear(guard, step.Start, out LinearGuard linear))
            {
                var function = new LinearGuardFunction(linear, step);
                crosses = PolynomialCrossing.TryFind(ref function, theta, step.Length, out at);
            }
            else
            {
                var function = new GuardFunction<TSystem>(ref system, in step, guard);
                crosses = Crossing.TryFind(ref function, theta, step.Length, system.Stretches(guard, step), out at);
            }

            if (crosses && (first < 0 || at < theta))
            {
                first = guard;
                theta = at;
            }
        }

        return first;
    }
}
