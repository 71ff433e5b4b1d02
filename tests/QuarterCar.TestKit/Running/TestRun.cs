using System.Runtime.Intrinsics;

using QuarterCar.Numerics.Integration;

namespace QuarterCar.TestKit.Running;

/// <summary>A finished integration with what it met on the way.</summary>
/// <param name="Outcome">How it ended.</param>
/// <param name="Events">Switches that turned, in order.</param>
/// <param name="Log">The steps.</param>
public sealed record TestRun(IntegrationOutcome Outcome, IReadOnlyList<SwitchEvent> Events, StepLog Log)
{
    /// <summary>Close to what doubles can do.</summary>
    public static readonly IntegrationSettings Tight = Settings(1e-13, 1e-13);

    /// <summary>The controller of the program, with a chosen allowed error.</summary>
    /// <param name="relative">Share of the state.</param>
    /// <param name="absolute">Floor, in the state's units.</param>
    public static IntegrationSettings Settings(double relative, double absolute) =>
        new(new ErrorScale(Vector256.Create(absolute), relative), StepController.Default);

    /// <summary>Any error is allowed, so that steps are as long as the break times let them be.</summary>
    public static IntegrationSettings Uncontrolled(double firstStep) => Settings(0, 1e30) with { FirstStep = firstStep };

    /// <summary>Runs smooth equations from time 0.</summary>
    public static TestRun Smooth<TRight>(TRight right, Vector256<double> start, double end, IntegrationSettings settings, params ReadOnlySpan<double> breaks)
        where TRight : struct, IRightHandSide
    {
        var system = new Smooth<TRight>(right);
        var integrator = new Integrator();
        return new TestRun(integrator.Run(ref system, 0, end, start, breaks, settings), [], integrator.Log);
    }

    /// <summary>Runs switched equations from time 0.</summary>
    public static TestRun Switched<TModel>(TModel model, uint on, Vector256<double> start, double end, IntegrationSettings settings, params ReadOnlySpan<double> breaks)
        where TModel : struct, ISwitched
    {
        var events = new List<SwitchEvent>();
        var system = new Switched<TModel>(model, on, events);
        var integrator = new Integrator();
        return new TestRun(integrator.Run(ref system, 0, end, start, breaks, settings), events, integrator.Log);
    }

    /// <summary>State on the interpolant.</summary>
    public Vector256<double> At(double t) => Log.Steps[Log.IndexAt(t)].At(t);

    /// <summary>The n-th turn of a switch in a direction, counted from 0.</summary>
    public SwitchEvent Turn(int index, bool on, int n = 0) => Events.Where(e => e.Index == index && e.On == on).ElementAt(n);

    /// <summary>Times 0, step, 2·step … below the end, each computed on its own.</summary>
    public static double[] Grid(double step, double end) =>
        [.. Enumerable.Range(1, (int)Math.Round(end / step)).Select(i => i * step).Where(t => t < end * (1 - 1e-12))];
}
