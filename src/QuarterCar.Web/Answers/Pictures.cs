using System.Text.Json;

using QuarterCar.Model;
using QuarterCar.Reports.Plots;
using QuarterCar.Reports.Units;
using QuarterCar.Reports.Words;
using QuarterCar.Studies;

namespace QuarterCar.Web.Answers;

/// <summary>What the page draws of one run, SI, thinned to what a screen shows: lines, zones, kinks, contacts, and the frames of the moving corner.</summary>
internal static class Pictures
{
    private const int Columns = 400, Frames = 300, Coarse = 500, Fine = 1500;

    private const double PathShare = 0.006;

    /// <summary>Writes them.</summary>
    public static void Write(Utf8JsonWriter json, RunResult run)
    {
        var samples = RunSamples.Of(run, Coarse, Fine);
        Readable read = samples.Read;
        json.WriteStartObject("pictures");
        json.WriteBoolean("overDistance", samples.OverDistance);
        json.Short("speed", run.Scenario.Excitation is QuarterCar.Scenarios.Course c ? c.Speed : 0);
        json.Short("stroke", run.Scenario.Corner.Coilover.Stroke);
        Titles(json, run, samples, read);
        double Place(Sample s) => samples.OverDistance ? s.Distance : s.Time;
        void Series(string name, Func<Sample, double> value) => json.Line(name, Thin.Columns([.. samples.Shown.Select(s => (Place(s), value(s)))], Columns));
        Series("shaft", s => s.ShaftShowing);
        Series("tyre", s => s.TyreForce);
        Series("acceleration", s => s.SprungAcceleration);
        json.Line("forcePath", Thin.Path([.. samples.Shown.Select(s => (s.ShaftShowing, s.ShaftForce))], PathShare));
        json.Line("damperPath", Thin.Path([.. samples.Shown.Select(s => (s.ShaftVelocity, s.DamperForce))], PathShare));
        json.Short("staticLoad", TyreLoadPlot.StaticLoad(run));
        double perPlace = samples.OverDistance ? read.Unit(Dimension.Distance).PerSi : 1;
        json.Line("air", TyreLoadPlot.Stretches(samples).Select(a => (a.From / perPlace, a.To / perPlace)));
        Curve(json, run.Standing);
        Zones(json, run.Standing, read);
        DamperLines(json, samples);
        Events(json, run, read);
        Moving(json, run, samples);
        json.WriteEndObject();
    }

    private static void Titles(Utf8JsonWriter json, RunResult run, RunSamples samples, Readable read)
    {
        json.WriteStartObject("titles");
        json.WriteString("shaft", Verdict.Travel(run));
        json.WriteString("force", ForceTravelPlot.Title(run.Standing, samples, read));
        json.WriteString("damper", run.Scenario.Corner.Coilover.Damper is null ? "No damper: put one in under “Damper”" : DamperPlot.Title(samples));
        json.WriteString("tyre", TyreLoadPlot.Title(run, read));
        json.WriteString("acceleration", AccelerationPlot.Title(run, read));
        json.WriteEndObject();
    }

    private static void Curve(Utf8JsonWriter json, StandingResult standing)
    {
        json.WriteStartObject("curve");
        json.Line("total", standing.Curve.Select(r => (r.ShaftShowing, r.ShaftForce)));
        json.Line("springs", standing.Curve.Select(r => (r.ShaftShowing, r.SpringForce)));
        json.Line("gas", standing.Curve.Any(r => r.GasForce > 0) ? standing.Curve.Select(r => (r.ShaftShowing, r.GasForce)) : []);
        json.Short("top", standing.Curve.Where(r => !ForceTravelPlot.IsSolid(r)).Max(r => r.ShaftForce));
        json.WriteEndObject();
    }

    private static void Zones(Utf8JsonWriter json, StandingResult standing, Readable read)
    {
        var zones = StrokeZones.Of(standing);
        json.List("zones", zones.Zones, z =>
        {
            json.WriteString("name", z.Name);
            json.Short("high", z.High);
            json.Short("low", z.Low);
        });
        json.List("edges", zones.Edges, e =>
        {
            json.WriteString("name", e.Name);
            json.Short("showing", e.Showing);
            json.Short("force", standing.Curve.MinBy(r => Math.Abs(r.ShaftShowing - e.Showing))!.ShaftForce);
            json.WriteString("words", $"{read.Text(Dimension.Length, e.Showing)} {e.Name}");
        });
    }

