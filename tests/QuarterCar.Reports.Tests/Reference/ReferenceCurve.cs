using System.Collections.Immutable;
using System.Text.Json;

using QuarterCar.Model;
using QuarterCar.Model.Statics;
using QuarterCar.Scenarios;

namespace QuarterCar.Reports.Tests.Reference;

/// <summary>The standing curve of a reference scenario from the stack's published breakpoints; gas isothermal, bump stop by its table. A fixture: constant motion ratio, its first value for a table.</summary>
internal static class ReferenceCurve
{
    private const double Atmosphere = 101_325;

    public static ImmutableArray<CurveRow> Rows(Scenario scenario, JsonElement expected)
    {
        var c = scenario.Corner.Coilover;
        double r = scenario.Corner.MotionRatio[0].Value;
        var breaks = expected.GetProperty("derived").GetProperty("stack_breaks").EnumerateArray()
            .Select(b => (Y: b.GetProperty("y_m").GetDouble(), F: b.GetProperty("force_N").GetDouble(), K: b.GetProperty("rate_above_N_m").GetDouble(),
                Event: string.Join(' ', b.GetProperty("event").EnumerateArray().Select(e => e.GetString())))).ToList();
        double crossover = breaks.Where(b => b.Event.Contains("crossover", StringComparison.Ordinal)).Select(b => b.F).DefaultIfEmpty(double.PositiveInfinity).First();
        double touch = Touch(c, expected, r);
        var at = Enumerable.Range(0, 241).Select(i => c.Stroke * i / 240)
            .Concat(breaks.Select(b => b.Y - c.Preload)).Append(touch).Where(x => x >= 0 && x <= c.Stroke).Order().Distinct();
        return [.. at.Select(x => Row(x))];

        CurveRow Row(double x)
        {
            double y = x + c.Preload;
            var (rowY, rowF, rowK, _) = breaks.LastOrDefault(b => b.Y <= y, (0, 0, 0, ""));
            var (_, _, droopK, droopEvent) = breaks.LastOrDefault(b => b.Y < y, breaks[0]);
            double spring = rowF + (rowK * (y - rowY));
            double gas = Gas(c.Gas, x);
            bool onAxle = c.BumpStop is { OnAxle: true };
            double bump = c.BumpStop is { } stop && x > touch ? Table(stop.Force, onAxle ? (x - touch) / r : x - touch) : 0;
            double shaft = spring + gas + (onAxle ? 0 : bump);
            bool bound = breaks.Any(b => b.Y <= y && b.Event.Contains("bind", StringComparison.Ordinal));
            var region = bound ? RateRegion.Bound : spring >= crossover ? RateRegion.Secondary : rowY == 0 && breaks[1].Event == "tender_solid" ? RateRegion.Tender : RateRegion.Primary;
            return new(x / r, x, c.Stroke - x, r, spring, gas, bump, shaft, (r * shaft) + (onAxle ? bump : 0), droopK, r * r * droopK,
                Math.Min(spring, crossover), Math.Max(0, spring - crossover), region);
        }
    }

    private static double Touch(CoiloverData c, JsonElement expected, double r) => c.BumpStop switch
    {
        null => double.PositiveInfinity,
        { OnAxle: true } => expected.GetProperty("bottoming").EnumerateArray().First().GetProperty("shaft_travel_m").GetDouble() + (0 * r),
        { } stop => c.Stroke - stop.Length,
    };

    private static double Gas(GasData? gas, double x) => gas is null ? 0
        : gas.RodArea * (((gas.Pressure + Atmosphere) * gas.Volume / (gas.Volume - (gas.RodArea * x))) - Atmosphere);

    private static double Table(ImmutableArray<TablePoint> points, double at)
    {
        var from = new TablePoint(0, 0);
        for (int i = 0; ; i++)
        {
            var to = points[i];
            if (at <= to.At || i == points.Length - 1) return from.Value + ((to.Value - from.Value) / (to.At - from.At) * (at - from.At));
            from = to;
        }
    }
}
