using MathNet.Numerics.LinearAlgebra;

namespace QuarterCar.Numerics.Tests.Signals;

/// <summary>W_k of ISO 2631-1 as a chain of four blocks, each x'' = −ω²x − (ω/Q)x' + ω²·input: an independent writing of the filter.</summary>
internal static class WkChain
{
    private static readonly (double W, double Q)[] s_blocks =
        [(Turns(0.4), Math.Sqrt(0.5)), (Turns(100), Math.Sqrt(0.5)), (Turns(12.5), 0.63), (Turns(3.35), 0.91)];

    /// <summary>Matrix of (four times x, x'; input; input's rise over the step), times the step.</summary>
    public static Matrix<double> Widened(double step)
    {
        Matrix<double> a = Matrix<double>.Build.Dense(10, 10);
        for (int i = 0; i < 4; i++)
        {
            (double w, double q) = s_blocks[i];
            a[2 * i, 2 * i + 1] = 1;
            a[2 * i + 1, 2 * i] = -w * w;
            a[2 * i + 1, 2 * i + 1] = -w / q;
            Row(i).Multiply(w * w).EnumerateIndexed().ToList().ForEach(e => a[2 * i + 1, e.Item1] += e.Item2);
        }

        a *= step;
        a[8, 9] = 1;
        return a;
    }

    /// <summary>Weighted acceleration of a state.</summary>
    public static double Output(Vector<double> state) => Row(4) * state;

    // What block i takes in: the input; the high-pass, u − x'(Q ω)⁻¹ − x of block 0; x of block 1; x + x'/ω3 of block 2.
    // Row 4 is the output, x + x'/(Q5 ω5) + x''/ω5² of block 3 times (ω5/ω6)².
    private static Vector<double> Row(int block)
    {
        Vector<double> row = Vector<double>.Build.Dense(10);
        (double w, double q) = s_blocks[Math.Max(0, block - 1)];
        switch (block)
        {
            case 0:
                row[8] = 1;
                break;
            case 1:
                row[8] = 1;
                row[0] = -1;
                row[1] = -1 / (q * w);
                break;
            case 2:
                row[2] = 1;
                break;
            case 3:
                row[4] = 1;
                row[5] = 1 / Turns(12.5);
                break;
            default:
                double w5 = Turns(2.37), share = w5 * w5 / (w * w);
                row[6] = share * (1 - w * w / (w5 * w5));
                row[7] = share * (1 / (0.91 * w5) - w / q / (w5 * w5));
                row += Row(3) * (share * w * w / (w5 * w5));
                break;
        }

        return row;
    }

    private static double Turns(double hz) => 2 * Math.PI * hz;
}
