using System.Collections.Immutable;
using System.Globalization;

using QuarterCar.Drafts;
using QuarterCar.Model.Selection;
using QuarterCar.Scenarios.Picking;
using QuarterCar.Scenarios.Weighing;

using UnitsNet;

namespace QuarterCar;

/// <summary>
/// Weighing a corner by its own springs, and choosing springs for a load. Lengths are read and springs are changed on a vehicle that is lifted and
/// supported on stands that carry it, with a spring compressor rated for the load; a shock under gas is unloaded as its maker says.
/// </summary>
public static class Springs
{
    /// <summary>The load on a coilover from springs of known rate and their loaded lengths, with its 95 % uncertainty (JCGM 100:2008).</summary>
    /// <param name="springs">From the coil nut down: any of tender, upper and lower, a single spring is the lower one.</param>
    /// <param name="lengthError">95 % half-width of each length.</param>
    /// <param name="rateErrorPercent">95 % half-width of each rate, in percent.</param>
    /// <param name="motionRatio">Shaft travel per wheel travel; null where the sprung weight at the wheel is not wanted.</param>
    /// <param name="gas">What gas there is: its share is added to the load; needs <paramref name="shaftShowing"/> and <paramref name="stroke"/>.</param>
    /// <param name="shaftShowing">What is left of the stroke with the vehicle standing, bump stop and wiper not counted.</param>
    /// <param name="stroke">Shaft travel from full droop to full bump.</param>
    /// <exception cref="ScenarioException">What was measured cannot be: each mistake is named by the flag of the command line.</exception>
    public static WeighedLoad Weigh(
        IReadOnlyList<SpringReading> springs, Length lengthError, double rateErrorPercent = 2, double? motionRatio = null, GasCharge? gas = null, Length? shaftShowing = null, Length? stroke = null)
    {
        var given = new Dictionary<string, string>(StringComparer.Ordinal)
        {
            ["--length-error"] = QuantityTexts.Of(lengthError),
            ["--rate-error"] = rateErrorPercent.ToString("R", CultureInfo.InvariantCulture) + " %",
        };
        if (motionRatio is { } ratio) given["--motion-ratio"] = ratio.ToString("R", CultureInfo.InvariantCulture);
        foreach (SpringReading spring in springs)
        {
            string place = "--" + QuantityTexts.Snake(spring.Place.ToString());
            given[place + "-rate"] = QuantityTexts.Of(spring.Rate);
            given[place + "-free"] = QuantityTexts.Of(spring.FreeLength);
            given[place + "-loaded"] = string.Join(',', spring.LoadedLengths.Select(l => QuantityTexts.Of(l)));
            Give(given, place + "-solid", spring.SolidLength);
        }

        Give(given, gas);
        Give(given, "--shaft-showing", shaftShowing);
        Give(given, "--stroke", stroke);

        MeasuredReading read = MeasuredReader.ReadFlags(given);
        if (read.Input is not { } input) throw new ScenarioException(read.Problems);
        return new WeighedLoad(Model.Selection.Weigh.Of(input.Corners, input.Errors).Corners[0]);
    }

    /// <summary>Sets of springs for a load and a ride height, best first: sets that fail no check, then nearest to the wanted preload, then larger bind clearance.</summary>
    /// <param name="load">On the coilover at ride height, gas included.</param>
    /// <param name="stroke">Shaft travel from full droop to full bump.</param>
    /// <param name="rideHeight">Wanted shaft showing.</param>
    /// <param name="preload">Wanted at ride height; null for 25 mm.</param>
    /// <param name="gap">Stop-nut gap at ride height; null leaves the slider free.</param>
    /// <param name="list">Spring list (CSV); null for the invented one that ships: to try things out with, not to be bought from.</param>
    /// <param name="tenders">List of tenders (CSV) to try above every pair; "invented" takes those that ship; null for pairs alone.</param>
    /// <param name="gas">What gas there is: the springs carry the load less its share.</param>
    /// <param name="body">Seat length, thread, slider and diameter, for the checks of fit; its thread pitch is not asked.</param>
    /// <exception cref="ScenarioException">What is asked cannot be, or the list cannot be read.</exception>
    public static IReadOnlyList<SpringSet> Pick(
        Force load, Length stroke, Length rideHeight, Length? preload = null, Length? gap = null, string? list = null, string? tenders = null, GasCharge? gas = null, BodyDraft? body = null)
    {
        var given = new Dictionary<string, string>(StringComparer.Ordinal)
        {
            ["--load"] = QuantityTexts.Of(load),
            ["--stroke"] = QuantityTexts.Of(stroke),
            ["--ride-height"] = QuantityTexts.Of(rideHeight),
        };
        Give(given, "--preload", preload);
        Give(given, "--gap", gap);
        Give(given, gas);
        Give(given, "--seat-length", body?.SeatLength);
        Give(given, "--thread", body?.Thread);
        Give(given, "--slider", body?.Slider);
        Give(given, "--diameter", body?.Diameter);
        PickReading read = PickReader.Read(given, list, tenders);
        if (read.Input is not { } input) throw new ScenarioException(read.Problems);
        return [.. Model.Selection.Pick.Of(input.Data).Sets.Select(s => new SpringSet(s))];
    }

