using System.Collections.Immutable;
using System.Text.RegularExpressions;

using QuarterCar.Scenarios;

namespace QuarterCar.Studies.Setups;

/// <summary>Reads what stands behind --split: upper and lower rate together, "150/250,175/225 lbf/in"; one unit at the end may serve all.</summary>
public static partial class SplitText
{
    /// <summary>Path of the upper spring's rate.</summary>
    public const string Upper = "coilover.springs.upper.rate";

    /// <summary>Path of the lower spring's rate.</summary>
    public const string Lower = "coilover.springs.lower.rate";

    private const string Wanted = "upper/lower rates with one unit at the end, like '150/250,175/225 lbf/in'";

    /// <summary>The axis; null where problems were noted.</summary>
    public static SetupAxis? Read(string text, ValueCheck check)
    {
        ImmutableArray<string> parts = VaryText.Split(text);
        Match last = Pair().Match(parts[^1]);
        string shared = last.Groups["unit"].Value.Trim();
        var points = ImmutableArray.CreateBuilder<SetupRequest>();
        bool all = true;
        foreach (string part in parts)
        {
            var place = new Place("--split " + part, 0, 0);
            if (Pair().Match(part) is { Success: true } pair)
            {
                string unit = pair.Groups["unit"].Value.Trim() is { Length: > 0 } own ? own : shared;
                SetupRequest point = Point(pair.Groups["upper"].Value, pair.Groups["lower"].Value, unit);
                foreach (SetupValue value in point.Values) all &= check.Value(check.Path(value.Path, place)!, value, place);
                points.Add(point);
            }
            else
            {
                check.Problems.Note(place, "", Texts.Quote(part), Wanted);
                all = false;
            }
        }

        return all ? new SetupAxis([Upper, Lower], points.ToImmutable()) : null;
    }

    private static SetupRequest Point(string upper, string lower, string unit) => new(
        $"{upper}/{lower} {unit}".Trim(),
        [SetupValue.Of(Upper, $"{upper} {unit}".Trim()), SetupValue.Of(Lower, $"{lower} {unit}".Trim())]);

    [GeneratedRegex(@"^\s*(?<upper>[+-]?[0-9.]+(?:[eE][+-]?[0-9]+)?)\s*/\s*(?<lower>[+-]?[0-9.]+(?:[eE][+-]?[0-9]+)?)(?<unit>\s*[^0-9\s].*)?$", RegexOptions.CultureInvariant)]
    private static partial Regex Pair();
}
