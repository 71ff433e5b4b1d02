using System.Globalization;

using QuarterCar.Model;
using QuarterCar.Model.Selection;
using QuarterCar.Reports.Units;

namespace QuarterCar.Reports.Words;

/// <summary>The answer of `pick` in two sentences: the best set, or what stands in the way of every one.</summary>
internal static class PickVerdict
{
    /// <summary>The sentences.</summary>
    public static string Of(PickResult result, Readable read) => result.Passing > 0 ? Best(result, read) : InTheWay(result, read);

    /// <summary>Rates from the coil nut down: 150/250 lbf/in.</summary>
    public static string Rates(SpringSetData springs, Readable read) =>
        string.Join('/', springs.All.Select(s => read.Number(Dimension.Rate, s.Rate)));

    private static string Best(PickResult result, Readable read)
    {
        PickSet best = result.Sets[0];
        return $"{Rates(best.Springs, read)}\u00a0{read.Unit(Dimension.Rate).Name} with {read.Text(Dimension.Length, best.Preload)} of preload stands at {read.Text(Dimension.Length, result.Data.RideHeight)}, "
            + $"{read.Text(Dimension.Length, best.BindClearance)} clear of coil bind at full bump{But(best)}. {Whole(result.Passing)} of {Sets(result.Examined)} {(result.Passing == 1 ? "passes" : "pass")} every check{Unchecked(best, result.Data)}{But(result)}.";
    }

    private static string But(PickSet set) => But(new[]
    {
        (PickRemarks.Bows, "its lower spring bows sideways"), (PickRemarks.TenderWorks, "its tender still works at ride height"),
    }.Where(w => set.Remarks.HasFlag(w.Item1)).Select(w => w.Item2));

    private static string But(PickResult result) => But(result.PassingBut.Select(b => b.Remark == PickRemarks.Bows
        ? $"{Whole(b.Count)} {(b.Count == 1 ? "bows" : "bow")} sideways"
        : $"{Whole(b.Count)} {(b.Count == 1 ? "has" : "have")} a tender that still works at ride height"));

    private static string But(IEnumerable<string> remarks) => string.Join(" and ", remarks) is { Length: > 0 } all ? ", but " + all : "";

    private static string InTheWay(PickResult result, Readable read)
    {
        PickSet near = result.Nearest!;
        string limits = string.Join(", ", result.FailedBy.Select(f => $"{Whole(f.Count)} {PickWarnings.Words(f.Check)}"));
        return $"None of {Sets(result.Examined)} passes: {limits}. {Rates(near.Springs, read)}\u00a0{read.Unit(Dimension.Rate).Name} lacks least: {Lacks(near, result.Data, read)}.";
    }

    private static string Lacks(PickSet set, PickData data, Readable read) => string.Join("; ", PickWarnings.Of(set, data, read.System)
        .Where(w => w.Code is not ("not_checked" or "tender_near_ride_height" or "crossover_never" or "bows")).Select(w => char.ToLowerInvariant(w.Message[0]) + w.Message[1..].TrimEnd('.')));

    private static string Unchecked(PickSet best, PickData data) => PickWarnings.NotChecked(best, data).Length > 0 ? " that could be made" : "";

    private static string Sets(long number) => number == 1 ? "1 set" : Whole(number) + " sets";

    private static string Whole(long number) => number.ToString("#,0", CultureInfo.InvariantCulture);
}
