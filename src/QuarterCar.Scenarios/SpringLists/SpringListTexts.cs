using System.Globalization;

namespace QuarterCar.Scenarios.SpringLists;

/// <summary>Messages of the reader of spring lists that the scenario's lack: the "found" or "wanted" halves.</summary>
internal static class SpringListTexts
{
    public const string ListFile = "a spring list: CSV with a header, columns rate_<unit>, free_length_<unit>, solid_length_<unit>, like rate_lbf_in,free_length_in,solid_length_in";
    public const string NoUnit = "a column whose name does not end in a unit that fits";
    public const string NumberAboveZero = "a finite number above 0";
    public const string InnerBelowMean = "an inner diameter below the mean diameter";
    public const string NoRows = "no spring below the header";
    public const string OneRow = "at least one spring";
    public const string EachOnce = "each spring once, or names that tell them apart";

    public static string OneOf(IEnumerable<string> columns) => "a column of one of the names " + string.Join(", ", columns);

    public static string NoColumn(string[] header) => "none in the header " + Texts.Quote(string.Join(",", header));

    public static string SameAs(int line) => $"the same spring as in line {line.ToString(CultureInfo.InvariantCulture)}";

    public static string TooManyRows(int most) => $"more than {most.ToString("#,0", CultureInfo.InvariantCulture)} springs";

    public static string FewerRows(int most) => $"at most {most.ToString("#,0", CultureInfo.InvariantCulture)}: leave out what does not come into question";
}
