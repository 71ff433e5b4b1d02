using CsCheck;

using QuarterCar.Model.Springs;

namespace QuarterCar.Model.Tests.Springs;

/// <summary>A random set of springs and a stop nut: one to three springs, rates 5 to 300 N/mm, travels 20 to 300 mm.</summary>
internal sealed record StackCase(SpringSetData Set, double? Held)
{
    private static readonly Gen<SpringData> s_spring =
        Gen.Select(Gen.Double[5e3, 3e5], Gen.Double[0.02, 0.3], Gen.Double[0.02, 0.2], (rate, travel, solid) => new SpringData(rate, travel + solid, solid));

    public static readonly Gen<StackCase> Any =
        Gen.Select(s_spring, s_spring, s_spring, Gen.Int[0, 2], Gen.Bool, Gen.Double[0, 0.4], (tender, upper, lower, kind, nut, held) => kind switch
        {
            0 => new StackCase(new SpringSetData(null, null, lower), null),
            1 => new StackCase(new SpringSetData(null, upper, lower), nut ? held : null),
            _ => new StackCase(new SpringSetData(tender, upper, lower), nut ? held : null),
        });

    public SpringStack Build() => SpringStack.Build(Set, Held);

    /// <summary>y(F) by physics.md section 3, word for word: min(F/k, travel) of each spring, the upper group capped at C*.</summary>
    public double PlainCompression(double force)
    {
        double group = 0;
        if (Set.Tender is { } tender)
            group += Math.Min(force / tender.Rate, tender.Travel);
        if (Set.Upper is { } upper)
            group += Math.Min(force / upper.Rate, upper.Travel);
        if (Held is { } held)
            group = Math.Min(group, held);
        return group + Math.Min(force / Set.Lower.Rate, Set.Lower.Travel);
    }
}