    private static void DamperLines(Utf8JsonWriter json, RunSamples samples)
    {
        json.WriteStartArray("damper");
        if (samples.Run.Scenario.Corner.Coilover.Damper is { } damper)
        {
            var travel = samples.Run.Figures.Travel;
            double right = 1.1 * Math.Max(travel.PeakCompressionSpeed, 0.05), left = 1.1 * Math.Max(travel.PeakReboundSpeed, 0.05);
            int i = 0;
            foreach ((double factorIn, double factorOut) in DamperPlot.Factors(damper))
            {
                if (i == 0 || factorIn != 1) Half(json, i == 0 ? "outside zones" : FormattableString.Invariant($"×{factorIn:0.##} ") + DamperPlot.ZoneName(samples, damper.Zones[i - 1]), damper.Compression, right, 1, factorIn, i);
                if (i == 0 || factorOut != 1) Half(json, i == 0 ? "outside zones" : FormattableString.Invariant($"×{factorOut:0.##} ") + DamperPlot.ZoneName(samples, damper.Zones[i - 1]), damper.Rebound, left, -1, factorOut, i);
                i++;
            }
        }

        json.WriteEndArray();
        TimeShare(json, samples);
    }

    private static void Half(Utf8JsonWriter json, string name, System.Collections.Immutable.ImmutableArray<TablePoint> points, double end, int sign, double factor, int zone)
    {
        json.WriteStartObject();
        json.WriteString("name", name);
        json.WriteNumber("zone", zone);
        json.Line("line", points.Select(p => p.At).Where(v => v < end).Prepend(0).Append(end).Select(v => (sign * v, sign * factor * DamperPlot.Force(points, v))));
        json.WriteEndObject();
    }

    private static void TimeShare(Utf8JsonWriter json, RunSamples samples)
    {
        const int bins = 60;
        double from = samples.Shown.Min(s => s.ShaftVelocity), to = Math.Max(samples.Shown.Max(s => s.ShaftVelocity), from + 1e-6);
        double[] shares = new double[bins];
        foreach (Sample s in samples.Shown) shares[Math.Min(bins - 1, (int)((s.ShaftVelocity - from) / (to - from) * bins))] += 1.0 / samples.Shown.Length;
        json.WriteStartObject("timeShare");
        json.Short("from", from);
        json.Short("to", to);
        json.Numbers("shares", shares);
        json.WriteEndObject();
    }

    private static void Events(Utf8JsonWriter json, RunResult run, Readable read) => json.List("events", run.Events, e =>
    {
        json.Short("t", e.Time);
        json.Short("x", run.Scenario.Excitation is QuarterCar.Scenarios.Course ? e.Distance : e.Time);
        json.Short("showing", run.Scenario.Corner.Coilover.Stroke - e.ShaftTravel);
        json.WriteString("words", EventWords.Of(e.Event));
        json.WriteNumber("rank", EventWords.Rank(e.Event));
        json.WriteBoolean("contact", EventWords.IsContact(e.Event));
        json.WriteBoolean("release", EventWords.IsRelease(e.Event));
        if (e.Contact is { } contact) json.WriteString("peak", read.Text(Dimension.Force, contact.PeakForce));
    });

    private static void Moving(Utf8JsonWriter json, RunResult run, RunSamples samples)
    {
        var geometry = new CoiloverGeometry(run.Standing);
        double first = samples.First, last = samples.Last;
        Sample[] frames = [.. Enumerable.Range(0, Frames + 1).Select(i => run.Track.At(first + ((last - first) * i / Frames)))];
        json.WriteStartObject("frames");
        json.Numbers("t", frames.Select(f => f.Time));
        json.Numbers("x", frames.Select(f => f.Distance));
        json.Numbers("showing", frames.Select(f => f.ShaftShowing));
        json.Numbers("sprung", frames.Select(f => f.Sprung));
        json.Numbers("unsprung", frames.Select(f => f.Unsprung));
        json.Numbers("tyre", frames.Select(f => f.TyreForce));
        json.Numbers("acceleration", frames.Select(f => f.SprungAcceleration));
        json.Numbers("velocity", frames.Select(f => f.ShaftVelocity));
        json.Numbers("damper", frames.Select(f => f.DamperForce));
        json.Numbers("force", frames.Select(f => f.ShaftForce));
        json.Numbers("gap", frames.Select(f => f.SliderGap ?? double.NaN));
        json.Numbers("heights", frames.SelectMany(f => geometry.Heights(f.ShaftTravel, f.LowerSpringCompression, f.UpperGroupCompression)));
        json.WriteEndObject();
        json.WriteStartObject("ground");
        json.Line("line", Ground(run, frames));
        json.Short("radius", run.Scenario.Corner.Tyre.Radius ?? 0.4);
        json.WriteEndObject();
        geometry.Write(json);
    }

    private static IEnumerable<(double, double)> Ground(RunResult run, Sample[] frames)
    {
        if (run.Track is not RunTrack track) return [];
        const double around = 4, tiny = 1e-6;
        double from = frames[0].Distance - around, to = frames[^1].Distance + around;
        var at = Enumerable.Range(0, 401).Select(i => from + ((to - from) * i / 400)).ToList();
        foreach (double corner in track.Course.Ground.Corners.ToArray().Where(c => c > from && c < to).Take(400)) at.AddRange([corner - tiny, corner + tiny]);
        at.Sort();
        return at.Select(s => (s, track.Course.Ground.Height(s)));
    }
}
