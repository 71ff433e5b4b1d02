using QuarterCar.Model;
using QuarterCar.Numerics.Integration;
using QuarterCar.TestKit;

namespace QuarterCar.Studies.Tests.RandomCorners;

/// <summary>What must hold of any run, asked of one run. Each throws where it does not.</summary>
internal static class CornerChecks
{
    private static readonly string[] s_ends = ["finished", "step_too_small", "too_many_events", "not_finite"];

    /// <summary>The run of a text; null where reader or model refuse it with a reason.</summary>
    public static RunResult? Run(string text, params string[] sets)
    {
        try
        {
            return CornerCase.Read(text, sets) is { } scenario ? SingleRun.Of(scenario) : null;
        }
        catch (CornerException e) when (e.Key.Length > 0 && e.Found.Length > 0 && e.Wanted.Length > 0)
        {
            return null;
        }
    }

    /// <summary>Everything that one run answers for.</summary>
    /// <param name="run">The run.</param>
    /// <param name="damped">True where its damper takes part, so that its energy account has something to be relative to.</param>
    public static void All(RunResult run, bool damped)
    {
        Ends(run);
        Energy(run, damped);
        Start(run);
        Alternate(run);
        Peaks(run);
        Contacts(run);
        double left = double.NegativeInfinity;
        foreach (Sample s in run.Track.Rows())
        {
            Holds(s.Time > left, "rows in order", s);
            left = s.Time;
            Forces(s);
            Stack(run, s);
        }
    }

    public static void Ends(RunResult run)
    {
        RunAccount account = run.Figures.Run;
        if (!s_ends.Contains(account.End) || account.End == RunEnds.Finished != (account.Message.Length == 0))
            throw new ToleranceException($"ended with '{account.End}', message '{account.Message}'");
        if (account.End == RunEnds.Finished && Math.Abs(account.Time - run.Scenario.Run.Duration!.Value) > 1e-12)
            throw new ToleranceException($"finished at {account.Time:R} s");
    }

    public static void Energy(RunResult run, bool damped)
    {
        if (run.Figures.Run.End == "not_finite")
            return;

        // A corner that hardly moves keeps the rounding of its heights. One without damper, or bound solid so that its damper
        // takes nothing, loses next to nothing, so its account has nothing to be relative to: it is held against what its
        // steps are allowed (MotionRun), 4.5e-8 m under its weight and 3e-7 m/s of its masses at the speeds of its energy.
        const double share = 1e-5;
        Corner corner = run.Standing.Corner;
        double mass = corner.SprungMass + corner.UnsprungMass, floor = 1e-7;
        if (!damped)
        {
            double swung = run.Track.Rows().Max(s => 0.5 * (corner.SprungMass * s.SprungVelocity * s.SprungVelocity + corner.UnsprungMass * s.UnsprungVelocity * s.UnsprungVelocity));
            floor = Math.Max(floor, share * swung);
            floor = Math.Max(floor, run.Figures.Run.Steps * (4.5e-8 * mass * Corner.Gravity + 3e-7 * Math.Sqrt(2 * swung * mass)));
        }

        // A bump of half a millimetre moves hundredths of a joule: one step's 3e-7 m/s at the speed of that is more than a share of it.
        EnergyFigures e = run.Figures.Energy;
        floor = Math.Max(floor, 3e-7 * Math.Sqrt(2 * Math.Max(Math.Abs(e.RoadWork), e.Damper) * mass));
        if (!(Math.Abs(e.Residual) <= floor || Math.Abs(e.ResidualRelative) <= share))
            throw new ToleranceException(FormattableString.Invariant($"energy: residual {e.Residual:G4} J, relative {e.ResidualRelative:G4}, floor {floor:G4} J"));
    }

    public static void Start(RunResult run)
    {
        Sample first = run.Track.At(0);
        if (run.Scenario.Excitation is not Scenarios.Course)
            return;
        double weight = (run.Standing.Corner.SprungMass + run.Standing.Corner.UnsprungMass) * Corner.Gravity;
        new Tolerance(1e-12, "the same balance, reached by one subtraction of heights").Holds(run.Standing.Figures.ShaftTravel, first.ShaftTravel, "first shaft travel");
        Tolerance.Share(1e-8, "a deflection of 1e-3 m and more is the difference of two heights of up to 1 m").Holds(weight, run.Standing.Corner.Tyre.Elastic(first.TyreDeflection), "the tyre's spring at the start");
        if (first is not { SprungVelocity: 0, UnsprungVelocity: 0 })
            throw new ToleranceException("the run does not start at rest");
        new Tolerance(1e-6, "the balance is found to some 1e-14 m of travel, on a rate of 1e7 N/m over a mass of 10 kg").Holds(0, first.SprungAcceleration, "first acceleration");
    }

