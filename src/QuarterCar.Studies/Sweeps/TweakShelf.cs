using System.Collections.Immutable;

using QuarterCar.Model;
using QuarterCar.Scenarios.SpringLists;

namespace QuarterCar.Studies.Sweeps;

/// <summary>The springs that a step to the next one is taken from.</summary>
/// <param name="Springs">For upper and lower spring.</param>
/// <param name="Tenders">For the tender.</param>
/// <param name="Invented">True for the lists that ship: their caution belongs beside the steps.</param>
public sealed record TweakShelf(ImmutableArray<SpringData> Springs, ImmutableArray<SpringData> Tenders, bool Invented)
{
    // Rates on the shelf differ by more; the same rate in another unit differs by less.
    private const double SameRate = 1e-6;

    // Inner diameters closer than this fit the same slider.
    private const double SameInner = 1e-3;

    /// <summary>The lists that ship.</summary>
    public static TweakShelf Shipped() => new(InventedSprings.Springs().Springs, InventedSprings.Tenders().Springs, true);

    /// <summary>A list of somebody's own, for every place.</summary>
    public static TweakShelf Of(SpringList list) => new(list.Springs, list.Springs, false);

    /// <summary>A next rate that the shelf has, in the free length nearest to what is fitted; null where there is none.</summary>
    /// <param name="spring">What is fitted.</param>
    /// <param name="tender">True where it is the tender.</param>
    /// <param name="steps">How many rates further, positive for stiffer, negative for softer; the last one where the shelf ends before.</param>
    /// <param name="body">Diameter of the body, m; null where it is not known.</param>
    public SpringData? Next(SpringData spring, bool tender, int steps, double? body)
    {
        ImmutableArray<SpringData> all = tender ? Tenders : Springs;
        double inner = spring.CoilInner ?? InventedSprings.InnerFor(body);
        SpringData[] fitting = [.. all.Where(s => s.CoilInner is not { } i || Math.Abs(i - inner) < SameInner)];
        if (fitting.Length == 0)
            fitting = [.. all.Where(s => s.CoilInner > (body ?? 0))];
        int way = Math.Sign(steps);
        SpringData[] next =
        [
            .. fitting.Where(s => way * (s.Rate - spring.Rate) > SameRate * spring.Rate)
                .OrderBy(s => way * s.Rate).ThenBy(s => Math.Abs(s.FreeLength - spring.FreeLength)).DistinctBy(s => Math.Round(s.Rate)),
        ];
        return next.Length == 0 ? null : next[Math.Min(Math.Abs(steps), next.Length) - 1];
    }
}
