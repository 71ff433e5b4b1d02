using System.Globalization;
using System.Text;

namespace QuarterCar.Studies.Tests.RandomCorners;

/// <summary>Writes random corners, each quantity as &lt;SI value|dimension&gt;.</summary>
internal static class CornerWords
{
    /// <summary>A corner whose springs suit its weight, over an obstacle that a driver would take.</summary>
    public static string Plausible(Dice d)
    {
        double weight = d.Log(1500, 12000), stroke = d.Between(0.15, 0.4), ratio = d.Between(0.5, 1.1);
        double load = weight / ratio, preload = d.Between(0, 0.06), rate = load / (preload + stroke * d.Between(0.3, 0.55)), share = d.Between(1.4, 3.5);
        bool upper = d.Chance(0.8), tender = upper && d.Chance(0.25);
        double lower = upper ? rate * share : rate, above = rate * share / (share - 1), tyre = d.Log(1e5, 4.5e5);
        var text = new StringBuilder("title: plausible\n");
        text.Append(Line($"corner: {{ sprung_weight: {N(weight)}, unsprung_weight: {N(weight * d.Between(0.08, 0.35))}, motion_ratio: {Ratio(d, ratio, 0.8, 1.25, stroke)} }}"));
        text.Append(Line($"tyre: {{ rate: {Q(tyre, "N/m")}, damping: {Q(d.Chance(0.8) ? d.Between(100, 900) : 0, "N*s/m")}, radius: {M(d.Between(0.3, 0.5))}{Contact(d)}{(d.Chance(0.2) ? $", sidewall: {M(d.Between(0.05, 0.12))}, rim_rate: {Q(d.Log(5e5, 3e6), "N/m")}" : "")} }}"));
        text.Append(Line($"coilover:\n  stroke: {M(stroke)}\n  preload: {M(preload)}\n  springs:"));
        if (tender)
            text.Append(Spring("tender", d.Between(0.1, 0.3) * rate, d.Between(0.05, 0.1)));
        if (upper)
            text.Append(Spring("upper", above, d.Between(0.45, 1) * stroke));
        text.Append(Spring("lower", lower, d.Between(0.5, 1.1) * stroke));
        Shock(text, d, stroke, load, upper ? d.Between(0, 0.06) : null, 1);
        return Course(text, d, 2, 25, 0.25, 0.8, 2);
    }

    /// <summary>A corner of numbers that the reader accepts and nobody would build.</summary>
    public static string Wild(Dice d)
    {
        double weight = d.Log(50, 1e5), stroke = d.Log(0.02, 1), ratio = d.Log(0.1, 3);
        bool upper = d.Chance(0.7), tender = upper && d.Chance(0.4);
        var text = new StringBuilder("title: wild\n");
        text.Append(Line($"corner: {{ sprung_weight: {N(weight)}, unsprung_weight: {N(weight * d.Log(0.02, 2))}, motion_ratio: {Ratio(d, ratio, 0.3, 3, stroke)} }}"));
        text.Append(Line($"tyre: {{ rate: {Q(d.Log(1e4, 3e6), "N/m")}, damping: {Q(d.Chance(0.7) ? d.Log(1, 1e4) : 0, "N*s/m")}, radius: {M(d.Log(0.05, 2))}{Contact(d)}{(d.Chance(0.3) ? $", sidewall: {M(d.Log(1e-3, 0.3))}, rim_rate: {Q(d.Log(1e3, 1e7), "N/m")}" : "")} }}"));
        text.Append(Line($"coilover:\n  stroke: {M(stroke)}\n  preload: {M(d.Between(-0.1, 0.2))}\n  springs:"));
        if (tender)
            text.Append(Spring("tender", d.Log(300, 1e6), d.Log(1e-3, 0.5)));
        if (upper)
            text.Append(Spring("upper", d.Log(300, 1e6), d.Log(1e-3, 1)));
        text.Append(Spring("lower", d.Log(300, 1e6), d.Log(1e-3, 1)));
        Shock(text, d, stroke, weight / ratio, upper && d.Chance(0.7) ? d.Chance(0.2) ? 0 : d.Log(1e-4, 0.3) : null, 0.6);
        return Course(text, d, 0.2, 60, 0.4, 3, 1);
    }

