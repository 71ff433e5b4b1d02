using System.Globalization;

using QuarterCar.Model;
using QuarterCar.Model.Selection;
using QuarterCar.Model.Shaft;
using QuarterCar.Scenarios.Quantities;
using QuarterCar.Scenarios.Reading;

namespace QuarterCar.Scenarios.Picking;

/// <summary>Rules that hold between the flags of `pick`; each looks only at what was read, so that one mistake is noted once.</summary>
internal sealed class PickRules(IReadOnlyDictionary<string, Measured> values, ProblemList problems)
{
    private static readonly string[] _gas = [PickFlags.Pressure, PickFlags.Volume, PickFlags.Rod];

    /// <summary>Holds what was read against every rule.</summary>
    /// <param name="given">The flags given, read or not.</param>
    public void Check(IReadOnlyDictionary<string, string> given)
    {
        if (_gas.Any(given.ContainsKey))
        {
            foreach (var missing in _gas.Where(g => !given.ContainsKey(g)))
            {
                problems.Note(new Place(missing, 0, 0), "", Texts.Nothing, PickTexts.GasTogether);
            }
        }

        if (Si(PickFlags.Stroke) is not { } stroke)
        {
            return;
        }

        var roomy = Volume(stroke);
        if (Si(PickFlags.RideHeight) >= stroke)
        {
            Note(PickFlags.RideHeight, PickTexts.BelowStroke(values[PickFlags.Stroke].ToString()));
        }
        else if (roomy && Si(PickFlags.RideHeight) is { } ride)
        {
            GasBelowLoad(stroke - ride);
        }
    }

    /// <summary>The gas; null without, or where it was not read whole.</summary>
    public GasData? Gas() =>
        Si(PickFlags.Pressure) is { } pressure && Si(PickFlags.Volume) is { } volume && Si(PickFlags.Rod) is { } rod ? new GasData(pressure, rod, volume) : null;

    /// <summary>Notes a list that gives more sets than can be ranked.</summary>
    public void Count(PickData data, string file)
    {
        if (Pick.Count(data) is > Pick.MostSets and var sets)
        {
            problems.Note(new Place(file, 0, 0), "", PickTexts.TooManySets(data.Springs.Length, data.Tenders.Length, sets), PickTexts.FewerSets(Pick.MostSets));
        }
    }

    private bool Volume(double stroke)
    {
        if (Si(PickFlags.Volume) is not { } volume || Si(PickFlags.Rod) is not { } rod)
        {
            return true;
        }

        var least = CrossRules.LeastGasVolume * new GasData(0, rod, 0).RodArea * stroke;
        if (volume > least)
        {
            return true;
        }

        Note(PickFlags.Volume, Texts.MoreGas(InUnitOf(PickFlags.Volume, least)));
        return false;
    }

    // Where the gas alone carries the load no spring can be picked: say by how much, and what pressure would leave room.
    private void GasBelowLoad(double travel)
    {
        if (Gas() is not { } data || Si(PickFlags.Load) is not { } load)
        {
            return;
        }

        var gas = GasLaw.Of(data);
        var force = gas.Standing(travel);
        if (force < load)
        {
            return;
        }

        var pressure = (load / gas.Area + GasLaw.Atmosphere) * (gas.Volume - gas.Area * travel) / gas.Volume - GasLaw.Atmosphere;
        var least = InUnitOf(PickFlags.Load, force);
        Note(PickFlags.Load, pressure > 0 ? PickTexts.MoreLoadOrLess(least, InUnitOf(PickFlags.Pressure, pressure)) : PickTexts.MoreLoad(least), PickTexts.GasCarries(least));
    }

    private double? Si(string flag) => values.TryGetValue(flag, out var m) ? m.Si : null;

    private string InUnitOf(string flag, double si)
    {
        var unit = values[flag].Unit!;
        return unit.FromSi(si).ToString("0.####", CultureInfo.InvariantCulture) + " " + unit.Name;
    }

    private void Note(string flag, string wanted, string why = "") =>
        problems.Note(new Place(flag, 0, 0), "", Texts.Quote(values[flag].ToString()) + why, wanted);
}
