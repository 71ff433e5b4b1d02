using QuarterCar.Model;
using QuarterCar.Model.Terrain;
using QuarterCar.Reports.Units;
using QuarterCar.Scenarios;

namespace QuarterCar.Reports.Words;

/// <summary>What was asked, in words.</summary>
public static class ScenarioFacts
{
    /// <summary>Terms and facts, in the order of the scenario file.</summary>
    public static IEnumerable<(string Term, string Fact)> Of(Scenario scenario)
    {
        var read = new Readable(scenario.Units);
        var corner = scenario.Corner;
        var coilover = corner.Coilover;
        yield return ("File", scenario.File);
        yield return ("Sprung weight", corner.SprungWeight is { } sprung ? read.Text(Dimension.Force, sprung) : "from a load of " + read.Text(Dimension.Force, corner.SpringLoad) + " on the springs");
        yield return ("Unsprung weight", read.Text(Dimension.Force, corner.UnsprungWeight));
        yield return ("Motion ratio", string.Join(", ", corner.MotionRatio.Select(p => Readable.Number(new("", 1, 3), p.Value))) + (corner.MotionRatio.Length > 1 ? " over wheel travel" : ""));
        yield return ("Tyre", $"{read.Text(Dimension.Rate, corner.Tyre.Rate)}, {Contact(corner.Tyre.Contact)}");
        yield return ("Stroke", read.Text(Dimension.Length, coilover.Stroke));
        foreach (var (name, spring) in new[] { ("Tender", coilover.Springs.Tender), ("Upper spring", coilover.Springs.Upper), ("Lower spring", coilover.Springs.Lower) })
        {
            if (spring is null) continue;
            yield return (name, $"{read.Text(Dimension.Rate, spring.Rate)}, free {read.Text(Dimension.Length, spring.FreeLength)}, solid {read.Text(Dimension.Length, spring.SolidLength)}");
        }

        yield return ("Preload", read.Text(Dimension.Length, coilover.Preload));
        yield return ("Stop nut", coilover.StopNut is { } nut ? $"{read.Text(Dimension.Length, nut.Length)} {Where(nut.At)}" : "none");
        yield return ("Gas", coilover.Gas is { } gas ? $"{Pressure(scenario.Units, gas.Pressure)} at full droop" : "none");
        yield return ("Bump stop", coilover.BumpStop is { } stop ? $"{read.Text(Dimension.Length, stop.Length)} on the {(stop.OnAxle ? "axle" : "shaft")}" : "none");
        yield return ("Metal at full bump", read.Text(Dimension.Rate, coilover.BottomOut.Rate) + (coilover.BottomOut == StopData.DefaultBottomOut ? ", assumed" : ""));
        yield return ("Course", Course(scenario.Excitation, scenario.Units, read));
        yield return ("Content hash", scenario.Hash);
    }

    private static string Contact(TyreContact contact) => contact switch
    {
        TyreContact.RollingCircle => "rolling circle",
        TyreContact.Footprint => "footprint",
        _ => "point contact",
    };

    private static string Where(StopNutReference at) => at switch
    {
        StopNutReference.RideHeight => "gap at ride height",
        StopNutReference.FullDroop => "gap at full droop",
        _ => "of upper-group compression: left where it was on the body",
    };

    private static string Pressure(UnitSystem units, double pascal)
    {
        const double psi = UnitTable.PoundForce / (UnitTable.Inch * UnitTable.Inch), bar = 1e5;
        return units == UnitSystem.Us ? Readable.Number(new("psi", 1 / psi, 0), pascal) + "\u00a0psi" : Readable.Number(new("bar", 1 / bar, 1), pascal) + "\u00a0bar";
    }

    private static string Course(Excitation excitation, UnitSystem units, Readable read)
    {
        if (excitation is Drop drop) return $"drop test from {read.Text(Dimension.Length, drop.Height)} at full droop";
        var course = (Course)excitation;
        const double mph = 5280 * UnitTable.Foot / 3600, kmh = 1 / 3.6;
        string speed = units == UnitSystem.Us ? Readable.Number(new("mph", 1 / mph, 1), course.Speed) + "\u00a0mph" : Readable.Number(new("km/h", 1 / kmh, 1), course.Speed) + "\u00a0km/h";
        return string.Join(", ", course.Pieces.Select(p => Piece(p, read))) + "; at " + speed;
    }

    private static string Piece(TerrainPiece piece, Readable read) => piece switch
    {
        FlatPiece flat => $"{read.Text(Dimension.Distance, flat.Length)} flat",
        StepPiece step => $"{read.Text(Dimension.Length, Math.Abs(step.Height))} step {(step.Height < 0 ? "down" : "up")}",
        RampPiece ramp => $"ramp {(ramp.Rise < 0 ? "down" : "up")} {read.Text(Dimension.Length, Math.Abs(ramp.Rise))} over {read.Text(Dimension.Distance, ramp.Length)}",
        HaversinePiece { Count: 1 } bump => $"{read.Text(Dimension.Length, bump.Height)} bump over {read.Text(Dimension.Distance, bump.Spacing)}",
        HaversinePiece whoops => $"{Readable.Number(new("", 1, 0), whoops.Count)} whoops of {read.Text(Dimension.Length, whoops.Height)}, {read.Text(Dimension.Distance, whoops.Spacing)} apart",
        RandomPiece random => $"{read.Text(Dimension.Distance, random.Length)} of random road, ISO 8608 class {random.Class}",
        ProfilePiece profile => $"profile {profile.File}",
        _ => "",
    };
}
