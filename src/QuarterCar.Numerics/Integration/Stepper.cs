using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace QuarterCar.Numerics.Integration;

/// <summary>
/// Makes trial steps of <see cref="DormandPrince853"/> and their interpolants. Knows neither tolerances nor events.
/// Owns the stage memory, so one stepper serves one run at a time; nothing is allocated while stepping.
/// </summary>
internal sealed class Stepper
{
    // The tableau as one block, a row of sixteen a stage, and where a row's weights begin after stage 0: the columns
    // before are zeros.
    private static readonly double[] s_weight = Weights();
    private static readonly double[] s_node = [.. DormandPrince853.C];
    private static readonly double[] s_final;
    private static readonly double[] s_dense;

    private readonly Vector256<double>[] _k = new Vector256<double>[DormandPrince853.AllStages];

    static Stepper()
    {
        // Solution, fifth- and third-order estimate side by side for the stages that they share: 0 and 5 to 11.
        s_final = new double[3 * DormandPrince853.Stages];
        for (int j = 0; j < DormandPrince853.Stages; j++)
        {
            s_final[3 * j] = DormandPrince853.B[j];
            s_final[3 * j + 1] = DormandPrince853.Error5[j];
            s_final[3 * j + 2] = DormandPrince853.Error3[j];
        }

        s_dense = new double[4 * DormandPrince853.AllStages];
        for (int j = 0; j < DormandPrince853.AllStages; j++)
        {
            for (int d = 0; d < 4; d++)
                s_dense[4 * j + d] = DormandPrince853.Dense[d][j];
        }
    }

    /// <summary>Evaluations of the derivative since the start of the run.</summary>
    public long Evaluations { get; set; }

    /// <summary>dy/dt at the start of the next step; set by the caller after a start, a break or an event.</summary>
    public ref Vector256<double> First => ref _k[0];

    /// <summary>dy/dt at the end of the last completed step.</summary>
    public Vector256<double> Last => _k[DormandPrince853.Stages];

    /// <summary>A trial step.</summary>
    /// <param name="system">The equations.</param>
    /// <param name="t">Start, s.</param>
    /// <param name="h">Length, s.</param>
    /// <param name="y">State at the start.</param>
    /// <param name="scale">What an error is measured by.</param>
    /// <param name="errorNorm">Estimated error over the allowed one; NaN where the trial left the numbers.</param>
    /// <returns>State at the end.</returns>
    public Vector256<double> Try<TSystem>(ref TSystem system, double t, double h, Vector256<double> y, in ErrorScale scale, out double errorNorm)
        where TSystem : struct, IPiecewiseSystem
    {
        ref Vector256<double> k = ref MemoryMarshal.GetArrayDataReference(_k);
        Stages(ref system, ref k, t, h, y, 1, DormandPrince853.Stages);
        ref double f = ref MemoryMarshal.GetArrayDataReference(s_final);
        Vector256<double> k0 = k;
        Vector256<double> sum = k0 * f, e5 = k0 * Unsafe.Add(ref f, 1), e3 = k0 * Unsafe.Add(ref f, 2);
        for (int j = 5; j < DormandPrince853.Stages; j++)
        {
            Vector256<double> kj = Unsafe.Add(ref k, j);
            sum = Vector256.FusedMultiplyAdd(kj, Vector256.Create(Unsafe.Add(ref f, 3 * j)), sum);
            e5 = Vector256.FusedMultiplyAdd(kj, Vector256.Create(Unsafe.Add(ref f, 3 * j + 1)), e5);
            e3 = Vector256.FusedMultiplyAdd(kj, Vector256.Create(Unsafe.Add(ref f, 3 * j + 2)), e3);
        }

        Vector256<double> y1 = Vector256.FusedMultiplyAdd(sum, Vector256.Create(h), y);
        Vector256<double> allowed = scale.Allowed(y, y1);
        e5 /= allowed;
        e3 /= allowed;
        double n5 = Vector256.Dot(e5, e5), n3 = Vector256.Dot(e3, e3), below = n5 + 0.01 * n3;

        // The half stands outside the root: four times a sum near the largest number is infinite, and a trial that ran
        // away would be taken for one without error.
        errorNorm = below == 0 ? 0 : double.IsFinite(below) ? 0.5 * h * n5 / Math.Sqrt(below) : double.NaN;
        return y1;
    }

