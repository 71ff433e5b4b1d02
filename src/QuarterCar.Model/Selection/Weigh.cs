using System.Collections.Immutable;

using QuarterCar.Model.Shaft;

namespace QuarterCar.Model.Selection;

/// <summary>
/// Weighs a corner by its own springs: each that carries the whole load reads F = k·c. Errors are propagated to first order
/// (JCGM 100:2008, 5.1.2), independent of each other: u² = 2·(k·u_length)² + (F̄·u_rate)².
/// </summary>
public static class Weigh
{
    /// <summary>Weighs every corner and compares left with right.</summary>
    public static WeighResult Of(IEnumerable<MeasuredCorner> corners, WeighErrors errors)
    {
        ImmutableArray<WeighedCorner> weighed = [.. corners.Select(c => Corner(c, errors))];
        return new WeighResult(errors, weighed, [.. WeighSides.Of(weighed)]);
    }

    /// <summary>Weighs one corner.</summary>
    public static WeighedCorner Corner(MeasuredCorner corner, WeighErrors errors)
    {
        ImmutableArray<MeasuredSpring> counted = [.. corner.Springs.Where(s => Use(s, corner, errors) == SpringUse.Counts)];
        double mean = counted.Average(s => s.Load);
        double? gas = Gas(corner);
        CornerLoads Of(IReadOnlyList<MeasuredSpring> springs) => Loads(springs, errors, gas, corner.MotionRatio);
        ImmutableArray<Disagreement> pairs = [.. Disagreements(counted, mean, errors)];
        DisagreementCause cause = Cause(pairs);
        MeasuredSpring[]? likely = cause switch
        {
            DisagreementCause.SliderOnStopNut => [.. counted.Where(s => s.Position == MeasuredSpring.Lower)],
            DisagreementCause.TenderSolid => [.. counted.Where(s => s.Position != MeasuredSpring.Tender)],
            _ => null,
        };
        MeasuredSpring[] answering = likely ?? [.. counted];
        return new WeighedCorner(
            corner,
            [.. corner.Springs.Select(s => Weighed(s, Use(s, corner, errors), answering, errors))],
            Of(counted),
            Friction(answering, errors),
            gas,
            pairs,
            cause,
            likely is null ? null : Of(likely));
    }

    /// <summary>Half-width of 95 % of a spring's load, N.</summary>
    /// <param name="rate">k, N/m.</param>
    /// <param name="mean">F̄, N: the plain mean of the stack's springs. With each spring's own load instead, one that reads low would gain weight.</param>
    /// <param name="errors">Of the measurement.</param>
    public static double Uncertainty(double rate, double mean, WeighErrors errors) => double.Hypot(rate * errors.Compression, mean * errors.Rate);

    /// <summary>Standing gas force at x = stroke − showing, N (physics.md section 4); null where its data is not given.</summary>
    public static double? Gas(MeasuredCorner corner) =>
        corner is { Gas: { } gas, ShaftShowing: { } showing, Stroke: { } stroke } ? GasLaw.Of(gas).Standing(stroke - showing) : null;

    // Only a tender goes solid on purpose; then it reads what it carried when its coils met. An upper or lower spring that near to solid stays in:
    // it is the setup that is wrong, and the disagreement says so.
    private static SpringUse Use(MeasuredSpring spring, MeasuredCorner corner, WeighErrors errors) =>
        !corner.StopNutClear && spring.Position != MeasuredSpring.Lower ? SpringUse.PastStopNut
        : spring is { Position: MeasuredSpring.Tender, SolidLength: { } solid } && spring.LoadedLengths.Min() - solid <= errors.Compression ? SpringUse.Solid
        : SpringUse.Counts;

    // A spring that the answer does not go by is no part of its mean: its own load stands in for it.
    private static WeighedSpring Weighed(MeasuredSpring spring, SpringUse use, MeasuredSpring[] answering, WeighErrors errors) =>
        new(spring, Uncertainty(spring.Rate, answering.Contains(spring) ? answering.Average(s => s.Load) : spring.Load, errors), use);

    private static CornerLoads Loads(IReadOnlyList<MeasuredSpring> springs, WeighErrors errors, double? gas, double? ratio)
    {
        double plain = springs.Average(s => s.Load);
        var mean = WeighMean.Of([.. springs.Select(s => s.Load)], [.. springs.Select(s => Uncertainty(s.Rate, plain, errors))]);
        double coilover = mean.Value + (gas ?? 0);
        return new CornerLoads(mean.Value, mean.HalfWidth, mean.Widening, coilover, ratio * coilover);
    }

    // The stack's load at either settling is the mean of its springs with the same weights; half of what lies between them.
    private static double? Friction(IReadOnlyList<MeasuredSpring> springs, WeighErrors errors)
    {
        double mean = springs.Average(s => s.Load);
        MeasuredSpring[] twice = [.. springs.Where(s => s.HalfStep is not null)];
        return twice.Length == 0 ? null
            : Math.Abs(WeighMean.Of([.. twice.Select(s => s.HalfStep!.Value)], [.. twice.Select(s => Uncertainty(s.Rate, mean, errors))]).Value);
    }

    private static IEnumerable<Disagreement> Disagreements(ImmutableArray<MeasuredSpring> counted, double mean, WeighErrors errors)
    {
        for (int i = 0; i < counted.Length; i++)
        {
            for (int j = i + 1; j < counted.Length; j++)
            {
                (MeasuredSpring low, MeasuredSpring high) = counted[i].Load <= counted[j].Load ? (counted[i], counted[j]) : (counted[j], counted[i]);
                double difference = high.Load - low.Load, allowed = double.Hypot(Uncertainty(low.Rate, mean, errors), Uncertainty(high.Rate, mean, errors));
                if (difference > allowed) yield return new Disagreement(low.Position, high.Position, difference, allowed);
            }
        }
    }

    // On the stop nut the whole upper group stops at the crossover force, so upper and lower differ; a solid tender differs from both of them.
    private static DisagreementCause Cause(ImmutableArray<Disagreement> pairs) =>
        pairs.IsEmpty ? DisagreementCause.None
        : pairs.Any(p => p is { Low: MeasuredSpring.Upper, High: MeasuredSpring.Lower }) ? DisagreementCause.SliderOnStopNut
        : pairs.All(p => p.Low == MeasuredSpring.Tender) ? DisagreementCause.TenderSolid
        : DisagreementCause.Unknown;
}
