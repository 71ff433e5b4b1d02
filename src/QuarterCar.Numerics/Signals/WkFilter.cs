using System.Numerics;
using System.Runtime.Intrinsics;

namespace QuarterCar.Numerics.Signals;

/// <summary>
/// Weights a vertical acceleration as a seated or standing person feels it: the frequency weighting W_k of ISO 2631-1,
/// as a filter in time that starts from rest. Takes samples at a uniform step, and what the velocity gained between them:
/// exact for an acceleration that is a parabola from sample to sample, and of a blow that is over before the next sample it
/// has the whole impulse. One owner; nothing is allocated while filtering.
/// </summary>
/// <remarks>
/// Source: ISO 2631-1:1997, annex A: H = Hh·Hl·Ht·Hs, with the parameters of ISO 8041 (f1 0.4, f2 100, f3 = f4 12.5,
/// f5 2.37, f6 3.35 Hz, Q4 0.63, Q5 = Q6 = 0.91, the band limits with Q = 1/√2). All eight poles are distinct and the
/// denominator is three degrees above the numerator, so H is the sum over the four pole pairs of r/(s − p) and its
/// conjugate. The four pairs run side by side.
/// </remarks>
public sealed class WkFilter
{
    private const int Pairs = 4;
    private const double Q4 = 0.63, Q5 = 0.91, Q6 = 0.91;
    private static readonly double s_w1 = Turns(0.4), s_w2 = Turns(100), s_w3 = Turns(12.5), s_w4 = Turns(12.5), s_w5 = Turns(2.37), s_w6 = Turns(3.35);
    private static readonly Complex[] s_poles = [Pole(s_w1, Math.Sqrt(0.5)), Pole(s_w2, Math.Sqrt(0.5)), Pole(s_w4, Q4), Pole(s_w6, Q6)];
    private static readonly (Vector256<double> Real, Vector256<double> Imaginary) s_output = Output();

    // z(n+1) = turn·z(n) + before·a(n) + now·a(n+1) + between·(mean − half their sum), complex, a lane for each pole pair.
    private readonly Vector256<double> _turnReal, _turnImaginary, _beforeReal, _beforeImaginary, _nowReal, _nowImaginary, _betweenReal, _betweenImaginary, _outputReal, _outputImaginary;
    private Vector256<double> _real, _imaginary;
    private double _last;
    private bool _started;

    /// <summary>A filter at rest.</summary>
    /// <param name="step">Time between samples, s; above 0.</param>
    public WkFilter(double step)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(step);
        (_outputReal, _outputImaginary) = s_output;
        for (int i = 0; i < Pairs; i++)
        {
            // z' = p·z + a over a step with a straight: z·exp(ph) + a(n)·h·(φ1 − φ2) + a(n+1)·h·φ2, the entries of the
            // exponential of the matrix that carries (z, a, h·a'). The parabola 6τ(1 − τ), of mean 1, adds 6h·(φ2 − 2φ3).
            Complex ph = s_poles[i] * step, latest = Phi3(ph), late = 0.5 + ph * latest, whole = 1 + ph * late;
            Complex turn = Complex.Exp(ph), before = step * (whole - late), now = step * late, between = 6 * step * (late - 2 * latest);
            _turnReal = _turnReal.WithElement(i, turn.Real);
            _turnImaginary = _turnImaginary.WithElement(i, turn.Imaginary);
            _beforeReal = _beforeReal.WithElement(i, before.Real);
            _beforeImaginary = _beforeImaginary.WithElement(i, before.Imaginary);
            _nowReal = _nowReal.WithElement(i, now.Real);
            _nowImaginary = _nowImaginary.WithElement(i, now.Imaginary);
            _betweenReal = _betweenReal.WithElement(i, between.Real);
            _betweenImaginary = _betweenImaginary.WithElement(i, between.Imaginary);
        }
    }

    /// <summary>Takes the next sample of an acceleration that runs straight from sample to sample.</summary>
    /// <param name="acceleration">m/s², at this sample; the first one is jumped to from rest.</param>
    /// <returns>Weighted acceleration at this sample, m/s².</returns>
    public double Next(double acceleration) => Next(acceleration, 0.5 * (_last + acceleration));

    /// <summary>Takes the next sample.</summary>
    /// <param name="acceleration">m/s², at this sample; the first one is jumped to from rest.</param>
    /// <param name="mean">Since the sample before, m/s²: what the velocity gained, over the step.</param>
    /// <returns>Weighted acceleration at this sample, m/s².</returns>
    public double Next(double acceleration, double mean)
    {
        if (!_started)
        {
            _started = true;
            _last = acceleration;
            return 0;
        }

        Vector256<double> before = Vector256.Create(_last), now = Vector256.Create(acceleration), between = Vector256.Create(mean - 0.5 * (_last + acceleration));
        Vector256<double> real = _turnReal * _real - _turnImaginary * _imaginary + (_beforeReal * before + _nowReal * now + _betweenReal * between);
        _imaginary = _turnImaginary * _real + _turnReal * _imaginary + (_beforeImaginary * before + _nowImaginary * now + _betweenImaginary * between);
        _real = real;
        _last = acceleration;
        return Vector256.Sum(_outputReal * _real + _outputImaginary * _imaginary);
    }

    /// <summary>The weighting of a steady sine: weighted over unweighted amplitude.</summary>
    /// <param name="hz">Frequency, Hz; above 0.</param>
    public static double Gain(double hz)
    {
        var s = new Complex(0, Turns(hz));
        Complex h = Numerator(s);
        foreach (Complex p in s_poles)
            h /= (s - p) * (s - Complex.Conjugate(p));
        return h.Magnitude;
    }

    // φ3(z) = (e^z − 1 − z − z²/2)/z³ = Σ z^k/(k + 3)!; the closed form cancels where z is small.
    private static Complex Phi3(Complex z)
    {
        if (z.Magnitude > 1)
            return (Complex.Exp(z) - 1 - z - 0.5 * z * z) / (z * z * z);
        Complex sum = 0, term = 1.0 / 6;
        for (int k = 0; k < 20; k++)
        {
            sum += term;
            term *= z / (k + 4);
        }

        return sum;
    }

    private static double Turns(double hz) => 2 * Math.PI * hz;

    private static Complex Pole(double w, double q) => new(-w / (2 * q), w * Math.Sqrt(1 - 1 / (4 * q * q)));

    // Over the product of (s − p)(s − p*) of all pairs: Hh gives s², Hl ω2², Ht ω4²(1 + s/ω3), Hs s² + ω5/Q5·s + ω5².
    private static Complex Numerator(Complex s) =>
        s * s * (s_w2 * s_w2) * (s_w4 * s_w4) * (1 + s / s_w3) * (s * s + s_w5 / Q5 * s + s_w5 * s_w5);

    private static (Vector256<double> Real, Vector256<double> Imaginary) Output()
    {
        Vector256<double> real = default, imaginary = default;
        for (int i = 0; i < Pairs; i++)
        {
            Complex p = s_poles[i], residue = Numerator(p) / (p - Complex.Conjugate(p));
            for (int k = 0; k < Pairs; k++)
            {
                if (k != i)
                    residue /= (p - s_poles[k]) * (p - Complex.Conjugate(s_poles[k]));
            }

            // A pair adds r·z and its conjugate, which is 2·(Re r·Re z − Im r·Im z).
            real = real.WithElement(i, 2 * residue.Real);
            imaginary = imaginary.WithElement(i, -2 * residue.Imaginary);
        }

        return (real, imaginary);
    }
}
