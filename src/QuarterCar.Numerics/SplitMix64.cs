namespace QuarterCar.Numerics;

/// <summary>
/// A repeatable stream of 64-bit numbers: SplitMix64 (Steele, Lea and Flood, "Fast splittable pseudorandom number generators", 2014).
/// The same seed gives the same numbers in every version of the runtime. One owner: it is not safe to share between threads.
/// </summary>
/// <param name="seed">The state before the first number.</param>
public sealed class SplitMix64(ulong seed)
{
    private ulong _state = seed;

    /// <summary>The next number; the first is made after the first step of the state.</summary>
    public ulong Next()
    {
        _state += 0x9E3779B97F4A7C15;
        var z = _state;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
        return z ^ (z >> 31);
    }

    /// <summary>The next number as a fraction in [0, 1), the upper 53 bits of <see cref="Next"/>.</summary>
    public double NextFraction() => (Next() >> 11) * (1.0 / (1UL << 53));
}
