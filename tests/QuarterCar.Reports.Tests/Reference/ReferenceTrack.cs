using System.Collections.Immutable;
using System.Globalization;

using QuarterCar.Model;
using QuarterCar.Studies;

namespace QuarterCar.Reports.Tests.Reference;

/// <summary>A reference trace as a track: its rows, and straight lines between them.</summary>
internal sealed class ReferenceTrack : Track
{
    private readonly ImmutableArray<Sample> _rows;
    private readonly double _step;

    private ReferenceTrack(ImmutableArray<Sample> rows, double step) => (_rows, _step) = (rows, step);

    public ImmutableArray<Sample> Given => _rows;

    public override double EndTime => _rows[^1].Time;

    public override long RowCount => (long)Math.Floor((EndTime / _step) + 1e-9) + 1;

    /// <summary>Reads NAME.trace.csv.</summary>
    /// <param name="name">Of the scenario.</param>
    /// <param name="step">Between the rows that the track gives, s.</param>
    public static ReferenceTrack Read(string name, double step = 0.01)
    {
        string[] lines = File.ReadAllLines(ReferenceData.File(name + ".trace.csv"));
        string[] header = lines[0].Split(',');
        return new([.. lines.Skip(1).Select(line => Row(header, line.Split(',')))], step);
    }

    public override Sample At(double time)
    {
        double place = Math.Clamp(time / (_rows[1].Time - _rows[0].Time), 0, _rows.Length - 1);
        if (Math.Abs(place - Math.Round(place)) < 1e-6) place = Math.Round(place); // k·step in floating point
        int i = Math.Min((int)place, _rows.Length - 2);
        return Between(_rows[i], _rows[i + 1], place - i);
    }

    public override IEnumerable<Sample> Rows()
    {
        for (long k = 0; k < RowCount; k++) yield return At(k * _step);
    }

    private static Sample Row(string[] header, string[] cells)
    {
        const double g = 9.80665;
        double Of(string name) => double.Parse(cells[Array.IndexOf(header, name)], CultureInfo.InvariantCulture);
        double? Maybe(string name) => cells[Array.IndexOf(header, name)] is { Length: > 0 } text ? double.Parse(text, CultureInfo.InvariantCulture) : null;
        return new Sample
        {
            Time = Of("time_s"),
            Distance = Of("distance_m"),
            Ground = Of("ground_m"),
            Road = Of("road_m"),
            Sprung = Of("sprung_m"),
            SprungVelocity = Of("sprung_velocity_m_s"),
            Unsprung = Of("unsprung_m"),
            UnsprungVelocity = Of("unsprung_velocity_m_s"),
            WheelTravel = Of("wheel_travel_m"),
            WheelVelocity = Of("wheel_velocity_m_s"),
            ShaftTravel = Of("shaft_travel_m"),
            ShaftVelocity = Of("shaft_velocity_m_s"),
            ShaftShowing = Of("shaft_showing_m"),
            SprungAcceleration = Of("sprung_acceleration_g") * g,
            UnsprungAcceleration = Of("unsprung_acceleration_g") * g,
            SpringForce = Of("spring_force_N"),
            DamperForce = Of("damper_force_N"),
            GasForce = Of("gas_force_N"),
            BumpStopForce = Of("bump_stop_force_N"),
            ShaftForce = Of("shaft_force_N"),
            TyreForce = Of("tyre_force_N"),
            TyreDeflection = Of("tyre_deflection_m"),
            SliderGap = Maybe("slider_gap_m"),
            LowerSpringCompression = Of("lower_spring_compression_m"),
            UpperGroupCompression = Of("upper_group_compression_m"),
            CoilNutForce = Of("coil_nut_force_N"),
            StopNutForce = Of("stop_nut_force_N"),
            Region = Enum.Parse<RateRegion>(cells[Array.IndexOf(header, "rate_region")], ignoreCase: true),
        };
    }

    private static Sample Between(Sample a, Sample b, double t)
    {
        if (t == 0) return a;
        if (t == 1) return b;
        double Mix(double from, double to) => from + (t * (to - from));
        return a with
        {
            Time = Mix(a.Time, b.Time),
            Distance = Mix(a.Distance, b.Distance),
            Ground = Mix(a.Ground, b.Ground),
            Road = Mix(a.Road, b.Road),
            Sprung = Mix(a.Sprung, b.Sprung),
            Unsprung = Mix(a.Unsprung, b.Unsprung),
            WheelTravel = Mix(a.WheelTravel, b.WheelTravel),
            ShaftTravel = Mix(a.ShaftTravel, b.ShaftTravel),
            ShaftVelocity = Mix(a.ShaftVelocity, b.ShaftVelocity),
            ShaftShowing = Mix(a.ShaftShowing, b.ShaftShowing),
            SprungAcceleration = Mix(a.SprungAcceleration, b.SprungAcceleration),
            UnsprungAcceleration = Mix(a.UnsprungAcceleration, b.UnsprungAcceleration),
            SpringForce = Mix(a.SpringForce, b.SpringForce),
            DamperForce = Mix(a.DamperForce, b.DamperForce),
            GasForce = Mix(a.GasForce, b.GasForce),
            BumpStopForce = Mix(a.BumpStopForce, b.BumpStopForce),
            ShaftForce = Mix(a.ShaftForce, b.ShaftForce),
            TyreForce = Mix(a.TyreForce, b.TyreForce),
            TyreDeflection = Mix(a.TyreDeflection, b.TyreDeflection),
        };
    }
}
