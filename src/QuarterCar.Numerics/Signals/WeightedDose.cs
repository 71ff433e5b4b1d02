namespace QuarterCar.Numerics.Signals;

/// <summary>How much vibration a person got: r.m.s. of the weighted acceleration and fourth-power dose value.</summary>
/// <param name="Rms">√(∫a_w² dt / T), m/s².</param>
/// <param name="DoseValue">(∫a_w⁴ dt)^¼, m/s^1.75.</param>
/// <param name="Duration">T, s.</param>
/// <remarks>Source: ISO 2631-1:1997, 6.1 and 6.3.2; the estimate BS 6841:1987. Clause numbers from memory.</remarks>
public readonly record struct WeightedDose(double Rms, double DoseValue, double Duration)
{
    /// <summary>Dose value estimated from the r.m.s., 1.4·a_w·T^¼, m/s^1.75: good for steady vibration without shocks.</summary>
    public double EstimatedDoseValue => 1.4 * Rms * Math.Pow(Duration, 0.25);

    /// <summary>Dose of a vertical acceleration, weighted here by <see cref="WkFilter"/> from rest.</summary>
    /// <param name="acceleration">Samples, m/s².</param>
    /// <param name="step">Time between them, s.</param>
    public static WeightedDose Of(ReadOnlySpan<double> acceleration, double step)
    {
        var filter = new WkFilter(step);
        var sum = default(Sums);
        foreach (double a in acceleration)
            sum.Add(filter.Next(a));
        return sum.Dose(step);
    }

    /// <summary>Dose of a vertical acceleration whose velocity is known too, weighted here by <see cref="WkFilter"/> from rest: a blow between two samples counts with its whole impulse.</summary>
    /// <param name="acceleration">Samples, m/s².</param>
    /// <param name="velocity">As many, m/s.</param>
    /// <param name="step">Time between them, s.</param>
    public static WeightedDose Of(ReadOnlySpan<double> acceleration, ReadOnlySpan<double> velocity, double step)
    {
        var filter = new WkFilter(step);
        var sum = default(Sums);
        for (int i = 0; i < acceleration.Length; i++)
            sum.Add(filter.Next(acceleration[i], i == 0 ? 0 : (velocity[i] - velocity[i - 1]) / step));
        return sum.Dose(step);
    }

    /// <summary>Dose of an acceleration that is weighted already.</summary>
    /// <param name="weighted">Samples, m/s².</param>
    /// <param name="step">Time between them, s.</param>
    public static WeightedDose OfWeighted(ReadOnlySpan<double> weighted, double step)
    {
        var sum = default(Sums);
        foreach (double a in weighted)
            sum.Add(a);
        return sum.Dose(step);
    }

    // Trapezoid rule: the first and the last sample count half.
    private struct Sums
    {
        private double _squares, _fourths, _first, _last;
        private long _count;

        public void Add(double weighted)
        {
            double square = weighted * weighted;
            if (_count++ == 0)
                _first = square;
            _last = square;
            _squares += square;
            _fourths += square * square;
        }

        public readonly WeightedDose Dose(double step)
        {
            if (_count < 2)
                return default;
            double duration = (_count - 1) * step;
            double second = step * (_squares - 0.5 * (_first + _last));
            double fourth = step * (_fourths - 0.5 * (_first * _first + _last * _last));
            return new WeightedDose(Math.Sqrt(Math.Max(0, second) / duration), Math.Pow(Math.Max(0, fourth), 0.25), duration);
        }
    }
}
