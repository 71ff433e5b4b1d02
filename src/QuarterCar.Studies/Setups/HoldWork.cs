using QuarterCar.Model;
using QuarterCar.Model.Shaft;
using QuarterCar.Model.Springs;
using QuarterCar.Scenarios;

namespace QuarterCar.Studies.Setups;

/// <summary>Finds the preload, and where asked the stop nut, that keep a setup's ride height and crossover where the base has them: the statics of physics.md section 3, turned round.</summary>
public static class HoldWork
{
    // What the balance must come back to, m.
    private const double Close = 1e-9;

    /// <summary>A stop nut that stays where it is on the body: C*' = C* + (p' − p) − (L_lower' − L_lower), free lengths.</summary>
    /// <exception cref="CornerException">It would press on the slider with loose springs.</exception>
    public static CornerData NutOnBody(CornerData setup, CornerData written, double held)
    {
        CoiloverData now = setup.Coilover, then = written.Coilover;
        double length = held + (now.Preload - then.Preload) - (now.Springs.Lower.FreeLength - then.Springs.Lower.FreeLength);
        if (length < 0)
            throw new CornerException("coilover.stop_nut", "a stop nut that stays on the body would press on the slider with loose springs", "--nut reset, or less change");
        return setup with { Coilover = now with { StopNut = new StopNutData(length, StopNutReference.UpperTravel) } };
    }

    /// <summary>The setup with its preload, and its stop nut, so that the base's showing is kept.</summary>
    /// <param name="setup">The setup's words.</param>
    /// <param name="written">The base, built.</param>
    /// <param name="hold">What to keep.</param>
    /// <param name="units">Of the note.</param>
    /// <returns>The setup and a note that says what was set.</returns>
    /// <exception cref="CornerException">No preload carries it there, the gap would be negative, the upper springs go solid before the crossover, or it has no stop nut for it.</exception>
    public static (CornerData Corner, string Note) Apply(CornerData setup, Corner written, HoldRule hold, UnitSystem units)
    {
        double x = written.StandingShaftTravel - written.Stroke + setup.Coilover.Stroke;
        if (!(x > 0 && x < setup.Coilover.Stroke))
            throw new CornerException("--hold ride_height", "a ride height outside this setup's stroke", "a longer stroke");
        double force = SpringForceAt(setup, x);
        if (force <= 0)
            throw new CornerException("--hold ride_height", "gas and stops that carry the load without springs", "less gas pressure");
        SpringStack free = SpringStack.Build(setup.Coilover.Springs, null);
        if (force >= free.SolidForce)
            throw new CornerException("--hold ride_height", "springs that go solid under the load before this ride height", "stiffer or longer springs");
        double preload = free.Compression(force) - x, group = free.GroupCompression(force);
        StopNutData? nut = setup.Coilover.StopNut;
        if (nut is null && hold == HoldRule.RideHeightAndCrossover)
            throw new CornerException("--hold crossover", "no stop nut to hold a crossover with", "a setup with a stop nut, or --hold ride_height");
        string note = $"preload {Words.Length(preload, units)}";
        if (hold == HoldRule.RideHeightAndCrossover)
        {
            double crossover = written.Stack.Compression(written.Stack.CrossoverForce!.Value) - written.Preload - written.Stroke + setup.Coilover.Stroke;
            double held = free.FreeGroupCompression(free.Force(crossover + preload));
            if (held < group - Close)
                throw new CornerException("--hold crossover", "a scenario that stands on its stop nut, so that any setup at its ride height does", "a larger stop-nut gap in the scenario, or --hold ride_height");
            if (SpringStack.Build(setup.Coilover.Springs, held).CrossoverForce is null)
                throw new CornerException("--hold crossover", "upper springs that go solid before this crossover", "stiffer or longer upper springs");
            nut = new StopNutData(held, StopNutReference.UpperTravel);
            note += $", stop-nut gap {Words.Length(Math.Max(0, held - group), units)}";
        }
        else if (nut is { At: StopNutReference.UpperTravel })
        {
            // The nut stays on the body while the coil nut turns.
            nut = nut with { Length = nut.Length + preload - setup.Coilover.Preload };
        }

        CornerData held1 = setup with { Coilover = setup.Coilover with { Preload = preload, StopNut = nut } };
        double miss = Corner.Build(held1).StandingShaftTravel - x;
        if (Math.Abs(miss) > Close)
            throw new CornerException("--hold ride_height", $"no preload that gives this ride height ({Words.Length(Math.Abs(miss), units)} off)", "a higher stop nut or other springs");
        return (held1, preload < 0 ? note + " (loose springs at full droop)" : note);
    }

    // The force that the springs must give at a shaft travel for the corner to stand there.
    private static double SpringForceAt(CornerData setup, double x)
    {
        var ratio = MotionRatio.Of(setup.MotionRatio);
        CoiloverData c = setup.Coilover;
        double w = ratio.WheelTravel(x), wheel = setup.SprungWeight ?? throw new CornerException("corner.spring_load", "a varied spring load under --hold", "corner.sprung_weight");
        double shaft = 0;
        if (c.Gas is { } gas)
            shaft += GasLaw.Of(gas).Standing(x);
        if (c.BumpStop is { } data)
        {
            BumpStopLaw bump = BumpStopLaw.Of(data);
            if (data.OnAxle)
                wheel -= bump.Force(w - (ratio.WheelTravel(c.Stroke) - data.Length), 0);
            else
                shaft += bump.Force(x - (c.Stroke - data.Length), 0);
        }

        return wheel / ratio.Ratio(w) - shaft;
    }
}
