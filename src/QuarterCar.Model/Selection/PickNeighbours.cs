namespace QuarterCar.Model.Selection;

/// <summary>A choice with one spring at a time replaced by the list's next softer or stiffer rate.</summary>
internal static class PickNeighbours
{
    /// <summary>At most four, softer before stiffer; none that would make the upper spring stiffer than the lower.</summary>
    public static IEnumerable<PickNeighbour> Of(PickData data, PickWork work, PickSet choice)
    {
        SpringSetData set = choice.Springs;
        foreach (SpringData s in Beside(data, set.Upper!).Where(s => s.Rate <= set.Lower.Rate))
            yield return Neighbour("upper", set with { Upper = s });
        foreach (SpringData s in Beside(data, set.Lower).Where(s => s.Rate >= set.Upper!.Rate))
            yield return Neighbour("lower", set with { Lower = s });

        PickNeighbour Neighbour(string place, SpringSetData springs) =>
            new(place, work.Figures(springs), work.RideHeight(springs, choice.Preload));
    }

    // Of the next rate, the spring nearest in inner diameter, then in free length: what would be fitted in its place. An unknown diameter comes last.
    private static IEnumerable<SpringData> Beside(PickData data, SpringData spring)
    {
        double[] rates = [.. data.Springs.Select(s => s.Rate)];
        double softer = rates.Where(r => r < spring.Rate).DefaultIfEmpty(double.NaN).Max();
        double stiffer = rates.Where(r => r > spring.Rate).DefaultIfEmpty(double.NaN).Min();
        foreach (double rate in new[] { softer, stiffer })
        {
            if (data.Springs.Where(s => s.Rate == rate)
                .OrderBy(s => Math.Abs(s.CoilInner - spring.CoilInner ?? double.PositiveInfinity))
                .ThenBy(s => Math.Abs(s.FreeLength - spring.FreeLength))
                .FirstOrDefault() is { } beside)
                yield return beside;
        }
    }
}
