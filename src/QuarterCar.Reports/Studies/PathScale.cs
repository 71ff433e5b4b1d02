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
    private readonly Unit? _unit;
    private readonly int _decimals;

    /// <summary>Of a path.</summary>
    public PathScale(string path, UnitSystem system)
        : this(path, PathWords.Of(path), system)
    {
    }

    private PathScale(string path, string words, UnitSystem system)
    {
        Name = words;
        string name;
        (name, _decimals) = Of(Measures(path), system == UnitSystem.Us);
        _unit = name.Length == 0 ? null : Scenarios.Quantities.UnitTable.Find(name);
        Unit = name.Replace("degC", "°C", StringComparison.Ordinal).Replace("lbf*s", "lbf·s", StringComparison.Ordinal).Replace("N*s", "N·s", StringComparison.Ordinal).Replace("^3", "³", StringComparison.Ordinal);
    }

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
    public string Text(double si) => Unit.Length == 0 ? Number(si) : Number(si) + "\u00a0" + Unit;

    /// <summary>A difference in this unit, with one digit more: a resolution must not round to nothing.</summary>
    public string Difference(double si)
    {
        double size = si * (_unit is { } u ? 1 / u.Size : 1);
        return Readable.Number(new ReadableUnit("", 1, _decimals + 1), size) + (Unit.Length == 0 ? "" : "\u00a0" + Unit);
    }

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
