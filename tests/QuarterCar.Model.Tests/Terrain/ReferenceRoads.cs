using System.Collections.Immutable;
using System.Globalization;

using QuarterCar.Model.Terrain;

namespace QuarterCar.Model.Tests.Terrain;

/// <summary>One reference run's terrain, tyre and speed, SI, with the road that an independent program computed for it.</summary>
/// <param name="Name">File under data/roads.</param>
/// <param name="Speed">m/s.</param>
/// <param name="Contact">Contact model.</param>
/// <param name="Size">Radius or footprint length, m.</param>
/// <param name="Pieces">The terrain.</param>
public sealed record ReferenceRoad(string Name, double Speed, TyreContact Contact, double Size, params ImmutableArray<TerrainPiece> Pieces)
{
    private const double Inch = 0.0254;
    private const double Foot = 0.3048;
    private const double Mph = 0.44704;
    private const double Kmh = 1 / 3.6;

    public static readonly ImmutableArray<ReferenceRoad> All =
    [
        new("quarry_ledge", 6 * Mph, TyreContact.RollingCircle, 17.5 * Inch, new FlatPiece(10 * Foot), new StepPiece(-20 * Inch), new FlatPiece(60 * Foot)),
        new("orchard_kerb", 11.5 * Kmh, TyreContact.RollingCircle, 0.305, new FlatPiece(1.3), new StepPiece(0.165), new FlatPiece(9)),
        new("loading_ramp", 17 * Kmh, TyreContact.Point, 0,
            new FlatPiece(2.5), new RampPiece(0.33, 1.45), new FlatPiece(3.2), new RampPiece(-0.33, 2.1), new FlatPiece(10)),
        new("dune_whoops", 27 * Mph, TyreContact.RollingCircle, 16.4 * Inch,
            new FlatPiece(25 * Foot), new HaversinePiece(19 * Inch, 20.5 * Foot, 5), new FlatPiece(80 * Foot)),
        new("yard_hump", 21 * Kmh, TyreContact.Footprint, 0.17, new FlatPiece(3), new HaversinePiece(0.115, 1.1, 1), new FlatPiece(12)),
        new("single_spring_ditch", 8 * Mph, TyreContact.RollingCircle, 14.8 * Inch,
            new FlatPiece(8 * Foot), new RampPiece(-8.5 * Inch, 2.4 * Foot), new FlatPiece(1.5 * Foot), new RampPiece(8.5 * Inch, 2.4 * Foot), new FlatPiece(40 * Foot)),
        new("tender_triple", 6.3 * Mph, TyreContact.RollingCircle, 18.6 * Inch,
            new FlatPiece(6 * Foot), new StepPiece(9 * Inch), new FlatPiece(14 * Foot), new StepPiece(-18.2 * Inch), new FlatPiece(50 * Foot)),
        new("desert_table", 24 * Mph, TyreContact.RollingCircle, 19.2 * Inch,
            new FlatPiece(20 * Foot), new RampPiece(2.6 * Foot, 11 * Foot), new FlatPiece(6 * Foot), new RampPiece(-2.6 * Foot, 15 * Foot),
            new HaversinePiece(9 * Inch, 5 * Foot, 1), new FlatPiece(60 * Foot)),
        new("hard_bottom", 24 * Kmh, TyreContact.Point, 0, new FlatPiece(4.13), new RampPiece(0.5, 2.9), new StepPiece(-0.5), new FlatPiece(25)),
        new("coil_bind", 16.5 * Kmh, TyreContact.Footprint, 0.21,
            new FlatPiece(2), new HaversinePiece(0.27, 1.9, 1), new FlatPiece(1.4), new HaversinePiece(0.14, 0.9, 1), new FlatPiece(15)),
        new("gravel_lane", 30 * Kmh, TyreContact.Footprint, 0.15, new FlatPiece(1), new RandomPiece('E', 28, 23), new FlatPiece(4)),
        new("fast_whoops", 25 * Mph, TyreContact.RollingCircle, 17.5 * Inch,
            new FlatPiece(10 * Foot), new HaversinePiece(8 * Inch, 16 * Foot, 12), new FlatPiece(200 * Foot)),
        new("ramp_and_drop", 10 * Mph, TyreContact.RollingCircle, 17.5 * Inch,
            new FlatPiece(10 * Foot), new RampPiece(18 * Inch, 6 * Foot), new FlatPiece(20 * Foot), new StepPiece(-18 * Inch), new FlatPiece(60 * Foot)),
    ];

    public static ReferenceRoad Of(string name) => All.Single(road => road.Name == name);

    public Road Build() => Road.Build(Ground.Build(Pieces), Contact, Size, Size);

    public double[] BreakTimes() =>
        [.. Lines()[0].Split(' ')[2..].Select(Number)];

    public IEnumerable<(double Time, double Distance, double Ground, double Road)> Rows() =>
        from line in Lines().Skip(2)
        let cells = line.Split(',')
        select (Number(cells[0]), Number(cells[1]), Number(cells[2]), Number(cells[3]));

    private string[] Lines() => File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "data", "roads", Name + ".csv"));

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
