using System.Collections.Immutable;

using QuarterCar.Model;
using QuarterCar.Model.Statics;
using QuarterCar.Studies;

namespace QuarterCar.Reports.SetupSheet;

/// <summary>Where the parts of the coilover are in one state, m, heights above the lower spring plate.</summary>
/// <param name="Springs">From the plate up.</param>
/// <param name="CoilNut">Lower face of the coil nut.</param>
/// <param name="Slider">Lower face of the slider; null without one.</param>
/// <param name="StopNut">Lower face of the stop nut; null without one.</param>
/// <param name="Showing">Lower end of the body: the shaft showing.</param>
internal sealed record CoiloverShape(ImmutableArray<SpringShape> Springs, double CoilNut, double? Slider, double? StopNut, double Showing)
{
    /// <summary>With the shaft fully extended.</summary>
    public static CoiloverShape Extended(StandingResult result, PartSizes sizes) =>
        Of(result, sizes, 0, s => s.CompressionFullDroop);

    /// <summary>At ride height; where that lies outside the stroke, at the end that it rests on.</summary>
    public static CoiloverShape AtRideHeight(StandingResult result, PartSizes sizes) =>
        Of(result, sizes, Math.Clamp(result.Figures.ShaftTravel, 0, result.Corner.Stroke), s => s.CompressionRideHeight);

    private static CoiloverShape Of(StandingResult result, PartSizes sizes, double travel, Func<SpringStanding, double> compression)
    {
        SpringSetData set = result.Scenario.Corner.Coilover.Springs;
        double Length(string name, SpringData spring) => spring.FreeLength - compression(result.Springs.Single(s => s.Position == name));
        var springs = ImmutableArray.CreateBuilder<SpringShape>();
        double at = Length("lower", set.Lower);
        springs.Add(new(set.Upper is null ? "spring" : "lower spring", set.Lower, 0, at));
        double? slider = set.Upper is not null || sizes.Slider > 0 ? at : null;
        at += sizes.Slider;
        foreach ((string name, string words, SpringData? spring) in new[] { ("upper", "upper spring", set.Upper), ("tender", "tender", set.Tender) })
        {
            if (spring is null) continue;
            double length = Length(name, spring);
            springs.Add(new(words, spring, at, at + length));
            at += length;
        }

        // The nut is where the preload puts it, with loose springs above them.
        double nut = sizes.StackFree(set) - result.Figures.Preload - travel;

        // Both nuts are on the body: where the slider meets the stop nut, what is left of the upper group stands between them.
        double? stop = nut - (set.All.Sum(s => s.FreeLength) - set.Lower.FreeLength - result.Corner.Stack.HeldTravel);
        return new(springs.ToImmutable(), nut, slider, stop, result.Corner.Stroke - travel);
    }
}

/// <summary>One spring between two heights, m.</summary>
/// <param name="Words">Its name.</param>
/// <param name="Data">The spring.</param>
/// <param name="From">Lower end.</param>
/// <param name="To">Upper end.</param>
internal sealed record SpringShape(string Words, SpringData Data, double From, double To);

/// <summary>Sizes across and of small parts, m: as given, or usual ones where the scenario does not say.</summary>
/// <param name="Body">Outer diameter of the body.</param>
/// <param name="Shaft">Diameter of the shaft.</param>
/// <param name="Inner">Inner diameter of the springs.</param>
/// <param name="Wire">Diameter of the thickest wire.</param>
/// <param name="Slider">Height of the slider; 0 without one.</param>
/// <param name="Assumed">Names of what is drawn at a usual size.</param>
internal sealed record PartSizes(double Body, double Shaft, double Inner, double Wire, double Slider, ImmutableArray<string> Assumed)
{
    // Usual proportions: a 2.5 in body with 3 in springs at a free stack of 0.7 m and more, slimmer below.
    private const double BodyPerStack = 0.09, LeastBody = 0.034, MostBody = 0.0635, InnerPerBody = 1.18, WirePerBody = 0.17, ShaftPerBody = 0.35, SliderPerBody = 0.48;

    /// <summary>The sizes of a coilover.</summary>
    public static PartSizes Of(CoiloverData c)
    {
        List<string> assumed = [];
        double body = Given(c.Body?.Diameter, Math.Clamp(BodyPerStack * c.Springs.All.Sum(s => s.FreeLength), LeastBody, MostBody), "body diameter");
        double inner = Given(Least(c.Springs.All.Select(s => s.CoilInner)), InnerPerBody * body, "coil diameters");
        double wire = Given(c.Springs.All.Max(s => s.WireDiameter), WirePerBody * body, "wire");
        double slider = c.Springs.Upper is null ? c.Body?.Slider ?? 0 : Given(c.Body?.Slider, SliderPerBody * body, "slider height");
        return new(body, c.Gas?.RodDiameter ?? ShaftPerBody * body, Math.Max(inner, body), wire, slider, [.. assumed]);

        double Given(double? given, double usual, string name)
        {
            if (given is null) assumed.Add(name);
            return given ?? usual;
        }
    }

    /// <summary>Free lengths and the slider as drawn, m.</summary>
    public double StackFree(SpringSetData set) => set.All.Sum(s => s.FreeLength) + Slider;

    private static double? Least(IEnumerable<double?> values) => values.Min();
}
