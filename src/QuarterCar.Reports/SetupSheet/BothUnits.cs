using QuarterCar.Reports.Units;
using QuarterCar.Scenarios;

namespace QuarterCar.Reports.SetupSheet;

/// <summary>Numbers in both unit systems, the scenario's own first, rounded to what a wrench can set.</summary>
internal sealed class BothUnits(UnitSystem own)
{
    private const double Psi = UnitTable.PoundForce / (UnitTable.Inch * UnitTable.Inch), Bar = 1e5;

    private readonly Readable _first = new(own), _second = new(own == UnitSystem.Us ? UnitSystem.Si : UnitSystem.Us);

    /// <summary>Heads of two columns.</summary>
    public (string First, string Second) Heads => own == UnitSystem.Us ? ("US", "metric") : ("metric", "US");

    /// <summary>A number with its unit in each system; a dash twice where it does not apply.</summary>
    public (string First, string Second) Pair(Dimension dimension, double? si) => (_first.Text(dimension, si), _second.Text(dimension, si));

    /// <summary>A gauge pressure in each system.</summary>
    public (string First, string Second) Pressure(double pascal)
    {
        string us = Readable.Number(new("psi", 1 / Psi, 0), pascal) + "\u00a0psi", si = Readable.Number(new("bar", 1 / Bar, 1), pascal) + "\u00a0bar";
        return own == UnitSystem.Us ? (us, si) : (si, us);
    }

    /// <summary>Both in running text, the second in brackets.</summary>
    public string Text(Dimension dimension, double? si) => Joined(Pair(dimension, si));

    /// <summary>A gauge pressure in running text.</summary>
    public string PressureText(double pascal) => Joined(Pressure(pascal));

    private static string Joined((string First, string Second) pair) =>
        pair.First == Readable.None ? Readable.None : $"{pair.First} ({pair.Second})";
}
