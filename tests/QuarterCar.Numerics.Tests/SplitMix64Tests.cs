using Xunit;

namespace QuarterCar.Numerics.Tests;

public class SplitMix64Tests
{
    // check-values section 2: from memory and computed.
    [Fact]
    public void The_stream_from_zero_starts_with_its_known_number() =>
        Assert.Equal(0xE220A8397B1DCDAF, new SplitMix64(0).Next());

    // The five numbers that circulate with the published algorithm for this seed; from memory.
    [Fact]
    public void The_stream_from_1234567_has_its_known_numbers()
    {
        var stream = new SplitMix64(1234567);
        ulong[] known = [6457827717110365317, 3203168211198807973, 9817491932198370423, 4593380528125082431, 16408922859458223821];
        Assert.All(known, number => Assert.Equal(number, stream.Next()));
    }

    // random_road.csv names the first phase of seed 7, 13 digits.
    [Fact]
    public void The_first_fraction_of_seed_7_times_a_turn_is_the_known_phase() =>
        Assert.Equal(2.449372547394, 2 * Math.PI * new SplitMix64(7).NextFraction(), 12);

    [Fact]
    public void Fractions_lie_from_0_to_below_1()
    {
        var stream = new SplitMix64(99);
        for (var i = 0; i < 10_000; i++)
            Assert.InRange(stream.NextFraction(), 0, Math.BitDecrement(1.0));
    }
}
