using QuarterCar.Reports.Units;
using QuarterCar.Reports.Words;

namespace QuarterCar.Reports.Studies;

/// <summary>A figure of summary.json for people: words, unit, rounded values.</summary>
internal sealed class FigureScale(string name, Readable read)
{
    private readonly ReadableUnit _unit = name.StartsWith("counts.", StringComparison.Ordinal) ? new("", 1, 0) : read.Unit(Readable.OfKey(name).Dimension);

    /// <summary>What it is.</summary>
    public string Words { get; } = FigureWords.OfName(name, null, read).Words;

    /// <summary>At the head of a sentence: the words up to their first comma.</summary>
    public string Head => Words.Split(',')[0];

    /// <summary>In the middle of a sentence.</summary>
    public string Word => Head is { Length: > 1 } word && char.IsUpper(word[0]) && char.IsLower(word[1]) ? char.ToLowerInvariant(word[0]) + word[1..] : Words;

    /// <summary>Words along an axis.</summary>
    public string Label => _unit.Name.Length == 0 ? Word : $"{Word}, {_unit.Name}";

    /// <summary>Unit for people.</summary>
    public string Unit => _unit.Name;

    /// <summary>A value of the figure in this unit.</summary>
    public double Plotted(double value) => value * Readable.OfKey(name).ToSi * _unit.PerSi;

    /// <summary>Rounded, without unit; a dash where it does not apply.</summary>
    public string Number(double? value) => Readable.Number(_unit with { PerSi = 1 }, value is { } v ? Plotted(v) : null);

    /// <summary>Rounded, with unit.</summary>
    public string Text(double? value) => value is null || _unit.Name.Length == 0 ? Number(value) : Number(value) + "\u00a0" + _unit.Name;

    /// <summary>A change, with its sign.</summary>
    public string Change(double? value) => value is null ? Readable.None : Number(value) is var text && Plotted(value.Value) > 0 && text.Any(c => c is >= '1' and <= '9') ? "+" + text : text;
}