    public static void Alternate(RunResult run)
    {
        for (int touch = 0; touch < EventNames.All.Length; touch += 2)
        {
            string[] names = [EventNames.All[touch], EventNames.All[touch + 1]], seen = [.. run.Events.Select(e => e.Event).Where(names.Contains)];
            for (int i = 1; i < seen.Length; i++)
            {
                if (seen[i] == seen[i - 1])
                    throw new ToleranceException($"{seen[i]} twice in a row");
            }

            int touches = seen.Count(n => n == names[0]), releases = seen.Length - touches;
            if (run.Figures.Counts[touch].Value != touches || run.Figures.Counts[touch + 1].Value != releases)
                throw new ToleranceException($"{names[0]}: counts differ from events");
        }
    }

    // The largest travel is taken where the shaft turns, which is an end of a step. Between the ends the interpolant may pass it by what a step is allowed to err by,
    // 4.5e-8 m of wheel travel and 3e-7 m/s (MotionRun), times the motion ratio. Within that, and some millionths, an interpolant may also have two tops between two nodes.
    private const double TravelError = 3e-7, SpeedError = 3e-7;

    // A peak is the largest there is on the steps' interpolants, not the top of the highest node's neighbourhood: fifty places of each step may not pass it.
    public static void Peaks(RunResult run)
    {
        var track = (RunTrack)run.Track;
        TravelFigures t = run.Figures.Travel;
        double most = 0, least = double.PositiveInfinity, fastIn = 0, fastOut = 0, shake = 0, longest = double.NegativeInfinity, shortest = double.PositiveInfinity;
        foreach (FigureNode n in Places(track, 0, double.PositiveInfinity))
        {
            (most, least, shake) = (Math.Max(most, n.TyreForce), Math.Min(least, n.TyreForce), Math.Max(shake, Math.Abs(n.SprungAcceleration)));
            (fastIn, fastOut) = (Math.Max(fastIn, n.ShaftVelocity), Math.Max(fastOut, -n.ShaftVelocity));
            (longest, shortest) = (Math.Max(longest, n.ShaftTravel), Math.Min(shortest, n.ShaftTravel));
        }

        Within(longest, t.MaxShaftTravel, TravelError, "largest travel");
        Within(-shortest, -t.MinShaftTravel, TravelError, "least travel");
        Within(fastIn, t.PeakCompressionSpeed, SpeedError, "compression speed");
        Within(fastOut, t.PeakReboundSpeed, SpeedError, "rebound speed");
        Within(shake, run.Figures.Acceleration.PeakG * Corner.Gravity, 1e-6, "acceleration");
        Within(most, run.Figures.Tyre.Peak, 1e-3, "tyre force");
        Within(-least, -run.Figures.Tyre.Least, 1e-3, "least tyre force");
    }

    // The same of every contact, by its own law, over the steps between touch and release.
    public static void Contacts(RunResult run)
    {
        var track = (RunTrack)run.Track;
        foreach (EventRow row in run.Events)
        {
            if (row.Contact is not { } contact)
                continue;
            ContactKind kind = row.Event switch { "bump_stop" => ContactKind.BumpStop, "bottom_out" => ContactKind.BottomOut, "coil_bind" => ContactKind.CoilBind, _ => ContactKind.TopOut };
            (double force, double depth) = (0, 0);
            foreach (FigureNode n in Places(track, contact.Time, contact.Time + contact.Duration))
            {
                (double q, _, double f) = ContactWork.Of(kind, track.Corner, n);
                (force, depth) = (Math.Max(force, f), Math.Max(depth, q));
            }

            Within(force, contact.PeakForce, 1e-3, "contact force");
            Within(depth, contact.Penetration, TravelError, "penetration");
        }
    }

