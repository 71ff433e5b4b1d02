using Xunit;

namespace QuarterCar.Model.Tests;

/// <summary>The names that result files use, in the order that other programs read them by.</summary>
public class EventNamesTests
{
    [Fact]
    public void Events_are_named_in_the_order_of_the_result_files()
    {
        string[] names =
        [
            "crossover", "crossover_release", "tender_solid", "tender_free", "upper_bind", "upper_unbind", "lower_bind", "lower_unbind", "coil_bind", "coil_unbind",
            "bump_stop", "bump_stop_release", "bottom_out", "bottom_out_release", "top_out", "top_out_release", "liftoff", "touchdown",
        ];
        Assert.Equal(names, Enum.GetValues<CornerEvent>().Select(EventNames.Of));
        Assert.Equal(names, EventNames.All);
    }
}
