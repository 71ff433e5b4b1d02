using System.Globalization;

using QuarterCar.Scenarios.Documents;

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
        rules.Contact();
        rules.Rim();
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

    private void Contact()
    {
        if (_values.Text("tyre.contact") is not { } contact || _root.Find("tyre") is not MapNode tyre)
        {
            return;
        }

        Needed(tyre, contact == "rolling_circle", "radius", Texts.RadiusNeeded);
        Needed(tyre, contact == "footprint", "footprint", Texts.FootprintNeeded);
    }

    private void Needed(MapNode tyre, bool needed, string key, string wanted)
    {
        if (needed && tyre.Find(key) is null)
        {
            _problems.Note(tyre.Find("contact")?.Place ?? tyre.Place, "tyre." + key, Texts.Nothing, wanted);
        }
    }

    private void Rim()
    {
        if (_root.Find("tyre") is not MapNode tyre)
        {
            return;
        }

        var (sidewall, rim) = (tyre.Find("sidewall"), tyre.Find("rim_rate"));
        if (sidewall is null != rim is null)
        {
            var (there, missing) = sidewall is null ? (rim!, "sidewall") : (sidewall, "rim_rate");
            _problems.Note(there.Place, "tyre." + missing, Texts.Nothing, Texts.BothRimKeys);
        }
    }

    private void Springs()
    {
        foreach (var spring in (string[])["tender", "upper", "lower"])
        {
            var path = "coilover.springs." + spring;
            Below(path + ".solid_length", path + ".free_length", Texts.SolidBelowFree);
            Below(path + ".wire_diameter", path + ".mean_diameter", Texts.WireBelowMean);
        }

        if (_root.Find("coilover") is MapNode coilover && coilover.Find("springs") is MapNode springs && springs.Find("upper") is null)
        {
            var because = springs.Find("tender") ?? coilover.Find("stop_nut");
            if (because is not null)
            {
                _problems.Note(springs.Place, "coilover.springs.upper", Texts.Nothing, Texts.UpperNeeded);
            }
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
