using QuarterCar.Model;
using QuarterCar.Model.Motion;
using QuarterCar.Scenarios;
using QuarterCar.Studies.Tests.Reference;
using QuarterCar.TestKit;

using Xunit;

namespace QuarterCar.Studies.Tests;

/// <summary>What a run takes from the heap.</summary>
public class AllocationTests
{
    public static TheoryData<string> Names => [.. ReferenceRun.Names];

    [Theory, MemberData(nameof(Names))]
    public void A_run_allocates_nothing_per_step(string name)
    {
        Scenario scenario = ReferenceRun.Load(name).Scenario();
        var corner = Corner.Build(scenario.Corner);
        CourseModel course = CourseModel.Of(scenario);
        var run = new MotionRun();
        double full = course.Duration(scenario.Run);
        Go(full);

        // The grid of pieces is made anew for each run; what a run takes must not depend on how long it is.
        Assert.Equal(Heap.Taken(() => Go(0.25 * full)), Heap.Taken(() => Go(full)));

        void Go(double duration)
        {
            if (course.DropHeight is { } height)
                run.Drop(corner, course.Road, height, duration, scenario.Run.Tolerance);
            else
                run.Drive(corner, course.Road, course.Speed, duration, scenario.Run.Tolerance);
        }
    }
}