    private static void Give(Dictionary<string, string> given, GasCharge? gas)
    {
        if (gas is null) return;
        given["--gas-pressure"] = QuantityTexts.Of(gas.Pressure);
        given["--gas-volume"] = QuantityTexts.Of(gas.Volume);
        given["--rod-diameter"] = QuantityTexts.Of(gas.RodDiameter);
    }

    private static void Give(Dictionary<string, string> given, string flag, Length? length)
    {
        if (length is { } there) given[flag] = QuantityTexts.Of(there);
    }
}

/// <summary>Gas behind the shock's rod.</summary>
/// <param name="Pressure">Gauge pressure at full droop.</param>
/// <param name="Volume">Of the gas at full droop.</param>
/// <param name="RodDiameter">Of the shock's rod.</param>
public sealed record GasCharge(Pressure Pressure, Volume Volume, Length RodDiameter);

/// <summary>Where a spring sits.</summary>
public enum SpringPlace
{
    /// <summary>Above the upper spring; made to go solid.</summary>
    Tender,

    /// <summary>Above the slider.</summary>
    Upper,

    /// <summary>Below the slider; a single spring is this one.</summary>
    Lower,
}

/// <summary>A spring used as a scale.</summary>
/// <param name="Place">Where it sits.</param>
/// <param name="Rate">Its known rate.</param>
/// <param name="FreeLength">Without load.</param>
/// <param name="LoadedLengths">With the vehicle standing: one reading, or two (settled from below, from above).</param>
public sealed record SpringReading(SpringPlace Place, ForcePerLength Rate, Length FreeLength, params ImmutableArray<Length> LoadedLengths)
{
    /// <summary>With its coils bound; null where it is not known. A tender that is solid carries more than its compression shows.</summary>
    public Length? SolidLength { get; init; }
}

/// <summary>The load that springs were weighed with.</summary>
public sealed class WeighedLoad
{
    internal WeighedLoad(WeighedCorner corner)
    {
        CornerLoads loads = corner.Answer;
        Springs = [.. corner.Springs.Select(s => new WeighedSpring(
            Enum.Parse<SpringPlace>(s.Spring.Position, ignoreCase: true), Length.FromMeters(s.Spring.Compression), Force.FromNewtons(s.Spring.Load), Force.FromNewtons(s.Uncertainty)))];
        SpringsDisagree = !corner.Disagreements.IsEmpty;
        (SpringLoad, Uncertainty) = (Force.FromNewtons(loads.SpringLoad), Force.FromNewtons(loads.Uncertainty));
        SprungWeight = Newtons(loads.SprungWeight);
        (CoiloverLoad, GasForce, Friction) = (Force.FromNewtons(loads.CoiloverLoad), Newtons(corner.GasForce), Newtons(corner.Friction));
    }

    /// <summary>Load on the springs. Where they disagree and one of them most likely carries the whole load, that one's reading.</summary>
    public Force SpringLoad { get; }

    /// <summary>95 % half-width of <see cref="SpringLoad"/>.</summary>
    public Force Uncertainty { get; }

    /// <summary>Load on the springs and the share of the gas: what <see cref="Springs.Pick"/> takes.</summary>
    public Force CoiloverLoad { get; }

    /// <summary>Standing, isothermal; null without gas.</summary>
    public Force? GasForce { get; }

