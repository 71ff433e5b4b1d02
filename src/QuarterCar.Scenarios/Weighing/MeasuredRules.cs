using System.Globalization;

using QuarterCar.Model;
using QuarterCar.Scenarios.Reading;

namespace QuarterCar.Scenarios.Weighing;

/// <summary>Rules that hold between the keys of a measurement; each looks only at what was read, so that one mistake is noted once.</summary>
internal sealed class MeasuredRules
{
    private readonly ReadValues _values;
    private readonly ProblemList _problems;

    private MeasuredRules(ReadValues values, ProblemList problems) => (_values, _problems) = (values, problems);

    /// <summary>Holds a measurement that was read against every rule.</summary>
    public static void Check(ReadValues values, ProblemList problems)
    {
        var rules = new MeasuredRules(values, problems);
        var names = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        for (var i = 0; i < values.Count("corners"); i++)
        {
            var corner = DataMaker.PathOf("corners", i);
            foreach (var position in MeasuredKeys.Positions)
            {
                rules.Spring($"{corner}.{position}");
            }

            rules.Showing(corner);
            rules.Gas(corner);
            if (values.Text(corner + ".name") is { } name && !names.Add(name))
            {
                problems.Note(values.Node(corner + ".name")!.Place, corner + ".name", Texts.Quote(name), MeasuredTexts.NameOnce);
            }
        }
    }

    private void Spring(string spring)
    {
        var free = _values.NumberOrNull(spring + ".free_length");
        if (_values.TryNumber(spring + ".solid_length", out var solid) && solid.Measured.Si >= free)
        {
            Note(solid, spring + ".solid_length", Texts.SolidBelowFree);
        }

        // A solid tender is read as solid give or take the length error; farther below, one of the two is wrong.
        var least = solid?.Measured.Si - _values.NumberOrNull("length_error");
        for (var i = 0; i < _values.Count(spring + ".loaded_length"); i++)
        {
            var path = DataMaker.PathOf(spring + ".loaded_length", i);
            if (!_values.TryNumber(path, out var loaded))
            {
                continue;
            }

            if (loaded.Measured.Si > free)
            {
                Note(loaded, path, MeasuredTexts.AtMostFree);
            }
            else if (loaded.Measured.Si < least)
            {
                Note(loaded, path, MeasuredTexts.AtLeastSolid);
            }
        }
    }

    private void Showing(string corner)
    {
        if (_values.TryNumber(corner + ".shaft_showing", out var showing) && showing.Measured.Si > _values.NumberOrNull(corner + ".stroke"))
        {
            Note(showing, corner + ".shaft_showing", MeasuredTexts.WithinStroke);
        }
    }

    private void Gas(string corner)
    {
        var gas = corner + ".gas";
        if (_values.Node(gas) is not { } node)
        {
            return;
        }

        Needed(corner, "shaft_showing", MeasuredTexts.ShowingForGas, node.Place);
        Needed(corner, "stroke", MeasuredTexts.StrokeForGas, node.Place);
        if (_values.TryNumber(gas + ".volume", out var volume)
            && _values.NumberOrNull(gas + ".rod_diameter") is { } rod
            && _values.NumberOrNull(corner + ".stroke") is { } stroke
            && CrossRules.LeastGasVolume * new GasData(0, rod, 0).RodArea * stroke is var least
            && volume.Measured.Si <= least)
        {
            var unit = volume.Measured.Unit!;
            Note(volume, gas + ".volume", Texts.MoreGas(unit.FromSi(least).ToString("0.####", CultureInfo.InvariantCulture) + " " + unit.Name));
        }
    }

    // Read or mistaken, it is there: the document is asked, since a mistaken value is no value.
    private void Needed(string corner, string key, string wanted, Place gas)
    {
        if (_values.Node(corner) is Documents.MapNode map && map.Find(key) is null)
        {
            _problems.Note(gas, $"{corner}.{key}", Texts.Nothing, wanted);
        }
    }

    private void Note(NumberValue value, string path, string wanted) => _problems.Note(value.Node.Place, path, Texts.Quote(value.Measured.ToString()), wanted);
}
