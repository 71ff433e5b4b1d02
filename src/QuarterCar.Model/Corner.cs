using QuarterCar.Model.Shaft;
using QuarterCar.Model.Springs;
using QuarterCar.Model.Statics;
using QuarterCar.Model.Tyre;

namespace QuarterCar.Model;

/// <summary>
/// One corner as it is computed with, SI, immutable: the force laws, the stop nut in its place, the standing balance.
/// F_shaft = F_stack(x + p) + F_damper + F_gas + F_friction + F_bump + F_bottom + F_top; F_w = r·F_shaft + F_axle
/// (physics.md section 1). Built once by <see cref="Build"/>; what stands, runs or picks springs asks the same one.
/// </summary>
public sealed class Corner
{
    /// <summary>Standard gravity, m/s² (CGPM 1901).</summary>
    public const double Gravity = 9.80665;

    // m; two ways to the same balance differ by rounding, far less than this.
    private const double SamePlace = 1e-6;

    private Corner(CornerData data, SpringStack stack, double sprungWeight)
    {
        Data = data;
        Stack = stack;
        SprungWeight = sprungWeight;
        SprungMass = sprungWeight / Gravity;
        UnsprungMass = data.UnsprungWeight / Gravity;
        Ratio = MotionRatio.Of(data.MotionRatio);
        CoiloverData c = data.Coilover;
        Damper = c.Damper is { } damper ? DamperLaw.Of(damper, c.Stroke) : null;
        Gas = c.Gas is { } gas ? GasLaw.Of(gas) : null;
        Friction = new FrictionLaw(c.Friction);
        BumpStop = c.BumpStop is { } bump ? BumpStopLaw.Of(bump) : null;
        BottomOut = new StopLaw(c.BottomOut.Rate, c.BottomOut.Loss);
        TopOut = new StopLaw(c.TopOut.Rate, c.TopOut.Loss);
        Tyre = TyreLaw.Of(data.Tyre);
        FullBumpWheelTravel = Ratio.WheelTravel(c.Stroke);
        Standing = Balance.Least(this, sprungWeight, withBumpStop: true);
    }

    /// <summary>The words that it was built from.</summary>
    public CornerData Data { get; }

    /// <summary>Springs with the stop nut in its place.</summary>
    public SpringStack Stack { get; }

    /// <summary>W_s, N.</summary>
    public double SprungWeight { get; }

    /// <summary>kg.</summary>
    public double SprungMass { get; }

    /// <summary>kg.</summary>
    public double UnsprungMass { get; }

    /// <summary>Shaft travel over wheel travel.</summary>
    public MotionRatio Ratio { get; }

    /// <summary>Null without damper.</summary>
    public DamperLaw? Damper { get; }

    /// <summary>Null without gas.</summary>
    public GasLaw? Gas { get; }

    /// <summary>Dry friction.</summary>
    public FrictionLaw Friction { get; }

    /// <summary>Null without bump stop.</summary>
    public BumpStopLaw? BumpStop { get; }

    /// <summary>Metal at full bump.</summary>
    public StopLaw BottomOut { get; }

    /// <summary>The stop at full droop.</summary>
    public StopLaw TopOut { get; }

    /// <summary>The tyre.</summary>
    public TyreLaw Tyre { get; }

    /// <summary>Stroke, m.</summary>
    public double Stroke => Data.Coilover.Stroke;

    /// <summary>Preload p, m.</summary>
    public double Preload => Data.Coilover.Preload;

    /// <summary>Wheel travel at full bump, m.</summary>
    public double FullBumpWheelTravel { get; }

    /// <summary>Shaft travel at which the way in ends, m: metal at full bump, or coil bind where nothing is left to compress before that.</summary>
    public double EndOfTravel => Math.Min(Stroke, Stack.Breaks[^1].Compression - Preload);

    /// <summary>Wheel travel at ride height, m: all standing forces and stops included.</summary>
    public double Standing { get; }

    /// <summary>Shaft travel at ride height, m.</summary>
    public double StandingShaftTravel => Ratio.Travel(Standing);

