using System.Diagnostics;

namespace QuarterCar.Fuzzing;

/// <summary>Makes an input smaller while its fault stays the same (delta debugging: Zeller, Hildebrandt, IEEE Trans. Software Eng. 28(2), 2002, 183–200).</summary>
internal static class Shrinker
{
    private static readonly TimeSpan s_patience = TimeSpan.FromSeconds(30);

    /// <summary>The smallest input found with a fault of this kind.</summary>
    public static byte[] Shrink(Reader reader, byte[] input, string kind)
    {
        var watch = Stopwatch.StartNew();
        bool Fails(byte[] smaller) => Trial.Fault(reader, smaller, out _) is { } fault && Trial.Kind(fault) == kind;
        for (int piece = Math.Max(1, input.Length / 2); watch.Elapsed < s_patience; piece /= 2)
        {
            for (int at = 0; at < input.Length && watch.Elapsed < s_patience;)
            {
                byte[] smaller = [.. input[..at], .. input[Math.Min(input.Length, at + piece)..]];
                if (Fails(smaller)) input = smaller;
                else at += piece;
            }

            if (piece <= 1) break;
        }

        return input;
    }
}
