using QuarterCar.Reports.Html;
using QuarterCar.Reports.Words;

namespace QuarterCar.Reports.Tests;

/// <summary>What the corner stands on as a run begins is a touch, though no event.</summary>
public sealed class StartContactsTests
{
    // The ledge, load at the shaft over 0.94, from level ground. Springs and gas hold 131 + 108 lbf at full droop: 200/0.94 = 213 lbf top out.
    // At the bump stop, x = 9.8 in, springs 955 + 225·0.99 = 1178 lbf and gas below 300 lbf: 1600/0.94 = 1702 lbf stand on it.
    // At full bump springs 1673 lbf, bump stop 3600 + 4500·0.2 = 4500 lbf: 8000/0.94 = 8511 lbf stand on metal, the coils 0.97 in clear.
    [Theory]
    [InlineData("200 lbf", ", stands on its top-out from the start", false)]
    [InlineData("830 lbf", ", touches nothing", false)]
    [InlineData("1600 lbf", ", stands on its bump stop from the start", false)]
    [InlineData("8000 lbf", ", stands on metal and its bump stop from the start", true)]
    public void What_it_stands_on_is_said_in_verdict_and_report(string weight, string ending, bool metal)
    {
        var run = Scene.Run("quarry-ledge", "corner.sprung_weight=" + weight, "terrain=[{ flat: 20 ft }]", "run.duration=0.5 s");
        Assert.EndsWith(ending, Verdict.Travel(run), StringComparison.Ordinal);
        Assert.Equal(metal, Verdict.MeetsMetal(run));
        string page = RunReport.Write(run, []);
        Assert.Equal(weight == "830 lbf", page.Contains("Nothing touches", StringComparison.Ordinal));
        Assert.Equal(weight != "830 lbf", page.Contains("The corner" + ending[1..], StringComparison.Ordinal));
        Assert.Equal(metal, page.Contains(Cautions.Metal, StringComparison.Ordinal));
    }

    [Fact]
    public void A_drop_begins_topped_out_by_its_nature()
    {
        var run = Scene.Run("drop-test", "run.duration=20 ms");
        Assert.True(run.Track.At(0).ShaftTravel < 0);
        Assert.EndsWith("touches nothing", Verdict.Travel(run), StringComparison.Ordinal);
    }

    // A lower spring of 4 in of travel: upper 7.4 in and lower 4 in end at y = 11.4 in, x = 10 in, below 1184 lbf and the bump stop's first 0.2 in.
    [Fact]
    public void Bound_coils_from_the_start_are_named()
    {
        var run = Scene.Run("quarry-ledge", "corner.sprung_weight=3000 lbf", "coilover.springs.lower.solid_length=10 in", "coilover.stop_nut=none", "terrain=[{ flat: 20 ft }]", "run.duration=0.5 s");
        Assert.EndsWith(", stands on bound coils and its bump stop from the start", Verdict.Travel(run), StringComparison.Ordinal);
        Assert.True(Verdict.MeetsMetal(run));
    }
}
