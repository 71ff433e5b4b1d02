using System.Collections.Immutable;

using QuarterCar.Scenarios.Keys;
using QuarterCar.Scenarios.Quantities;

namespace QuarterCar.Scenarios.SpringLists;

/// <summary>A column of a spring list.</summary>
/// <param name="Index">From 0.</param>
/// <param name="Name">As in the header.</param>
/// <param name="ToSi">SI of one.</param>
internal sealed record SpringColumn(int Index, string Name, double ToSi);

/// <summary>The columns of a spring list: a stem with its unit behind it, each once; columns of other names are left alone.</summary>
internal sealed record SpringColumns(
    SpringColumn Rate,
    SpringColumn FreeLength,
    SpringColumn SolidLength,
    SpringColumn? InnerDiameter,
    SpringColumn? WireDiameter,
    SpringColumn? MeanDiameter,
    SpringColumn? Name)
{
    private static readonly ImmutableArray<string> _rates = ["lbf_in", "N_mm", "N_m"], _lengths = ["in", "mm", "m"];

    private static readonly ImmutableArray<string> _stems = ["rate", "free_length", "solid_length", "inner_diameter", "wire_diameter", "mean_diameter"];

    /// <summary>The columns of a header; null where a problem was noted.</summary>
    public static SpringColumns? Find(string[] header, string file, ProblemList problems)
    {
        var before = problems.Count;
        var place = new Place(file, 1, 0);
        var found = new Dictionary<string, SpringColumn>(StringComparer.Ordinal);
        for (var i = 0; i < header.Length; i++)
        {
            if (Stem(header[i]) is not { } stem)
            {
                continue;
            }

            if (found.TryGetValue(stem, out var other))
            {
                problems.Note(place, header[i], Texts.Beside(other.Name), Texts.OneColumn(stem));
            }
            else if (Size(stem, header[i]) is { } size)
            {
                found.Add(stem, new SpringColumn(i, header[i], size));
            }
            else
            {
                problems.Note(place, header[i], SpringListTexts.NoUnit, SpringListTexts.OneOf(Columns(stem)));
                found.Add(stem, new SpringColumn(i, header[i], double.NaN));
            }
        }

        foreach (var stem in _stems.Take(3).Where(s => !found.ContainsKey(s)))
        {
            problems.Note(place, stem, SpringListTexts.NoColumn(header), SpringListTexts.OneOf(Columns(stem)));
        }

        return problems.Count > before
            ? null
            : new(found["rate"], found["free_length"], found["solid_length"], found.GetValueOrDefault("inner_diameter"), found.GetValueOrDefault("wire_diameter"),
                found.GetValueOrDefault("mean_diameter"), found.GetValueOrDefault("name"));
    }

    // The stem that a header begins with, or that it is nearly: a mistyped column must not be left alone in silence.
    private static string? Stem(string header)
    {
        if (header == "name")
        {
            return header;
        }

        if (_stems.FirstOrDefault(s => header == s || header.StartsWith(s + "_", StringComparison.OrdinalIgnoreCase)) is { } stem)
        {
            return stem;
        }

        var near = Nearest.Find(header, _stems.SelectMany(Columns).Where(c => c.Length > 2 * Nearest.MostEdits));
        return near is null ? null : _stems.First(s => near.StartsWith(s, StringComparison.Ordinal));
    }

    private static double? Size(string stem, string header)
    {
        if (stem == "name")
        {
            return 1;
        }

        var unit = Columns(stem).Contains(header) ? header[(stem.Length + 1)..].Replace('_', '/') : "";
        return UnitTable.Find(unit)?.Size;
    }

    private static IEnumerable<string> Columns(string stem) => (stem == "rate" ? _rates : _lengths).Select(u => stem + "_" + u);
}
