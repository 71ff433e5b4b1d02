using System.Collections.Immutable;

using QuarterCar.Scenarios;
using QuarterCar.Scenarios.Keys;
using QuarterCar.Scenarios.Quantities;

namespace QuarterCar.Studies.Setups;

/// <summary>Reads what stands behind --vary: PATH=V1,V2,… where one unit at the end may serve all.</summary>
public static class VaryText
{
    private const string Wanted = "PATH=V1,V2,…, like coilover.stop_nut.gap='0.8,1.3,1.9 in'";

    /// <summary>The axis; null where problems were noted.</summary>
    public static SetupAxis? Read(string text, ValueCheck check)
    {
        var place = new Place("--vary " + text, 0, 0);
        if (Parts(text) is not var (path, body))
        {
            check.Problems.Note(place, "", Texts.Quote(text), Wanted);
            return null;
        }

        if (check.Path(path, place) is not { } known) return null;
        ImmutableArray<SetupValue> values = [.. WithUnit(Split(body), known.Kind).Select(v => SetupValue.Of(path, v))];
        bool all = true;
        foreach (SetupValue value in values) all &= Fits(known, value, check);
        return all ? SetupAxis.Of(path, values) : null;
    }

    /// <summary>Path and what stands behind the equals sign; null where there are not both.</summary>
    public static (string Path, string Body)? Parts(string text)
    {
        int equals = text.IndexOf('=', StringComparison.Ordinal);
        return equals > 0 && text[(equals + 1)..].Trim().Length > 0 ? (text[..equals].Trim(), text[(equals + 1)..].Trim()) : null;
    }

    /// <summary>Values at the commas that stand in no bracket, brace or quotation.</summary>
    public static ImmutableArray<string> Split(string body)
    {
        var values = ImmutableArray.CreateBuilder<string>();
        int depth = 0, from = 0;
        char quote = '\0';
        for (int i = 0; i < body.Length; i++)
        {
            char c = body[i];
            if (quote != '\0') quote = c == quote ? '\0' : quote;
            else if (c is '"' or '\'') quote = c;
            else if (c is '[' or '{') depth++;
            else if (c is ']' or '}') depth--;
            else if (c == ',' && depth == 0)
            {
                values.Add(body[from..i].Trim());
                from = i + 1;
            }
        }

        values.Add(body[from..].Trim());
        return values.ToImmutable();
    }

    /// <summary>Bare numbers before a last value with a unit take that unit; where the path wants a plain number nothing changes.</summary>
    public static ImmutableArray<string> WithUnit(ImmutableArray<string> values, KeyKind kind)
    {
        if (kind is QuantityKind { Dimension: Dimension.Number } || !Measured.TryParse(values[^1], out Measured last) || last.UnitName.Length == 0) return values;
        return [.. values.Select(v => Measured.TryParse(v, out Measured m) && m.UnitName.Length == 0 ? v + " " + last.UnitName : v)];
    }

    private static bool Fits(KnownPath known, SetupValue value, ValueCheck check)
    {
        var place = new Place("--vary " + value.AsSet, 0, 0);
        if (value.Text.Length > 0) return check.Value(known, value, place);
        check.Problems.Note(place, value.Path, Texts.Nothing, Wanted);
        return false;
    }
}
