using System.Collections.Immutable;
using System.Globalization;

using QuarterCar.Model;
using QuarterCar.Model.Statics;
using QuarterCar.Scenarios;
using QuarterCar.Scenarios.Quantities;
using QuarterCar.Studies.Setups;

namespace QuarterCar.Studies.Sweeps;

/// <summary>The steps that a coilover offers: what one turn, one click's worth or the next part on the shelf changes, both ways.</summary>
internal sealed class TweakSteps(Scenario scenario, StandingFigures standing, TweakShelf shelf)
{
    private const double Inch = 0.0254;
    private const double DefaultPitch = 2e-3;
    private const double TableShare = 0.1;

    private readonly bool _us = scenario.Units == UnitSystem.Us;
    private readonly CoiloverData _coilover = scenario.Corner.Coilover;

    /// <summary>Every step, in the order in which somebody would try them.</summary>
    public ImmutableArray<TweakStep> All() =>
        [.. Preload(), .. StopNut(), .. Damper(), .. Zones(), .. Gas(), .. BumpStop(), .. Springs()];

    private IEnumerable<TweakStep> Preload()
    {
        double? given = _coilover.Body?.ThreadPitch is > 0 and var pitch ? pitch : null;
        double turn = given ?? DefaultPitch;
        string length = Words.Length(turn, scenario.Units) + (given is null ? " (a usual pitch)" : "");
        foreach (int way in Ways)
            yield return Plain("coilover.preload", $"coil nut one turn {(way > 0 ? "down" : "up")}, {length}", _coilover.Preload, _coilover.Preload + (way * turn), true);
    }

    private IEnumerable<TweakStep> StopNut()
    {
        if (_coilover.StopNut is not { } nut)
            yield break;
        bool held = nut.At == StopNutReference.UpperTravel;
        double from = held ? standing.StopNutGapFullDroop ?? 0 : nut.Length, step = _us ? Inch / 4 : 5e-3;
        foreach (int way in Ways)
        {
            double to = Math.Max(0, from + (way * step));
            if (to == from)
                continue;
            string what = $"stop-nut gap {Sign(way)}{Words.Length(Math.Abs(to - from), scenario.Units)}";
            SetupValue value = held
                ? new("coilover.stop_nut", $"{{ gap: {Text(to, "m")}, at: full_droop }}", null)
                : SetupValue.OfSi("coilover.stop_nut.gap", to);
            yield return new TweakStep("coilover.stop_nut.gap", what, from, to, value, true);
        }
    }

    private IEnumerable<TweakStep> Damper()
    {
        if (_coilover.Damper is not { } damper)
            yield break;
        foreach ((string name, ImmutableArray<TablePoint> table) in new[] { ("compression", damper.Compression), ("rebound", damper.Rebound) })
        {
            foreach (int way in Ways)
            {
                double factor = 1 + (way * TableShare);
                string rows = string.Join(", ", table.Select(p => $"[{Text(p.At, "m/s")}, {Text(p.Value * factor, "N")}]"));
                string path = "coilover.damper." + name;
                yield return new TweakStep(path, $"{name} damping {Sign(way)}10 %", 1, factor, new SetupValue(path, $"[{rows}]", null), false);
            }
        }
    }

    private IEnumerable<TweakStep> Zones()
    {
        ImmutableArray<DamperZone> zones = _coilover.Damper?.Zones ?? [];
        for (int i = 0; i < zones.Length; i++)
        {
            foreach ((string name, double factor) in new[] { ("compression", zones[i].Compression), ("rebound", zones[i].Rebound) })
            {
                foreach (int way in Ways.Where(_ => factor != 1))
                    yield return Plain(FormattableString.Invariant($"coilover.damper.zones[{i}].{name}"), FormattableString.Invariant($"zone {i + 1}, {name} {Sign(way)}10 %"), factor, factor * (1 + (way * TableShare)), false);
            }
        }
    }

    private IEnumerable<TweakStep> Gas()
    {
        if (_coilover.Gas is not { } gas)
            yield break;
        double step = _us ? 20 * ExactUnits.PoundForcePerSquareInch : 1e5;
        foreach (int way in Ways.Where(w => gas.Pressure + (w * step) >= 0))
            yield return Plain("coilover.gas.pressure", "gas pressure " + Sign(way) + (_us ? "20 psi" : "1 bar"), gas.Pressure, gas.Pressure + (way * step), true);
    }

    private IEnumerable<TweakStep> BumpStop()
    {
        if (_coilover.BumpStop is not { } bump)
            yield break;
        double step = _us ? Inch / 4 : 5e-3;
        foreach (int way in Ways.Where(w => bump.Length + (w * step) > 0))
            yield return Plain("coilover.bump_stop.length", $"bump stop {Words.Length(step, scenario.Units)} {(way > 0 ? "longer" : "shorter")}", bump.Length, bump.Length + (way * step), false);
    }

    private IEnumerable<TweakStep> Springs()
    {
        foreach ((string name, SpringData spring) in _coilover.Springs.Placed)
        {
            foreach (int way in Ways)
            {
                if (shelf.Next(spring, name == "tender", way, _coilover.Body?.Diameter) is { } next)
                    yield return Spring(name, spring, next, way);
            }
        }
    }

    private TweakStep Spring(string name, SpringData spring, SpringData next, int way)
    {
        (string Key, double? Value, string Unit)[] keys =
        [
            ("rate", next.Rate, "N/m"), ("free_length", next.FreeLength, "m"), ("solid_length", next.SolidLength, "m"),
            ("wire_diameter", next.WireDiameter, "m"), ("mean_diameter", next.MeanDiameter, "m"), ("inner_diameter", next.InnerDiameter, "m"),
        ];
        string text = $"{{ {string.Join(", ", keys.Where(k => k.Value is not null).Select(k => $"{k.Key}: {Text(k.Value!.Value, k.Unit)}"))} }}";
        string what = $"next {(way > 0 ? "stiffer" : "softer")} {name} spring, {Words.Rate(next.Rate, scenario.Units)}";
        return new TweakStep($"coilover.springs.{name}.rate", what, spring.Rate, next.Rate, new SetupValue("coilover.springs." + name, text, null), true) { Spring = next };
    }

    private static readonly int[] Ways = [1, -1];

    private static TweakStep Plain(string path, string what, double from, double to, bool underLoad) => new(path, what, from, to, SetupValue.OfSi(path, to), underLoad);

    private static string Sign(int way) => way > 0 ? "+" : "\u2212";

    private static string Text(double si, string unit) => si.ToString("R", CultureInfo.InvariantCulture) + " " + unit;
}