    private static IEnumerable<FigureNode> Places(RunTrack track, double from, double to)
    {
        for (int i = 0; i < track.Steps.Length; i++)
        {
            DenseStep step = track.Steps[i];
            double end = (step.End - step.Start) / step.Length;
            for (int k = 0; k <= 50 && step.Start >= from && step.End <= to; k++)
                yield return new FigureNode(track, step, end * k / 50);
        }
    }

    private static void Within(double found, double peak, double error, string what)
    {
        if (found > peak + 1e-6 * Math.Abs(peak) + error)
            throw new ToleranceException(FormattableString.Invariant($"{what}: {found:R} passes the peak of {peak:R}"));
    }

    private static void Forces(in Sample s)
    {
        double rounding = 1e-12 * (1 + Math.Abs(s.SpringForce) + Math.Abs(s.DamperForce) + Math.Abs(s.GasForce) + Math.Abs(s.BumpStopForce) + Math.Abs(s.BottomOutForce) + Math.Abs(s.TopOutForce));
        double parts = s.SpringForce + s.DamperForce + s.GasForce + s.FrictionForce + s.BottomOutForce + s.TopOutForce;
        Holds(s.TyreForce >= 0, "tyre force not negative", s);
        Holds(s.TyreDeflection > 0 || s.TyreForce == 0, "no tyre force in the air", s);
        Holds(s.TopOutForce <= 0 && s.BottomOutForce >= 0 && s.BumpStopForce >= 0 && s.SpringForce >= 0, "no stop and no spring pulls", s);
        Holds(s.CoilNutForce >= 0 && s.StopNutForce >= 0 && Math.Abs(s.CoilNutForce + s.StopNutForce - s.SpringForce) <= rounding, "coil nut and stop nut carry the springs", s);
        Holds(Math.Min(Math.Abs(parts - s.ShaftForce), Math.Abs(parts + s.BumpStopForce - s.ShaftForce)) <= rounding, "parts add up to the shaft force", s);
    }

    // physics.md section 3 read from the row: compressions and the force on the coil nut, by the springs' own words.
    private static void Stack(RunResult run, in Sample s)
    {
        SpringSetData set = run.Scenario.Corner.Coilover.Springs;
        double y = s.ShaftTravel + run.Scenario.Corner.Coilover.Preload, near = 1e-9;
        double tender = set.Tender is { } t ? Math.Min(s.CoilNutForce / t.Rate, t.Travel) : 0, upper = set.Upper is { } u ? Math.Min(s.CoilNutForce / u.Rate, u.Travel) : 0;
        double lower = Math.Min(s.SpringForce / set.Lower.Rate, set.Lower.Travel);
        Holds(Math.Abs(tender + upper - s.UpperGroupCompression) <= near && Math.Abs(lower - s.LowerSpringCompression) <= near, "compressions follow the forces", s);
        double short_ = y - s.UpperGroupCompression - s.LowerSpringCompression;
        bool solidUpper = set.Upper is not null && upper >= set.Upper.Travel - near, solidLower = lower >= set.Lower.Travel - near, held = s.SliderGap <= near;
        Holds(y <= 0 || solidUpper || solidLower || (held && solidLower) || Math.Abs(short_) <= near, "compressions add up to the stack's", s);
        RateRegion expected = y < 0 ? RateRegion.Loose : solidUpper || solidLower ? RateRegion.Bound : held ? RateRegion.Secondary : set.Tender is { } soft && tender < soft.Travel - near ? RateRegion.Tender : RateRegion.Primary;
        Holds(expected == s.Region || OnEdge(run, s, y, tender, upper, lower), $"rate region {expected}", s);
    }

    // Within a nanometre of a change of region either side is right.
    private static bool OnEdge(RunResult run, in Sample s, double y, double tender, double upper, double lower)
    {
        SpringSetData set = run.Scenario.Corner.Coilover.Springs;
        const double near = 2e-9;
        return Math.Abs(y) <= near || Edge(upper, set.Upper) || Edge(lower, set.Lower) || Edge(tender, set.Tender) || s.SliderGap is > 0 and <= near || (s.SliderGap == 0 && s.StopNutForce / set.Lower.Rate <= near);

        bool Edge(double compression, SpringData? spring) => spring is not null && Math.Abs(compression - spring.Travel) <= near && compression < spring.Travel;
    }

    private static void Holds(bool condition, string what, in Sample s)
    {
        if (!condition)
            throw new ToleranceException($"{what}: {s}");
    }
}