    /// <summary>The interpolant of the trial step just made, and the derivative at its end in <see cref="Last"/>.</summary>
    public void Complete<TSystem>(ref TSystem system, double t, double h, Vector256<double> y, Vector256<double> y1, ref DenseStep step)
        where TSystem : struct, IPiecewiseSystem
    {
        ref Vector256<double> k = ref MemoryMarshal.GetArrayDataReference(_k);
        Unsafe.Add(ref k, DormandPrince853.Stages) = system.Derivative(t + h, y1);
        Stages(ref system, ref k, t, h, y, 13, DormandPrince853.AllStages);
        Evaluations++;
        ref double d = ref MemoryMarshal.GetArrayDataReference(s_dense);
        Vector256<double> k0 = k;
        Vector256<double> c4 = k0 * d, c5 = k0 * Unsafe.Add(ref d, 1), c6 = k0 * Unsafe.Add(ref d, 2), c7 = k0 * Unsafe.Add(ref d, 3);
        for (int j = 5; j < DormandPrince853.AllStages; j++)
        {
            Vector256<double> kj = Unsafe.Add(ref k, j);
            c4 = Vector256.FusedMultiplyAdd(kj, Vector256.Create(Unsafe.Add(ref d, 4 * j)), c4);
            c5 = Vector256.FusedMultiplyAdd(kj, Vector256.Create(Unsafe.Add(ref d, 4 * j + 1)), c5);
            c6 = Vector256.FusedMultiplyAdd(kj, Vector256.Create(Unsafe.Add(ref d, 4 * j + 2)), c6);
            c7 = Vector256.FusedMultiplyAdd(kj, Vector256.Create(Unsafe.Add(ref d, 4 * j + 3)), c7);
        }

        Vector256<double> hv = Vector256.Create(h), rise = y1 - y, last = Unsafe.Add(ref k, DormandPrince853.Stages);
        step.Start = t;
        step.Length = h;
        step.C0 = y;
        step.C1 = rise;
        step.C2 = hv * k0 - rise;
        step.C3 = rise + rise - hv * (last + k0);
        step.C4 = hv * c4;
        step.C5 = hv * c5;
        step.C6 = hv * c6;
        step.C7 = hv * c7;
    }

    private void Stages<TSystem>(ref TSystem system, ref Vector256<double> k, double t, double h, Vector256<double> y, int from, int to)
        where TSystem : struct, IPiecewiseSystem
    {
        ref double row = ref Unsafe.Add(ref MemoryMarshal.GetArrayDataReference(s_weight), from * DormandPrince853.AllStages);
        ref double node = ref MemoryMarshal.GetArrayDataReference(s_node);
        Vector256<double> hv = Vector256.Create(h), newest = Unsafe.Add(ref k, from - 1), first = k;
        for (int s = from; s < to; s++)
        {
            // All but the newest stage are added up, and scaled, before the newest is wanted: only one multiplication
            // and addition stands between it and the next evaluation.
            Vector256<double> sum = s == 1 ? Vector256<double>.Zero : first * row;
            for (int j = FirstColumn(s); j < s - 1; j++)
                sum = Vector256.FusedMultiplyAdd(Unsafe.Add(ref k, j), Vector256.Create(Unsafe.Add(ref row, j)), sum);
            Vector256<double> older = Vector256.FusedMultiplyAdd(sum, hv, y);
            newest = system.Derivative(
                Math.FusedMultiplyAdd(Unsafe.Add(ref node, s), h, t),
                Vector256.FusedMultiplyAdd(newest, Vector256.Create(Unsafe.Add(ref row, s - 1) * h), older));
            Unsafe.Add(ref k, s) = newest;
            row = ref Unsafe.Add(ref row, DormandPrince853.AllStages);
        }

        Evaluations += to - from;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static int FirstColumn(int stage) => stage <= 4 ? 2 : stage <= DormandPrince853.Stages ? 3 : 5;

    private static double[] Weights()
    {
        double[] weights = new double[DormandPrince853.AllStages * DormandPrince853.AllStages];
        for (int s = 0; s < DormandPrince853.AllStages; s++)
        {
            for (int j = 0; j < DormandPrince853.A[s].Length; j++)
                weights[s * DormandPrince853.AllStages + j] = DormandPrince853.A[s][j];
        }

        return weights;
    }
}
