using System.Globalization;

using QuarterCar.Scenarios.Documents;
using QuarterCar.Scenarios.Keys;

namespace QuarterCar.Scenarios.Reading;

/// <summary>Rules that hold between keys of a scenario; each looks only at what was read, so that one mistake is noted once.</summary>
public sealed class CrossRules
{
    /// <summary>The gas volume at full droop must be more than this many times what the rod takes up over the stroke (physics.md section 4).</summary>
    public const double LeastGasVolume = 1.02;

    private readonly ReadValues _values;
    private readonly MapNode _root;
    private readonly ProblemList _problems;

    private CrossRules(ReadValues values, MapNode root, ProblemList problems) => (_values, _root, _problems) = (values, root, problems);

    /// <summary>Holds a document that was read against every rule.</summary>
    public static void Check(ReadValues values, DocumentNode root, ProblemList problems)
    {
        if (root is not MapNode map)
        {
            return;
        }

        var rules = new CrossRules(values, map, problems);
        rules.OneLoad();
        rules.NeededKeys();
        rules.Springs();
        rules.Zones();
        rules.GasVolume();
        rules.OneExcitation();
    }

    private void OneLoad()
    {
        if (_root.Find("corner") is not MapNode corner)
        {
            return;
        }

        var (weight, load) = (corner.Find("sprung_weight"), corner.Find("spring_load"));
        if (weight is not null && load is not null)
        {
            _problems.Note(load.Place, "corner.spring_load", Texts.BothLoads, Texts.OneLoad);
        }
        else if (weight is null && load is null)
        {
            _problems.Note(corner.Place, "corner.sprung_weight", Texts.Nothing, Texts.SprungWeightOrLoad);
        }
    }

    private void NeededKeys()
    {
        var told = new HashSet<string>(StringComparer.Ordinal);
        foreach (var rule in KeyRules.Needed)
        {
            var (map, key) = Split(rule.Path);
            if (Asks(rule) && _root.Find(Steps(map)) is MapNode parent && parent.Find(key) is null && told.Add(rule.Path))
            {
                var asks = parent.Find(Split(rule.With).Key)?.Place;
                _problems.Note(asks ?? parent.Place, rule.Path, Texts.Nothing, rule.Wanted);
            }
        }
    }

    /// <summary>A word may come from its default; a key alone asks only where it is written.</summary>
    private bool Asks(NeededKey rule) => rule.Word is null ? _root.Find(Steps(rule.With)) is not null : _values.Text(rule.With) == rule.Word;

    private static (string Map, string Key) Split(string path)
    {
        var dot = path.LastIndexOf('.');
        return dot < 0 ? ("", path) : (path[..dot], path[(dot + 1)..]);
    }

    private static PathStep[] Steps(string path) => [.. path.Split('.').Select(PathStep.Key)];

    private void Springs()
    {
        foreach (var spring in (string[])["tender", "upper", "lower"])
        {
            var path = "coilover.springs." + spring;
            Below(path + ".solid_length", path + ".free_length", Texts.SolidBelowFree);
            Below(path + ".wire_diameter", path + ".mean_diameter", Texts.WireBelowMean);
        }
    }

    private void Zones()
    {
        for (var i = 0; i < _values.Count("coilover.damper.zones"); i++)
        {
            var zone = string.Create(CultureInfo.InvariantCulture, $"coilover.damper.zones[{i}]");
            if (_values.TryNumber(zone + ".from", out var from) && _values.TryNumber(zone + ".to", out var to) && to.Measured.Si <= from.Measured.Si)
            {
                _problems.Note(to.Node.Place, zone + ".to", Texts.Quote(to.Measured.ToString()), Texts.ToAboveFrom);
            }
        }
    }

    private void GasVolume()
    {
        if (_values.TryNumber("coilover.gas.volume", out var volume)
            && _values.TryNumber("coilover.gas.rod_diameter", out var rod)
            && _values.TryNumber("coilover.stroke", out var stroke))
        {
            var least = LeastGasVolume * Math.PI / 4 * rod.Measured.Si * rod.Measured.Si * stroke.Measured.Si;
            if (volume.Measured.Si <= least)
            {
                var unit = volume.Measured.Unit!;
                var wanted = unit.FromSi(least).ToString("0.####", CultureInfo.InvariantCulture) + " " + unit.Name;
                _problems.Note(volume.Node.Place, "coilover.gas.volume", Texts.Quote(volume.Measured.ToString()), Texts.MoreGas(wanted));
            }
        }
    }

    private void OneExcitation()
    {
        var (terrain, speed, drop) = (_root.Find("terrain"), _root.Find("speed"), _root.Find("drop"));
        switch (drop, terrain, speed)
        {
            case ({ }, null, null) or (null, { }, { }):
                break;
            case (null, null, null):
                _problems.Note(_root.Place, "terrain", Texts.Nothing, Texts.TerrainOrDrop);
                break;
            case (null, { }, null):
                _problems.Note(terrain.Place, "speed", Texts.Nothing, Texts.SpeedForTerrain);
                break;
            case (null, null, { }):
                _problems.Note(speed.Place, "terrain", Texts.Nothing, Texts.TerrainForSpeed);
                break;
            default:
                _problems.Note(drop.Place, "drop", Texts.TerrainAndDrop, Texts.TerrainOrDrop);
                break;
        }
    }

    private void Below(string small, string large, string wanted)
    {
        if (_values.TryNumber(small, out var s) && _values.TryNumber(large, out var l) && s.Measured.Si >= l.Measured.Si)
        {
            _problems.Note(s.Node.Place, small, Texts.Quote(s.Measured.ToString()), wanted);
        }
    }
}
