using QuarterCar.Model;
using QuarterCar.Model.Statics;
using QuarterCar.Model.Terrain;
using QuarterCar.Scenarios;
using QuarterCar.TestKit;

using Xunit;

using Tolerance = QuarterCar.TestKit.Tolerance;

namespace QuarterCar.Studies.Tests.Properties;

/// <summary>The linear quarter car of check-values section 5 (C): frequencies from the characteristic polynomial, step responses from exp(At).</summary>
public class LinearQuarterCarTests
{
    private const double Before = 0.1, Speed = 10, Share = 0.1;

    public static TheoryData<string> Sets => [.. CheckValues.Rows("quarter_car_sets.csv").Select(r => r[0])];

    public static TheoryData<string> Stepped => [.. CheckValues.Rows("quarter_car_step_50mm.csv").Select(r => r[0]).Distinct()];

    [Theory, MemberData(nameof(Sets))]
    public void Ride_and_wheel_hop_frequency_are_those_of_the_two_undamped_masses(string id)
    {
        StandingFigures f = StandingWork.Figures(Corner.Build(Data(id)));
        var printed = Tolerance.Share(1e-9, "ten digits are printed");
        double[] row = Row(id);
        printed.Holds(row[7], f.RideFrequency!.Value, "ride");
        printed.Holds(row[8], f.WheelHopFrequency, "wheel hop");
    }

    // A step of 5 mm, a tenth of the table's, so that tyre and spring stay pressed: the system is linear, so is the answer.
    [Theory, MemberData(nameof(Stepped))]
    public void A_step_under_point_contact_is_answered_as_exp_At_says(string id)
    {
        RunResult run = SingleRun.Of(Corners.Driven(Data(id), Speed, new RunSettings(2.2, 1e-3, 1e-9), new FlatPiece(Speed * Before), new StepPiece(0.05 * Share), new FlatPiece(50)));
        Assert.Empty(run.Events);

        // Each of some hundred steps may err by 1e-9 times 0.15 of 0.3 m and 2 m/s; that adds up to 5e-9 m and 3e-8 m/s.
        Tolerance length = new(1e-8, "run.tolerance 1e-9 over a hundred steps"), velocity = new(1e-7, "the same on 2 m/s");
        Sample rest = run.Track.At(0);
        double mass = run.Standing.Corner.SprungMass, tyre = run.Standing.Corner.Tyre.Rate;
        foreach (double[] row in CheckValues.Rows("quarter_car_step_50mm.csv").Where(r => r[0] == id).Select(r => r.Skip(1).Select(CheckValues.Number).ToArray()))
        {
            Sample s = run.Track.At(Before + row[0]);
            length.Holds(Share * row[1], s.Sprung - rest.Sprung, "sprung");
            velocity.Holds(Share * row[2], s.SprungVelocity, "sprung velocity");
            length.Holds(Share * row[3], s.Unsprung - rest.Unsprung, "unsprung");
            velocity.Holds(Share * row[4], s.UnsprungVelocity, "unsprung velocity");
            new Tolerance(tyre * 2e-8, "tyre rate times two lengths").Holds(Share * row[6], s.TyreForce - rest.TyreForce, "tyre force");
            double acceleration = (Row(id)[3] * 2e-8 + Row(id)[4] * 2e-7) / mass;
            new Tolerance(acceleration, "rates times lengths and velocities, over the mass").Holds(Share * row[5], s.SprungAcceleration, "acceleration");
        }
    }

    private static CornerData Data(string id)
    {
        double[] r = Row(id);
        return Corners.Linear(r[1], r[2], r[3], r[4], r[5], r[6]);
    }

    private static double[] Row(string id) => [0, .. CheckValues.Rows("quarter_car_sets.csv").Single(r => r[0] == id).Skip(1).Select(CheckValues.Number)];
}
