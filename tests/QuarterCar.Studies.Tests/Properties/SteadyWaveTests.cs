using System.Numerics;

using QuarterCar.Model;
using QuarterCar.Model.Terrain;
using QuarterCar.Scenarios;
using QuarterCar.TestKit;

using Xunit;

using Tolerance = QuarterCar.TestKit.Tolerance;

namespace QuarterCar.Studies.Tests.Properties;

/// <summary>
/// A corner on a long train of even waves, tyre undamped and always pressed (check-values section 5, invariants; derivation C,
/// Hedrick and Butsuen, Proc. IMechE 204, 1990, from memory). m_s·z̈_s + m_u·z̈_u = k_t·(z_r − z_u) holds whatever acts between
/// the masses, so for the fundamentals |Z_s/Z_r| = m_u/m_s at ω² = k_t/m_u and |(Z_s − Z_u)/Z_r| = 1 + m_u/m_s at ω² = k_t/(m_s + m_u).
/// </summary>
public class SteadyWaveTests
{
    private const double Wave = 2;
    private const int Cycles = 10, Samples = 400;

    // A haversine's height is twice the amplitude; what is left of the start after the waits below is less than 1e-9 of it.
    private static readonly Tolerance s_linear = Tolerance.Share(1e-6, "run.tolerance 1e-9 of 0.3 m on amplitudes of a tenth of a millimetre");
    private static readonly Tolerance s_bent = Tolerance.Share(1e-4, "400 samples a cycle fold back what the kinks of the damper leave at the 400th harmonic");

    public static TheoryData<string> Undamped => [.. CheckValues.Rows("quarter_car_sets.csv").Where(r => CheckValues.Number(r[6]) == 0).Select(r => r[0])];

    [Theory, MemberData(nameof(Undamped))]
    public void At_the_wheel_hop_invariant_the_sprung_mass_moves_by_the_ratio_of_masses(string id) => HopInvariant(Set(id), 1e-3, s_linear);

    [Theory, MemberData(nameof(Undamped))]
    public void At_the_rattle_space_invariant_the_travel_is_one_plus_the_ratio_of_masses(string id) => RattleInvariant(Set(id), 1e-3, s_linear);

    // Degressive and unequal damping, friction: the invariants don't care.
    [Fact]
    public void The_ledges_corner_keeps_the_wheel_hop_invariant_with_its_bent_damper_and_friction() => HopInvariant(Buggy(), 4e-3, s_bent);

    [Fact]
    public void The_ledges_corner_keeps_the_rattle_space_invariant_with_its_bent_damper_and_friction() => RattleInvariant(Buggy(), 4e-3, s_bent);

    private static CornerData Set(string id)
    {
        double[] r = [.. CheckValues.Rows("quarter_car_sets.csv").Single(r => r[0] == id).Skip(1).Select(CheckValues.Number)];
        return Corners.Linear(r[0], r[1], r[2], r[3], r[4], r[5]);
    }

    private static CornerData Buggy() => Scenes.Read("quarry-ledge", "tyre.damping=none", "tyre.contact=point", "coilover.gas=none").Corner;

    private static void HopInvariant(CornerData corner, double amplitude, Tolerance tolerance)
    {
        (Complex sprung, _, double ratio) = Steady(corner, Math.Sqrt(corner.Tyre.Rate * Corner.Gravity / corner.UnsprungWeight), amplitude);
        tolerance.Holds(ratio, sprung.Magnitude);
    }

    private static void RattleInvariant(CornerData corner, double amplitude, Tolerance tolerance)
    {
        double weight = corner.SprungWeight!.Value + corner.UnsprungWeight;
        (Complex sprung, Complex unsprung, double ratio) = Steady(corner, Math.Sqrt(corner.Tyre.Rate * Corner.Gravity / weight), amplitude);
        tolerance.Holds(1 + ratio, (sprung - unsprung).Magnitude);
    }

    /// <summary>Fundamentals over the road's amplitude after the start has died away.</summary>
    private static (Complex Sprung, Complex Unsprung, double MassRatio) Steady(CornerData corner, double omega, double amplitude)
    {
        const double wait = 16;
        double period = 2 * Math.PI / omega, speed = Wave / period;
        int count = (int)Math.Ceiling(wait / period) + Cycles + 1;
        RunResult run = SingleRun.Of(Corners.Driven(corner, speed, new RunSettings(count * period, 1e-2, 1e-9), new HaversinePiece(2 * amplitude, Wave, count)));
        Assert.DoesNotContain(run.Events, e => e.Event is "liftoff" or "top_out" or "bump_stop");
        (Complex sprung, Complex unsprung) = (0, 0);
        double from = (count - Cycles - 1) * period;
        for (int i = 0; i < Cycles * Samples; i++)
        {
            Sample s = run.Track.At(from + i * period / Samples);
            var turn = Complex.FromPolarCoordinates(2.0 / (Cycles * Samples), -2 * Math.PI * i / Samples);
            (sprung, unsprung) = (sprung + s.Sprung * turn, unsprung + s.Unsprung * turn);
        }

        return (sprung / amplitude, unsprung / amplitude, corner.UnsprungWeight / corner.SprungWeight!.Value);
    }
}
