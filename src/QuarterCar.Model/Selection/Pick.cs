using System.Collections.Immutable;

namespace QuarterCar.Model.Selection;

/// <summary>Chooses springs for a load and a ride height: every pair of a list with the upper spring no stiffer than the lower, with tenders every triple too, ranked.</summary>
public static class Pick
{
    /// <summary>The one rule that ranks, the same for everyone.</summary>
    public const string Ranking = "sets that fail no check first, then nearest to the wanted preload, then larger bind clearance at full bump";

    /// <summary>Sets that are ranked at most: about 1400 springs without tenders.</summary>
    public const long MostSets = 1_000_000;

    /// <summary>Sets listed at most, the best of those ranked.</summary>
    public const int MostListed = 2000;

    // Preloads nearer to each other than this are the same: rounding does not rank, m.
    private const double SamePreload = 1e-9;

    private static readonly double[] s_loadShares = [-0.10, -0.05, 0, 0.05, 0.10];

    /// <summary>Sets that a list gives: ordered pairs with the upper no stiffer, times one more than its tenders.</summary>
    public static long Count(PickData data)
    {
        double[] rates = [.. data.Springs.Select(s => s.Rate).Order()];
        long pairs = 0;
        for (int i = 0, above = 0; i < rates.Length; i++)
        {
            while (above < rates.Length && rates[above] <= rates[i])
                above++;
            pairs += above;
        }

        return pairs * (1 + data.Tenders.Length);
    }

    /// <summary>The ranked sets.</summary>
    /// <param name="data">Asked; the gas alone carries less than the load.</param>
    /// <param name="cancel">Stops it.</param>
    public static PickResult Of(PickData data, CancellationToken cancel = default)
    {
        var work = new PickWork(data);
        List<Candidate> all = Rank(data, work, cancel);
        ImmutableArray<PickSet> sets = [.. all.Take(MostListed).Select(c => work.Figures(c.Springs(data)))];
        long passing = all.Count(c => c.Failed == PickChecks.None);
        PickSet? best = sets.FirstOrDefault(), nearest = passing > 0 || best is null ? null : work.Figures(all.MinBy(c => c.Short).Springs(data));
        return new PickResult(
            data,
            work.SpringForce / (data.Travel + data.Preload),
            work.SpringForce,
            sets,
            all.Count,
            passing,
            [.. new[] { PickRemarks.Bows, PickRemarks.TenderWorks }.Select(r => (r, all.LongCount(c => c.Remarks.HasFlag(r)))).Where(r => r.Item2 > 0)],
            [.. Enum.GetValues<PickChecks>().Where(f => f != PickChecks.None).Select(f => (f, all.LongCount(c => c.Failed.HasFlag(f)))).Where(f => f.Item2 > 0)],
            nearest,
            best is null ? [] : [.. s_loadShares.Select(share => work.UnderLoad(best, share))],
            best is null ? [] : [.. PickNeighbours.Of(data, work, best)]);
    }

    private static List<Candidate> Rank(PickData data, PickWork work, CancellationToken cancel)
    {
        var all = new List<Candidate>();
        for (int u = 0; u < data.Springs.Length; u++)
        {
            cancel.ThrowIfCancellationRequested();
            for (int l = 0; l < data.Springs.Length; l++)
            {
                if (data.Springs[u].Rate > data.Springs[l].Rate)
                    continue;
                for (int t = -1; t < data.Tenders.Length; t++)
                    all.Add(Judged(data, work, new Candidate(t, u, l)));
            }
        }

        all.Sort();
        return all;
    }

    private static Candidate Judged(PickData data, PickWork work, Candidate candidate)
    {
        PickVerdict verdict = work.Verdict(candidate.Springs(data));
        return candidate with
        {
            Failed = verdict.Failed,
            Remarks = verdict.Remarks,
            Off = Math.Round(Math.Abs(verdict.Preload - data.Preload) / SamePreload),
            Clearance = Math.Min(verdict.UpperClearance, verdict.LowerClearance),
            Short = verdict.Short,
        };
    }

    /// <summary>A set by its places in the lists, with what ranks it; ties go by the lists' order.</summary>
    private readonly record struct Candidate(int Tender, int Upper, int Lower) : IComparable<Candidate>
    {
        public PickChecks Failed { get; init; }

        public PickRemarks Remarks { get; init; }

        public double Off { get; init; }

        public double Clearance { get; init; }

        public double Short { get; init; }

        public SpringSetData Springs(PickData data) => new(Tender < 0 ? null : data.Tenders[Tender], data.Springs[Upper], data.Springs[Lower]);

        public int CompareTo(Candidate other)
        {
            int by = (Failed != PickChecks.None).CompareTo(other.Failed != PickChecks.None);
            by = by != 0 ? by : Off.CompareTo(other.Off);
            by = by != 0 ? by : other.Clearance.CompareTo(Clearance);
            return by != 0 ? by : (Upper, Lower, Tender).CompareTo((other.Upper, other.Lower, other.Tender));
        }
    }
}
