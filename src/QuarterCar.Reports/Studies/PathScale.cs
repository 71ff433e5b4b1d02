using System.Collections.Immutable;

using QuarterCar.Reports.Units;
using QuarterCar.Scenarios;
using QuarterCar.Scenarios.Keys;
using QuarterCar.Scenarios.Quantities;

using Dimension = QuarterCar.Scenarios.Quantities.Dimension;

namespace QuarterCar.Reports.Studies;

/// <summary>A scenario's path for people: its name in words, its unit, its values rounded to what a wrench can set.</summary>
internal sealed class PathScale
{
    // Math.Round takes no more than one digit above these.
    private const int MostDecimals = 14;

    private readonly Unit? _unit;
    private readonly int _own, _decimals;

    /// <summary>Of a path.</summary>
    public PathScale(string path, UnitSystem system)
        : this(path, PathWords.Of(path), system)
    {
    }

    private PathScale(string path, string words, UnitSystem system)
    {
        Name = words;
        string name;
        (name, _own) = Of(Measures(path), system == UnitSystem.Us);
        _decimals = _own;
        _unit = name.Length == 0 ? null : Scenarios.Quantities.UnitTable.Find(name);
        Unit = name.Replace("degC", "°C", StringComparison.Ordinal).Replace("lbf*s", "lbf·s", StringComparison.Ordinal).Replace("N*s", "N·s", StringComparison.Ordinal).Replace("^3", "³", StringComparison.Ordinal);
    }

    private PathScale(PathScale from, int decimals) => (Name, Unit, _unit, _own, _decimals) = (from.Name, from.Unit, from._unit, from._own, decimals);

    /// <summary>The same with as many decimals as it takes to tell values apart that differ by so much, SI, above 0; never fewer than its own.</summary>
    public PathScale Telling(double difference) =>
        new(this, Math.Clamp((int)Math.Ceiling(-Math.Log10(Size(difference)) - 1e-9), _own, MostDecimals));

    /// <summary>Of paths that are shown beside each other.</summary>
    public static ImmutableArray<PathScale> Of(IReadOnlyList<string> paths, UnitSystem system) => [.. paths.Zip(PathWords.Of(paths), (p, words) => new PathScale(p, words, system))];

    /// <summary>In words: the last key, with its owner where it alone says too little.</summary>
    public string Name { get; }

    /// <summary>Unit for people; empty for a plain number.</summary>
    public string Unit { get; }

    /// <summary>Words along an axis.</summary>
    public string Label => Unit.Length == 0 ? Name : $"{Name}, {Unit}";

    /// <summary>A value in this unit.</summary>
    public double Plotted(double si) => _unit?.FromSi(si) ?? si;

    /// <summary>A value rounded, without its unit.</summary>
    public string Number(double si) => Readable.Number(new ReadableUnit("", 1, _decimals), Plotted(si));

    /// <summary>A value rounded, with its unit.</summary>
    public string Text(double si) => WithUnit(Number(si));

    /// <summary>An end of a way: no zeros behind the scale's own decimals.</summary>
    public string End(double si)
    {
        string text = Number(si);
        for (int n = _decimals; n > _own && text[^1] == '0'; n--)
            text = text[..^1];
        return WithUnit(text.TrimEnd('.'));
    }

    /// <summary>A value rounded toward another, without its unit: what holds up to the value is not said to hold past it.</summary>
    public string NumberToward(double other, double si)
    {
        // A text's own digits come back from SI with rounding: nearer than this they are meant.
        const double same = 1e-12;
        double scale = Math.Pow(10, _decimals), at = Plotted(si) * scale, whole = Math.Round(at);
        double rounded = Math.Abs(at - whole) <= same * Math.Max(1e3, Math.Abs(at)) ? whole : other < si ? Math.Floor(at) : Math.Ceiling(at);
        return Readable.Number(new ReadableUnit("", 1, _decimals), rounded / scale);
    }

    /// <summary>A difference in this unit, with one digit more than its values: a resolution must not round to nothing.</summary>
    public string Difference(double si) => WithUnit(Readable.Number(new ReadableUnit("", 1, _decimals + 1), Size(si)));

    /// <summary>A number with the unit.</summary>
    public string WithUnit(string number) => Unit.Length == 0 ? number : number + "\u00a0" + Unit;

    private double Size(double difference) => difference * (_unit is { } u ? 1 / u.Size : 1);

    private static Dimension Measures(string path) => KeyPaths.Resolve(ScenarioKeys.Root, path, out _)?.Kind switch
    {
        QuantityKind q => q.Dimension,
        TableKind { OrPlainValue: true } t => t.Value.Dimension,
        _ => Dimension.Number,
    };

    private static (string Name, int Decimals) Of(Dimension dimension, bool us) => dimension switch
    {
        Dimension.Length => us ? ("in", 2) : ("mm", 1),
        Dimension.Force => us ? ("lbf", 0) : ("N", 0),
        Dimension.SpringRate => us ? ("lbf/in", 0) : ("N/mm", 1),
        Dimension.Damping => us ? ("lbf*s/in", 2) : ("N*s/m", 0),
        Dimension.Speed => us ? ("mph", 2) : ("km/h", 2),
        Dimension.Pressure => us ? ("psi", 0) : ("bar", 2),
        Dimension.Volume => us ? ("in^3", 2) : ("cm^3", 0),
        Dimension.Time => ("s", 3),
        Dimension.Angle => ("deg", 1),
        Dimension.Temperature => ("degC", 0),
        Dimension.Loss => ("s/m", 2),
        _ => ("", 3),
    };
}
