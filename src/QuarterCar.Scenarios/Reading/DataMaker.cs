using System.Collections.Immutable;
using System.Globalization;

using QuarterCar.Model;
using QuarterCar.Model.Terrain;

namespace QuarterCar.Scenarios.Reading;

/// <summary>Values that were read and found right → the data types of the model. Decides nothing: the rules were held before.</summary>
public static class DataMaker
{
    private const string _coilover = "coilover.";

    /// <summary>The corner.</summary>
    public static CornerData Corner(ReadValues v) => new(
        v.NumberOrNull("corner.sprung_weight"),
        v.NumberOrNull("corner.spring_load"),
        v.Number("corner.unsprung_weight"),
        v.Table("corner.motion_ratio"),
        new TyreData(
            v.Number("tyre.rate"),
            v.Number("tyre.damping"),
            v.NumberOrNull("tyre.radius"),
            v.Text("tyre.contact") switch { "rolling_circle" => TyreContact.RollingCircle, "footprint" => TyreContact.Footprint, _ => TyreContact.Point },
            v.NumberOrNull("tyre.footprint"),
            v.NumberOrNull("tyre.sidewall"),
            v.NumberOrNull("tyre.rim_rate")),
        Coilover(v));

    /// <summary>What moves the wheel.</summary>
    /// <param name="v">The values.</param>
    /// <param name="profiles">Points of the profiles, by path of their piece.</param>
    public static Excitation Excitation(ReadValues v, IReadOnlyDictionary<string, ImmutableArray<TablePoint>> profiles) =>
        v.Has("drop")
            ? new Drop(v.Number("drop.height"))
            : new Course([.. Enumerable.Range(0, v.Count("terrain")).Select(i => Piece(v, PathOf("terrain", i), profiles))], v.Number("speed"));

    /// <summary>How it is run.</summary>
    public static RunSettings Run(ReadValues v) => new(v.NumberOrNull("run.duration"), v.Number("run.sample"), v.Number("run.tolerance"));

    /// <summary>"terrain[1]".</summary>
    public static string PathOf(string list, int index) => string.Create(CultureInfo.InvariantCulture, $"{list}[{index}]");

    private static CoiloverData Coilover(ReadValues v) => new(
        v.Number("coilover.stroke"),
        new SpringSetData(Spring(v, "tender"), Spring(v, "upper"), Spring(v, "lower")!),
        v.Number("coilover.preload"),
        v.Has("coilover.stop_nut") ? StopNut(v) : null,
        v.Has("coilover.damper") ? Damper(v) : null,
        v.Has("coilover.gas") ? Gas(v) : null,
        v.Number("coilover.friction"),
        v.Has("coilover.bump_stop") ? BumpStop(v) : null,
        new StopData(v.Number("coilover.bottom_out.rate"), v.Number("coilover.bottom_out.loss")),
        new StopData(v.Number("coilover.top_out.rate"), v.Number("coilover.top_out.loss")),
        v.Has("coilover.body") ? Body(v) : null);

    private static StopNutData StopNut(ReadValues v) => new(
        v.Number("coilover.stop_nut.gap"),
        v.Text("coilover.stop_nut.at") == "full_droop" ? StopNutReference.FullDroop : StopNutReference.RideHeight);

    private static SpringData? Spring(ReadValues v, string position)
    {
        var path = _coilover + "springs." + position;
        return v.Has(path)
            ? new SpringData(
                v.Number(path + ".rate"),
                v.Number(path + ".free_length"),
                v.Number(path + ".solid_length"),
                v.NumberOrNull(path + ".wire_diameter"),
                v.NumberOrNull(path + ".mean_diameter"),
                v.NumberOrNull(path + ".inner_diameter"))
            : null;
    }

    private static DamperData Damper(ReadValues v) => new(
        v.Table("coilover.damper.compression"),
        v.Table("coilover.damper.rebound"),
        [.. Enumerable.Range(0, v.Count("coilover.damper.zones")).Select(i => PathOf("coilover.damper.zones", i)).Select(p =>
            new DamperZone(v.Number(p + ".from"), v.Number(p + ".to"), v.Number(p + ".compression"), v.Number(p + ".rebound")))]);

    private static GasData Gas(ReadValues v) => new(
        v.Number("coilover.gas.pressure"),
        v.Number("coilover.gas.rod_diameter"),
        v.Number("coilover.gas.volume"),
        v.Number("coilover.gas.exponent"),
        v.Number("coilover.gas.charge_temperature"),
        v.Number("coilover.gas.temperature"));

    private static BumpStopData BumpStop(ReadValues v) => new(
        v.Text("coilover.bump_stop.on") == "axle",
        v.Number("coilover.bump_stop.length"),
        v.Table("coilover.bump_stop.force"),
        v.Number("coilover.bump_stop.loss"));

    private static BodyData Body(ReadValues v) => new(
        v.NumberOrNull("coilover.body.seat_length"),
        v.NumberOrNull("coilover.body.thread"),
        v.NumberOrNull("coilover.body.thread_pitch"),
        v.NumberOrNull("coilover.body.slider"),
        v.NumberOrNull("coilover.body.diameter"));

    private static TerrainPiece Piece(ReadValues v, string path, IReadOnlyDictionary<string, ImmutableArray<TablePoint>> profiles) => path switch
    {
        _ when v.NumberOrNull(path + ".flat") is { } length => new FlatPiece(length),
        _ when v.NumberOrNull(path + ".step") is { } height => new StepPiece(height),
        _ when v.Has(path + ".ramp") => new RampPiece(v.Number(path + ".ramp.rise"), v.Number(path + ".ramp.length")),
        _ when v.Has(path + ".bump") => new HaversinePiece(v.Number(path + ".bump.height"), v.Number(path + ".bump.length"), 1),
        _ when v.Has(path + ".whoops") =>
            new HaversinePiece(v.Number(path + ".whoops.height"), v.Number(path + ".whoops.spacing"), (int)v.Whole(path + ".whoops.count")),
        _ when v.Has(path + ".random") =>
            new RandomPiece(v.Text(path + ".random.iso8608")![0], v.Number(path + ".random.length"), v.Whole(path + ".random.seed")),
        _ => new ProfilePiece(v.Text(path + ".profile.file")!, profiles[path]),
    };
}
