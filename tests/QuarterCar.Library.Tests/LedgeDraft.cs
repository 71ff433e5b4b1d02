using QuarterCar.Drafts;

using UnitsNet;

namespace QuarterCar.LibraryTests;

/// <summary>The ledge scenario of the folder scenarios, built in code.</summary>
internal static class LedgeDraft
{
    public static ScenarioDraft Make() => new()
    {
        Title = "Quarry ledge, rear corner of a two-seat trail buggy",
        Corner = new() { SprungWeight = Force.FromPoundsForce(830), UnsprungWeight = Force.FromPoundsForce(145), MotionRatio = 0.94 },
        Tyre = new()
        {
            Rate = ForcePerLength.FromPoundsForcePerInch(1250),
            Damping = DampingRate.FromPoundForceSecondsPerInch(2.5),
            Radius = Length.FromInches(17.5),
            Contact = TyreContact.RollingCircle,
        },
        Coilover = new()
        {
            Stroke = Length.FromInches(12),
            Springs = new() { Upper = Spring(160, 12, 4.6), Lower = Spring(225, 14, 5.6) },
            Preload = Length.FromInches(1.4),
            StopNut = new() { Gap = Length.FromInches(1.25), At = GapPlace.RideHeight },
            Damper = new()
            {
                Compression = [Point(4, 90), Point(18, 190), Point(75, 520)],
                Rebound = [Point(4, 140), Point(18, 310), Point(75, 840)],
                Zones = [new() { From = Length.FromInches(9.5), To = Length.FromInches(12), Compression = 1.6, Rebound = 1 }],
            },
            Gas = new() { Pressure = Pressure.FromPoundsForcePerSquareInch(180), RodDiameter = Length.FromInches(0.875), Volume = Volume.FromCubicInches(28), Exponent = 1.4 },
            Friction = Force.FromPoundsForce(18),
            BumpStop = new()
            {
                On = BumpStopPlace.Shaft,
                Length = Length.FromInches(2.2),
                Force = [(Length.FromInches(0.5), Force.FromPoundsForce(150)), (Length.FromInches(1.4), Force.FromPoundsForce(900)), (Length.FromInches(2), Force.FromPoundsForce(3600))],
                Loss = new Loss(0.2),
            },
        },
        Terrain = [Ground.Flat(Length.FromFeet(10)), Ground.Step(Length.FromInches(-20)), Ground.Flat(Length.FromFeet(60))],
        Speed = Speed.FromMilesPerHour(6),
        Run = new() { Duration = Duration.FromSeconds(6), Sample = Duration.FromMilliseconds(1), Tolerance = 1e-6 },
        Limits = new Dictionary<string, double> { ["bottom_out"] = 0, ["coil_bind"] = 0, ["up_travel_used"] = 0.95 },
    };

    private static SpringDraft Spring(double rate, double free, double solid) => new()
    {
        Rate = ForcePerLength.FromPoundsForcePerInch(rate),
        FreeLength = Length.FromInches(free),
        SolidLength = Length.FromInches(solid),
    };

    private static (Speed, Force) Point(double inchesPerSecond, double pounds) => (Speed.FromInchesPerSecond(inchesPerSecond), Force.FromPoundsForce(pounds));
}
