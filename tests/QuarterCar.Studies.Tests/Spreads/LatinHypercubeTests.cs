using QuarterCar.Studies.Spreads;

using Xunit;

namespace QuarterCar.Studies.Tests.Spreads;

public sealed class LatinHypercubeTests
{
    [Theory]
    [InlineData(1, 1, 0UL)]
    [InlineData(2, 3, 1UL)]
    [InlineData(1000, 6, 1UL)]
    [InlineData(777, 4, ulong.MaxValue)]
    public void Every_stratum_of_every_dimension_holds_one_sample(int samples, int dimensions, ulong seed)
    {
        var cube = new LatinHypercube(samples, dimensions, seed);
        for (int d = 0; d < dimensions; d++)
        {
            var strata = Enumerable.Range(0, samples).Select(i => (int)Math.Floor(cube[i, d] * samples)).Order();
            Assert.Equal(Enumerable.Range(0, samples), strata);
        }
    }

    /// <summary>Worked out by a program in another language that knows nothing but the remarks on the type.</summary>
    [Fact]
    public void Seed_1_gives_these_numbers_for_good()
    {
        double[][] expected =
        [
            [0.44382302602628376, 0.9548798343334404, 0.12525332067637124, 0.6493930404290675, 0.2353817465929915],
            [0.8797124981616392, 0.359851315345033, 0.683373667535562, 0.030541062354632154, 0.5448066689365272],
        ];
        var cube = new LatinHypercube(5, 2, 1);
        for (int d = 0; d < 2; d++)
            Assert.Equal(expected[d], Enumerable.Range(0, 5).Select(i => cube[i, d]));
    }

    [Fact]
    public void A_further_dimension_leaves_the_numbers_of_the_others()
    {
        LatinHypercube two = new(50, 2, 9), three = new(50, 3, 9);
        Assert.Equal(Enumerable.Range(0, 50).Select(i => (two[i, 0], two[i, 1])), Enumerable.Range(0, 50).Select(i => (three[i, 0], three[i, 1])));
    }

    [Fact]
    public void Another_seed_gives_other_numbers() => Assert.NotEqual(new LatinHypercube(9, 1, 1)[0, 0], new LatinHypercube(9, 1, 2)[0, 0]);
}
