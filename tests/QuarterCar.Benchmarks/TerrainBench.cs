using System.Diagnostics;
using System.Globalization;

using QuarterCar.Model;
using QuarterCar.Model.Motion;
using QuarterCar.Model.Terrain;
using QuarterCar.Scenarios;
using QuarterCar.Scenarios.Reading;
using QuarterCar.Studies;

namespace QuarterCar.Benchmarks;

/// <summary>What thousands of points cost: a 2 km course every 5 cm under each contact, built and driven, beside the whoops of the yardstick. Warm, one thread, best of several.</summary>
internal static class TerrainBench
{
    private const int Times = 7;

    public static void Print()
    {
        TerrainPiece[] random = [new FlatPiece(5), new RandomPiece('D', 2000, 7), new FlatPiece(5)];
        Console.WriteLine("course                    contact         build, ms   breaks   run, ms/s   breaks/s");
        Whoops();
        foreach ((TyreContact contact, string name) in new[] { (TyreContact.Point, "point"), (TyreContact.Footprint, "footprint"), (TyreContact.RollingCircle, "rolling_circle") })
            Row("random D, 2 km, 5 cm", name, random, contact);
        Row("random D, 20 km, 5 cm", "rolling_circle", [new RandomPiece('D', 20_000, 7)], TyreContact.RollingCircle);
    }

    private static void Whoops()
    {
        var yard = new Yard("fast_whoops");
        CourseModel course = CourseModel.Of(yard.Scenario);
        double seconds = course.Duration(yard.Scenario.Run), ms = Best(() => yard.Once()) / seconds;
        double build = Best(() => CourseModel.Of(yard.Scenario));
        Line("fast_whoops", "rolling_circle", build, course.Road.Breaks.Length, ms, course.Road.Breaks.Length / seconds);
    }

    private static void Row(string name, string word, TerrainPiece[] pieces, TyreContact contact)
    {
        const double speed = 12;
        ReadResult read = ScenarioReader.Read(Path.Combine(Yard.Folder, "fast_whoops.yaml"), ReadOptions.Plain);
        Scenario scenario = read.Scenario! with { Excitation = new Course([.. pieces], speed) };
        TyreData tyre = scenario.Corner.Tyre with { Contact = contact, Footprint = 0.2 };
        Ground ground = Ground.Build([.. pieces]);
        double build = Best(() => Road.Build(Ground.Build([.. pieces]), contact, tyre.Radius ?? 0, 0.2));
        var road = Road.Build(ground, contact, tyre.Radius ?? 0, 0.2);
        var corner = Corner.Build(scenario.Corner with { Tyre = tyre });
        var run = new MotionRun();
        double duration = Math.Min(ground.Length, 2000) / speed;
        double ms = Best(() => run.Drive(corner, road, speed, duration, scenario.Run.Tolerance)) / duration;
        double breaks = road.Breaks.Length / (ground.Length / speed);
        Line(name, word, build, road.Breaks.Length, ms, breaks);
    }

    private static double Best(Action once)
    {
        double best = double.PositiveInfinity;
        for (int i = 0; i < Times; i++)
        {
            long start = Stopwatch.GetTimestamp();
            once();
            best = Math.Min(best, Stopwatch.GetElapsedTime(start).TotalMilliseconds);
        }

        return best;
    }

    private static void Line(string name, string contact, double build, int breaks, double run, double perSecond) => Console.WriteLine(string.Create(
        CultureInfo.InvariantCulture, $"{name,-25} {contact,-14} {build,10:0.0} {breaks,8} {run,11:0.000}   {perSecond,8:0}"));
}
