using System.Globalization;

namespace QuarterCar.Scenarios.Picking;

/// <summary>Messages of the reader of `pick` that the scenario's lack: the "found" or "wanted" halves.</summary>
internal static class PickTexts
{
    public const string GasTogether = "--gas-pressure, --gas-volume and --rod-diameter together, or none of them";

    public static string BelowStroke(string stroke) => $"a ride height (shaft showing) below the stroke of {stroke}";

    public static string GasCarries(string force) => $", all of which the gas carries: it pushes with {force} at this ride height, so no pair is possible";

    public static string MoreLoad(string force) => $"a load above {force}";

    public static string MoreLoadOrLess(string force, string pressure) => $"a load above {force}, or a gas pressure below {pressure}";

    public static string TooManySets(int springs, int tenders, long sets) =>
        $"{Whole(springs)} springs{(tenders > 0 ? $" and {Whole(tenders)} tenders" : "")}, which make {Whole(sets)} sets";

    public static string FewerSets(long most) => $"at most {Whole(most)} sets: leave out what does not come into question";

    private static string Whole(long number) => number.ToString("#,0", CultureInfo.InvariantCulture);
}
