using System.Text.Json;

using QuarterCar.Model;
using QuarterCar.Reports.SetupSheet;
using QuarterCar.Studies;

namespace QuarterCar.Web.Answers;

/// <summary>Where the parts of the coilover are, m above the lower spring plate: for the drawing to scale, at rest and at every moment of the run.</summary>
internal sealed class CoiloverGeometry
{
    private readonly StandingResult _standing;
    private readonly PartSizes _sizes;
    private readonly SpringSetData _set;

    /// <summary>Of a standing corner.</summary>
    public CoiloverGeometry(StandingResult standing)
    {
        _standing = standing;
        _sizes = PartSizes.Of(standing.Scenario.Corner.Coilover);
        _set = standing.Scenario.Corner.Coilover.Springs;
    }

    /// <summary>Heights of one state: top of the lower spring, of the upper, of the tender; the coil nut; the shaft showing.</summary>
    public double[] Heights(double travel, double lower, double group)
    {
        double at = _set.Lower.FreeLength - lower, tender = Tender(group);
        double upper = at + _sizes.Slider + (_set.Upper is { } u ? u.FreeLength - (group - tender) : 0);
        double top = upper + (_set.Tender is { } t ? t.FreeLength - tender : 0);
        double nut = _sizes.StackFree(_set) - _standing.Figures.Preload - travel;
        return [at, upper, top, nut, _standing.Corner.Stroke - travel];
    }

    /// <summary>Heights at a standing state.</summary>
    public double[] At(double travel)
    {
        double spring = _standing.Corner.Stack.Force(travel + _standing.Figures.Preload);
        return Heights(travel, _standing.Corner.Stack.LowerCompression(spring), _standing.Corner.Stack.GroupCompression(spring));
    }

    /// <summary>Sizes, and the standing states.</summary>
    public void Write(Utf8JsonWriter json)
    {
        CoiloverData data = _standing.Scenario.Corner.Coilover;
        json.WriteStartObject("coilover");
        json.Short("stroke", data.Stroke);
        json.Short("body", _sizes.Body);
        json.Short("shaft", _sizes.Shaft);
        json.Short("inner", _sizes.Inner);
        json.Short("wire", _sizes.Wire);
        json.Short("slider", _sizes.Slider);
        json.Short("bump", data.BumpStop is { OnAxle: false } stop ? stop.Length : null);
        json.Short("nutOverSlider", _standing.Corner.Stack.HeldTravel is { } held ? NutOverCoilNut(held) : null);
        json.WriteBoolean("twoRate", _set.Upper is not null);
        json.List("springs", Springs(), s =>
        {
            json.WriteString("name", s.Name);
            json.Short("wire", s.Spring.WireDiameter ?? _sizes.Wire);
            json.WriteNumber("coils", Math.Clamp((int)Math.Round(s.Spring.SolidLength / (s.Spring.WireDiameter ?? _sizes.Wire)), 4, 16));
            json.Short("solid", s.Spring.SolidLength);
            json.Short("free", s.Spring.FreeLength);
        });
        json.Numbers("droop", At(0));
        json.Numbers("ride", At(Math.Clamp(_standing.Figures.ShaftTravel, 0, data.Stroke)));
        json.Numbers("full", At(data.Stroke));
        json.WriteString("assumed", _sizes.Assumed.IsEmpty ? "" : "Not given, drawn at a usual size: " + string.Join(", ", _sizes.Assumed) + ".");
        json.WriteEndObject();
    }

    // The stop nut hangs on the body below the coil nut: this far, m, from the coil nut's lower face to its own.
    private double NutOverCoilNut(double held)
    {
        double groupFree = (_set.Upper?.FreeLength ?? 0) + (_set.Tender?.FreeLength ?? 0);
        return groupFree - held;
    }

    private IEnumerable<(string Name, SpringData Spring)> Springs() => _set.Placed.Reverse();

    // Tender and upper spring share one force until the tender is solid.
    private double Tender(double group)
    {
        if (_set.Tender is not { } tender || _set.Upper is not { } upper) return 0;
        double solid = tender.FreeLength - tender.SolidLength;
        return Math.Min(group / tender.Rate / (1 / tender.Rate + 1 / upper.Rate), solid);
    }
}
