using QuarterCar.Model;
using QuarterCar.Scenarios;
using QuarterCar.Scenarios.SpringLists;

namespace QuarterCar.Studies.Setups;

/// <summary>Gives the springs of a split the lengths of a list's: of those with the wanted rate the one nearest in free length to the scenario's own spring.</summary>
public static class SplitSprings
{
    // Two rates closer than this are one: what is lost in writing a rate in another unit.
    private const double SameRate = 1e-6;

    /// <summary>The split with lengths; null where the list lacks a rate.</summary>
    /// <param name="split">Upper and lower rates.</param>
    /// <param name="list">The springs that there are.</param>
    /// <param name="own">The scenario's springs.</param>
    /// <param name="problems">Takes the rates that the list lacks.</param>
    public static SetupAxis? Of(SetupAxis split, SpringList list, SpringSetData own, ProblemList problems)
    {
        var points = new List<SetupRequest>();
        foreach (SetupRequest point in split.Points)
        {
            var values = new List<SetupValue>();
            foreach (SetupValue rate in point.Values)
            {
                values.Add(rate);
                double wanted = rate.Si ?? double.NaN, length = (rate.Path == SplitText.Upper ? own.Upper : own.Lower)?.FreeLength ?? 0;
                SpringData? spring = list.Springs.Where(s => Math.Abs(s.Rate - wanted) <= SameRate * wanted).MinBy(s => Math.Abs(s.FreeLength - length));
                if (spring is null)
                {
                    problems.Note(new Place("--split " + point.Title, 0, 0), rate.Path, $"{rate.Text}, a rate that {list.File} lacks", "a rate of the list");
                    continue;
                }

                string at = rate.Path[..^"rate".Length];
                values.Add(SetupValue.OfSi(at + "free_length", spring.FreeLength));
                values.Add(SetupValue.OfSi(at + "solid_length", spring.SolidLength));
            }

            points.Add(point with { Values = [.. values] });
        }

        return points.TrueForAll(p => p.Values.Length == 6) ? new SetupAxis([.. points[0].Values.Select(v => v.Path)], [.. points]) : null;
    }
}