    /// <summary>Half of what the load differs by between settled from above and from below; null where no spring has two readings.</summary>
    public Force? Friction { get; }

    /// <summary>At the wheel; null without motion ratio.</summary>
    public Force? SprungWeight { get; }

    /// <summary>True where springs of one stack, which carry the same load, do not read the same.</summary>
    public bool SpringsDisagree { get; }

    /// <summary>What each spring reads, from the coil nut down.</summary>
    public IReadOnlyList<WeighedSpring> Springs { get; }

    private static Force? Newtons(double? force) => force is { } f ? Force.FromNewtons(f) : null;
}

/// <summary>One spring read as a scale.</summary>
/// <param name="Place">Where it sits.</param>
/// <param name="Compression">Free length less the mean of its loaded lengths.</param>
/// <param name="Load">Rate times compression.</param>
/// <param name="Uncertainty">95 % half-width of <paramref name="Load"/>.</param>
public sealed record WeighedSpring(SpringPlace Place, Length Compression, Force Load, Force Uncertainty);

/// <summary>A set of springs with its figures at the wanted ride height.</summary>
public sealed class SpringSet
{
    internal SpringSet(PickSet set)
    {
        (Upper, Lower) = (Rate(set.Springs.Upper!.Rate), Rate(set.Springs.Lower.Rate));
        (UpperFreeLength, LowerFreeLength) = (Length.FromMeters(set.Springs.Upper.FreeLength), Length.FromMeters(set.Springs.Lower.FreeLength));
        (UpperSolidLength, LowerSolidLength) = (Length.FromMeters(set.Springs.Upper.SolidLength), Length.FromMeters(set.Springs.Lower.SolidLength));
        if (set.Springs.Tender is { } tender)
            (Tender, TenderFreeLength, TenderSolidLength) = (Rate(tender.Rate), Length.FromMeters(tender.FreeLength), Length.FromMeters(tender.SolidLength));
        if (set.Range is { } range)
            (RideHeightLowest, RideHeightHighest) = (Length.FromMeters(range.Lowest), Length.FromMeters(range.Highest));
        (PrimaryRate, SecondaryRate) = (Rate(set.PrimaryRate), Rate(set.SecondaryRate));
        (Preload, BindClearance) = (Length.FromMeters(set.Preload), Length.FromMeters(set.BindClearance));
        Passes = set.Failed == PickChecks.None;
    }

    /// <summary>Rate of the tender; null in a pair.</summary>
    public ForcePerLength? Tender { get; }

    /// <summary>Free length of the tender; null in a pair.</summary>
    public Length? TenderFreeLength { get; }

    /// <summary>Solid length of the tender; null in a pair.</summary>
    public Length? TenderSolidLength { get; }

    /// <summary>Rate of the upper spring.</summary>
    public ForcePerLength Upper { get; }

    /// <summary>Rate of the lower spring.</summary>
    public ForcePerLength Lower { get; }

    /// <summary>Free length of the upper spring.</summary>
    public Length UpperFreeLength { get; }

    /// <summary>Free length of the lower spring.</summary>
    public Length LowerFreeLength { get; }

    /// <summary>Solid length of the upper spring.</summary>
    public Length UpperSolidLength { get; }

    /// <summary>Solid length of the lower spring.</summary>
    public Length LowerSolidLength { get; }

    /// <summary>Springs that are not solid at ride height, in series.</summary>
    public ForcePerLength PrimaryRate { get; }

    /// <summary>The lower alone, slider on the stop nut.</summary>
    public ForcePerLength SecondaryRate { get; }

    /// <summary>For the wanted ride height; negative where the springs are too stiff for it.</summary>
    public Length Preload { get; }

    /// <summary>Lowest shaft showing that preload alone reaches; null where no preload keeps the springs from binding and on the thread.</summary>
    public Length? RideHeightLowest { get; }

    /// <summary>Highest shaft showing that preload alone reaches; null as above.</summary>
    public Length? RideHeightHighest { get; }

    /// <summary>The lesser of upper and lower at full bump; negative where one binds before.</summary>
    public Length BindClearance { get; }

    /// <summary>True where it fails no check.</summary>
    public bool Passes { get; }

    private static ForcePerLength Rate(double k) => ForcePerLength.FromNewtonsPerMeter(k);
}
