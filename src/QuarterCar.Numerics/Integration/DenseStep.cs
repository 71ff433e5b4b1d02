using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace QuarterCar.Numerics.Integration;

/// <summary>
/// One accepted step with its interpolant: y(θ) = C0 + θ(C1 + (1−θ)(C2 + θ(C3 + (1−θ)(C4 + θ(C5 + (1−θ)(C6 + θC7)))))),
/// θ = (t − Start)/Length, the nested form of Hairer, Nørsett and Wanner (see <see cref="DormandPrince853"/>).
/// </summary>
public struct DenseStep
{
    /// <summary>Time at θ = 0, s.</summary>
    public double Start;

    /// <summary>Length of the step that made the interpolant, s; its use may end earlier, at <see cref="End"/>.</summary>
    public double Length;

    /// <summary>Where this step is left: its full length, or the event that cut it, s.</summary>
    public double End;

    /// <summary>Tag of the piece that the system was on; its meaning is the system's own.</summary>
    public int Piece;

    /// <summary>State at the start.</summary>
    public Vector256<double> C0;

    /// <summary>Coefficient of the nested form.</summary>
    public Vector256<double> C1, C2, C3, C4, C5, C6, C7;

    /// <summary>State at θ (0 at the start, 1 after the full length).</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public readonly Vector256<double> AtTheta(double theta)
    {
        Vector256<double> a = Vector256.Create(theta), b = Vector256.Create(1 - theta);
        Vector256<double> p = Vector256.FusedMultiplyAdd(C7, a, C6);
        p = Vector256.FusedMultiplyAdd(p, b, C5);
        p = Vector256.FusedMultiplyAdd(p, a, C4);
        p = Vector256.FusedMultiplyAdd(p, b, C3);
        p = Vector256.FusedMultiplyAdd(p, a, C2);
        p = Vector256.FusedMultiplyAdd(p, b, C1);
        return Vector256.FusedMultiplyAdd(p, a, C0);
    }

    /// <summary>State at a time within the step.</summary>
    public readonly Vector256<double> At(double t) => AtTheta((t - Start) / Length);

    /// <summary>Derivative of the interpolant at θ, per second; exact at both ends, one order lower between.</summary>
    public readonly Vector256<double> DerivativeAtTheta(double theta)
    {
        // p and its derivative q by the product rule through the nested form.
        Vector256<double> a = Vector256.Create(theta), b = Vector256.Create(1 - theta);
        Vector256<double> p = Vector256.FusedMultiplyAdd(C7, a, C6), q = C7;
        q = q * b - p;
        p = Vector256.FusedMultiplyAdd(p, b, C5);
        q = q * a + p;
        p = Vector256.FusedMultiplyAdd(p, a, C4);
        q = q * b - p;
        p = Vector256.FusedMultiplyAdd(p, b, C3);
        q = q * a + p;
        p = Vector256.FusedMultiplyAdd(p, a, C2);
        q = q * b - p;
        p = Vector256.FusedMultiplyAdd(p, b, C1);
        q = q * a + p;
        return q / Vector256.Create(Length);
    }

    /// <summary>One component of <see cref="AtTheta"/> and <see cref="DerivativeAtTheta"/> at four places, each with the same bits.</summary>
    /// <param name="theta">The places.</param>
    /// <param name="component">From 0 to 3.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public readonly (Vector256<double> Value, Vector256<double> Derivative) AtThetas(Vector256<double> theta, int component)
    {
        Vector256<double> a = theta, b = Vector256<double>.One - theta;
        Vector256<double> p = Vector256.FusedMultiplyAdd(All(C7, component), a, All(C6, component)), q = All(C7, component);
        q = q * b - p;
        p = Vector256.FusedMultiplyAdd(p, b, All(C5, component));
        q = q * a + p;
        p = Vector256.FusedMultiplyAdd(p, a, All(C4, component));
        q = q * b - p;
        p = Vector256.FusedMultiplyAdd(p, b, All(C3, component));
        q = q * a + p;
        p = Vector256.FusedMultiplyAdd(p, a, All(C2, component));
        q = q * b - p;
        p = Vector256.FusedMultiplyAdd(p, b, All(C1, component));
        q = q * a + p;
        return (Vector256.FusedMultiplyAdd(p, a, All(C0, component)), q / Vector256.Create(Length));

        static Vector256<double> All(Vector256<double> c, int component) => Vector256.Create(c.GetElement(component));
    }

    /// <summary>
    /// Largest distance of an interpolant, or of a part or difference of its components, from the straight line between
    /// its ends: a bound, from the largest values of the nested form's factors on 0 ≤ θ ≤ 1 (1/4, 4/27, 1/16, 108/3125,
    /// 1/64, 6912/823543).
    /// </summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector128<double> Bulge(
        Vector128<double> c2, Vector128<double> c3, Vector128<double> c4, Vector128<double> c5, Vector128<double> c6, Vector128<double> c7)
    {
        Vector128<double> low = Vector128.Abs(c2) * (1.0 / 4) + Vector128.Abs(c3) * (4.0 / 27);
        Vector128<double> mid = Vector128.Abs(c4) * (1.0 / 16) + Vector128.Abs(c5) * (108.0 / 3125);
        Vector128<double> high = Vector128.Abs(c6) * (1.0 / 64) + Vector128.Abs(c7) * (6912.0 / 823543);
        return low + mid + high;
    }

    /// <summary>The largest that the interpolant's last term gets on the step, over a scale, the worst component.</summary>
    /// <param name="scale">Positive, in the state's units.</param>
    public readonly double LastTerm(Vector256<double> scale)
    {
        Vector256<double> share = Vector256.Abs(C7) / scale;
        Vector128<double> worst = Vector128.Max(share.GetLower(), share.GetUpper());
        return (6912.0 / 823543) * Math.Max(worst.ToScalar(), worst.GetElement(1));
    }
}