    private static void Shock(StringBuilder text, Dice d, double stroke, double load, double? gap, double share)
    {
        if (gap is { } g)
            text.Append(Line($"  stop_nut: {{ gap: {M(g)}, at: {d.Of("ride_height", "full_droop")} }}"));
        if (d.Chance(share))
            text.Append(Line($"  damper: {{ compression: {Digressive(d, load)}, rebound: {Digressive(d, load)}{(d.Chance(0.4) ? $", zones: [{{ from: {M(d.Between(0.4, 0.8) * stroke)}, to: {M(stroke)}, compression: {R(d.Between(0.5, 2))}, rebound: {R(d.Between(0.5, 2))} }}]" : "")} }}"));
        double rod = d.Between(0.01, 0.028);
        if (d.Chance(0.6))
            text.Append(Line($"  gas: {{ pressure: {Q(d.Log(1e5, 2e6), "Pa")}, rod_diameter: {M(rod)}, volume: {Q(Math.PI / 4 * rod * rod * stroke * d.Log(1.3, 6), "m^3")}, exponent: {d.Between(1, 1.6)} }}"));
        if (d.Chance(0.7))
            text.Append(Line($"  friction: {N(d.Between(0, 0.04) * load)}"));
        double length = d.Between(0.1, 0.35) * stroke;
        if (d.Chance(0.7))
            text.Append(Line($"  bump_stop: {{ on: {d.Of("shaft", "axle")}, length: {M(length)}, force: [[{M(0.25 * length)}, {N(d.Between(0.05, 0.4) * load)}], [{M(0.6 * length)}, {N(d.Between(0.5, 2) * load)}], [{M(0.9 * length)}, {N(d.Between(2, 8) * load)}]], loss: {Q(d.Between(0, 0.5), "s/m")} }}"));
    }

    private static string Course(StringBuilder text, Dice d, double slow, double fast, double height, double longest, double duration)
    {
        if (d.Chance(0.2))
            text.Append(Line($"drop: {{ height: {M(d.Between(0, 4 * height))} }}"));
        else
        {
            text.Append(Line($"speed: {Q(d.Log(slow, fast), "m/s")}\nterrain:\n  - flat: {M(d.Between(0.1, 1))}"));
            for (int i = 0; i < 2; i++)
            {
                double h = d.Between(-height, height), length = longest * d.Between(1, 6);
                text.Append("  - ").Append(d.Of(
                    Line($"flat: {M(length)}"),
                    Line($"step: {M(h * Math.Min(0.6, 0.125 / longest))}"),
                    Line($"ramp: {{ rise: {M(h)}, length: {M(length)} }}"),
                    Line($"bump: {{ height: {M(h)}, length: {M(length)} }}"),
                    Line($"whoops: {{ height: {M(Math.Abs(h) + 0.01)}, spacing: {M(length + 1)}, count: 3 }}"),
                    Line($"random: {{ iso8608: {(h > 0 ? "D" : "F")}, length: {M(10 + length)}, seed: {(int)(1e4 * Math.Abs(h))} }}")));
            }

            text.Append(Line($"  - flat: {M(3)}"));
        }

        return text.Append(Line($"run: {{ duration: {duration} s, sample: 2 ms }}")).ToString();
    }

    private static string Ratio(Dice d, double ratio, double least, double most, double stroke)
    {
        double second = ratio * d.Between(least, most), third = ratio * d.Between(least, most);
        return d.Chance(0.3) ? string.Create(CultureInfo.InvariantCulture, $"[[{M(0)}, {ratio}], [{M(0.5 * stroke / ratio)}, {second}], [{M(stroke / ratio)}, {third}]]") : ratio.ToString(CultureInfo.InvariantCulture);
    }

    private static string Digressive(Dice d, double load) =>
        $"[[{Q(0.1, "m/s")}, {N(load * d.Between(0.05, 0.3))}], [{Q(0.5, "m/s")}, {N(load * d.Between(0.3, 0.7))}], [{Q(2, "m/s")}, {N(load * d.Between(0.7, 2))}]]";

    private static string Contact(Dice d) => d.Of("", ", contact: rolling_circle", $", contact: footprint, footprint: {M(0.18)}");

    private static string Spring(string name, double rate, double travel) => Line($"    {name}: {{ rate: {Q(rate, "N/m")}, free_length: {M(travel + 0.1)}, solid_length: {M(0.1)} }}");

    private static string N(double force) => Q(force, "N");

    private static string R(double number) => number.ToString("R", CultureInfo.InvariantCulture);

    private static string M(double length) => Q(length, "m");

    private static string Q(double si, string dimension) => string.Create(CultureInfo.InvariantCulture, $"<{si:R}|{dimension}>");

    private static string Line(FormattableString text) => FormattableString.Invariant(text) + "\n";
}