    /// <summary>Compression of the bump stop at a wheel travel, m; negative clear of it.</summary>
    public double BumpStopCompression(double w) => BumpStop switch
    {
        null => double.NegativeInfinity,
        { OnAxle: true } b => w - (FullBumpWheelTravel - b.Length),
        { } b => Ratio.Travel(w) - (Stroke - b.Length),
    };

    /// <summary>The model of a corner's words.</summary>
    /// <exception cref="CornerException">The words describe no corner that can stand.</exception>
    public static Corner Build(CornerData data)
    {
        SpringSetData springs = data.Coilover.Springs;
        double preload = data.Coilover.Preload;
        SpringStack free = SpringStack.Build(springs, null);
        StopNutData? nut = data.Coilover.StopNut;
        double? held = nut?.At switch
        {
            null => null,
            StopNutReference.UpperTravel => nut.Length,
            StopNutReference.FullDroop => free.GroupCompression(free.Force(preload)) + nut.Length,
            _ => free.GroupCompression(data.SpringLoad ?? FreeStandingSpringForce(data, free)) + nut.Length,
        };
        if (held < 0)
            throw new CornerException("coilover.stop_nut", "a stop nut that would press on the slider with loose springs", "a higher stop nut, or less change of the lower spring's free length");
        SpringStack stack = held is null ? free : SpringStack.Build(springs, held);
        if (data.SprungWeight is { } weight)
            return new Corner(data, stack, weight);
        var corner = new Corner(data, stack, WeightOn(data, stack, data.SpringLoad!.Value));

        // A motion ratio that falls fast lets the force at the wheel fall while the springs close: the same weight then stands further out already.
        if (Math.Abs(corner.StandingShaftTravel - (stack.Compression(data.SpringLoad.Value) - data.Coilover.Preload)) > SamePlace)
            throw new CornerException("corner.spring_load", "a load behind the place where the falling motion ratio lets the corner collapse: its weight stands further out, on less", "a smaller load, or a motion ratio that falls less over the travel");
        return corner;
    }

    // The stack's share of the static load with no stop nut and no bump stop: what a gap at ride height is measured at.
    private static double FreeStandingSpringForce(CornerData data, SpringStack free)
    {
        var bare = new Corner(data, free, data.SprungWeight!.Value);
        return free.Force(bare.Ratio.Travel(Balance.Least(bare, bare.SprungWeight, withBumpStop: false)) + bare.Preload);
    }

    // W_s = r·(load + gas) where the stack carries the load (physics.md section 1).
    private static double WeightOn(CornerData data, SpringStack stack, double load)
    {
        CoiloverData c = data.Coilover;
        double x = stack.Compression(load) - c.Preload;
        var ratio = MotionRatio.Of(data.MotionRatio);
        double w = ratio.WheelTravel(x);
        if (x < 0)
            throw new CornerException("corner.spring_load", "less than the springs push at full droop with this preload", "a load above that, or less preload");
        if (x >= c.Stroke)
            throw new CornerException("corner.spring_load", "more than the springs carry within the stroke", "a smaller load, stiffer springs or more preload");
        if (c.BumpStop is { } b && (b.OnAxle ? w > ratio.WheelTravel(c.Stroke) - b.Length : x > c.Stroke - b.Length))
            throw new CornerException("corner.spring_load", "a load under which the bump stop touches", "a load that the springs carry clear of the bump stop, or sprung_weight");
        double gas = c.Gas is { } g ? GasLaw.Of(g).Standing(x) : 0;
        return ratio.Ratio(w) * (load + gas);
    }
}

/// <summary>The words describe no corner that can be built: what the message of bad input needs.</summary>
public sealed class CornerException(string key, string found, string wanted) : Exception($"{key}: found {found}; wanted {wanted}")
{
    /// <summary>Dotted path.</summary>
    public string Key { get; } = key;

    /// <summary>What was found.</summary>
    public string Found { get; } = found;

    /// <summary>What is wanted.</summary>
    public string Wanted { get; } = wanted;
}
